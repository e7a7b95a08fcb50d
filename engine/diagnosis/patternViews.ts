import { compareText } from '../base/index.ts';
import type { ClassHandle } from './classBook.ts';
import type { PairAtHand } from './pairAtHand.ts';
import {
  type Absentable,
  absentableOf,
  isAllowed,
  presencePairs,
  provokedBits,
  subsets,
  type TripGroup,
  thinOut,
  tripLog,
} from './patterns.ts';
import type { Plan } from './plan.ts';

/** One joint pattern of presence of a hypothesis. */
export interface PatternView {
  /** Index of the prediction of an observation in this pattern. */
  readonly predict: (observation: number) => number;
  /** Whether a chain is broken at each trip group. */
  readonly broken: readonly boolean[];
}

/** Presence as [trip, now] by snapshot. */
type Pattern = readonly (readonly [number, number])[];

/** Presence is a subset of at most two faults. */
const subsetCount = 4;

/** What hypotheses predict, pattern of presence by pattern, for those few that are looked at closely. */
export class PatternViews {
  private readonly everywhere: readonly number[];
  /** Indices of the observations of each snapshot. */
  private readonly observationsOf: readonly (readonly number[])[];
  /** By subset of the faults at hand and of those that may be absent. */
  private readonly patterns = new Map<number, readonly Pattern[]>();
  /** For the pair at hand, by observation and presence at the trip and now. */
  private readonly predictions: Int32Array;
  private readonly stamps: Int32Array;
  private stamp = 0;

  constructor(
    private readonly plan: Plan,
    private readonly groups: readonly TripGroup[],
    private readonly pair: PairAtHand,
  ) {
    this.predictions = new Int32Array(plan.observations.length * subsetCount * subsetCount);
    this.stamps = new Int32Array(this.predictions.length);
    this.everywhere = pair.regions.map((_, index) => index);
    this.observationsOf = plan.snapshots.map((_, snapshot) =>
      plan.observations.flatMap((seen, index) => (seen.snapshot === snapshot ? [index] : [])),
    );
  }

  /** Every joint pattern of presence that the halted rule leaves, with its predictions. Valid until the next pair is weighed. */
  list(first: ClassHandle | null, second: ClassHandle | null): readonly PatternView[] {
    const { pair } = this;
    pair.set(first?.ops ?? null, second?.ops ?? null);
    const { full } = pair;
    const absentable = absentableOf(first, second);
    const brokenAt = this.groups.map((group) => {
      const byTrip: boolean[] = [];
      for (const trip of subsets(group.isFirst ? 0 : absentable, full)) {
        byTrip[trip] = pair.isBroken(group, trip, this.everywhere);
      }
      return byTrip;
    });
    this.stamp += 1;
    const views: PatternView[] = [];
    for (const pattern of this.patternsOf(full, absentable)) {
      const broken = this.groups.map((group, g) => brokenAt[g]?.[pattern[group.snapshots[0] ?? 0]?.[0] ?? full] === true);
      if (this.groups.every((group, g) => isAllowed(group, broken[g] === true))) {
        const predict = (index: number) => {
          const [trip, now] = pattern[this.plan.observations[index]?.snapshot ?? 0] ?? [full, full];
          return this.predictionAt(index, trip, now);
        };
        views.push({ predict, broken });
      }
    }
    return views;
  }

  /** Patterns are many, and what they predict of one observation is one of few things. */
  private predictionAt(index: number, trip: number, now: number): number {
    const at = (index * subsetCount + trip) * subsetCount + now;
    if (this.stamps[at] !== this.stamp) {
      this.stamps[at] = this.stamp;
      this.predictions[at] = this.pair.predictionAt(index, trip, now);
    }
    return this.predictions[at] ?? 0;
  }

  private patternsOf(full: number, absentable: Absentable): readonly Pattern[] {
    const key = full * subsetCount + absentable;
    const patterns = this.patterns.get(key) ?? this.listPatterns(full, absentable);
    this.patterns.set(key, patterns);
    return patterns;
  }

  /**
   * What is predicted of all that was observed, as a text: for every snapshot the different outcomes that the halted rule leaves, with
   * their shares of all presence patterns (that a machine runs weighs against what would mostly halt it), and where nobody said whether
   * it halts, whether a chain is broken.
   */
  signature(first: ClassHandle | null, second: ClassHandle | null): string {
    this.pair.set(first?.ops ?? null, second?.ops ?? null);
    const absentable = absentableOf(first, second);
    const provoked = provokedBits(this.groups, first, second);
    return this.groups
      .map((group, g) => group.snapshots.map((snapshot) => this.snapshotSignature(group, snapshot, absentable, provoked[g] ?? 0)).join(';'))
      .join('|');
  }

  private snapshotSignature(group: TripGroup, snapshot: number, absentable: Absentable, provoked: number): string {
    const weights = new Map<string, number>();
    let total = 0;
    for (const [trip, now] of presencePairs(group, this.pair.full, absentable)) {
      const isBroken = this.pair.isBroken(group, trip, this.everywhere);
      // Unprovoked, all are equally likely, and counting keeps their shares exact.
      const weight = provoked === 0 || group.isFirst ? 1 : Math.exp(tripLog(absentable, trip, provoked));
      total += weight;
      if (isAllowed(group, isBroken)) {
        const seen = (this.observationsOf[snapshot] ?? []).map((index) => this.pair.predictionAt(index, trip, now)).join();
        const key = group.mustBeBroken === null ? seen : `${seen}${isBroken ? 'b' : 'w'}`;
        weights.set(key, (weights.get(key) ?? 0) + weight);
      }
    }
    return [...weights]
      .sort(([a], [b]) => compareText(a, b))
      .map(([key, weight]) => `${key}:${provoked === 0 ? weight / total : (weight / total).toPrecision(9)}`)
      .join('+');
  }

  /** All joint patterns of presence. */
  private listPatterns(full: number, absentable: Absentable): readonly Pattern[] {
    let patterns: (readonly [number, number])[][] = [[]];
    for (const group of this.groups) {
      const next: (readonly [number, number])[][] = [];
      for (const trip of subsets(group.isFirst ? 0 : absentable, full)) {
        let withTrip = patterns;
        for (let i = 0; i < group.snapshots.length; i += 1) {
          const nows = group.isRunning ? [trip] : subsets(absentable, full);
          withTrip = thinOut(withTrip.flatMap((pattern) => nows.map((now) => [...pattern, [trip, now] as const])));
        }
        next.push(...withTrip);
      }
      patterns = next;
      patterns = thinOut(patterns);
    }
    return patterns;
  }
}
