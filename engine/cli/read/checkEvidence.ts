import type { ChainId } from '../../base/index.ts';
import type { Names, UsageProblem } from '../../messages/index.ts';
import type { Evidence, Snapshot } from '../../schema/index.ts';
import type { Topology } from '../../topology/index.ts';
import { findNearest } from '../nearest.ts';
import { makeUsageProblem } from './asked.ts';
import { checkActs, unknownThings } from './checkFaults.ts';

/** What evidence names that the cabinet does not have: units, chains, gaps, links. A diagnosis could make nothing of it. */
export function checkEvidence(topology: Topology, names: Names, evidence: Evidence): readonly UsageProblem[] {
  return [
    ...evidence.snapshots.flatMap((snapshot) => checkSnapshot(topology, names, snapshot)),
    ...(evidence.circumstances ?? []).flatMap(({ subjects }) => checkSubjects(topology, subjects ?? [])),
  ];
}

function checkSnapshot(topology: Topology, names: Names, snapshot: Snapshot): readonly UsageProblem[] {
  return [
    ...checkActs(topology, snapshot.interventions ?? []),
    ...(snapshot.interventions ?? []).flatMap((act) => checkSpare(topology, 'spare' in act ? act.spare : undefined)),
    ...checkSubjects(topology, snapshot.provoked?.subjects ?? []),
    ...(snapshot.displays ?? []).flatMap(({ unit }) => unknownThings(topology, { unit })),
    ...(snapshot.reports ?? []).flatMap(({ chain, gaps }) => checkGaps(topology, names, chain, gaps)),
    ...(snapshot.looks ?? []).flatMap((look) => unknownThings(topology, look)),
  ];
}

function checkGaps(topology: Topology, names: Names, chain: string, gaps: readonly (number | 'none')[]): readonly UsageProblem[] {
  const unknown = unknownThings(topology, { chain });
  if (unknown.length > 0) return unknown;
  // The chain was just looked up.
  const length = topology.chainById.get(chain as ChainId)?.units.length ?? 0;
  return gaps.flatMap((gap) =>
    gap === 'none' || gap <= length ? [] : [makeUsageProblem('place-unknown', { name: String(gap), chain: names.chain(chain), length })],
  );
}

function checkSpare({ content }: Topology, spare: string | undefined): readonly UsageProblem[] {
  const known = (content.spares ?? []).map(({ id }) => id);
  if (spare === undefined || known.includes(spare)) return [];
  return [makeUsageProblem('name-unknown', { thing: 'spare', name: spare, near: findNearest(spare, known) })];
}

/** Circumstances, and what is moved or warmed, may be anything that has an id. */
export function checkSubjects(topology: Topology, subjects: readonly string[]): readonly UsageProblem[] {
  const maps: readonly ReadonlyMap<string, unknown>[] = [
    topology.units,
    topology.links,
    topology.leads,
    topology.feedbacks,
    topology.chainById,
  ];
  return subjects.flatMap((id) => {
    if (maps.some((map) => map.has(id))) return [];
    const near = findNearest(
      id,
      maps.flatMap((map) => [...map.keys()]),
    );
    return [makeUsageProblem('name-unknown', { thing: 'any', name: id, near })];
  });
}
