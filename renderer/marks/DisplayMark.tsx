import type { DisplayMeaning } from '../../engine/schema/index.ts';
import './marks.css';

/** What a mark can show: one of the six meanings, a set of several, or that nobody has looked. */
export type MarkName = DisplayMeaning | 'not-looked-at' | 'lit' | 'complains';

const dot = <circle cx="8" cy="8" r="2.25" />;
const wedge = <path d="M1 1H9.9L1 9.9Z" />;
const corner = <path d="M12.8 2H15V15H2V12.8H12.8Z" />;
const star = <path d="M8 1.6V14.4M2.46 4.8 13.54 11.2M13.54 4.8 2.46 11.2" stroke="currentColor" strokeWidth="2.3" />;

/*
 * Centre dot: lit and speaking. Upper left: towards the controller. Lower right: away from it. Wedge and corner differ in mass,
 * not only in side, so no turning or mirroring makes one of the other.
 */
const shapes: { readonly [M in MarkName]: React.ReactNode } = {
  dark: <path d="M1.9 1.9H14.1V14.1H1.9Z" fill="none" stroke="currentColor" strokeWidth="1.8" />,
  quiet: (
    <>
      <circle cx="8" cy="8" r="6" fill="none" stroke="currentColor" strokeWidth="1.7" />
      {dot}
    </>
  ),
  'upstream-loss': (
    <>
      {wedge}
      {dot}
    </>
  ),
  'downstream-loss': (
    <>
      {dot}
      {corner}
    </>
  ),
  'both-losses': (
    <>
      {wedge}
      {dot}
      {corner}
    </>
  ),
  other: star,
  'not-looked-at': <path d="M2 7h2.4v2.4H2zM6.8 7h2.4v2.4H6.8zM11.6 7H14v2.4h-2.4z" />,
  // The sets: lit, but no figure in it; complains, but neither corner is filled.
  lit: (
    <>
      {dot}
      <path d="M2 5V2h3M11 2h3v3M14 11v3h-3M5 14H2v-3" fill="none" stroke="currentColor" strokeWidth="1.7" />
    </>
  ),
  complains: (
    <>
      {dot}
      <path d="M1.8 8.6V1.8h6.8M14.2 7.4v6.8H7.4" fill="none" stroke="currentColor" strokeWidth="1.5" strokeDasharray="2 1.4" />
    </>
  ),
};

/** A display mark. It never carries meaning alone: the word stands beside it, or in the name of what holds it. */
export function DisplayMark({ name, size = 20 }: { readonly name: MarkName; readonly size?: number }) {
  return (
    <svg className="mark" width={size} height={size} viewBox="0 0 16 16" fill="currentColor" aria-hidden="true">
      {shapes[name]}
    </svg>
  );
}

const losses: ReadonlySet<string> = new Set(['upstream-loss', 'downstream-loss', 'both-losses']);

/** Which mark stands for a set of meanings: its only one, or the mark of the set. */
export function markOf(meanings: readonly DisplayMeaning[]): MarkName {
  const [only] = meanings;
  if (only === undefined) return 'not-looked-at';
  if (meanings.length === 1) return only;
  return meanings.every((meaning) => losses.has(meaning)) ? 'complains' : 'lit';
}

/** How a mark is coloured: what it says of the chain, not which mark it is. */
export function toneOf(mark: MarkName): 'loss' | 'quiet' | 'dark' | 'other' | 'none' {
  if (losses.has(mark) || mark === 'complains') return 'loss';
  if (mark === 'quiet') return 'quiet';
  if (mark === 'dark') return 'dark';
  return mark === 'not-looked-at' ? 'none' : 'other';
}
