import type { UnitId } from '../../base/index.ts';
import type { OrdinalGroup, UnitKind } from '../../schema/index.ts';
import type { Topology } from '../../topology/index.ts';

/** A unit and where it stands, as the JSON interface gives it. The four last are null for a unit that is on no chain. */
export interface JsonUnit {
  readonly unit: string;
  readonly designation: string;
  readonly kind: UnitKind;
  readonly chain: string | null;
  readonly position: number | null;
  readonly group: OrdinalGroup | null;
  readonly ordinal: number | null;
}

/** One unit with its place. */
export function jsonUnit(topology: Topology, id: UnitId): JsonUnit {
  const record = topology.units.get(id);
  const place = topology.placeOf.get(id);
  return {
    unit: id,
    designation: record?.designation ?? '',
    kind: record?.kind ?? 'servo-drive',
    chain: place?.chain ?? null,
    position: place?.position ?? null,
    group: place?.group ?? null,
    ordinal: place?.ordinal ?? null,
  };
}

/** All units: chain by chain from the controller outwards, then those off the chain, orphans, and last the supplies. */
export function unitsInOrder(topology: Topology): readonly UnitId[] {
  return [...topology.chains.flatMap(({ units }) => units), ...topology.offChain, ...topology.orphans, ...topology.supplies];
}

/** Chain number, position and count of a unit, as three cells of a table. */
export function placeCells(topology: Topology, counted: string, unit: UnitId): readonly [string, string, string] {
  const place = topology.placeOf.get(unit);
  if (!place) return ['–', '–', counted];
  return [String(topology.chainById.get(place.chain)?.record.number ?? place.chain), String(place.position), counted];
}
