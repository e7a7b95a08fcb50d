import { distance } from 'fastest-levenshtein';

/**
 * The name most similar to a mistyped one: at most two letters in five differ (capital and small letters count as equal). Empty
 * when none is similar. Of equally similar ones the first is taken.
 */
export function findNearest(mistyped: string, names: Iterable<string>): string {
  const wanted = mistyped.trim().toLowerCase();
  // Nobody mistypes a name of hundreds of letters, and the distance of long texts is dear.
  if (wanted.length === 0 || wanted.length > 100) return '';
  let nearest = '';
  let least = Math.max(1, Math.floor(wanted.length * 0.4)) + 1;
  for (const name of names) {
    if (Math.abs(name.length - wanted.length) >= least) continue;
    const away = distance(wanted, name.toLowerCase());
    if (away < least) {
      least = away;
      nearest = name;
    }
  }
  return nearest;
}
