import type { ChainId, FeedbackId, LeadId, LinkId, TypeId, UnitId } from '../base/index.ts';
import type { CabinetContent, ChainRecord, FeedbackRecord, LeadRecord, LinkRecord, TypeRecord, UnitRecord } from '../schema/index.ts';
import { lists } from './names.ts';

/** The records of a content by id. Of records with one id the first counts; `checkCabinet` names the others. */
export interface Records {
  readonly content: CabinetContent;
  readonly chains: ReadonlyMap<ChainId, ChainRecord>;
  readonly units: ReadonlyMap<UnitId, UnitRecord>;
  readonly links: ReadonlyMap<LinkId, LinkRecord>;
  readonly leads: ReadonlyMap<LeadId, LeadRecord>;
  readonly feedbacks: ReadonlyMap<FeedbackId, FeedbackRecord>;
  readonly types: ReadonlyMap<TypeId, TypeRecord>;
}

export function indexRecords(content: CabinetContent): Records {
  const { chains, units, links, leads, feedbacks, types } = lists(content);
  return {
    content,
    chains: byId<ChainId, ChainRecord>(chains),
    units: byId<UnitId, UnitRecord>(units),
    links: byId<LinkId, LinkRecord>(links),
    leads: byId<LeadId, LeadRecord>(leads),
    feedbacks: byId<FeedbackId, FeedbackRecord>(feedbacks),
    types: byId<TypeId, TypeRecord>(types),
  };
}

/** A unit that stands on a chain unless the file says otherwise. */
export function belongsOnChain(unit: UnitRecord): boolean {
  return unit.kind !== 'supply' && unit.onChain !== false;
}

function byId<I extends string, R extends { readonly id: string }>(list: readonly R[]): ReadonlyMap<I, R> {
  const map = new Map<I, R>();
  for (const record of list) {
    const id = record.id as I; // the file holds plain strings; inside the engine ids are branded by kind
    if (!map.has(id)) map.set(id, record);
  }
  return map;
}
