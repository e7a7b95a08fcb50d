import type { CabinetContent, ChainRecord, FeedbackRecord, LeadRecord, LinkRecord, UnitRecord } from '../schema/index.ts';

/*
 * What a thing is called in a problem's facts: what a person reads at it, and its id where nothing was written.
 */

/** The designation of a unit. */
export function unitName(unit: UnitRecord): string {
  return unit.designation.trim() || unit.id;
}

/** The designation of a cable or lead. */
export function cableName(thing: LinkRecord | LeadRecord | FeedbackRecord): string {
  return thing.designation?.trim() || thing.id;
}

/** The chain's number, and its name where it has one. */
export function chainName(chain: ChainRecord): string {
  const name = chain.name?.trim();
  return name ? `${chain.number} (${name})` : String(chain.number);
}

/** Lists that may be left out of a content, as lists. */
export function lists(content: CabinetContent) {
  return {
    chains: content.chains ?? [],
    units: content.units ?? [],
    links: content.links ?? [],
    leads: content.leads ?? [],
    feedbacks: content.feedbacks ?? [],
    types: content.types ?? [],
  };
}
