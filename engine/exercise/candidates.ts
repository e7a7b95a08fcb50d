import { defaultDaysSinceWhole, listFaultSpace, type SettledFault } from '../diagnosis/index.ts';
import type { Circumstance, ExerciseContent, Fault, Possibility } from '../schema/index.ts';
import { itemKey, modeKey } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { checksum } from './checksum.ts';
import { seenAtStart } from './outcomes.ts';

/** More possibilities than this make an exercise that nobody oversees, and a best plan that nobody waits for. */
const mostPossible = 24;
const mostPossiblePairs = 10;
/** Pairs are only formed of so many faults, the likeliest. */
const mostForPairs = 120;

export interface CandidateOptions {
  readonly onset: ExerciseContent['onset'];
  readonly given: ExerciseContent['given'];
  /** The true answer: always among the possibilities. */
  readonly faults: readonly Fault[];
}

/**
 * What may be wrong with a cabinet as far as the start tells: all sets of as many faults as the answer has, steady or coming and going
 * as those of the answer, that show exactly what is given, weighed by the prior odds of their modes (domain sections 6 and 9). At most
 * so many that a person oversees them: the likeliest.
 */
export function listPossible(cabinet: Cabinet, { onset, given, faults }: CandidateOptions): readonly Possibility[] {
  const intermittent = faults.some(({ presence }) => presence === 'intermittent');
  const space = listFaultSpace(cabinet, {
    circumstances: given.circumstances ?? [],
    daysSinceWhole: defaultDaysSinceWhole,
    withWiringMistakes: onset === 'at-power-up',
  });
  const singles = space.faults.flatMap((modes, element) =>
    modes
      .map((fault, mode) => ({ fault, odds: space.elements[element]?.modes[mode]?.odds ?? 0 }))
      .filter(({ fault }) => intermittent || fault.presence === 'steady'),
  );
  const sets = faults.length === 1 ? singles.map(({ fault, odds }) => ({ faults: [fault], weight: odds })) : pairsOf(singles);
  const fitting = sets.filter((set) => fitsGiven(cabinet, onset, given, set.faults));
  const own = { faults: faults.map(settled), weight: weightOf(faults, singles) };
  const others = fitting.filter((set) => keyOf(set.faults) !== keyOf(own.faults));
  const ranked = [own, ...others].sort((a, b) => b.weight - a.weight || compare(a, b));
  const chosen = around(ranked, own, faults.length > 1 || intermittent ? mostPossiblePairs : mostPossible);
  const greatest = chosen[0]?.weight ?? 1;
  // The place in the list must not give the answer away, nor endless decimals the formula.
  return chosen.map((set) => ({ faults: [...set.faults], weight: Number((set.weight / greatest).toPrecision(4)) }));
}

/**
 * The likeliest, as many as may be. Where the true answer is not among them, half of them, and around the answer as many others as are
 * left over, of which it has any place: the one unlikely set in a list of the likeliest would be known for the answer.
 */
function around(ranked: readonly Weighed[], own: Weighed, most: number): readonly Weighed[] {
  const at = ranked.indexOf(own);
  if (at < most) return ranked.slice(0, most);
  const head = Math.floor(most / 2);
  const count = most - head;
  const before = Number.parseInt(checksum(keyOf(own.faults)), 16) % count;
  const from = Math.min(Math.max(head, at - before), ranked.length - count);
  return [...ranked.slice(0, head), ...ranked.slice(from, from + count)];
}

type Weighed = { readonly faults: readonly Fault[]; readonly weight: number };

function pairsOf(singles: readonly { readonly fault: SettledFault; readonly odds: number }[]): readonly Weighed[] {
  const likeliest = [...singles].sort((a, b) => b.odds - a.odds || (modeKey(a.fault) < modeKey(b.fault) ? -1 : 1)).slice(0, mostForPairs);
  return likeliest.flatMap((one, i) =>
    likeliest
      .slice(i + 1)
      .filter((other) => itemKey(other.fault) !== itemKey(one.fault))
      .map((other) => ({ faults: [one.fault, other.fault], weight: one.odds * other.odds })),
  );
}

function weightOf(faults: readonly Fault[], singles: readonly { readonly fault: SettledFault; readonly odds: number }[]): number {
  const least = Math.min(...singles.map(({ odds }) => odds));
  return faults.reduce(
    (product, fault) => product * (singles.find((one) => keyOf([one.fault]) === keyOf([settled(fault)]))?.odds ?? least),
    1,
  );
}

function settled(fault: Fault): Fault {
  const { absentNow: _absent, ...rest } = fault;
  return { ...rest, presence: fault.presence ?? 'steady' } as Fault; // the same fault, its presence written out
}

export function keyOf(faults: readonly Fault[]): string {
  return faults
    .map((fault) => `${modeKey(fault)}/${fault.presence ?? 'steady'}`)
    .sort()
    .join();
}

function compare(a: Weighed, b: Weighed): number {
  return keyOf(a.faults) < keyOf(b.faults) ? -1 : 1;
}

/** Whether faults show exactly what is given, and halt the machine at all. */
export function fitsGiven(
  cabinet: Cabinet,
  onset: ExerciseContent['onset'],
  given: ExerciseContent['given'],
  faults: readonly Fault[],
): boolean {
  const { displays, reports } = seenAtStart(cabinet, onset, faults);
  const meanings = new Map<string, string>([...displays].map(([unit, { meaning }]) => [unit, meaning]));
  const gaps = new Map<string, number | 'none'>([...reports].map(([chain, { gap }]) => [chain, gap]));
  return (
    [...gaps.values()].some((gap) => gap !== 'none') &&
    (given.displays ?? []).every(({ unit, meaning }) => meanings.get(unit) === meaning) &&
    (given.reports ?? []).every(({ chain, gap }) => gaps.get(chain) === gap)
  );
}

/** What the named displays and reports show at the start, as it is written into an exercise. */
export function givenOf(
  cabinet: Cabinet,
  onset: ExerciseContent['onset'],
  faults: readonly Fault[],
  known: {
    readonly displays: readonly string[];
    readonly reports: readonly string[];
    readonly circumstances?: readonly Circumstance[];
  },
): ExerciseContent['given'] {
  const { displays, reports } = seenAtStart(cabinet, onset, faults);
  return {
    displays: [...displays.values()].filter(({ unit }) => known.displays.includes(unit)).map(({ unit, meaning }) => ({ unit, meaning })),
    reports: [...reports.values()].filter(({ chain }) => known.reports.includes(chain)).map(({ chain, gap }) => ({ chain, gap })),
    ...(known.circumstances === undefined || known.circumstances.length === 0 ? {} : { circumstances: [...known.circumstances] }),
  };
}
