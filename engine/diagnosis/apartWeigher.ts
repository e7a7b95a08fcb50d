import type { ClassBook, ClassHandle } from './classBook.ts';
import type { PairAtHand } from './pairAtHand.ts';
import type { PairRepeats } from './pairRepeats.ts';
import { absentableOf, leastSafeLog, provokedBits, type TripGroup } from './patterns.ts';
import type { RegionWork } from './regionWork.ts';
import { weighTied } from './ties.ts';

/** Each further trip doubles the patterns of presence of a class; beyond this a pair is no faster here than the long way. */
const mostTrips = 5;
/** Beyond the last link of any chain. */
const endless = 1e9;
const everywhere: Reach = { from: 0, to: endless };
/** The region of what shows nowhere. */
const nowhere = -1;

/** First and last link that a class reaches. */
interface Reach {
  readonly from: number;
  readonly to: number;
}

interface ApartMeans {
  readonly book: ClassBook;
  readonly pair: PairAtHand;
  readonly repeats: PairRepeats;
  readonly groups: readonly TripGroup[];
  /** Scaled log likelihood of no fault at all, the halted rule left aside. */
  readonly baseLog: number;
  readonly mayBe: (handle: ClassHandle) => boolean;
  /** Likelihood of a pair, the long way. */
  readonly weighSlowly: (first: ClassHandle, second: ClassHandle) => number;
}

/** What one class does in its region: the displays in every way in which it may come and go, and the gaps that are then reported. */
interface Part extends Reach {
  readonly region: number;
  /** Together with another such class it may do something else than alone. */
  readonly isTied: boolean;
  /** Reaches are those at any moment; the last link is endless where what it does is not local. */
  readonly ways: readonly Way[];
}

/** Patterns of presence that have the same first gaps within the reach at every trip (0: none). */
interface Way {
  readonly gaps: Int32Array;
  /** The gaps within the reach are those that are there without any fault. */
  readonly isAsBase: boolean;
  /** Bit g: the chain is broken at the trip of group g. */
  readonly broken: number;
  /** What the displays make of the likelihood, over all these patterns with their probability; and together with the reports. */
  shown: number;
  all: number;
}

/** The reports of one region, in order, as factors of the likelihood by gap. */
interface RegionReports {
  readonly list: readonly { readonly group: number; readonly earlier: readonly number[]; readonly factors: Float64Array }[];
  readonly base: number;
}

/**
 * Weighs pairs for evidence of several snapshots where the two faults do nothing to the same displays: they lie in different regions,
 * or on one chain with a link between their reaches. Then the displays multiply, and only the reports and the halted rule look at both,
 * by which gaps there are at the trips. All other pairs are weighed the long way.
 */
export class ApartWeigher {
  /** By class; null: not one that can be weighed here. */
  private readonly parts: (Part | null | undefined)[] = [];
  private readonly reports: readonly RegionReports[];
  private readonly baseLikelihood: number;
  private readonly mustBreak: number;
  private readonly mustHold: number;
  private readonly gaps: Int32Array;
  /** By region and trip group, the gaps without any fault; and by region, bit g: there is one at the trip of group g. */
  private readonly baseGaps: readonly (readonly (readonly number[])[])[];
  private readonly baseBroken: readonly number[];
  private readonly isBaseWhole: boolean;

  private constructor(private readonly means: ApartMeans) {
    const { groups, pair } = means;
    this.baseLikelihood = Math.exp(means.baseLog);
    const bitsOf = (wanted: boolean) => groups.reduce((bits, { mustBeBroken }, g) => bits | (mustBeBroken === wanted ? 1 << g : 0), 0);
    this.mustBreak = bitsOf(true);
    this.mustHold = bitsOf(false);
    this.gaps = new Int32Array(groups.length);
    this.baseGaps = pair.regions.map((region) => groups.map((group) => region.gapsOfNone(group)));
    this.baseBroken = this.baseGaps.map((lists) => lists.reduce((bits, { length }, g) => bits | (length > 0 ? 1 << g : 0), 0));
    this.isBaseWhole = this.baseBroken.every((bits) => bits === 0);
    this.reports = pair.regions.map((region, index) => {
      const list = region.listReports().map(({ snapshot, earlier, logFactors }) => ({
        group: groups.findIndex(({ snapshots }) => snapshots.includes(snapshot)),
        earlier,
        factors: logFactors.map(Math.exp),
      }));
      return {
        list,
        base: reportFactor(
          list,
          Int32Array.from(this.baseGaps[index] ?? [], ([gap = 0]) => gap),
        ),
      };
    });
  }

  /** Null where pairs cannot be taken apart. */
  static make(means: ApartMeans): ApartWeigher | null {
    return means.groups.length <= mostTrips && means.baseLog > leastSafeLog ? new ApartWeigher(means) : null;
  }

  /** Adds to `sums[k]`, for every k from `start` on, `share` times the likelihood of one class together with `seconds[k]`. */
  addRow(first: ClassHandle, seconds: readonly ClassHandle[], start: number, share: number, sums: Float64Array): void {
    if (!this.means.mayBe(first)) {
      return;
    }
    const one = this.partOf(first);
    for (let k = start; k < seconds.length; k += 1) {
      const second = seconds[k] ?? first;
      if (this.means.mayBe(second)) {
        const other = one === null ? null : this.partOf(second);
        sums[k] = (sums[k] ?? 0) + share * (one && other ? this.weigh(one, other, first, second) : this.means.weighSlowly(first, second));
      }
    }
  }

  private weigh(one: Part, other: Part, first: ClassHandle, second: ClassHandle): number {
    if (one.isTied && other.isTied && this.means.book.interact(first.ops, second.ops)) {
      return this.means.weighSlowly(first, second);
    }
    if (one.region !== other.region || one.region === nowhere) {
      return this.baseLikelihood * this.acrossRegions(one, other);
    }
    return one.to + 1 < other.from || other.to + 1 < one.from
      ? this.baseLikelihood * this.onOneChain(one, other)
      : this.means.weighSlowly(first, second);
  }

  private acrossRegions({ region, ways }: Part, other: Part): number {
    const beside = this.brokenBeside(region, other.region);
    let sum = 0;
    for (const a of ways) {
      for (const b of other.ways) {
        if (this.isAllowed(a.broken | b.broken | beside)) {
          sum += a.all * b.all;
        }
      }
    }
    return sum;
  }

  /** A report names the nearest gap. */
  private onOneChain(one: Part, other: Part): number {
    const reports = this.reports[one.region];
    const beside = this.brokenBeside(one.region, one.region);
    let sum = 0;
    for (const a of one.ways) {
      for (const b of other.ways) {
        if (reports === undefined) {
          continue;
        }
        if (a.isAsBase || b.isAsBase) {
          // The other one's gaps are those that are reported.
          const broken = beside | (a.isAsBase ? b.broken : a.broken);
          sum += this.isAllowed(broken) ? (a.isAsBase ? a.shown * b.all : a.all * b.shown) : 0;
          continue;
        }
        const broken = this.findNearest(one, a, other, b);
        sum += this.isAllowed(broken | beside) ? (a.shown * b.shown * reportFactor(reports.list, this.gaps)) / reports.base : 0;
      }
    }
    return sum;
  }

  /** Writes the nearest gap at every trip to `gaps`; answers at which there is one. */
  private findNearest(one: Part, a: Way, other: Part, b: Way): number {
    const { gaps } = this;
    let broken = 0;
    for (let g = 0; g < gaps.length; g += 1) {
      const [x, y] = [a.gaps[g] ?? 0, b.gaps[g] ?? 0];
      let gap = x === 0 || (y !== 0 && y < x) ? y : x;
      for (const base of this.baseGaps[one.region]?.[g] ?? []) {
        if ((gap === 0 || base < gap) && !isInReach(base, one) && !isInReach(base, other)) {
          gap = base;
        }
      }
      gaps[g] = gap;
      broken |= gap === 0 ? 0 : 1 << g;
    }
    return broken;
  }

  /** At which trips a chain is broken without any fault beside those of two regions. */
  private brokenBeside(one: number, other: number): number {
    return this.isBaseWhole
      ? 0
      : this.baseBroken.reduce((bits, own, region) => (region === one || region === other ? bits : bits | own), 0);
  }

  private isAllowed(broken: number): boolean {
    return (broken & this.mustBreak) === this.mustBreak && (broken & this.mustHold) === 0;
  }

  private partOf(handle: ClassHandle): Part | null {
    let part = this.parts[handle.index];
    if (part === undefined) {
      part = this.takeApart(handle);
      this.parts[handle.index] = part;
    }
    return part;
  }

  private takeApart(handle: ClassHandle): Part | null {
    const { ops } = handle;
    const { book, pair } = this.means;
    const isTied = ops.isFeed && book.compiled.doFeedsInteract;
    const [region = nowhere] = ops.regions;
    if (ops.regions.length === 0 && ops.looks.length === 0) {
      const way = { gaps: new Int32Array(this.gaps.length), isAsBase: true, broken: 0, shown: 1, all: 1 };
      return { region, isTied, from: 0, to: endless, ways: [way] };
    }
    if (ops.regions.length !== 1 || ops.looks.length > 0) {
      return null;
    }
    const work = pair.setIn(region, ops, null);
    if (work === undefined) {
      return null;
    }
    const reach = work.reachOfFirst();
    const ways = this.listWays(region, work, handle, reach);
    return ways.every(({ shown, all }) => Number.isFinite(shown) && Number.isFinite(all))
      ? { region, isTied, ...(reach ?? everywhere), ways }
      : null;
  }

  /** For a class that is set in its region alone. */
  private listWays(region: number, work: RegionWork, handle: ClassHandle, reach: Reach | null): readonly Way[] {
    const { groups, repeats } = this.means;
    const absentable = absentableOf(handle, null);
    const provoked = provokedBits(groups, handle, null);
    const gapsOf = (of: (group: TripGroup, present: number) => number) =>
      [0, 1].map((present) => groups.map((group) => of(group, present)));
    const nearest = gapsOf((group, present) => work.gapAt(group, present));
    const own = reach === null ? nearest : gapsOf((group, present) => work.gapOfFirst(group, present, reach));
    const { fixed, ties } = repeats.ofDisplays(region, absentable);
    const byGaps = new Map<string, Way & { readonly reported: Int32Array }>();
    for (let pattern = 0; pattern < 1 << groups.length; pattern += 1) {
      const isThere = (g: number) => (pattern >> g) & 1;
      if (groups.some(({ isFirst }, g) => isThere(g) === 0 && (isFirst || !handle.isIntermittent))) {
        continue;
      }
      const log = weighTied({
        groups,
        full: 1,
        absentable,
        provoked,
        ties,
        plainLog: (snapshot, before, now) => work.displaysBeyondBase(snapshot, before, now),
        isAllowed: (g, trip) => trip === isThere(g),
      });
      const gaps = Int32Array.from(groups, (_, g) => own[isThere(g)]?.[g] ?? 0);
      const key = gaps.join();
      let way = byGaps.get(key);
      if (way === undefined) {
        const reported = Int32Array.from(groups, (_, g) => nearest[isThere(g)]?.[g] ?? 0);
        way = {
          gaps,
          reported,
          isAsBase: gaps.every((gap, g) => gap === own[0]?.[g]),
          broken: reported.reduce((bits, gap, g) => bits | (gap === 0 ? 0 : 1 << g), 0),
          shown: 0,
          all: 0,
        };
        byGaps.set(key, way);
      }
      way.shown += Math.exp(log + fixed);
    }
    const reports = this.reports[region];
    for (const way of byGaps.values()) {
      way.all = reports === undefined ? way.shown : (way.shown * reportFactor(reports.list, way.reported)) / reports.base;
    }
    return [...byGaps.values()];
  }
}

function isInReach(gap: number, { from, to }: Reach): boolean {
  return gap > from && gap <= to + 1;
}

/** What the reports make of the likelihood: a reading that repeats an earlier one of the same gap adds no factor. */
function reportFactor(list: RegionReports['list'], gaps: Int32Array): number {
  let factor = 1;
  for (const { group, earlier, factors } of list) {
    const gap = gaps[group] ?? 0;
    let isRepeated = false;
    for (const other of earlier) {
      isRepeated ||= gaps[list[other]?.group ?? -1] === gap;
    }
    factor *= isRepeated ? 1 : (factors[gap] ?? 1);
  }
  return factor;
}
