import type { ClassBook, EffectOps } from './classBook.ts';
import { LookPredictions } from './lookPredictions.ts';
import type { TripGroup } from './patterns.ts';
import type { Plan } from './plan.ts';
import { RegionWork } from './regionWork.ts';
import type { Scenario } from './scenarios.ts';

/** The one or two classes that are weighed at the moment under one scenario, and what they predict by their presence. */
export class PairAtHand {
  readonly regions: readonly RegionWork[];
  private readonly looks: LookPredictions;
  private readonly regionOfObservation: readonly (RegionWork | undefined)[];
  private first: EffectOps | null = null;
  private second: EffectOps | null = null;
  private isSet = false;

  constructor(
    private readonly book: ClassBook,
    private readonly plan: Plan,
    scenario: Scenario,
  ) {
    const variant = book.variantOf(scenario);
    this.regions = book.compiled.regions.map((_, region) => new RegionWork(book, plan, scenario, region, variant));
    this.regionOfObservation = plan.observations.map((_, index) => this.regions.find((region) => region.owns(index)));
    this.looks = new LookPredictions(book, plan, scenario);
  }

  /** The presence of everything in the pair: bit 0 the first, bit 1 the second. */
  get full(): number {
    return (this.first === null ? 0 : 1) | (this.second === null ? 0 : 2);
  }

  set(one: EffectOps | null, other: EffectOps | null): void {
    if (!this.isSet || this.first !== one || this.second !== other) {
      this.isSet = true;
      this.first = one;
      this.second = other;
      for (const region of this.regions) {
        region.setPair(one, other);
      }
    }
  }

  /** Sets the pair in one region alone and answers that; whoever needs the others must set the pair anew. */
  setIn(region: number, one: EffectOps, other: EffectOps | null): RegionWork | undefined {
    this.isSet = false;
    const work = this.regions[region];
    work?.setPair(one, other);
    return work;
  }

  /** Index of what an observation is predicted to be, by the presence of the pair at the trip and now. */
  predictionAt(index: number, trip: number, now: number): number {
    const seen = this.plan.observations[index];
    if (seen?.kind === 'look') {
      return this.looks.outcome(index, (now & 1) !== 0 ? this.first : null, (now & 2) !== 0 ? this.second : null);
    }
    return this.regionOfObservation[index]?.prediction(index, trip, now) ?? 0;
  }

  /** Log factors of one snapshot's observations in some regions, and of some looks, that repeat nothing. */
  plainLog(snapshot: number, trip: number, now: number, { regions, looks }: Touched): number {
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

  /** Whether a chain in any of these regions is broken at a group's trip. */
  isBroken(group: TripGroup, trip: number, regions: readonly number[]): boolean {
    for (const region of regions) {
      if (this.regions[region]?.isBroken(group, trip) === true) {
        return true;
      }
    }
    return false;
  }

  /** What two classes touch together. */
  touchedBy(one: EffectOps, other: EffectOps | null): Touched {
    if (other === null) {
      return one;
    }
    let regions = union(one.regions, other.regions);
    if (one.isFeed && other.isFeed) {
      this.book.arrangements.forEach((_, arrangement) => {
        regions = union(regions, [...(this.book.jointOps(one, other, arrangement)?.keys() ?? [])]);
      });
    }
    return { regions, looks: union(one.looks, other.looks) };
  }
}

/** The part of the cabinet and of what was looked at that classes can change: numbers of regions, and of look observations. */
export interface Touched {
  readonly regions: readonly number[];
  readonly looks: readonly number[];
}

/** The members of both, ascending. */
export function union(a: readonly number[], b: readonly number[]): readonly number[] {
  return b.length === 0 ? a : [...new Set([...a, ...b])].sort((x, y) => x - y);
}
