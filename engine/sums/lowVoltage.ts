import type { UnitId } from '../base/index.ts';
import type { Topology } from '../topology/index.ts';
import { type FeedState, solveFeed } from './feedNetwork.ts';
import { given, ratedVolts, type Volts, volts } from './units.ts';

/** The 24 V at a unit that is too low for it. */
export interface LowVoltage {
  readonly volts: Volts;
  readonly minimumV: Volts;
}

const none: ReadonlyMap<UnitId, LowVoltage> = new Map();

/**
 * The units that the leads reach and that have less than their minimum voltage at this moment: they are not powered (domain section
 * 5, step 1). Only what is certain counts: every figure on the way documented and in the table, or missing figures that could only
 * make it worse. Every unit that stands there draws its documented current, whatever is wrong with it.
 */
export function findLowVoltage(topology: Topology, state: FeedState): ReadonlyMap<UnitId, LowVoltage> {
  if (!hasMinimumVoltage(topology)) return none;
  const low = new Map<UnitId, LowVoltage>();
  const { voltages } = solveFeed(topology, state, { sureOnly: true });
  for (const [unit, { value }] of voltages) {
    const minimumV = given(ratedVolts, topology.units.get(unit)?.control24?.minimumV);
    if (minimumV !== null && isBelow(value, minimumV)) low.set(unit, { volts: volts(value), minimumV });
  }
  return low;
}

/** Below a limit by more than rounding: a figure that meets its limit exactly is within it. */
export function isBelow(value: number, limit: number): boolean {
  return value < limit - 1e-9 * Math.max(1, Math.abs(limit));
}

const remembered = new WeakMap<Topology, boolean>();

/** Whether any unit has a minimum voltage; without one there is nothing to work out. Kept, because the simulation asks often. */
export function hasMinimumVoltage(topology: Topology): boolean {
  let has = remembered.get(topology);
  if (has === undefined) {
    has = [...topology.units.values()].some(({ control24 }) => control24?.minimumV !== undefined && (control24.minimumV ?? 0) > 0);
    remembered.set(topology, has);
  }
  return has;
}
