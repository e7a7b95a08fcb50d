import { makeNames, type Names } from '../../engine/messages/index.ts';
import type { Topology } from '../../engine/topology/index.ts';

const known = new WeakMap<Topology, Names>();

/** The names of the things of a cabinet; made once for each topology. */
export function namesOf(topology: Topology): Names {
  const names = known.get(topology) ?? makeNames(topology);
  known.set(topology, names);
  return names;
}
