import type { Topology } from '../topology/index.ts';

/** Units and the cables between them that belong together. */
export interface Picked {
  readonly units: readonly string[];
  readonly links: readonly string[];
}

const nothing: Picked = { units: [], links: [] };

/** The whole chain of a unit, with its cables from the controller on. A unit on no chain stands for itself. */
export function chainOf(topology: Topology, unit: string): Picked {
  return partOf(topology, unit, (_at, _length) => ({ from: 0, to: Number.POSITIVE_INFINITY }));
}

/** From the controller to the unit, with the unit and the cable into it. */
export function upstreamOf(topology: Topology, unit: string): Picked {
  return partOf(topology, unit, (at) => ({ from: 0, to: at + 1 }));
}

/** From the unit to the end of its chain, with the unit; the cables are those behind it. */
export function downstreamOf(topology: Topology, unit: string): Picked {
  const picked = partOf(topology, unit, (at) => ({ from: at, to: Number.POSITIVE_INFINITY }));
  return { units: picked.units, links: picked.links.slice(1) };
}

function partOf(topology: Topology, unit: string, range: (at: number, length: number) => { from: number; to: number }): Picked {
  const chain = topology.chains.find(({ units }) => units.some((one) => one === unit));
  if (chain === undefined) return topology.units.has(unit as never) ? { units: [unit], links: [] } : nothing;
  const at = (chain.units as readonly string[]).indexOf(unit);
  const { from, to } = range(at, chain.units.length);
  return { units: chain.units.slice(from, to), links: chain.links.slice(from, to) };
}
