import type { UnitId } from '../../engine/base/index.ts';
import type { ChainSpot, Place } from '../../engine/edit/index.ts';
import type { UnitKind } from '../../engine/schema/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import type { Placement } from '../canvas/placement.ts';
import type { Point } from '../canvas/views.ts';
import type { Spot } from './buildCommands.ts';
import type { Arrangement } from './drawState.ts';

/** Where something that is dragged would go. */
export interface DropTarget {
  readonly spot: Spot;
  /** In mounting order: where it would stand. */
  readonly place: Place | null;
  /** The cable that parts for it, and the units beside it. */
  readonly link: string | null;
  readonly mates: readonly string[];
  readonly opening: { readonly row: number; readonly column: number } | null;
}

/** Where a new unit goes that is made by a key: into the chosen cable, behind the chosen unit, at the end of the chosen chain. */
export function spotBesideChosen(topology: Topology, chosen: readonly string[], kind: UnitKind): Spot {
  if (kind === 'supply') return 'apart';
  for (const id of [...chosen].reverse()) {
    // A map asked for any id: what it does not have is not found.
    if ((topology.links as ReadonlyMap<string, unknown>).has(id)) return { onLink: id };
    if ((topology.placeOf as ReadonlyMap<string, unknown>).has(id)) return { afterUnit: id };
    if ((topology.chainById as ReadonlyMap<string, unknown>).has(id)) return { endOf: id };
  }
  const last = topology.chains[topology.chains.length - 1];
  return last ? { endOf: last.id } : 'new-chain';
}

/** The spots one step along the chain from where chosen units stand; null at its end. */
export function spotOneStep(topology: Topology, ids: readonly string[], step: -1 | 1): ChainSpot | null {
  const places = ids.flatMap((id) => topology.placeOf.get(id as UnitId) ?? []); // a map asked for any id
  const chain = places[0]?.chain;
  if (chain === undefined || places.length !== ids.length || places.some((one) => one.chain !== chain)) return null;
  const units = topology.chainById.get(chain)?.units ?? [];
  const positions = places.map(({ position }) => position);
  const beside = step < 0 ? units[Math.min(...positions) - 2] : units[Math.max(...positions)];
  if (beside === undefined) return null;
  return step < 0 ? { beforeUnit: beside } : { afterUnit: beside };
}

/** The same position on the chain above or below; null where there is none. */
export function spotOnOtherChain(topology: Topology, ids: readonly string[], step: -1 | 1): ChainSpot | null {
  const place = topology.placeOf.get(ids[0] as UnitId); // a map asked for any id
  const at = topology.chains.findIndex(({ id }) => id === place?.chain);
  const other = place && topology.chains[at + step];
  if (!other) return null;
  return place.position > other.units.length ? { endOf: other.id } : { chain: other.id, position: place.position };
}

/** The place one slot along its row, or in the row above or below. */
export function placeOneStep(topology: Topology, ids: readonly string[], key: 'left' | 'right' | 'up' | 'down'): Place | null {
  const records = ids.flatMap((id) => topology.units.get(id as UnitId) ?? []); // a map asked for any id
  const [first] = records;
  const last = records[records.length - 1];
  if (first?.row === undefined || first.slot === undefined || last?.slot === undefined) return null;
  const row = [...topology.units.values()].filter((one) => one.row === first.row).map(({ slot }) => slot ?? 0);
  switch (key) {
    case 'left': {
      const before = Math.max(...row.filter((slot) => slot < (first.slot ?? 0)));
      return Number.isFinite(before) ? { row: first.row, slot: before } : null;
    }
    case 'right': {
      const behind = Math.min(...row.filter((slot) => slot > (last.slot ?? 0)));
      return Number.isFinite(behind) ? { row: first.row, slot: behind + 1 } : null;
    }
    case 'up':
      return first.row > 0 ? { row: first.row - 1, slot: first.slot } : null;
    case 'down':
      return { row: first.row + 1, slot: first.slot };
  }
}

export interface DropRequest {
  readonly topology: Topology;
  /** The drawing as it is without any place held open. */
  readonly placement: Placement;
  readonly arrangement: Arrangement;
  readonly at: Point;
  readonly kinds: readonly UnitKind[];
  /** It shall stand beside the chains. */
  readonly beside: boolean;
  /** It hangs on a chain now: let go below all of them it comes off, rather than beginning a new one. */
  readonly comesOff?: boolean;
}

const apart: DropTarget = { spot: 'apart', place: null, link: null, mates: [], opening: null };

/** Where something would go that is let go at a point of the drawing. */
export function findDropTarget(request: DropRequest): DropTarget {
  return request.arrangement === 'mounting' ? dropInRow(request) : dropInChain(request);
}

function dropInChain({ topology, placement, at, kinds, beside, comesOff = false }: DropRequest): DropTarget {
  if (beside || kinds.includes('supply')) return apart;
  const row = rowAt(placement, at.y);
  if (row === null) return comesOff ? apart : { ...apart, spot: 'new-chain' };
  const { chain: id, first } = placement.rows[row] ?? {};
  const chain = topology.chains.find((one) => one.id === id);
  if (!chain || first === undefined) return apart;
  const own = chain.units.filter((unit) => placement.units.get(unit)?.row === row);
  const before = own.filter((unit) => middleOf(placement, unit) < at.x).length;
  const firstHere = own[0] ? chain.units.indexOf(own[0]) : 0;
  const index = firstHere + before;
  const [above, below] = [chain.units[index - 1], chain.units[index]];
  return {
    spot: { chain: chain.id, position: index + 1 },
    place: null,
    link: chain.links[index] ?? null,
    mates: [above, below].filter((unit) => unit !== undefined),
    opening: { row, column: before },
  };
}

/** The row at a height; the lowest one reaches a little further down. Null: below all of them. */
function rowAt({ rows }: Placement, y: number): number | null {
  const at = rows.findIndex((row, index) => y < row.y + row.height + (index === rows.length - 1 ? 50 : 24));
  return at < 0 ? null : at;
}

const middleOf = ({ units }: Placement, unit: UnitId) => {
  const box = units.get(unit);
  return box ? box.x + box.width / 2 : 0;
};

function dropInRow({ topology, placement, at, kinds, beside }: DropRequest): DropTarget {
  const row = rowAt(placement, at.y);
  const own = [...placement.units].filter(([, box]) => box.row === row).sort(([, a], [, b]) => a.x - b.x);
  const ids = own.map(([id]) => id);
  const before = ids.filter((id) => middleOf(placement, id) < at.x).length;
  const record = (id: UnitId | undefined) => (id === undefined ? undefined : topology.units.get(id));
  const [left, right] = [record(ids[before - 1]), record(ids[before])];
  const known = ids.map(record).find((one) => one?.row !== undefined && one.slot !== undefined);
  const lowest = Math.max(0, ...[...topology.units.values()].map((one) => one.row ?? 0));
  const place: Place =
    known?.row === undefined ? { row: lowest + 1, slot: 1 } : { row: known.row, slot: right?.slot ?? (left?.slot ?? 0) + 1 };
  const neighbour = ids[before - 1];
  const last = topology.chains[topology.chains.length - 1];
  const onChain = neighbour !== undefined && topology.placeOf.has(neighbour);
  const spot: Spot =
    beside || kinds.includes('supply') ? 'apart' : onChain ? { afterUnit: neighbour } : last ? { endOf: last.id } : 'new-chain';
  return { spot, place, link: null, mates: [], opening: row === null ? null : { row, column: before } };
}
