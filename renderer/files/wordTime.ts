const today = new Intl.DateTimeFormat(undefined, { timeStyle: 'medium' });
const otherDay = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'medium' });

/** A time as the user's system writes it; with the day, unless it is of today. */
export function wordTime(iso: string, now: Date = new Date()): string {
  const time = new Date(iso);
  if (Number.isNaN(time.getTime())) return iso;
  return (time.toDateString() === now.toDateString() ? today : otherDay).format(time);
}
