import type { ClassBook, ClassHandle, EffectOps } from './classBook.ts';
import type { GroupTable } from './groupTable.ts';
import type { PairAtHand } from './pairAtHand.ts';
import { leastSafeLog, type TripGroup } from './patterns.ts';
import { presentChance } from './presence.ts';

const never = Number.NEGATIVE_INFINITY;
/** Beyond the last link of any chain. */
const endless = 1e9;

/**
 * Instead of a region: a class that is weighed the long way, one that cannot be under this scenario, one not looked at yet, one that
 * shows nowhere.
 */
const theLongWay = -1;
const cannotBe = -2;
const notYet = -3;
const nowhere = -4;

interface FastMeans {
  readonly book: ClassBook;
  readonly pair: PairAtHand;
  readonly group: TripGroup | undefined;
  /** Scaled log likelihood of no fault at all, the halted rule left aside. */
  readonly baseLog: number;
  readonly baseOfRegion: Float64Array;
  readonly tableOf: (handle: ClassHandle) => GroupTable | null;
  readonly mayBe: (handle: ClassHandle) => boolean;
  /** Likelihood of a pair, the long way. */
  readonly weighSlowly: (first: ClassHandle, second: ClassHandle) => number;
}

/**
 * Weighs pairs for one snapshot of a halted machine. Every fault was there at the trip, so all that presence decides is what is shown
 * now. Classes in different regions multiply; so do classes of one chain that lie apart, save for the report, which is that of the
 * nearest gap; for the others the one region is worked out.
 */
export class FastWeigher {
  /** By class: the one region it touches, what it does to the likelihood there, and whether it breaks the chain. */
  private readonly region: Int32Array;
  private readonly ratio: Float64Array;
  private readonly isBroken: Uint8Array;
  /** By class: together with another such class it may do something else than alone. */
  private readonly isTied: Uint8Array;
  /**
   * By class: what it does to the displays alone, the first gap within its reach (0 for none), and the first and last link that it
   * reaches; of a class that shows elsewhere too the last link is endless.
   */
  private readonly shown: Float64Array;
  private readonly gap: Int32Array;
  private readonly from: Int32Array;
  private readonly to: Int32Array;
  private readonly baseLikelihood: number;
  private readonly mustBreak: boolean;
  /** By region, the gaps without any fault, ascending; and how many regions have any. */
  private readonly baseGaps: readonly (readonly number[])[];
  private readonly brokenRegions: number;
  /** By region and gap, what the report does to the likelihood, by that of the gap without any fault. */
  private readonly reported: readonly Float64Array[];
  /**
   * Pairs of one row's class with others in its region, by the other's effect and by presence (bit 0, the first is intermittent; bit
   * 1, the second): the two presences of an effect are neighbours in the list, so the next row often finds them here.
   */
  private withinOf: EffectOps | null = null;
  private readonly within: Float64Array;
  private readonly withinStamps: Int32Array;
  private stamp = 0;

  private constructor(
    private readonly means: FastMeans,
    private readonly group: TripGroup,
  ) {
    this.baseLikelihood = Math.exp(means.baseLog);
    this.mustBreak = group.mustBeBroken === true;
    const { handles } = means.book;
    this.region = new Int32Array(handles.length).fill(notYet);
    this.ratio = new Float64Array(handles.length);
    this.isBroken = new Uint8Array(handles.length);
    this.isTied = Uint8Array.from(handles, ({ ops }) => (ops.isFeed && means.book.compiled.doFeedsInteract ? 1 : 0));
    this.shown = new Float64Array(handles.length);
    this.gap = new Int32Array(handles.length);
    this.from = new Int32Array(handles.length);
    this.to = new Int32Array(handles.length).fill(endless);
    const effects = handles.reduce((most, { ops }) => Math.max(most, ops.id + 1), 0);
    this.within = new Float64Array(4 * effects);
    this.withinStamps = new Int32Array(effects);
    this.baseGaps = means.pair.regions.map((region) => region.gapsOfNone(group));
    this.brokenRegions = this.baseGaps.filter(({ length }) => length > 0).length;
    this.reported = means.pair.regions.map((region, index) => {
      const [baseGap = 0] = this.baseGaps[index] ?? [];
      return region.reportLogs(0).map((log, _, logs) => Math.exp(log - (logs[baseGap] ?? 0)));
    });
  }

  /** Null where the likelihood of no fault is too small for products. */
  static make(means: FastMeans): FastWeigher | null {
    return means.group !== undefined && means.baseLog > leastSafeLog ? new FastWeigher(means, means.group) : null;
  }

  /** Adds to `sums[k]`, for every k from `start` on, `share` times the likelihood of one class together with `seconds[k]`. */
  addRow(first: ClassHandle, seconds: readonly ClassHandle[], start: number, share: number, sums: Float64Array): void {
    const { region, ratio, isBroken, isTied, shown, from, to, mustBreak } = this;
    const here = this.regionOf(first);
    if (here === cannotBe) {
      return;
    }
    const base = share * this.baseLikelihood;
    const one = first.index;
    const oneRatio = ratio[one] ?? 0;
    const isOneBroken = isBroken[one] === 1;
    const isOneTied = isTied[one] === 1;
    const oneFrom = from[one] ?? 0;
    const oneTo = to[one] ?? endless;
    for (let k = start; k < seconds.length; k += 1) {
      const second = seconds[k] ?? first;
      const other = second.index;
      let there = region[other] ?? notYet;
      if (there === notYet) {
        there = this.regionOf(second);
      }
      if (there === cannotBe) {
        continue;
      }
      let likelihood: number;
      if (
        here === theLongWay ||
        there === theLongWay ||
        (isOneTied && isTied[other] === 1 && this.means.book.interact(first.ops, second.ops))
      ) {
        likelihood = share * this.means.weighSlowly(first, second);
      } else if (here !== there || here === nowhere) {
        likelihood =
          mustBreak && !isOneBroken && isBroken[other] === 0 && !this.isBrokenBeside(here, there)
            ? 0
            : base * oneRatio * (ratio[other] ?? 0);
      } else if (oneTo + 1 < (from[other] ?? 0) || (to[other] ?? endless) + 1 < oneFrom) {
        likelihood = base * (shown[one] ?? 0) * (shown[other] ?? 0) * this.reportedFor(here, one, other);
      } else {
        likelihood = share * this.weighWithin(here, first, second);
      }
      sums[k] = (sums[k] ?? 0) + likelihood;
    }
  }

  /** What the report does for two classes that lie apart on one chain: it names the nearest gap. */
  private reportedFor(region: number, one: number, other: number): number {
    const a = this.gap[one] ?? 0;
    const b = this.gap[other] ?? 0;
    let gap = a === 0 || (b !== 0 && b < a) ? b : a;
    for (const base of this.baseGaps[region] ?? []) {
      if ((gap === 0 || base < gap) && !this.isInReach(base, one) && !this.isInReach(base, other)) {
        gap = base;
      }
    }
    return gap === 0 && this.mustBreak && !this.isBrokenBeside(region, region) ? 0 : (this.reported[region]?.[gap] ?? 1);
  }

  private isInReach(gap: number, one: number): boolean {
    return gap > (this.from[one] ?? 0) && gap <= (this.to[one] ?? endless) + 1;
  }

  /** Whether a chain is broken without any fault beside those of two regions. */
  private isBrokenBeside(one: number, other: number): boolean {
    const isCounted = (region: number) => (this.baseGaps[region]?.length ?? 0) > 0;
    return this.brokenRegions > (isCounted(one) ? 1 : 0) + (other !== one && isCounted(other) ? 1 : 0);
  }

  private regionOf(handle: ClassHandle): number {
    const known = this.region[handle.index] ?? notYet;
    return known === notYet ? this.simplify(handle) : known;
  }

  private simplify(handle: ClassHandle): number {
    const { ops, index } = handle;
    const [region = theLongWay] = ops.regions;
    const { tableOf, baseOfRegion, mayBe } = this.means;
    const table = ops.regions.length === 1 && ops.looks.length === 0 ? tableOf(handle) : null;
    let found = mayBe(handle) ? theLongWay : cannotBe;
    if (ops.regions.length === 0 && ops.looks.length === 0 && found !== cannotBe) {
      found = nowhere;
      this.ratio[index] = 1;
    }
    if (table !== null && found !== cannotBe) {
      const isBroken = (table[1] ?? never) > never;
      const ratio = Math.exp((table[isBroken ? 1 : 0] ?? never) - (baseOfRegion[region] ?? 0));
      if (Number.isFinite(ratio)) {
        found = region;
        this.ratio[index] = ratio;
        this.isBroken[index] = isBroken ? 1 : 0;
        this.findLocal(region, handle);
      }
    }
    this.region[index] = found;
    return found;
  }

  private findLocal(region: number, { ops, index, isIntermittent }: ClassHandle): void {
    const part = this.means.pair.setIn(region, ops, null)?.localPart(0) ?? null;
    if (part === null) {
      return;
    }
    const present = Math.exp(part.presentLog);
    const shown = isIntermittent ? (present + Math.exp(part.goneLog)) * presentChance : present;
    if (Number.isFinite(shown)) {
      this.shown[index] = shown;
      this.gap[index] = part.gap;
      this.from[index] = part.from;
      this.to[index] = part.to;
    }
  }

  /** Two classes in one region: only this region is worked out, once for all four combinations of presence. */
  private weighWithin(region: number, first: ClassHandle, second: ClassHandle): number {
    if (this.withinOf !== first.ops) {
      this.withinOf = first.ops;
      this.stamp += 1;
    }
    const effect = second.ops.id;
    if (this.withinStamps[effect] !== this.stamp) {
      this.withinStamps[effect] = this.stamp;
      this.workOut(region, first.ops, second.ops, 4 * effect);
    }
    return this.within[4 * effect + ((first.isIntermittent ? 1 : 0) | (second.isIntermittent ? 2 : 0))] ?? 0;
  }

  /** Both faults were there at the trip; now an intermittent one is there or not. */
  private workOut(region: number, first: EffectOps, second: EffectOps, at: number): void {
    const { within } = this;
    const work = this.means.pair.setIn(region, first, second);
    if (work === undefined || (this.mustBreak && !work.isBroken(this.group, 3) && !this.isBrokenBeside(region, region))) {
      within.fill(0, at, at + 4);
      return;
    }
    const rest = this.means.baseLog - (this.means.baseOfRegion[region] ?? 0);
    const log = work.plainLog(0, 3, 3);
    const both = Math.exp(log + rest);
    const likelihoodNow = (now: number) => {
      const other = work.plainLog(0, 3, now);
      return other === log ? both : Math.exp(other + rest);
    };
    const firstGone = likelihoodNow(2);
    const secondGone = likelihoodNow(1);
    within[at] = both;
    within[at + 1] = (both + firstGone) * presentChance;
    within[at + 2] = (both + secondGone) * presentChance;
    within[at + 3] = (both + firstGone + secondGone + likelihoodNow(0)) * presentChance * presentChance;
  }
}
