import { fileWords } from '../../engine/messages/index.ts';

const timeOfToday = new Intl.DateTimeFormat(undefined, { timeStyle: 'medium' });
const otherDay = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'medium' });

/** A time as the user's system writes it, with its day. */
export function wordTime(iso: string, now: Date = new Date()): string {
  const time = new Date(iso);
  if (Number.isNaN(time.getTime())) return iso;
  return time.toDateString() === now.toDateString() ? fileWords.today(timeOfToday.format(time)) : otherDay.format(time);
}
