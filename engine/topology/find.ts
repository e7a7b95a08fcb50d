import { type ChainId, compareNatural, type FeedbackId, type LeadId, type LinkId, type UnitId } from '../base/index.ts';
import type { OrdinalGroup } from '../schema/index.ts';
import type { Topology } from './types.ts';

/** The unit at a position (1, 2, …) of a chain; `undefined` where there is none. */
export function findByPosition(topology: Topology, chain: ChainId, position: number): UnitId | undefined {
  return topology.chainById.get(chain)?.units[position - 1];
}

/** The first, second, … drive or encoder interface of a chain; `undefined` where there is none. The other way: `topology.placeOf`. */
export function findByOrdinal(topology: Topology, chain: ChainId, group: OrdinalGroup, ordinal: number): UnitId | undefined {
  return topology.chainById.get(chain)?.units.find((unit) => {
    const place = topology.placeOf.get(unit);
    return place?.group === group && place.ordinal === ordinal;
  });
}

/** The chain of a number, an id or a name. */
export function findChainByName(topology: Topology, nameOrId: string): ChainId | undefined {
  const chains = topology.chains;
  const wanted = nameOrId.trim();
  const found = chains.find(({ id }) => id === wanted) ?? chains.find(({ record }) => String(record.number) === wanted);
  return (found ?? onlyOne(chains.filter(({ record }) => record.name?.trim() === wanted)))?.id;
}

/**
 * The unit of an id or a designation. An id wins over a designation; a designation that several units bear finds none of them.
 * Capital and small letters count only where they must.
 */
export function findUnitByName(topology: Topology, nameOrId: string): UnitId | undefined {
  return findByName(topology.units, nameOrId);
}

/** The link of an id or a designation, by the rules of `findUnitByName`. */
export function findLinkByName(topology: Topology, nameOrId: string): LinkId | undefined {
  return findByName(topology.links, nameOrId);
}

/** The power lead of an id or a designation, by the rules of `findUnitByName`. */
export function findLeadByName(topology: Topology, nameOrId: string): LeadId | undefined {
  return findByName(topology.leads, nameOrId);
}

/** The feedback cable of an id or a designation, by the rules of `findUnitByName`. */
export function findFeedbackByName(topology: Topology, nameOrId: string): FeedbackId | undefined {
  return findByName(topology.feedbacks, nameOrId);
}

type Named = { readonly id: string; readonly designation?: string | undefined };

function findByName<I extends string>(records: ReadonlyMap<I, Named>, nameOrId: string): I | undefined {
  const wanted = nameOrId.trim();
  const all = [...records];
  const equal = (same: (a: string) => string) => [
    all.filter(([id]) => same(id) === same(wanted)),
    all.filter(([, record]) => record.designation !== undefined && same(record.designation.trim()) === same(wanted)),
  ];
  for (const matches of [...equal((name) => name), ...equal((name) => name.toLowerCase())]) {
    if (matches.length > 0) return onlyOne(matches)?.[0];
  }
  return undefined;
}

function onlyOne<T>(list: readonly T[]): T | undefined {
  return list.length === 1 ? list[0] : undefined;
}

/** Units in the order in which they stand in the cabinet: by row, slot, then chain, position, and last by id. */
export function inMountingOrder(topology: Topology): readonly UnitId[] {
  const last = Number.MAX_SAFE_INTEGER;
  const chainRank = new Map(topology.chains.map((chain, index) => [chain.id, index]));
  const key = (id: UnitId) => {
    const unit = topology.units.get(id);
    const place = topology.placeOf.get(id);
    return [
      unit?.row ?? last,
      unit?.slot ?? last,
      place === undefined ? last : (chainRank.get(place.chain) ?? last),
      place?.position ?? last,
    ];
  };
  const keys = new Map([...topology.units.keys()].map((id) => [id, key(id)]));
  return [...topology.units.keys()].sort((a, b) => {
    const left = keys.get(a) ?? [];
    const right = keys.get(b) ?? [];
    for (const [index, value] of left.entries()) {
      const order = value - (right[index] ?? last);
      if (order !== 0) return order;
    }
    return compareNatural(a, b);
  });
}
