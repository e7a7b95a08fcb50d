import { fileWords } from '../../engine/messages/index.ts';

const twoFigures = (figure: number) => String(figure).padStart(2, '0');

/** Hours and minutes of the clock on the wall here, "09:05"; everywhere in the window alike, whatever the system's format is. */
export function wordClock(time: Date): string {
  return `${twoFigures(time.getHours())}:${twoFigures(time.getMinutes())}`;
}

/** A time with its day: "today 09:05", "2026-11-25 09:05". A text that is no time comes back as it is. */
export function wordTime(iso: string, now: Date = new Date()): string {
  const time = new Date(iso);
  if (Number.isNaN(time.getTime())) return iso;
  if (time.toDateString() === now.toDateString()) return fileWords.today(wordClock(time));
  return `${time.getFullYear()}-${twoFigures(time.getMonth() + 1)}-${twoFigures(time.getDate())} ${wordClock(time)}`;
}
