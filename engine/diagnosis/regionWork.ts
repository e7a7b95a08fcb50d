import { displayMeanings } from '../schema/index.ts';
import type { ClassBook, EffectOps } from './classBook.ts';
import type { RegionOps } from './compiled.ts';
import type { TripGroup } from './patterns.ts';
import type { Plan, PlanObservation } from './plan.ts';
import { RegionEvaluator, type Unharmed } from './regionEvaluator.ts';
import { laterLog } from './repeats.ts';
import type { Scenario } from './scenarios.ts';

/** A moment of the plan: an arrangement after a trip of known onset. */
interface PlanMoment {
  readonly arrangement: number;
  readonly hasBeenUp: boolean;
}

/** The displays that one snapshot saw in this region: by unit, `logFactors[unit * meanings + m]`; zeros where nobody looked. */
interface SeenDisplays {
  readonly logFactors: Float64Array;
  /** With no fault at all: the log factor of each unit, and their sum. */
  readonly base: Float64Array;
  readonly baseSum: number;
}

/** The states of a region's units at a moment, and the gap that would be reported. `words` is `states`, four units at a time. */
interface RegionState {
  readonly states: Uint8Array;
  readonly words: Int32Array;
  gap: number;
}

/** What a class does to the displays of one snapshot, in logs of the factors, by whether it is still there now; see `localPart`. */
export interface LocalPart {
  readonly presentLog: number;
  readonly goneLog: number;
  /** The first gap within its reach at the trip, 0 for none. */
  readonly gap: number;
  /** First and last link that it reaches; it shows at the units at their ends. */
  readonly from: number;
  readonly to: number;
}

const meanings = displayMeanings.length;
const statesPerPool = 128;

/** Presence is a subset of the (at most two) faults of the pair at hand: bit 0 the first, bit 1 the second. */
const subsetCount = 4;

/** One region under one scenario, with the observations made in it; keeps what it computed for the pair at hand. */
export class RegionWork {
  /** With no fault at all: what the later readings of each of this region's repeats add to the log likelihood, and their sum. */
  readonly repeatBase = new Map<number, number>();
  readonly repeatBaseSum: number;
  /** Repeats by unit; those of the report under −1. */
  private readonly repeatsOf = new Map<number, number[]>();
  private readonly evaluator: RegionEvaluator;
  private readonly moments: readonly PlanMoment[];
  private readonly momentOf: readonly { readonly trip: number; readonly now: number }[];
  private readonly displays: readonly SeenDisplays[];
  private readonly reports: readonly (readonly { readonly index: number; readonly logFactors: Float64Array }[])[];
  private readonly local = new Map<number, number>();
  /** By moment: with no fault, with one class alone (by its id; kept for good), and with both of the pair (kept while it is at hand). */
  private readonly bases: readonly RegionState[];
  /** By moment: what there is with no fault, where that which a fault does not reach may be copied from it. */
  private readonly unharmed: readonly (Unharmed | null)[];
  private readonly alone: readonly (RegionState | undefined)[][];
  private readonly pairs: readonly RegionState[];
  private readonly pairStamps: Int32Array;
  private readonly logs: Float64Array;
  private readonly logStamps: Int32Array;
  private readonly scratch: RegionState;
  private pool = new ArrayBuffer(0);
  private poolEnd = 0;
  private stamp = 1;
  private first: EffectOps | null = null;
  private second: EffectOps | null = null;
  /** Which of the two classes of the pair touch this region; presence of the others makes no difference here. */
  private touchMask = 0;
  private affected: readonly number[] = [];
  private affectedStamp = 0;
  /** What the pair does shows at the trip and is held: that some of it is gone now makes no difference. */
  private isHeld = false;
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
    const unharmed: (Unharmed | null)[] = [];
    this.bases = moments.map((moment) => {
      const base = this.compute(moment, [], this.newState(), null);
      unharmed.push(this.evaluator.seesNeighboursOnly ? this.evaluator.keepUnharmed(base.states) : null);
      return base;
    });
    this.unharmed = unharmed;
    this.displays = plan.snapshots.map((_, snapshot) => this.seenDisplays(snapshot));
    this.reports = plan.snapshots.map((_, snapshot) => this.seenReports(snapshot));
    this.alone = moments.map(() => []);
    this.pairs = moments.map(() => this.newState());
    this.scratch = this.newState();
    this.pairStamps = new Int32Array(moments.length);
    this.logs = new Float64Array(plan.snapshots.length * subsetCount * subsetCount);
    this.logStamps = new Int32Array(this.logs.length);
    this.repeatBaseSum = this.findRepeats();
  }

  /** Whether an observation is a display or report of this region. */
  owns(observation: number): boolean {
    return this.local.has(observation);
  }

  setPair(first: EffectOps | null, second: EffectOps | null): void {
    if (first === this.first && second === this.second) {
      return;
    }
    const mask = (first?.regions.includes(this.region) === true ? 1 : 0) | (second?.regions.includes(this.region) === true ? 2 : 0);
    const isJoint = first?.isFeed === true && second?.isFeed === true;
    this.first = first;
    this.second = second;
    this.touchMask = isJoint ? 3 : mask;
    this.isHeld = !isJoint && this.evaluator.holdsAll && !this.touchesUnits(first) && !this.touchesUnits(second);
    this.stamp += 1;
  }

  private touchesUnits(entry: EffectOps | null): boolean {
    return entry?.regionsWithUnits.includes(this.region) === true;
  }

  private findRepeats(): number {
    let sum = 0;
    this.plan.repeats.forEach((indices, repeat) => {
      const [first = -1] = indices;
      const local = this.local.get(first);
      if (local !== undefined) {
        const key = this.plan.observations[first]?.kind === 'report' ? -1 : local;
        this.repeatsOf.set(key, [...(this.repeatsOf.get(key) ?? []), repeat]);
        const base = laterLog(this.plan, indices, (index) => this.prediction(index, 0, 0));
        this.repeatBase.set(repeat, base);
        sum += base;
      }
    });
    return sum;
  }

  /** Repeats of which some prediction may be another one than with no fault, for the pair at hand. */
  affectedRepeats(): readonly number[] {
    if (this.repeatsOf.size === 0) {
      return [];
    }
    if (this.affectedStamp !== this.stamp) {
      this.affectedStamp = this.stamp;
      this.affected = this.findAffected();
    }
    return this.affected;
  }

  private findAffected(): readonly number[] {
    const units = new Set<number>();
    for (let moment = 0; moment < this.moments.length; moment += 1) {
      const base = this.bases[moment] ?? unreachable();
      for (let present = 1; present < subsetCount; present += 1) {
        if ((present & this.touchMask) === present && (present !== 3 || this.second !== null)) {
          const state = this.stateAt(moment, present);
          if (state.gap !== base.gap) {
            units.add(-1);
          }
          for (let word = 0; word < state.words.length; word += 1) {
            if (state.words[word] !== base.words[word]) {
              for (let unit = word * 4; unit < word * 4 + 4; unit += 1) {
                if (state.states[unit] !== base.states[unit]) {
                  units.add(unit);
                }
              }
            }
          }
        }
      }
    }
    return [...units].flatMap((unit) => this.repeatsOf.get(unit) ?? []);
  }

  /** Log factors of everything observed in this region with no fault at all, repeats counted once. */
  baseLog(): number {
    this.setPair(null, null);
    return this.plan.snapshots.reduce((sum, _, snapshot) => sum + this.plainLog(snapshot, 0, 0), this.repeatBaseSum);
  }

  /** Log factors of what one snapshot saw in this region and no earlier one did. */
  plainLog(snapshot: number, trip: number, now: number): number {
    const before = trip & this.touchMask;
    const moment = this.momentOf[snapshot];
    const after = this.isHeld && moment?.trip === moment?.now ? before | (now & this.touchMask) : now & this.touchMask;
    const at = (snapshot * subsetCount + before) * subsetCount + after;
    if (this.logStamps[at] !== this.stamp) {
      this.logStamps[at] = this.stamp;
      this.logs[at] = this.computeLog(snapshot, before, after);
    }
    return this.logs[at] ?? 0;
  }

  /**
   * What the first class of the pair does here alone when it was there at the trip. Where units complain only about their own links,
   * two classes whose links have another one between them show side by side what each shows alone. Null where that is not so.
   */
  localPart(snapshot: number): LocalPart | null {
    const moment = this.momentOf[snapshot] ?? unreachable();
    const reach = this.reachOfFirst();
    if (reach === null) {
      return null;
    }
    const held = this.stateAt(moment.trip, 1);
    const base = this.displays[snapshot]?.baseSum ?? 0;
    return {
      presentLog: this.displayLog(snapshot, moment, held, this.stateAt(moment.now, 1)) - base,
      goneLog: this.displayLog(snapshot, moment, held, this.stateAt(moment.now, 0)) - base,
      gap: this.gapWithin(moment.trip, 1, reach),
      ...reach,
    };
  }

  /** First and last link that the first class of the pair reaches at any moment; null where what it does is not local (see `localPart`). */
  reachOfFirst(): { readonly from: number; readonly to: number } | null {
    if (this.unharmed.some((one) => one === null)) {
      return null;
    }
    const reach = this.moments.map(({ arrangement }) => this.opsOf(this.first, arrangement));
    return {
      from: Math.min(...reach.map((ops) => ops?.from ?? Number.POSITIVE_INFINITY)),
      to: Math.max(...reach.map((ops) => ops?.to ?? -1)),
    };
  }

  /** Log factors of the displays of one snapshot that repeat nothing, less those with no fault at all. */
  displaysBeyondBase(snapshot: number, trip: number, now: number): number {
    const moment = this.momentOf[snapshot] ?? unreachable();
    const held = this.stateAt(moment.trip, trip & this.touchMask);
    return (
      this.displayLog(snapshot, moment, held, this.stateAt(moment.now, now & this.touchMask)) - (this.displays[snapshot]?.baseSum ?? 0)
    );
  }

  /** The reports of this chain, in their order; `earlier` are indices in this list. */
  listReports(): readonly { readonly snapshot: number; readonly earlier: readonly number[]; readonly logFactors: Float64Array }[] {
    const indices = [...this.local.keys()].filter((index) => this.plan.observations[index]?.kind === 'report').sort((a, b) => a - b);
    return indices.flatMap((index) => {
      const seen = this.plan.observations[index];
      return seen === undefined
        ? []
        : [{ snapshot: seen.snapshot, earlier: seen.earlier.map((other) => indices.indexOf(other)), logFactors: seen.logFactors }];
    });
  }

  /** By gap (0: none), the log factor of the reports of this chain in one snapshot. */
  reportLogs(snapshot: number): Float64Array {
    const logs = new Float64Array(this.evaluator.size + 1);
    for (const { logFactors } of this.reports[snapshot] ?? []) {
      logFactors.forEach((log, gap) => {
        logs[gap] = (logs[gap] ?? 0) + log;
      });
    }
    return logs;
  }

  private computeLog(snapshot: number, trip: number, now: number): number {
    const moment = this.momentOf[snapshot];
    if (moment === undefined) {
      return 0;
    }
    const held = this.stateAt(moment.trip, trip);
    const current = this.stateAt(moment.now, now);
    let log = this.displayLog(snapshot, moment, held, current);
    for (const report of this.reports[snapshot] ?? []) {
      log += report.logFactors[held.gap] ?? 0;
    }
    return log;
  }

  /** Sum over the displays seen: the sum with no fault, corrected where a unit's state is another one. Most are not. */
  private displayLog(
    snapshot: number,
    moment: { readonly trip: number; readonly now: number },
    held: RegionState,
    current: RegionState,
  ): number {
    const seen = this.displays[snapshot] ?? unreachable();
    const heldBase = this.bases[moment.trip] ?? unreachable();
    const currentBase = this.bases[moment.now] ?? unreachable();
    let log = seen.baseSum;
    for (let word = 0; word < held.words.length; word += 1) {
      if (held.words[word] !== heldBase.words[word] || current.words[word] !== currentBase.words[word]) {
        for (let unit = word * 4; unit < Math.min(word * 4 + 4, this.evaluator.size); unit += 1) {
          log += this.displayFactor(seen, unit, held, current) - (seen.base[unit] ?? 0);
        }
      }
    }
    return log;
  }

  private displayFactor(seen: { readonly logFactors: Float64Array }, unit: number, held: RegionState, current: RegionState): number {
    return seen.logFactors[unit * meanings + this.evaluator.meaning(unit, held.states[unit] ?? 0, current.states[unit] ?? 0)] ?? 0;
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
      return held.gap;
    }
    const current = this.stateAt(moment.now, now & this.touchMask);
    const local = this.local.get(observation) ?? 0;
    return this.evaluator.meaning(local, held.states[local] ?? 0, current.states[local] ?? 0);
  }

  /** Whether the chain is broken at a group's trip (or now, where the machine runs). */
  isBroken(group: TripGroup, present: number): boolean {
    return this.gapAt(group, present) !== 0;
  }

  /** The gap that is reported of a group's trip (or now, where the machine runs); 0: none. */
  gapAt(group: TripGroup, present: number): number {
    const moment = this.momentOf[group.snapshots[0] ?? 0];
    return moment === undefined ? 0 : this.stateAt(moment.trip, present & this.touchMask).gap;
  }

  /** The first gap on some links at a group's trip with the first class of the pair alone, if `present`; 0: none. */
  gapOfFirst(group: TripGroup, present: number, reach: { readonly from: number; readonly to: number }): number {
    return this.gapWithin(this.momentOf[group.snapshots[0] ?? 0]?.trip ?? 0, present & 1, reach);
  }

  private gapWithin(moment: number, present: number, { from, to }: { readonly from: number; readonly to: number }): number {
    const at = this.moments[moment] ?? unreachable();
    const unharmed = this.unharmed[moment];
    if (unharmed == null) {
      return 0;
    }
    const ops = present === 0 ? [] : [this.opsOf(this.first, at.arrangement)];
    this.compute(at, ops, this.scratch, unharmed);
    return this.evaluator.firstGapIn(from, to, unharmed.heard);
  }

  /** The gaps at a group's trip without any fault, ascending. */
  gapsOfNone(group: TripGroup): readonly number[] {
    const moment = this.momentOf[group.snapshots[0] ?? 0]?.trip ?? 0;
    const gap = this.bases[moment]?.gap ?? 0;
    return this.unharmed[moment]?.gaps ?? (gap === 0 ? [] : [gap]);
  }

  private stateAt(moment: number, present: number): RegionState {
    if (present === 0) {
      return this.bases[moment] ?? unreachable();
    }
    if (present !== 3) {
      return this.stateAlone(moment, (present === 1 ? this.first : this.second) ?? unreachable());
    }
    const state = this.pairs[moment] ?? unreachable();
    if (this.pairStamps[moment] !== this.stamp) {
      this.pairStamps[moment] = this.stamp;
      const at = this.moments[moment] ?? unreachable();
      const ops = this.opsBuffer;
      ops[0] = this.opsOf(this.first, at.arrangement);
      ops[1] = this.opsOf(this.second, at.arrangement);
      ops[2] =
        this.first !== null && this.second !== null
          ? this.book.jointOps(this.first, this.second, at.arrangement)?.get(this.region)
          : undefined;
      this.compute(at, ops, state, this.unharmed[moment] ?? null);
    }
    return state;
  }

  private stateAlone(moment: number, entry: EffectOps): RegionState {
    const known = this.alone[moment] ?? unreachable();
    let state = known[entry.id];
    if (state === undefined) {
      const at = this.moments[moment] ?? unreachable();
      state = this.compute(at, [this.opsOf(entry, at.arrangement)], this.newState(), this.unharmed[moment] ?? null);
      known[entry.id] = state;
    }
    return state;
  }

  private newState(): RegionState {
    // Views of one large buffer: many small buffers cost the garbage collector far more than they hold.
    const bytes = 4 * Math.ceil(this.evaluator.size / 4);
    if (this.poolEnd + bytes > this.pool.byteLength) {
      this.pool = new ArrayBuffer(statesPerPool * bytes);
      this.poolEnd = 0;
    }
    const at = this.poolEnd;
    this.poolEnd += bytes;
    return { states: new Uint8Array(this.pool, at, bytes), words: new Int32Array(this.pool, at, bytes / 4), gap: 0 };
  }

  private compute(moment: PlanMoment, ops: readonly (RegionOps | undefined)[], state: RegionState, unharmed: Unharmed | null): RegionState {
    state.gap = this.evaluator.evaluate(moment.arrangement, moment.hasBeenUp, ops, state.states, unharmed);
    return state;
  }

  private opsOf(entry: EffectOps | null, arrangement: number): RegionOps | undefined {
    return entry?.ops[this.variant]?.[arrangement]?.get(this.region);
  }

  private seenDisplays(snapshot: number): SeenDisplays {
    const { size } = this.evaluator;
    const logFactors = new Float64Array(size * meanings);
    this.plan.observations.forEach((seen, index) => {
      const at = seen.kind === 'display' ? this.book.compiled.regionOf.get(seen.unit) : undefined;
      if (at?.region === this.region) {
        this.local.set(index, at.local);
        if (seen.snapshot === snapshot && seen.earlier.length === 0) {
          logFactors.set(seen.logFactors, at.local * meanings);
        }
      }
    });
    const moment = this.momentOf[snapshot] ?? unreachable();
    const held = this.bases[moment.trip] ?? unreachable();
    const current = this.bases[moment.now] ?? unreachable();
    const base = Float64Array.from({ length: size }, (_, unit) => this.displayFactor({ logFactors }, unit, held, current));
    return { logFactors, base, baseSum: base.reduce((sum, value) => sum + value, 0) };
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

function unreachable(): never {
  throw new Error('a moment or class that was never laid out');
}
