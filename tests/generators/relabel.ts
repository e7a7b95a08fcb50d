import type { CabinetContent } from '../../engine/schema/index.ts';

/** Gives every thing that stands in a cabinet another id, everywhere it is named. Types, legends, fibres and photos keep theirs. */
export function relabelCabinet(content: CabinetContent, rename: (id: string) => string): CabinetContent {
  const renamed = <T extends { id: string }>(record: T): T => ({ ...record, id: rename(record.id) });
  return {
    ...content,
    ...(content.controller === undefined ? {} : { controller: renamed(content.controller) }),
    chains: (content.chains ?? []).map(renamed),
    units: (content.units ?? []).map(renamed),
    links: (content.links ?? []).map((link) => ({
      ...renamed(link),
      ...(link.upper === undefined
        ? {}
        : { upper: 'chain' in link.upper ? { chain: rename(link.upper.chain) } : { unit: rename(link.upper.unit) } }),
      ...(link.lower === undefined ? {} : { lower: { unit: rename(link.lower.unit) } }),
    })),
    leads: (content.leads ?? []).map((lead) => ({
      ...renamed(lead),
      ...(lead.from === undefined ? {} : { from: { ...lead.from, unit: rename(lead.from.unit) } }),
      ...(lead.to === undefined ? {} : { to: { unit: rename(lead.to.unit) } }),
    })),
    feedbacks: (content.feedbacks ?? []).map((feedback) => ({ ...renamed(feedback), unit: rename(feedback.unit) })),
    spares: (content.spares ?? []).map(renamed),
  };
}

/** A renaming that turns the order of ids round and keeps no likeness: `u12` becomes `k_987`. */
export function scramble(content: CabinetContent): (id: string) => string {
  const lists = [content.chains, content.units, content.links, content.leads, content.feedbacks, content.spares];
  const ids = [
    ...(content.controller === undefined ? [] : [content.controller.id]),
    ...lists.flatMap((list) => (list ?? []).map(({ id }) => id)),
  ];
  const names = new Map(ids.map((id, index) => [id, `k_${10_000 - index}`]));
  return (id) => names.get(id) ?? id;
}
