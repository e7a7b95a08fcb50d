import type { ClassHandle } from './classBook.ts';
import type { Plan } from './plan.ts';
import { presentChance, provokedChance } from './presence.ts';

/**
 * Snapshots that show the same trip. Between trips an intermittent fault is there or not anew; within one, anew at every look.
 */
export interface TripGroup {
  readonly trip: number;
  readonly snapshots: readonly number[];
  /** The first trip: every fault of a hypothesis was there. */
  readonly isFirst: boolean;
  /** The machine is not halted: there was no trip, and what is there is there now. One snapshot only. */
  readonly isRunning: boolean;
  /** A chain must be broken at the trip, none may be, or nobody looked. */
  readonly mustBeBroken: boolean | null;
}

/** Below this the likelihood of no fault is so small that products with it lose digits; sums of logs are used then. */
export const leastSafeLog = -500;

const halfLog = Math.log(presentChance);
const provokedLogs = [Math.log(1 - provokedChance), Math.log(provokedChance)] as const;

/** log probability of one subset of the faults that may be absent (bits of `absentable`): with q = ½ all are equally likely. */
export function presentLog(absentable: number): number {
  return ((absentable & 1) + ((absentable >> 1) & 1)) * halfLog;
}

/**
 * log probability that of the faults that may be absent at a trip (bits of `absentable`) those of `there` are there; the bits of
 * `provoked` are faults that this trip brings out.
 */
export function tripLog(absentable: number, there: number, provoked: number): number {
  const drawn = absentable & provoked;
  let log = presentLog(absentable & ~provoked);
  for (const bit of [1, 2]) {
    if ((drawn & bit) !== 0) {
      log += provokedLogs[(there & bit) === 0 ? 0 : 1];
    }
  }
  return log;
}

/** log(exp(a) + exp(b)) without overflow; either may be −∞. */
export function logSum(a: number, b: number): number {
  if (a === Number.NEGATIVE_INFINITY) {
    return b;
  }
  if (b === Number.NEGATIVE_INFINITY) {
    return a;
  }
  // Equal terms are common (nothing shown depends on presence) and need no exponential.
  if (a === b) {
    return a + Math.LN2;
  }
  return a > b ? a + Math.log1p(Math.exp(b - a)) : b + Math.log1p(Math.exp(a - b));
}

/** More joint patterns of presence than this are not weighed one by one: a sample of them stands for all. */
const patternBudget = 4096;

/** Whether a plan has so many moments that a pair of intermittent faults may need a sample of its patterns. */
export function mayBeSampled(plan: Plan): boolean {
  const free = plan.draws - (plan.firstTripDraw < 0 ? 0 : 1);
  return plan.snapshots.length > 1 && 4 ** free > patternBudget;
}

/** About `patternBudget` of a longer list of patterns. */
export function thinOut<T>(patterns: T[]): T[] {
  return evenSample(patterns, patternBudget);
}

/**
 * About `size` entries of a longer list, picked by a multiplicative hash of the index (Knuth, The Art of Computer Programming
 * vol. 3, section 6.4, from memory), so that the pick is the same every time and favours no part of the list.
 */
export function evenSample<T>(list: T[], size: number): T[] {
  const share = size / list.length;
  return share >= 1 ? list : list.filter((_, index) => (Math.imul(index + 1, 0x9e3779b1) >>> 0) / 2 ** 32 < share);
}

/** Groups the snapshots of a plan by trip. */
export function groupTrips(plan: Plan): readonly TripGroup[] {
  const byDraw = new Map<number, { trip: number; snapshots: number[]; isRunning: boolean; mustBeBroken: boolean | null }>();
  plan.snapshots.forEach((snapshot, index) => {
    const isRunning = snapshot.halted === false;
    const group = byDraw.get(snapshot.tripDraw);
    if (group === undefined) {
      byDraw.set(snapshot.tripDraw, { trip: snapshot.trip, snapshots: [index], isRunning, mustBeBroken: snapshot.halted });
    } else {
      group.snapshots.push(index);
      group.mustBeBroken = group.mustBeBroken ?? snapshot.halted;
    }
  });
  return [...byDraw].map(([draw, group]) => ({ ...group, isFirst: draw === plan.firstTripDraw }));
}

/** The subsets of `full` that leave out nothing but absentable faults (bits), the fullest first. */
export function subsets(absentable: number, full: number): readonly number[] {
  return subsetTable[full * 4 + absentable] ?? [];
}

const subsetTable: readonly (readonly number[])[] = [0, 1, 2, 3].flatMap((full) =>
  [0, 1, 2, 3].map((absentable) => [3, 2, 1, 0].filter((subset) => (subset & ~full) === 0 && (subset | (absentable & full)) === full)),
);

/** The [trip, now] pairs that a snapshot of a group can have. */
export function presencePairs(group: TripGroup | undefined, full: number, absentable: number): readonly (readonly [number, number])[] {
  const kind = group?.isRunning === true ? 0 : group === undefined || group.isFirst ? 1 : 2;
  return pairTable[kind]?.[full * 4 + absentable] ?? [];
}

const pairTable: readonly (readonly (readonly (readonly [number, number])[])[])[] = [
  (absentable: number, full: number) => subsets(absentable, full).map((now) => [now, now] as const),
  (absentable: number, full: number) => subsets(absentable, full).map((now) => [full, now] as const),
  (absentable: number, full: number) =>
    subsets(absentable, full).flatMap((trip) => subsets(absentable, full).map((now) => [trip, now] as const)),
].map((list) => [0, 1, 2, 3].flatMap((full) => [0, 1, 2, 3].map((absentable) => list(absentable, full))));

/** By trip group: which of two faults its restart brings out (bit 0 the first, bit 1 the second). Empty where nothing was provoked. */
export function provokedBits(groups: readonly TripGroup[], first: ClassHandle | null, second: ClassHandle | null): readonly number[] {
  const [one, other] = [first?.provokedIn ?? [], second?.provokedIn ?? []];
  if (one.length + other.length === 0) {
    return [];
  }
  return groups.map(({ snapshots: [begins = -1] }) => (one.includes(begins) ? 1 : 0) | (other.includes(begins) ? 2 : 0));
}

/** Which of the two faults may be absent at a moment drawn anew: bit 0 the first, bit 1 the second. */
export type Absentable = 0 | 1 | 2 | 3;

export function absentableOf(first: ClassHandle | null, second: ClassHandle | null): Absentable {
  // Two bits make 0 to 3.
  return ((first?.isIntermittent === true ? 1 : 0) | (second?.isIntermittent === true ? 2 : 0)) as Absentable;
}

/** The halted rule: whether a chain may be broken, or whole, at the trip of a group. */
export function isAllowed(group: TripGroup, isBroken: boolean): boolean {
  return group.mustBeBroken === null || group.mustBeBroken === isBroken;
}
