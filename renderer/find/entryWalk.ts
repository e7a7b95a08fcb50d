import type { ChainId, UnitId } from '../../engine/base/index.ts';
import { inMountingOrder, type Topology } from '../../engine/topology/index.ts';
import { inReadingOrder } from '../canvas/projectFrame.ts';
import type { AppState, WalkOrder } from '../state/appState.ts';
import { currentSnapshot, findDisplay, findReport } from '../state/evidence.ts';

/** The units in the order in which somebody walks along them: chain by chain, or as they are mounted. */
export function walkUnits(topology: Topology, order: WalkOrder): readonly UnitId[] {
  return order === 'mounting' ? inMountingOrder(topology) : inReadingOrder(topology);
}

/** The unit before or after another one on a walk; null at its ends. */
export function stepWalk(topology: Topology, order: WalkOrder, unit: string, by: 1 | -1): UnitId | null {
  const units = walkUnits(topology, order);
  const names: readonly string[] = units;
  const at = names.indexOf(unit);
  return at < 0 ? null : (units[at + by] ?? null);
}

/** Where a walk begins: at the first unit that nobody has looked at, or at the first of all. */
export function beginWalk({ checked, walkOrder, caseRecord }: AppState): UnitId | null {
  const units = walkUnits(checked.topology, walkOrder);
  const snapshot = currentSnapshot(caseRecord);
  return units.find((unit) => !findDisplay(snapshot, unit)) ?? units[0] ?? null;
}

/**
 * Whether a walk ends with the question whether the control is halted: nobody has said, and no report that names a loss says it as well.
 */
export function asksHalted({ caseRecord }: Pick<AppState, 'caseRecord'>): boolean {
  const { halted, reports } = currentSnapshot(caseRecord);
  return halted === undefined && !(reports ?? []).some(({ gaps }) => !gaps.includes('none'));
}

/** The first chain whose report nobody has entered, leaving out those that were passed over; null when there is none. */
export function nextReport(
  { checked, caseRecord }: Pick<AppState, 'checked' | 'caseRecord'>,
  passed: readonly string[] = [],
): ChainId | null {
  const snapshot = currentSnapshot(caseRecord);
  const open = checked.topology.chains.filter(({ id, units }) => units.length > 0 && !findReport(snapshot, id));
  return open.find(({ id }) => !passed.includes(id))?.id ?? null;
}
