import type { ChainId, UnitId } from '../../engine/base/index.ts';
import type { Topology } from '../../engine/topology/index.ts';

export type Neighbour = { readonly kind: 'unit'; readonly unit: UnitId } | { readonly kind: 'chain'; readonly chain: ChainId };

/** Where an arrow key leads from a unit: along its chain, to the controller's report at its head, or to the chain above or below. */
export function nextUnit(topology: Topology, unit: UnitId, key: string): Neighbour | null {
  const place = topology.placeOf.get(unit);
  const apart = [...topology.orphans, ...topology.offChain, ...topology.supplies];
  const lines: readonly (readonly UnitId[])[] = [...topology.chains.map(({ units }) => units), apart].filter((line) => line.length > 0);
  const lineIndex = lines.findIndex((line) => line.includes(unit));
  const line = lines[lineIndex] ?? [];
  const index = line.indexOf(unit);
  const at = (found: UnitId | undefined): Neighbour | null => (found === undefined ? null : { kind: 'unit', unit: found });
  switch (key) {
    case 'ArrowRight':
      // The end of a line leads on to the next one, so that a walk with the number pad reaches everything.
      return at(line[index + 1] ?? lines[lineIndex + 1]?.[0]);
    case 'ArrowLeft':
      if (index === 0 && place) return { kind: 'chain', chain: place.chain };
      return at(line[index - 1] ?? lines[lineIndex - 1]?.[(lines[lineIndex - 1]?.length ?? 0) - 1]);
    case 'ArrowDown':
      return at(nearest(lines[lineIndex + 1], index));
    case 'ArrowUp':
      return at(nearest(lines[lineIndex - 1], index));
    case 'Home':
      return at(line[0]);
    case 'End':
      return at(line[line.length - 1]);
    default:
      return null;
  }
}

function nearest(line: readonly UnitId[] | undefined, index: number): UnitId | undefined {
  return line?.[Math.min(index, line.length - 1)];
}
