import {
  compareNatural,
  compareProblems,
  type FeedbackId,
  jsonPointer,
  makeProblem,
  type Problem,
  type TypeId,
  type UnitId,
} from '../base/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import { followChains } from './chains.ts';
import { resolveFeeds } from './feeds.ts';
import { resolveLinks } from './links.ts';
import { cableName, unitName } from './names.ts';
import { indexRecords, type Records } from './records.ts';
import type { Topology } from './types.ts';

/**
 * Works out how a cabinet hangs together, and names everything about it that does not hang together. It always answers, also for
 * an unfinished or an unsound cabinet: what cannot be resolved is left out of the topology and named in the problems. The answer
 * does not depend on the order of the lists in the content.
 */
export function buildTopology(content: CabinetContent): { topology: Topology; problems: readonly Problem[] } {
  const records = indexRecords(content);
  const { links, problems: linkProblems } = resolveLinks(records);
  const { chains, placeOf, orphans, problems: chainProblems } = followChains(records, links);
  const { feeds, problems: feedProblems } = resolveFeeds(records);
  const { feedbacksOf, problems: feedbackProblems } = resolveFeedbacks(records);
  const topology: Topology = {
    content,
    chains,
    chainById: new Map(chains.map((chain) => [chain.id, chain])),
    placeOf,
    units: records.units,
    links: records.links,
    leads: records.leads,
    feedbacks: records.feedbacks,
    types: records.types,
    offChain: unitsWhere(records, (unit) => unit.kind !== 'supply' && unit.onChain === false),
    supplies: unitsWhere(records, (unit) => unit.kind === 'supply'),
    orphans,
    feeds: [...feeds].sort((a, b) => compareNatural(a.lead, b.lead)),
    feedbacksOf,
  };
  const problems = [...linkProblems, ...chainProblems, ...feedProblems, ...feedbackProblems, ...unitProblems(records)];
  return { topology, problems: problems.sort(compareProblems) };
}

function unitsWhere(records: Records, fits: (unit: NonNullable<CabinetContent['units']>[number]) => boolean): readonly UnitId[] {
  return [...records.units]
    .filter(([, unit]) => fits(unit))
    .map(([id]) => id)
    .sort(compareNatural);
}

function resolveFeedbacks(records: Records) {
  const problems: Problem[] = [];
  const feedbacksOf = new Map<UnitId, FeedbackId[]>();
  for (const [index, feedback] of (records.content.feedbacks ?? []).entries()) {
    const where = jsonPointer(['feedbacks', index, 'unit']);
    const unit = records.units.get(feedback.unit as UnitId); // this is the look-up
    if (unit === undefined) {
      const facts = { thing: cableName(feedback), field: 'unit', id: feedback.unit };
      problems.push(makeProblem('reference-unknown', 'error', { where, subjects: [feedback.id], facts }));
    } else if (unit.kind === 'supply') {
      const facts = { feedback: cableName(feedback), unit: unitName(unit) };
      problems.push(makeProblem('feedback-on-supply', 'error', { where, subjects: [feedback.id, unit.id], facts }));
    } else {
      const id = unit.id as UnitId; // record of the units list
      feedbacksOf.set(id, [...(feedbacksOf.get(id) ?? []), feedback.id as FeedbackId]); // record of the feedbacks list
    }
  }
  for (const list of feedbacksOf.values()) list.sort(compareNatural);
  return { feedbacksOf, problems };
}

function unitProblems(records: Records): readonly Problem[] {
  const problems: Problem[] = [];
  for (const [index, unit] of (records.content.units ?? []).entries()) {
    const at = (field: string) => ({ where: jsonPointer(['units', index, field]), subjects: [unit.id] });
    if (unit.type !== undefined && !records.types.has(unit.type as TypeId)) {
      // this is the look-up
      const facts = { thing: unitName(unit), field: 'type', id: unit.type };
      problems.push(makeProblem('reference-unknown', 'error', { ...at('type'), facts }));
    }
    if (unit.kind === 'supply' && unit.onChain === true) {
      problems.push(makeProblem('supply-marked-on-chain', 'error', { ...at('onChain'), facts: { unit: unitName(unit) } }));
    }
    if (unit.kind === 'encoder-interface' && unit.onChain === false) {
      problems.push(makeProblem('encoder-interface-off-chain', 'warning', { ...at('onChain'), facts: { unit: unitName(unit) } }));
    }
  }
  return problems;
}
