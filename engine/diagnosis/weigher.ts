import { ApartWeigher } from './apartWeigher.ts';
import type { ClassBook, ClassHandle, EffectOps } from './classBook.ts';
import { FastWeigher } from './fastWeigher.ts';
import { type GroupTable, makeGroupTable } from './groupTable.ts';
import { PairAtHand, type Touched, union } from './pairAtHand.ts';
import { PairRepeats } from './pairRepeats.ts';
import { type Absentable, absentableOf, isAllowed, logSum, provokedBits, type TripGroup } from './patterns.ts';
import { type PatternView, PatternViews } from './patternViews.ts';
import type { Plan } from './plan.ts';
import type { Scenario } from './scenarios.ts';
import { type Tie, weighTied } from './ties.ts';

const never = Number.NEGATIVE_INFINITY;
const untouched: Touched = { regions: [], looks: [] };

/** Weighs hypotheses of up to two faults under one scenario. All values are logs, scaled by the largest factors. */
export class Weigher {
  private readonly pair: PairAtHand;
  private readonly repeats: PairRepeats;
  private readonly views: PatternViews;
  /** For one snapshot of a halted machine, the commonest by far, or else for pairs that lie apart; null where neither can be. */
  private readonly fast: FastWeigher | ApartWeigher | null;
  private readonly baseOfRegion: Float64Array;
  private readonly baseOfLook: ReadonlyMap<number, number>;
  private readonly baseTotal: number;
  /** Regions that are broken at a group's trip without any fault (a cable unplugged, the control off). */
  private readonly baseBroken: readonly ReadonlySet<number>[];
  /** By handle; null where a repeated reading ties the groups together, so they cannot be taken apart. */
  private readonly tables: (GroupTable | null | undefined)[] = [];
  private readonly hasRun: boolean;
  private readonly scale: number;

  constructor(
    private readonly book: ClassBook,
    plan: Plan,
    private readonly groups: readonly TripGroup[],
    scenario: Scenario,
    offset: number,
  ) {
    const pair = new PairAtHand(book, plan, scenario);
    this.pair = pair;
    this.repeats = new PairRepeats(plan, groups, pair);
    this.views = new PatternViews(plan, groups, pair);
    this.hasRun = scenario.onsets.includes('while-running');
    this.baseOfRegion = Float64Array.from(pair.regions, (region) => region.baseLog());
    this.baseOfLook = weighLooks(plan, pair);
    this.baseTotal = [...this.baseOfRegion, ...this.baseOfLook.values()].reduce((sum, value) => sum + value, 0);
    this.scale = plan.largestLogFactor + offset;
    this.baseBroken = groups.map((group) => new Set(pair.regions.flatMap((region, index) => (region.isBroken(group, 0) ? [index] : []))));
    const isPlain = plan.snapshots.length === 1 && groups[0]?.isRunning === false;
    const means = {
      book,
      pair,
      baseLog: this.baseTotal - this.scale,
      mayBe: (handle: ClassHandle) => this.mayBe(handle),
      weighSlowly: (one: ClassHandle, other: ClassHandle) => this.likelihood(one, other),
    };
    this.fast = isPlain
      ? FastWeigher.make({ ...means, group: groups[0], baseOfRegion: this.baseOfRegion, tableOf: (handle) => this.tableOf(handle) })
      : ApartWeigher.make({ ...means, groups, repeats: this.repeats });
  }

  /** exp of `logLikelihood`. */
  likelihood(first: ClassHandle | null, second: ClassHandle | null): number {
    return Math.exp(this.logLikelihood(first, second));
  }

  /** Adds to `sums[k]`, for every k from `start` on, `share` times the likelihood of one class together with `seconds[k]`. */
  addRow(first: ClassHandle, seconds: readonly ClassHandle[], start: number, share: number, sums: Float64Array): void {
    if (this.fast !== null) {
      this.fast.addRow(first, seconds, start, share, sums);
      return;
    }
    for (let k = start; k < seconds.length; k += 1) {
      sums[k] = (sums[k] ?? 0) + share * this.likelihood(first, seconds[k] ?? first);
    }
  }

  /** Scaled log likelihood of the faults of one or two classes, less the offset; −∞ when the evidence excludes them. */
  logLikelihood(first: ClassHandle | null, second: ClassHandle | null): number {
    if (!this.mayBe(first) || !this.mayBe(second)) {
      return never;
    }
    if (first === null) {
      return this.finish(untouched, null) - this.scale;
    }
    const one = first.ops;
    if (second === null) {
      const table = this.tableOf(first);
      return (table === null ? this.weighPair(first, null) : this.finish(one, table)) - this.scale;
    }
    const other = second.ops;
    if (this.isApart(one, other)) {
      const firstTable = this.tableOf(first);
      const secondTable = this.tableOf(second);
      if (firstTable !== null && secondTable !== null) {
        return this.finishApart(one, firstTable, other, secondTable) - this.scale;
      }
    }
    return this.weighPair(first, second) - this.scale;
  }

  /** Every joint pattern of presence that the halted rule leaves, with its predictions. Valid until the next pair is weighed. */
  listViews(first: ClassHandle | null, second: ClassHandle | null): readonly PatternView[] {
    return this.mayBe(first) && this.mayBe(second) ? this.views.list(first, second) : [];
  }

  /** What is predicted of all that was observed, as a text: equal ones cannot be told apart. */
  signature(first: ClassHandle | null, second: ClassHandle | null): string {
    return this.mayBe(first) && this.mayBe(second) ? this.views.signature(first, second) : 'not here';
  }

  /** A wiring mistake shows at power-up: where this scenario has the machine running, there is none. */
  private mayBe(handle: ClassHandle | null): boolean {
    return handle === null || !handle.ops.onlyAtPowerUp || !this.hasRun;
  }

  /** Two classes that touch nothing in common weigh what each weighs alone. */
  private isApart(one: EffectOps, other: EffectOps): boolean {
    if (this.book.interact(one, other)) {
      return false;
    }
    return isDisjoint(one.regions, other.regions) && isDisjoint(one.looks, other.looks);
  }

  private tableOf(handle: ClassHandle): GroupTable | null {
    let table = this.tables[handle.index];
    if (table === undefined) {
      const absentable = absentableOf(handle, null);
      this.pair.set(handle.ops, null);
      const { fixed, ties } = this.repeats.gather(handle.ops, this.pair.full, absentable);
      table =
        ties.length > 0
          ? null
          : makeGroupTable(this.pair, this.groups, handle.ops, absentable, provokedBits(this.groups, handle, null), fixed);
      this.tables[handle.index] = table;
    }
    return table;
  }

  /** One or two classes together. */
  private weighPair(first: ClassHandle, second: ClassHandle | null): number {
    const [one, other] = [first.ops, second?.ops ?? null];
    this.pair.set(one, other);
    const touched = this.pair.touchedBy(one, other);
    const absentable = absentableOf(first, second);
    const provoked = provokedBits(this.groups, first, second);
    const { fixed, ties } = this.repeats.gather(touched, this.pair.full, absentable);
    return ties.length > 0
      ? this.tied(touched, absentable, provoked, ties) + fixed
      : this.finish(touched, makeGroupTable(this.pair, this.groups, touched, absentable, provoked, fixed));
  }

  /** A hypothesis whose repeats depend on presence: a repeated reading may or may not add its factor. */
  private tied(touched: Touched, absentable: Absentable, provoked: readonly number[], ties: readonly Tie[]): number {
    const log = weighTied({
      groups: this.groups,
      full: this.pair.full,
      absentable,
      provoked,
      ties,
      plainLog: (snapshot, trip, now) => this.pair.plainLog(snapshot, trip, now, touched),
      isAllowed: (g, trip) => {
        const group = this.groups[g];
        const isBroken = (one: TripGroup) => this.pair.isBroken(one, trip, touched.regions) || this.isBaseBroken(g, touched.regions);
        return group !== undefined && isAllowed(group, isBroken(group));
      },
    });
    return log + this.restLog(touched);
  }

  /** Puts the touched part together with the untouched rest. */
  private finish(touched: Touched, table: GroupTable | null): number {
    let log = this.restLog(touched);
    for (let g = 0; g < this.groups.length && log > never; g += 1) {
      log += this.groupLog(g, this.isBaseBroken(g, touched.regions), table, null);
    }
    return log;
  }

  private finishApart(one: EffectOps, first: GroupTable, other: EffectOps, second: GroupTable): number {
    let log = this.baseTotal - this.shareOf(one) - this.shareOf(other);
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
        if (other > never && group !== undefined && isAllowed(group, isBaseBroken || a + b > 0)) {
          log = logSum(log, one + other);
        }
      }
    }
    return log;
  }

  private isBaseBroken(g: number, touched: readonly number[]): boolean {
    const broken = this.baseBroken[g];
    if (broken === undefined || broken.size === 0) {
      return false;
    }
    return [...broken].some((region) => !touched.includes(region));
  }

  private restLog(touched: Touched): number {
    return this.baseTotal - this.shareOf(touched);
  }

  /** What the touched part weighs without any fault. */
  private shareOf({ regions, looks }: Touched): number {
    let log = 0;
    for (const region of regions) {
      log += this.baseOfRegion[region] ?? 0;
    }
    for (const look of looks) {
      log += this.baseOfLook.get(look) ?? 0;
    }
    return log;
  }
}

/** The log factor of every look without any fault, by observation. */
function weighLooks(plan: Plan, pair: PairAtHand): ReadonlyMap<number, number> {
  const logs = new Map<number, number>();
  pair.set(null, null);
  plan.observations.forEach((seen, index) => {
    if (seen.kind === 'look') {
      const prediction = pair.predictionAt(index, 0, 0);
      const repeats = seen.earlier.some((other) => pair.predictionAt(other, 0, 0) === prediction);
      logs.set(index, repeats ? 0 : (seen.logFactors[prediction] ?? 0));
    }
  });
  return logs;
}

function isDisjoint(a: readonly number[], b: readonly number[]): boolean {
  for (const one of a) {
    if (b.includes(one)) {
      return false;
    }
  }
  return true;
}
