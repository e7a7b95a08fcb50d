import { distance } from 'fastest-levenshtein';

/**
 * The name most similar to a mistyped one: at most two letters in five differ, or two neighbours changed places (capital and small
 * letters count as equal). Empty when none is similar. Of equally similar ones the first is taken.
 */
export function findNearest(mistyped: string, names: Iterable<string>): string {
  const wanted = mistyped.trim().toLowerCase();
  // Nobody mistypes a name of hundreds of letters, and the distance of long texts is dear.
  if (wanted.length === 0 || wanted.length > 100) return '';
  let nearest = '';
  // At least one letter must be right, or any short name would resemble any other.
  let least = Math.min(Math.max(1, Math.floor(wanted.length * 0.4)) + 1, wanted.length);
  for (const name of names) {
    if (Math.abs(name.length - wanted.length) >= least) continue;
    const lower = name.toLowerCase();
    const away = isSwapped(wanted, lower) ? 1 : distance(wanted, lower);
    if (away < least) {
      least = away;
      nearest = name;
    }
  }
  return nearest;
}

/** Whether two texts differ in two neighbouring letters that changed places: the commonest slip of all. */
function isSwapped(a: string, b: string): boolean {
  if (a.length !== b.length) return false;
  const at = [...a].findIndex((letter, i) => letter !== b[i]);
  return at >= 0 && a.slice(0, at) + (a[at + 1] ?? '') + (a[at] ?? '') + a.slice(at + 2) === b;
}
