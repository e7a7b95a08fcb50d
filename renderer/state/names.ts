import type { UnitId } from '../../engine/base/index.ts';
import { makeNames, type Names } from '../../engine/messages/index.ts';
import type { Topology } from '../../engine/topology/index.ts';

const known = new WeakMap<Topology, Names>();

/** The names of the things of a cabinet; made once for each topology. */
export function namesOf(topology: Topology): Names {
  const names = known.get(topology) ?? makeNames(topology);
  known.set(topology, names);
  return names;
}

/** What stands on a module: the designation as it is written, also where two bear the same; without one the id. */
export function shortUnitName(topology: Topology, unit: UnitId): string {
  return topology.units.get(unit)?.designation.trim() || unit;
}
