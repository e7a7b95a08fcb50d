import type { PairAtHand, Touched } from './pairAtHand.ts';
import { type Absentable, logSum, presentLog, type TripGroup, tripLog } from './patterns.ts';

const never = Number.NEGATIVE_INFINITY;

/** Per trip group, the log likelihood of the touched part of the cabinet when it is whole at that trip ([2g]) and broken ([2g+1]). */
export type GroupTable = Float64Array;

/** The table of the pair at hand. `provoked` as of `provokedBits`; `fixed`: what repeats add, the same in every pattern of presence. */
export function makeGroupTable(
  pair: PairAtHand,
  groups: readonly TripGroup[],
  touched: Touched,
  absentable: Absentable,
  provoked: readonly number[],
  fixed: number,
): GroupTable {
  const table = new Float64Array(2 * groups.length).fill(never);
  groups.forEach((group, g) => {
    fillGroup(pair, table, g, group, touched, absentable, provoked[g] ?? 0);
  });
  // Repeats that are settled add the same whatever the presence: put them once, on the first group.
  if (fixed !== 0) {
    table[0] = (table[0] ?? never) + fixed;
    table[1] = (table[1] ?? never) + fixed;
  }
  return table;
}

function fillGroup(
  pair: PairAtHand,
  table: GroupTable,
  g: number,
  group: TripGroup,
  touched: Touched,
  absentable: Absentable,
  provoked: number,
): void {
  const { full } = pair;
  const absent = group.isFirst ? 0 : absentable;
  for (let trip = full; trip >= 0; trip -= 1) {
    if ((trip | absent) !== full) {
      continue;
    }
    let log = tripLog(absent, trip, provoked);
    for (const snapshot of group.snapshots) {
      log += group.isRunning ? pair.plainLog(snapshot, trip, trip, touched) : meanOverNow(pair, snapshot, trip, touched, absentable);
    }
    const at = 2 * g + (pair.isBroken(group, trip, touched.regions) ? 1 : 0);
    table[at] = logSum(table[at] ?? never, log);
  }
}

function meanOverNow(pair: PairAtHand, snapshot: number, trip: number, touched: Touched, absentable: Absentable): number {
  const { full } = pair;
  if (absentable === 0) {
    return pair.plainLog(snapshot, trip, full, touched);
  }
  let log = never;
  for (let now = full; now >= 0; now -= 1) {
    if ((now | absentable) === full) {
      log = logSum(log, pair.plainLog(snapshot, trip, now, touched));
    }
  }
  return log + presentLog(absentable);
}
