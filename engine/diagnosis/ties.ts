import { logSum, presentLog, subsets, type TripGroup, tripLog } from './patterns.ts';

/**
 * A repeated reading whose predictions depend on the presence of intermittent faults: whether a later one adds its factor depends
 * on what the earlier ones were predicted to be, which ties the snapshots together.
 */
export interface Tie {
  /** By snapshot (absent where the thing was not read alike): which of its different predictions it is, for each `trip * 4 + now`. */
  readonly predictions: ReadonlyMap<number, Int32Array>;
  readonly firstSnapshot: number;
  /** After this one nothing repeats it any more, and what it was predicted to be need not be carried on. */
  readonly lastSnapshot: number;
  /** By prediction, numbered as above. */
  readonly logFactors: readonly number[];
}

/** What `weighTied` needs to know of the hypothesis at hand. */
export interface TiedCase {
  readonly groups: readonly TripGroup[];
  /** Subset of all faults of the hypothesis, and of those that may be absent. */
  readonly full: number;
  readonly absentable: number;
  /** As of `provokedBits`. */
  readonly provoked: readonly number[];
  readonly ties: readonly Tie[];
  readonly plainLog: (snapshot: number, trip: number, now: number) => number;
  readonly isAllowed: (group: number, trip: number) => boolean;
}

/** What was predicted so far of each tied thing (bits), and the log weight of all patterns that lead there. */
interface Trail {
  readonly masks: readonly number[];
  readonly log: number;
}

/**
 * The log likelihood summed over all joint patterns of presence. Snapshots are gone through in order; patterns that have shown the
 * same so far are carried on as one, so the cost grows with the number of different pasts and not with that of patterns.
 */
export function weighTied(question: TiedCase): number {
  const { groups, full, absentable } = question;
  let trails: ReadonlyMap<string, Trail> = new Map([['', { masks: question.ties.map(() => 0), log: 0 }]]);
  groups.forEach((group, g) => {
    const after = new Map<string, Trail>();
    const absent = group.isFirst ? 0 : absentable;
    for (const trip of subsets(absent, full)) {
      if (!question.isAllowed(g, trip)) {
        continue;
      }
      let branch = trails;
      for (const snapshot of group.snapshots) {
        branch = group.isRunning
          ? step(question, branch, snapshot, trip, [trip], 0)
          : step(question, branch, snapshot, trip, subsets(absentable, full), presentLog(absentable));
      }
      for (const [key, { masks, log }] of branch) {
        join(after, key, masks, log + tripLog(absent, trip, question.provoked[g] ?? 0));
      }
    }
    trails = after;
  });
  let log = Number.NEGATIVE_INFINITY;
  for (const trail of trails.values()) {
    log = logSum(log, trail.log);
  }
  return log;
}

function step(
  question: TiedCase,
  trails: ReadonlyMap<string, Trail>,
  snapshot: number,
  trip: number,
  nows: readonly number[],
  share: number,
): ReadonlyMap<string, Trail> {
  const after = new Map<string, Trail>();
  for (const now of nows) {
    const plain = question.plainLog(snapshot, trip, now) + share;
    for (const trail of trails.values()) {
      let log = trail.log + plain;
      const masks = question.ties.map((tie, index) => {
        const prediction = tie.predictions.get(snapshot)?.[trip * 4 + now];
        const mask = trail.masks[index] ?? 0;
        if (prediction === undefined) {
          return mask;
        }
        const bit = 1 << prediction;
        // The first reading of all counts among the plain ones.
        if (snapshot !== tie.firstSnapshot && (mask & bit) === 0) {
          log += tie.logFactors[prediction] ?? 0;
        }
        return snapshot === tie.lastSnapshot ? 0 : mask | bit;
      });
      join(after, masks.join(), masks, log);
    }
  }
  return after;
}

function join(trails: Map<string, Trail>, key: string, masks: readonly number[], log: number): void {
  const known = trails.get(key);
  trails.set(key, { masks, log: known === undefined ? log : logSum(known.log, log) });
}
