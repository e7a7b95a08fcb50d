import type { PairAtHand, Touched } from './pairAtHand.ts';
import { type Absentable, presencePairs, type TripGroup } from './patterns.ts';
import type { Plan } from './plan.ts';
import { laterLog } from './repeats.ts';
import type { Tie } from './ties.ts';

/** What the later readings of repeats add: `fixed` where that is the same in every pattern of presence, and the `ties` where not. */
export interface Repeats {
  readonly fixed: number;
  readonly ties: readonly Tie[];
}

const none: Repeats = { fixed: 0, ties: [] };

/** Finds what repeats of the same reading in several snapshots add for the pair at hand. */
export class PairRepeats {
  private readonly groupOfSnapshot: readonly (TripGroup | undefined)[];

  constructor(
    private readonly plan: Plan,
    groups: readonly TripGroup[],
    private readonly pair: PairAtHand,
  ) {
    this.groupOfSnapshot = plan.snapshots.map((_, snapshot) => groups.find(({ snapshots }) => snapshots.includes(snapshot)));
  }

  /** In the touched part; repeats that the pair does not reach add what they add without any fault. */
  gather({ regions, looks }: Touched, full: number, absentable: Absentable): Repeats {
    if (this.plan.repeats.length === 0) {
      return none;
    }
    let fixed = 0;
    const ties: Tie[] = [];
    const add = (repeat: number) => {
      const indices = this.plan.repeats[repeat] ?? [];
      const tie = this.makeTie(indices, full, absentable);
      if (tie !== null) {
        ties.push(tie);
      } else {
        fixed += laterLog(this.plan, indices, (index) => this.pair.predictionAt(index, full, full));
      }
    };
    for (const region of regions) {
      const work = this.pair.regions[region];
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

  /** Of the displays in one region, for one class set there alone: what they add beyond what they add without any fault. */
  ofDisplays(region: number, absentable: Absentable): Repeats {
    const work = this.pair.regions[region];
    let fixed = 0;
    const ties: Tie[] = [];
    for (const repeat of work?.affectedRepeats() ?? []) {
      const indices = this.plan.repeats[repeat] ?? [];
      if (this.plan.observations[indices[0] ?? -1]?.kind === 'report') {
        continue;
      }
      const tie = this.makeTie(indices, 1, absentable);
      if (tie !== null) {
        ties.push(tie);
      } else {
        fixed += laterLog(this.plan, indices, (index) => this.pair.predictionAt(index, 1, 1));
      }
      fixed -= work?.repeatBase.get(repeat) ?? 0;
    }
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
        const prediction = this.pair.predictionAt(index, trip, now);
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
}
