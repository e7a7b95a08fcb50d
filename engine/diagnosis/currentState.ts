import type { Evidence, Intervention, Onset } from '../schema/index.ts';
import { tripStarts } from './plan.ts';

/** Where the search stands: what the last snapshot's machine looks like, and everything done to it so far. */
export interface CurrentState {
  readonly onset: Onset;
  readonly halted: boolean;
  /** Whether somebody said so of the last snapshot, or of one of the same trip. */
  readonly isHaltedSaid: boolean;
  /** Units whose display showed a code of their own when it was last read. */
  readonly ownCodes: ReadonlySet<string>;
  /** Done before the last trip, in order. */
  readonly beforeTrip: readonly Intervention[];
  /** Done since, without a restart. */
  readonly sinceTrip: readonly Intervention[];
}

/** The state after the last snapshot. An unknown onset counts as `while-running`, an unobserved halt as halted. */
export function currentState(evidence: Evidence): CurrentState {
  let onset: Onset = 'while-running';
  let halted = true;
  let isHaltedSaid = false;
  let isOnsetNamed = false;
  let beforeTrip: readonly Intervention[] = [];
  let sinceTrip: readonly Intervention[] = [];
  const ownCodes = new Set<string>();
  const starts = tripStarts(evidence);
  evidence.snapshots.forEach((snapshot, index) => {
    const acts = snapshot.interventions ?? [];
    const isHalted = snapshot.halted !== false;
    const isFirst = index === 0;
    const isNewTrip = starts[index] === true;
    if (!isHalted || (isNewTrip && !(isFirst && snapshot.restarted !== true))) {
      beforeTrip = [...beforeTrip, ...sinceTrip, ...acts];
      sinceTrip = [];
    } else {
      sinceTrip = [...sinceTrip, ...acts];
    }
    if (isNewTrip || (snapshot.onset !== undefined && !isOnsetNamed)) {
      isOnsetNamed = snapshot.onset !== undefined;
      const usual = snapshot.restarted === true ? 'at-power-up' : 'while-running';
      onset = snapshot.onset === undefined || snapshot.onset === 'unknown' ? usual : snapshot.onset;
    }
    for (const { unit, meanings } of snapshot.displays ?? []) {
      if (meanings.every((meaning) => meaning === 'other')) ownCodes.add(unit);
      else ownCodes.delete(unit);
    }
    halted = isHalted;
    isHaltedSaid = snapshot.halted !== undefined || (isHaltedSaid && !isNewTrip);
  });
  return { onset, halted, isHaltedSaid, ownCodes, beforeTrip, sinceTrip };
}
