import type { ClassBook, EffectOps } from './classBook.ts';
import type { RegionOps } from './compiled.ts';
import type { TripGroup } from './patterns.ts';
import type { Plan, PlanObservation } from './plan.ts';
import { RegionEvaluator } from './regionEvaluator.ts';
import type { Scenario } from './scenarios.ts';

/** A moment of the plan: an arrangement after a trip of known onset. */
interface PlanMoment {
  readonly arrangement: number;
  readonly hasBeenUp: boolean;
}

interface SeenDisplay {
  readonly index: number;
  readonly local: number;
  readonly logFactors: Float64Array;
}

/** Presence is a subset of the (at most two) faults of the pair at hand: bit 0 the first, bit 1 the second. */
const subsetCount = 4;

/** One region under one scenario, with the observations made in it; keeps what it computed for the pair at hand. */
export class RegionWork {
  /** Observations of this region that repeat an earlier reading. */
  readonly repeating: readonly number[];
  private readonly evaluator: RegionEvaluator;
  private readonly moments: readonly PlanMoment[];
  private readonly momentOf: readonly { readonly trip: number; readonly now: number }[];
  private readonly displays: readonly (readonly SeenDisplay[])[];
  private readonly reports: readonly (readonly { readonly index: number; readonly logFactors: Float64Array }[])[];
  private readonly local = new Map<number, number>();
  private readonly states: Uint8Array;
  private readonly gaps: Int32Array;
  private readonly stateStamps: Int32Array;
  private readonly logs: Float64Array;
  private readonly logStamps: Int32Array;
  private stamp = 1;
  private first: EffectOps | null = null;
  private second: EffectOps | null = null;
  /** Which of the two classes of the pair touch this region; presence of the others makes no difference here. */
  private touchMask = 0;
  private readonly opsBuffer: (RegionOps | undefined)[] = [];

  constructor(
    private readonly book: ClassBook,
    private readonly plan: Plan,
    scenario: Scenario,
    private readonly region: number,
    private readonly variant: number,
  ) {
    this.evaluator = new RegionEvaluator(book.compiled, region, scenario);
    const moments: PlanMoment[] = [];
    const known = new Map<string, number>();
    const momentIndex = (arrangement: number, trip: number): number => {
      const hasBeenUp = scenario.onsets[trip] === 'while-running';
      const key = `${arrangement}/${hasBeenUp}`;
      let index = known.get(key);
      if (index === undefined) {
        index = moments.length;
        known.set(key, index);
        moments.push({ arrangement, hasBeenUp });
      }
      return index;
    };
    this.momentOf = plan.snapshots.map((snapshot) => ({
      trip: momentIndex(snapshot.tripArrangement, snapshot.trip),
      now: momentIndex(snapshot.nowArrangement, snapshot.trip),
    }));
    this.moments = moments;
    this.displays = plan.snapshots.map((_, snapshot) => this.seenDisplays(snapshot));
    this.reports = plan.snapshots.map((_, snapshot) => this.seenReports(snapshot));
    this.repeating = [...this.local.keys()].filter((index) => (plan.observations[index]?.earlier.length ?? 0) > 0);
    this.states = new Uint8Array(moments.length * subsetCount * Math.max(1, this.evaluator.size));
    this.gaps = new Int32Array(moments.length * subsetCount);
    this.stateStamps = new Int32Array(moments.length * subsetCount);
    this.logs = new Float64Array(plan.snapshots.length * subsetCount * subsetCount);
    this.logStamps = new Int32Array(this.logs.length);
  }

  /** Whether an observation is a display or report of this region. */
  owns(observation: number): boolean {
    return this.local.has(observation);
  }

  setPair(first: EffectOps | null, second: EffectOps | null): void {
    const mask = (first?.regions.includes(this.region) === true ? 1 : 0) | (second?.regions.includes(this.region) === true ? 2 : 0);
    const isJoint = first?.isFeed === true && second?.isFeed === true;
    this.first = first;
    this.second = second;
    this.touchMask = isJoint ? 3 : mask;
    this.stamp += 1;
  }

  /** Log factors of everything observed in this region with no fault at all, repeats counted once. */
  baseLog(): number {
    this.setPair(null, null);
    let log = 0;
    this.plan.snapshots.forEach((_, snapshot) => {
      log += this.plainLog(snapshot, 0, 0);
    });
    for (const index of this.repeating) {
      const seen = this.plan.observations[index];
      const own = this.prediction(index, 0, 0);
      if (seen !== undefined && !seen.earlier.some((other) => this.prediction(other, 0, 0) === own)) {
        log += seen.logFactors[own] ?? 0;
      }
    }
    return log;
  }

  /** Log factors of what one snapshot saw in this region and no earlier one did. */
  plainLog(snapshot: number, trip: number, now: number): number {
    const at = (snapshot * subsetCount + (trip & this.touchMask)) * subsetCount + (now & this.touchMask);
    if (this.logStamps[at] !== this.stamp) {
      this.logStamps[at] = this.stamp;
      this.logs[at] = this.computeLog(snapshot, trip & this.touchMask, now & this.touchMask);
    }
    return this.logs[at] ?? 0;
  }

  private computeLog(snapshot: number, trip: number, now: number): number {
    const moment = this.momentOf[snapshot];
    if (moment === undefined) {
      return 0;
    }
    const { states } = this;
    const held = this.stateAt(moment.trip, trip);
    const current = this.stateAt(moment.now, now);
    let log = 0;
    const displays = this.displays[snapshot] ?? [];
    for (let i = 0; i < displays.length; i += 1) {
      const seen = displays[i];
      if (seen !== undefined) {
        const meaning =
          this.evaluator.displayTables[seen.local]?.[((states[held + seen.local] ?? 0) & 7) * 64 + (states[current + seen.local] ?? 0)] ??
          0;
        log += seen.logFactors[meaning] ?? 0;
      }
    }
    for (const report of this.reports[snapshot] ?? []) {
      log += report.logFactors[this.gaps[moment.trip * subsetCount + trip] ?? 0] ?? 0;
    }
    return log;
  }

  /** What an observation of this region is predicted to be: index of a meaning, or a gap (0: none). */
  prediction(observation: number, trip: number, now: number): number {
    const seen: PlanObservation | undefined = this.plan.observations[observation];
    const moment = this.momentOf[seen?.snapshot ?? 0];
    if (seen === undefined || moment === undefined) {
      return 0;
    }
    const held = this.stateAt(moment.trip, trip & this.touchMask);
    if (seen.kind === 'report') {
      return this.gaps[moment.trip * subsetCount + (trip & this.touchMask)] ?? 0;
    }
    const current = this.stateAt(moment.now, now & this.touchMask);
    const local = this.local.get(observation) ?? 0;
    return this.evaluator.displayTables[local]?.[((this.states[held + local] ?? 0) & 7) * 64 + (this.states[current + local] ?? 0)] ?? 0;
  }

  /** Whether the chain is broken at a group's trip (or now, where the machine runs). */
  isBroken(group: TripGroup, present: number): boolean {
    const moment = this.momentOf[group.snapshots[0] ?? 0];
    if (moment === undefined) {
      return false;
    }
    this.stateAt(moment.trip, present & this.touchMask);
    return this.gaps[moment.trip * subsetCount + (present & this.touchMask)] !== 0;
  }

  /** Where in `states` the units' states of a moment start, computed when needed. */
  private stateAt(moment: number, present: number): number {
    const at = moment * subsetCount + present;
    const start = at * this.evaluator.size;
    if (this.stateStamps[at] !== this.stamp) {
      this.stateStamps[at] = this.stamp;
      const { arrangement, hasBeenUp } = this.moments[moment] ?? { arrangement: 0, hasBeenUp: true };
      const ops = this.opsBuffer;
      ops[0] = (present & 1) !== 0 ? this.opsOf(this.first, arrangement) : undefined;
      ops[1] = (present & 2) !== 0 ? this.opsOf(this.second, arrangement) : undefined;
      ops[2] =
        present === 3 && this.first !== null && this.second !== null
          ? this.book.jointOps(this.first, this.second, arrangement)?.get(this.region)
          : undefined;
      this.gaps[at] = this.evaluator.evaluate(arrangement, hasBeenUp, ops, this.states, start);
    }
    return start;
  }

  private opsOf(entry: EffectOps | null, arrangement: number): RegionOps | undefined {
    return entry?.ops[this.variant]?.[arrangement]?.get(this.region);
  }

  private seenDisplays(snapshot: number): readonly SeenDisplay[] {
    const list: SeenDisplay[] = [];
    this.plan.observations.forEach((seen, index) => {
      const at = seen.kind === 'display' ? this.book.compiled.regionOf.get(seen.unit) : undefined;
      if (at?.region === this.region) {
        this.local.set(index, at.local);
        if (seen.snapshot === snapshot && seen.earlier.length === 0) {
          list.push({ index, local: at.local, logFactors: seen.logFactors });
        }
      }
    });
    return list;
  }

  private seenReports(snapshot: number): readonly { readonly index: number; readonly logFactors: Float64Array }[] {
    const chain = this.book.compiled.regions[this.region]?.chain;
    const list: { index: number; logFactors: Float64Array }[] = [];
    this.plan.observations.forEach((seen, index) => {
      if (seen.kind === 'report' && chain !== null && seen.chain === chain) {
        this.local.set(index, 0);
        if (seen.snapshot === snapshot && seen.earlier.length === 0) {
          list.push({ index, logFactors: seen.logFactors });
        }
      }
    });
    return list;
  }
}
