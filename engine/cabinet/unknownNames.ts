import type { ChainId } from '../base/index.ts';
import type { Evidence, Intervention, Snapshot } from '../schema/index.ts';
import type { Topology } from '../topology/index.ts';

/** Something that evidence or a fault names and the cabinet does not have; of a gap, its chain is there and is shorter. */
export type UnknownName =
  | { readonly thing: 'unit' | 'cable' | 'lead' | 'feedback' | 'chain' | 'spare' | 'any'; readonly id: string }
  | { readonly thing: 'gap'; readonly chain: ChainId; readonly gap: number; readonly length: number };

/** Fields of a fault, act, look or observation that hold an id. */
export interface References {
  readonly item?: string;
  readonly do?: string;
  readonly look?: string;
  readonly unit?: string;
  readonly link?: string;
  readonly lead?: string;
  readonly feedback?: string;
  readonly chain?: string;
}

/** Everything in evidence that the cabinet does not have: a diagnosis makes nothing of it. In the order in which it is written. */
export function unknownInEvidence(topology: Topology, { snapshots, circumstances }: Evidence): readonly UnknownName[] {
  return [
    ...snapshots.flatMap((snapshot) => unknownInSnapshot(topology, snapshot)),
    ...(circumstances ?? []).flatMap(({ subjects }) => unknownSubjects(topology, subjects ?? [])),
  ];
}

function unknownInSnapshot(topology: Topology, { interventions, provoked, displays, reports, looks }: Snapshot): readonly UnknownName[] {
  const acts = interventions ?? [];
  return [
    ...unknownInActs(topology, acts),
    ...acts.flatMap((act) => unknownSpare(topology, 'spare' in act ? act.spare : undefined)),
    ...unknownSubjects(topology, provoked?.subjects ?? []),
    ...(displays ?? []).flatMap(({ unit }) => unknownReferences(topology, { unit })),
    ...(reports ?? []).flatMap(({ chain, gaps }) => unknownGaps(topology, chain, gaps)),
    ...(looks ?? []).flatMap((look) => unknownReferences(topology, look)),
  ];
}

/** What acts name: what they are done to, and the partner of an exchange. */
export function unknownInActs(topology: Topology, acts: readonly Intervention[]): readonly UnknownName[] {
  return acts.flatMap((act) => {
    const other =
      act.do === 'exchange-cables'
        ? { link: act.other }
        : act.do === 'exchange-boards'
          ? { unit: act.other }
          : act.do === 'bridge-unit'
            ? { link: act.cable }
            : {};
    return [...unknownReferences(topology, act), ...unknownReferences(topology, other)];
  });
}

/** Ids that do not occur in the cabinet. */
export function unknownReferences(topology: Topology, references: References): readonly UnknownName[] {
  const look = (thing: Exclude<UnknownName['thing'], 'gap'>, id: string | undefined, known: ReadonlyMap<string, unknown>) =>
    id === undefined || known.has(id) ? [] : [{ thing, id }];
  return [
    ...look('unit', references.unit, topology.units),
    ...look('cable', references.link, topology.links),
    ...look('lead', references.lead, topology.leads),
    ...look('feedback', references.feedback, topology.feedbacks),
    ...look('chain', references.chain, topology.chainById),
  ];
}

/** Circumstances, and what is moved or warmed, may concern anything that has an id. */
function unknownSubjects(topology: Topology, subjects: readonly string[]): readonly UnknownName[] {
  const { units, links, leads, feedbacks, chainById } = topology;
  const maps: readonly ReadonlyMap<string, unknown>[] = [units, links, leads, feedbacks, chainById];
  return subjects.flatMap((id) => (maps.some((map) => map.has(id)) ? [] : [{ thing: 'any', id } as const]));
}

function unknownSpare({ content }: Topology, spare: string | undefined): readonly UnknownName[] {
  return spare === undefined || content.spares?.some(({ id }) => id === spare) ? [] : [{ thing: 'spare', id: spare }];
}

function unknownGaps(topology: Topology, id: string, gaps: readonly (number | 'none')[]): readonly UnknownName[] {
  const unknown = unknownReferences(topology, { chain: id });
  if (unknown.length > 0) return unknown;
  // The chain was just looked up.
  const chain = id as ChainId;
  const length = topology.chainById.get(chain)?.units.length ?? 0;
  return gaps.flatMap((gap) => (gap === 'none' || gap <= length ? [] : [{ thing: 'gap', chain, gap, length } as const]));
}
