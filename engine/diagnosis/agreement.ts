import type { DisplayMeaning } from '../schema/index.ts';

/** Does what was seen agree with what is predicted? `open`: nobody has looked. */
export type Agreement = 'fits' | 'against' | 'open';

/** A set that leaves everything open: noted or photographed, and not read yet. */
export function isUnread(meanings: readonly DisplayMeaning[]): boolean {
  return meanings.includes('dark') && meanings.includes('quiet') && meanings.includes('other');
}

/** Agreement of one display. A set that contains "other" fits whatever is lit: nobody can predict a code that is not ours. */
export function displayAgreement(seen: readonly DisplayMeaning[], predicted: DisplayMeaning): Agreement {
  if (seen.length === 0 || isUnread(seen)) return 'open';
  return seen.includes(predicted) || (seen.includes('other') && predicted !== 'dark') ? 'fits' : 'against';
}

/** Agreement of one report: a set of possible gaps, or nothing entered. */
export function reportAgreement(seen: readonly (number | 'none')[] | undefined, predicted: number | 'none'): Agreement {
  if (!seen) return 'open';
  return seen.includes(predicted) ? 'fits' : 'against';
}
