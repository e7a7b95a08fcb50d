import { compareText } from '../base/index.ts';
import type { LookOutcome } from '../simulation/index.ts';
import { outcomeAt, type PlacedEffect } from '../simulation/index.ts';
import type { ClassBook, ClassHandle, EffectOps } from './classBook.ts';
import { logSum, presencePairs, presentChance, presentLog, subsets, type TripGroup, thinOut } from './patterns.ts';
import type { Plan, PlanObservation } from './plan.ts';
import { laterLog, RegionWork } from './regionWork.ts';
import type { Scenario } from './scenarios.ts';
import { type Tie, weighTied } from './ties.ts';

const never = Number.NEGATIVE_INFINITY;

/**
 * Per trip group, the log likelihood of the touched part of the cabinet when it is whole at that trip ([2g]) and when it is
 * broken ([2g+1]). Null instead of a table: a repeated reading ties the groups together, so they cannot be taken apart.
 */
type GroupTable = Float64Array;

/** One class in the fast way: the one region it touches (−1: not for the fast way), and what it does to the likelihood there. */
interface SimpleClass {
  readonly region: number;
  readonly ratio: number;
  readonly isBroken: boolean;
}

/** Below this the likelihood of no fault is so small that products with it lose digits; sums of logs are used then. */
const leastSafeLog = -500;

/** Which of the two faults may be absent at a moment drawn anew: bit 0 the first, bit 1 the second. */
type Absentable = 0 | 1 | 2 | 3;

/** Weighs hypotheses of up to two faults under one scenario. All values are logs, scaled by the largest factors. */
export class Weigher {
  private readonly regions: readonly RegionWork[];
  private readonly variant: number;
  private readonly baseOfRegion: Float64Array;
  private readonly baseOfLook = new Map<number, number>();
  private readonly baseTotal: number;
  /** Regions that are broken at a group's trip without any fault (a cable unplugged, the control off). */
  private readonly baseBroken: readonly ReadonlySet<number>[];
  /** By handle. */
  private readonly tables: (GroupTable | null | undefined)[] = [];
  private readonly simple: (SimpleClass | undefined)[] = [];
  /** One snapshot of a halted machine, every chain whole without a fault: by far the commonest evidence, and weighed the fast way. */
  private readonly isSimple: boolean;
  private readonly mustBreak: boolean;
  private readonly hasRun: boolean;
  /** Scaled log likelihood of no fault at all, the halted rule left aside, less `offset`; and its exp. */
  private readonly baseLog: number;
  private readonly baseLikelihood: number;
  private isPairSet = false;
  private withinFirst: EffectOps | null = null;
  private withinSecond: EffectOps | null = null;
  /** By presence of the pair just weighed: bit 0, the first is intermittent; bit 1, the second. */
  private readonly within = new Float64Array(4);
  private readonly lookMemo = new Map<string, number>();
  /** Indices of the observations of each snapshot. */
  private readonly observationsOf: readonly (readonly number[])[];
  private readonly groupOfSnapshot: readonly (TripGroup | undefined)[];
  private readonly regionOfObservation: readonly (RegionWork | undefined)[];
  private first: EffectOps | null = null;
  private second: EffectOps | null = null;

  constructor(
    private readonly book: ClassBook,
    private readonly plan: Plan,
    private readonly groups: readonly TripGroup[],
    private readonly scenario: Scenario,
    private readonly offset: number,
  ) {
    this.variant = book.variantOf.get(scenario) ?? 0;
    this.regions = book.compiled.regions.map((_, region) => new RegionWork(book, plan, scenario, region, this.variant));
    this.observationsOf = plan.snapshots.map((_, snapshot) =>
      plan.observations.flatMap((seen, index) => (seen.snapshot === snapshot ? [index] : [])),
    );
    this.groupOfSnapshot = plan.snapshots.map((_, snapshot) => groups.find(({ snapshots }) => snapshots.includes(snapshot)));
    this.regionOfObservation = plan.observations.map((_, index) => this.regions.find((region) => region.owns(index)));
    this.baseOfRegion = Float64Array.from(this.regions, (region) => region.baseLog());
    let total = this.baseOfRegion.reduce((sum, value) => sum + value, 0);
    plan.observations.forEach((seen, index) => {
      if (seen.kind === 'look') {
        const repeats = seen.earlier.some((other) => this.lookPrediction(other, null, null) === this.lookPrediction(index, null, null));
        const log = repeats ? 0 : (seen.logFactors[this.lookPrediction(index, null, null)] ?? 0);
        this.baseOfLook.set(index, log);
        total += log;
      }
    });
    this.baseTotal = total;
    this.hasRun = scenario.onsets.includes('while-running');
    this.baseLog = total - plan.largestLogFactor - offset;
    this.baseLikelihood = Math.exp(this.baseLog);
    this.mustBreak = groups[0]?.mustBeBroken === true;
    this.baseBroken = groups.map((group) => new Set(this.regions.flatMap((region, index) => (region.isBroken(group, 0) ? [index] : []))));
    this.isSimple =
      plan.snapshots.length === 1 && groups[0]?.isRunning === false && this.baseBroken[0]?.size === 0 && this.baseLog > leastSafeLog;
  }

  /** exp of `logLikelihood`. */
  likelihood(first: ClassHandle | null, second: ClassHandle | null): number {
    if (first !== null && second !== null && this.isSimple && this.mayBe(first) && this.mayBe(second)) {
      const one = this.simple[first.index] ?? this.simplify(first);
      const other = this.simple[second.index] ?? this.simplify(second);
      if (one.region >= 0 && other.region >= 0) {
        if (one.region !== other.region) {
          return one.isBroken || other.isBroken || !this.mustBreak ? this.baseLikelihood * one.ratio * other.ratio : 0;
        }
        if (first.ops !== this.withinFirst || second.ops !== this.withinSecond) {
          this.weighWithin(one.region, first.ops, second.ops);
        }
        return this.within[(first.isIntermittent ? 1 : 0) | (second.isIntermittent ? 2 : 0)] ?? 0;
      }
    }
    return Math.exp(this.logLikelihood(first, second));
  }

  /** Scaled log likelihood of the faults of one or two classes, less `offset`; −∞ when the evidence excludes them. */
  logLikelihood(first: ClassHandle | null, second: ClassHandle | null): number {
    const scale = this.plan.largestLogFactor + this.offset;
    if (!this.mayBe(first) || !this.mayBe(second)) {
      return never;
    }
    if (first === null) {
      return this.finish([], [], null, null) - scale;
    }
    const one = first.ops;
    const absentable = absentableOf(first, second);
    if (second === null) {
      const table = this.tableOf(first);
      return (table === null ? this.tied(one, null, absentable) : this.finish(one.regions, one.looks, table, null)) - scale;
    }
    const other = second.ops;
    if (this.isApart(one, other)) {
      const firstTable = this.tableOf(first);
      const secondTable = this.tableOf(second);
      if (firstTable !== null && secondTable !== null) {
        return this.finishApart(one, firstTable, other, secondTable) - scale;
      }
    }
    this.setPair(one, other);
    const regions = this.regionsOf(one, other);
    const looks = union(one.looks, other.looks);
    const table = this.makeTable(regions, looks, absentable);
    return (table === null ? this.tied(one, other, absentable) : this.finish(regions, looks, table, null)) - scale;
  }

  /** A wiring mistake shows at power-up: where this scenario has the machine running, there is none. */
  private mayBe(handle: ClassHandle | null): boolean {
    return handle === null || !handle.ops.onlyAtPowerUp || !this.hasRun;
  }

  /** What a class alone does to the likelihood, for the common case of one snapshot of a halted machine. */
  private simplify(handle: ClassHandle): SimpleClass {
    const { ops } = handle;
    const [region] = ops.regions;
    const table =
      region !== undefined && ops.regions.length === 1 && ops.looks.length === 0 && !this.isTiedByFeeds(ops) ? this.tableOf(handle) : null;
    let simple: SimpleClass = { region: -1, ratio: 0, isBroken: false };
    if (table !== null && region !== undefined) {
      const isBroken = (table[1] ?? never) > never;
      const ratio = Math.exp((table[isBroken ? 1 : 0] ?? never) - (this.baseOfRegion[region] ?? 0));
      simple = Number.isFinite(ratio) ? { region, ratio, isBroken } : simple;
    }
    this.simple[handle.index] = simple;
    return simple;
  }

  private isTiedByFeeds(ops: EffectOps): boolean {
    return ops.isFeed && this.book.compiled.doFeedsInteract;
  }

  /**
   * Two classes in one region, one snapshot of a halted machine: only this region is worked out, once for all four combinations
   * of presence. Both faults were there at the trip; now an intermittent one is there or not.
   */
  private weighWithin(region: number, first: EffectOps, second: EffectOps): void {
    const { within } = this;
    const work = this.regions[region];
    const [group] = this.groups;
    this.withinFirst = first;
    this.withinSecond = second;
    within.fill(0);
    if (work === undefined || group === undefined) {
      return;
    }
    // The other regions keep an older pair; whoever needs them must set the pair anew.
    this.isPairSet = false;
    work.setPair(first, second);
    if (this.mustBreak && !work.isBroken(group, 3)) {
      return;
    }
    const rest = this.baseLog - (this.baseOfRegion[region] ?? 0);
    const log = work.plainLog(0, 3, 3);
    const both = Math.exp(log + rest);
    const likelihoodNow = (now: number) => {
      const other = work.plainLog(0, 3, now);
      return other === log ? both : Math.exp(other + rest);
    };
    const firstGone = likelihoodNow(2);
    const secondGone = likelihoodNow(1);
    within[0] = both;
    within[1] = (both + firstGone) * presentChance;
    within[2] = (both + secondGone) * presentChance;
    within[3] = (both + firstGone + secondGone + likelihoodNow(0)) * presentChance * presentChance;
  }

  /** Every joint pattern of presence that the halted rule leaves, with its predictions. Valid until the next pair is weighed. */
  listViews(first: ClassHandle | null, second: ClassHandle | null): readonly PatternView[] {
    if (!this.mayBe(first) || !this.mayBe(second)) {
      return [];
    }
    const one = first?.ops ?? null;
    const other = second?.ops ?? null;
    const absentable = absentableOf(first, second);
    this.setPair(one, other);
    const full = (one === null ? 0 : 1) | (other === null ? 0 : 2);
    const views: PatternView[] = [];
    for (const pattern of this.listPatterns(full, absentable)) {
      const broken = this.groups.map((group) => {
        const [trip] = pattern[group.snapshots[0] ?? 0] ?? [full, full];
        return this.regions.some((region) => region.isBroken(group, trip));
      });
      if (this.groups.every((group, g) => this.isAllowed(group, broken[g] === true))) {
        const predict = (index: number) => {
          const [trip, now] = pattern[this.plan.observations[index]?.snapshot ?? 0] ?? [full, full];
          return this.predictionAt(index, trip, now);
        };
        views.push({ predict, broken });
      }
    }
    return views;
  }

  /**
   * What is predicted of all that was observed, as a text: for every snapshot the different outcomes with their shares of the
   * presence patterns that the halted rule leaves, and where somebody looked, whether a chain is broken.
   */
  signature(first: ClassHandle | null, second: ClassHandle | null): string {
    if (!this.mayBe(first) || !this.mayBe(second)) {
      return 'not here';
    }
    this.setPair(first?.ops ?? null, second?.ops ?? null);
    const full = (first === null ? 0 : 1) | (second === null ? 0 : 2);
    const absentable = absentableOf(first, second);
    return this.groups
      .map((group) => group.snapshots.map((snapshot) => this.snapshotSignature(group, snapshot, full, absentable)).join(';'))
      .join('|');
  }

  private snapshotSignature(group: TripGroup, snapshot: number, full: number, absentable: Absentable): string {
    const counts = new Map<string, number>();
    let total = 0;
    for (const [trip, now] of presencePairs(group, full, absentable)) {
      const isBroken = this.regions.some((region) => region.isBroken(group, trip));
      if (this.isAllowed(group, isBroken)) {
        const seen = (this.observationsOf[snapshot] ?? []).map((index) => this.predictionAt(index, trip, now)).join();
        const key = group.mustBeBroken === null ? seen : `${seen}${isBroken ? 'b' : 'w'}`;
        counts.set(key, (counts.get(key) ?? 0) + 1);
        total += 1;
      }
    }
    return [...counts]
      .sort(([a], [b]) => compareText(a, b))
      .map(([key, count]) => `${key}:${count / total}`)
      .join('+');
  }

  private predictionAt(index: number, trip: number, now: number): number {
    const seen = this.plan.observations[index];
    if (seen?.kind === 'look') {
      return this.lookPrediction(index, (now & 1) !== 0 ? this.first : null, (now & 2) !== 0 ? this.second : null);
    }
    return this.regionOfObservation[index]?.prediction(index, trip, now) ?? 0;
  }

  private setPair(one: EffectOps | null, other: EffectOps | null): void {
    if (!this.isPairSet || this.first !== one || this.second !== other) {
      this.isPairSet = true;
      this.first = one;
      this.second = other;
      for (const region of this.regions) {
        region.setPair(one, other);
      }
    }
  }

  /** Two classes that touch nothing in common weigh what each weighs alone. */
  private isApart(one: EffectOps, other: EffectOps): boolean {
    if (one.isFeed && other.isFeed && this.book.compiled.doFeedsInteract) {
      return false;
    }
    return isDisjoint(one.regions, other.regions) && isDisjoint(one.looks, other.looks);
  }

  private regionsOf(one: EffectOps, other: EffectOps): readonly number[] {
    let regions = union(one.regions, other.regions);
    if (one.isFeed && other.isFeed) {
      this.book.arrangements.forEach((_, arrangement) => {
        regions = union(regions, [...(this.book.jointOps(one, other, arrangement)?.keys() ?? [])]);
      });
    }
    return regions;
  }

  private tableOf(handle: ClassHandle): GroupTable | null {
    let table = this.tables[handle.index];
    if (table === undefined) {
      this.setPair(handle.ops, null);
      table = this.makeTable(handle.ops.regions, handle.ops.looks, handle.isIntermittent ? 1 : 0);
      this.tables[handle.index] = table;
    }
    return table;
  }

  /** The table of the current pair; null when a repeated reading may or may not add its factor, depending on presence. */
  private makeTable(regions: readonly number[], looks: readonly number[], absentable: Absentable): GroupTable | null {
    const full = this.second === null ? (this.first === null ? 0 : 1) : 3;
    const table = new Float64Array(2 * this.groups.length).fill(never);
    const { fixed, ties } = this.gatherRepeats(regions, looks, full, absentable);
    if (ties.length > 0) {
      return null;
    }
    for (let g = 0; g < this.groups.length; g += 1) {
      const group = this.groups[g];
      if (group !== undefined) {
        this.fillGroup(table, g, group, regions, looks, full, absentable);
      }
    }
    // Repeats that are settled add the same whatever the presence: put them once, on the first group.
    if (fixed !== 0) {
      table[0] = (table[0] ?? never) + fixed;
      table[1] = (table[1] ?? never) + fixed;
    }
    return table;
  }

  private fillGroup(
    table: GroupTable,
    g: number,
    group: TripGroup,
    regions: readonly number[],
    looks: readonly number[],
    full: number,
    absentable: Absentable,
  ): void {
    const absent = group.isFirst ? 0 : absentable;
    for (let trip = full; trip >= 0; trip -= 1) {
      if ((trip | absent) !== full) {
        continue;
      }
      let log = presentLog(absent);
      let isBroken = false;
      for (const region of regions) {
        isBroken ||= this.regions[region]?.isBroken(group, trip) === true;
      }
      for (const snapshot of group.snapshots) {
        log += group.isRunning
          ? this.plainLog(snapshot, trip, trip, regions, looks)
          : this.meanOverNow(snapshot, trip, regions, looks, full, absentable);
      }
      const at = 2 * g + (isBroken ? 1 : 0);
      table[at] = logSum(table[at] ?? never, log);
    }
  }

  private meanOverNow(
    snapshot: number,
    trip: number,
    regions: readonly number[],
    looks: readonly number[],
    full: number,
    absentable: Absentable,
  ): number {
    if (absentable === 0) {
      return this.plainLog(snapshot, trip, full, regions, looks);
    }
    let log = never;
    for (let now = full; now >= 0; now -= 1) {
      if ((now | absentable) === full) {
        log = logSum(log, this.plainLog(snapshot, trip, now, regions, looks));
      }
    }
    return log + presentLog(absentable);
  }

  /** Log factors of one snapshot's observations that repeat nothing. */
  private plainLog(snapshot: number, trip: number, now: number, regions: readonly number[], looks: readonly number[]): number {
    let log = 0;
    for (const region of regions) {
      log += this.regions[region]?.plainLog(snapshot, trip, now) ?? 0;
    }
    for (const index of looks) {
      const seen = this.plan.observations[index];
      if (seen?.snapshot === snapshot && seen.earlier.length === 0) {
        log += seen.logFactors[this.predictionAt(index, trip, now)] ?? 0;
      }
    }
    return log;
  }

  /**
   * What the later readings of repeats add in the touched part: `fixed` where that is the same in every pattern of presence, and
   * the `ties` where it is not. Repeats that the pair does not reach add what they add without any fault.
   */
  private gatherRepeats(
    regions: readonly number[],
    looks: readonly number[],
    full: number,
    absentable: Absentable,
  ): { readonly fixed: number; readonly ties: readonly Tie[] } {
    let fixed = 0;
    const ties: Tie[] = [];
    const add = (repeat: number) => {
      const indices = this.plan.repeats[repeat] ?? [];
      const tie = this.makeTie(indices, full, absentable);
      if (tie !== null) {
        ties.push(tie);
      } else {
        fixed += laterLog(this.plan, indices, (index) => this.predictionAt(index, full, full));
      }
    };
    for (const region of regions) {
      const work = this.regions[region];
      fixed += work?.repeatBaseSum ?? 0;
      for (const repeat of work?.affectedRepeats() ?? []) {
        fixed -= work?.repeatBase.get(repeat) ?? 0;
        add(repeat);
      }
    }
    this.plan.repeats.forEach((indices, repeat) => {
      if (indices.some((index) => looks.includes(index))) {
        add(repeat);
      }
    });
    return { fixed, ties };
  }

  /** The tie of a repeat; null when none of its predictions depends on presence. */
  private makeTie(indices: readonly number[], full: number, absentable: Absentable): Tie | null {
    const numbers = new Map<number, number>();
    const logFactors: number[] = [];
    const predictions = new Map<number, Int32Array>();
    let isTied = false;
    for (const index of indices) {
      const seen = this.plan.observations[index];
      if (seen === undefined) {
        continue;
      }
      const table = new Int32Array(16).fill(-1);
      const group = this.groupOfSnapshot[seen.snapshot];
      let only = -1;
      for (const [trip, now] of presencePairs(group, full, absentable)) {
        const prediction = this.predictionAt(index, trip, now);
        let number = numbers.get(prediction);
        if (number === undefined) {
          number = numbers.size;
          numbers.set(prediction, number);
          logFactors.push(seen.logFactors[prediction] ?? 0);
        }
        isTied ||= only >= 0 && only !== number;
        only = number;
        table[trip * 4 + now] = number;
      }
      predictions.set(seen.snapshot, table);
    }
    const lastSnapshot = Math.max(...predictions.keys());
    return isTied
      ? { predictions, lastSnapshot, firstSnapshot: this.plan.observations[indices[0] ?? -1]?.snapshot ?? -1, logFactors }
      : null;
  }

  /** A hypothesis whose repeats depend on presence. */
  private tied(one: EffectOps, other: EffectOps | null, absentable: Absentable): number {
    this.setPair(one, other);
    const regions = other === null ? one.regions : this.regionsOf(one, other);
    const looks = other === null ? one.looks : union(one.looks, other.looks);
    const full = other === null ? 1 : 3;
    const { fixed, ties } = this.gatherRepeats(regions, looks, full, absentable);
    const log = weighTied({
      groups: this.groups,
      full,
      absentable,
      ties,
      plainLog: (snapshot, trip, now) => this.plainLog(snapshot, trip, now, regions, looks),
      isAllowed: (g, trip) => {
        const group = this.groups[g];
        return (
          group !== undefined &&
          this.isAllowed(
            group,
            regions.some((region) => this.regions[region]?.isBroken(group, trip) === true) || this.isBaseBroken(g, regions),
          )
        );
      },
    });
    return log + fixed + this.restLog(regions, looks);
  }

  /** All joint patterns of presence, each a list of [trip, now] by snapshot; all are equally likely, since q is one half. */
  private listPatterns(full: number, absentable: Absentable): readonly (readonly (readonly [number, number])[])[] {
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

  /** Puts the touched part together with the untouched rest. */
  private finish(regions: readonly number[], looks: readonly number[], table: GroupTable | null, second: GroupTable | null): number {
    let log = this.restLog(regions, looks);
    for (let g = 0; g < this.groups.length && log > never; g += 1) {
      log += this.groupLog(g, this.isBaseBroken(g, regions), table, second);
    }
    return log;
  }

  private finishApart(one: EffectOps, first: GroupTable, other: EffectOps, second: GroupTable): number {
    let log = this.baseTotal;
    for (const ops of [one, other]) {
      for (const region of ops.regions) {
        log -= this.baseOfRegion[region] ?? 0;
      }
      for (const look of ops.looks) {
        log -= this.baseOfLook.get(look) ?? 0;
      }
    }
    for (let g = 0; g < this.groups.length && log > never; g += 1) {
      const isBaseBroken = (this.baseBroken[g]?.size ?? 0) > 0 && this.isBaseBroken(g, union(one.regions, other.regions));
      log += this.groupLog(g, isBaseBroken, first, second);
    }
    return log;
  }

  private groupLog(g: number, isBaseBroken: boolean, first: GroupTable | null, second: GroupTable | null): number {
    const group = this.groups[g];
    let log = never;
    for (let a = 0; a < (first === null ? 1 : 2); a += 1) {
      const one = first === null ? 0 : (first[2 * g + a] ?? never);
      if (one === never) {
        continue;
      }
      for (let b = 0; b < (second === null ? 1 : 2); b += 1) {
        const other = second === null ? 0 : (second[2 * g + b] ?? never);
        if (other > never && group !== undefined && this.isAllowed(group, isBaseBroken || a + b > 0)) {
          log = logSum(log, one + other);
        }
      }
    }
    return log;
  }

  private isAllowed(group: TripGroup, isBroken: boolean): boolean {
    return group.mustBeBroken === null || group.mustBeBroken === isBroken;
  }

  private isBaseBroken(g: number, touched: readonly number[]): boolean {
    const broken = this.baseBroken[g];
    if (broken === undefined || broken.size === 0) {
      return false;
    }
    return [...broken].some((region) => !touched.includes(region));
  }

  private restLog(regions: readonly number[], looks: readonly number[]): number {
    let log = this.baseTotal;
    for (const region of regions) {
      log -= this.baseOfRegion[region] ?? 0;
    }
    for (const look of looks) {
      log -= this.baseOfLook.get(look) ?? 0;
    }
    return log;
  }

  /** Index of the outcome that a look has when the given classes are there; by the plain simulation, since few classes concern it. */
  private lookPrediction(index: number, one: EffectOps | null, other: EffectOps | null): number {
    const seen = this.plan.observations[index];
    if (seen?.kind !== 'look') {
      return 0;
    }
    const relevant = [one, other].filter((ops): ops is EffectOps => ops?.looks.includes(index) === true);
    const key = `${index}/${relevant.map(({ id }) => id).join()}`;
    let outcome = this.lookMemo.get(key);
    if (outcome === undefined) {
      outcome = Math.max(0, seen.outcomes.indexOf(this.predictLook(seen, relevant)));
      this.lookMemo.set(key, outcome);
    }
    return outcome;
  }

  private predictLook(seen: Extract<PlanObservation, { kind: 'look' }>, relevant: readonly EffectOps[]): LookOutcome {
    const snapshot = this.plan.snapshots[seen.snapshot];
    const arrangement = this.plan.arrangements[snapshot?.nowArrangement ?? 0];
    const placed: PlacedEffect[] = relevant.flatMap((ops) =>
      this.book.effectsOf(ops, this.variant, snapshot?.nowArrangement ?? 0).map((effect) => ({ effect, fault: ops.fault })),
    );
    if (arrangement === undefined) {
      throw new Error('a snapshot without its arrangement');
    }
    const moment = { cabinet: this.book.compiled.cabinet, arrangement, placed, behaviourOf: this.scenario.behaviourOf, hasBeenUp: true };
    return outcomeAt(seen.look, moment) ?? seen.outcomes[0] ?? 'none';
  }
}

function absentableOf(first: ClassHandle | null, second: ClassHandle | null): Absentable {
  // Two bits make 0 to 3.
  return ((first?.isIntermittent === true ? 1 : 0) | (second?.isIntermittent === true ? 2 : 0)) as Absentable;
}

/** One joint pattern of presence of a hypothesis. */
export interface PatternView {
  /** Index of the prediction of an observation in this pattern. */
  readonly predict: (observation: number) => number;
  /** Whether a chain is broken at each trip group. */
  readonly broken: readonly boolean[];
}

function isDisjoint(a: readonly number[], b: readonly number[]): boolean {
  for (const one of a) {
    if (b.includes(one)) {
      return false;
    }
  }
  return true;
}

function union(a: readonly number[], b: readonly number[]): readonly number[] {
  return b.length === 0 ? a : [...new Set([...a, ...b])].sort((x, y) => x - y);
}
