import { compareNatural, jsonPointer, type LeadId, makeProblem, nameList, type Problem, type UnitId } from '../base/index.ts';
import type { LeadRecord, UnitRecord } from '../schema/index.ts';
import { cycles, reachable } from './components.ts';
import { cableName, unitName } from './names.ts';
import type { Records } from './records.ts';
import type { Feed } from './types.ts';

/**
 * The 24 V leads with both ends in place, and what is wrong with the feeding: open ends, unknown ids, a lead into a supply, units
 * fed by nothing, power paths that reach no supply, and loops; or that no feed at all is documented.
 */
export function resolveFeeds(records: Records): { feeds: readonly Feed[]; problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const feeds: Feed[] = [];
  for (const [index, lead] of (records.content.leads ?? []).entries()) {
    const from = resolveEnd(records, lead, 'from', index, problems);
    const to = resolveEnd(records, lead, 'to', index, problems);
    if (to?.kind === 'supply') {
      const facts = { lead: cableName(lead), unit: unitName(to) };
      problems.push(
        makeProblem('lead-into-supply', 'error', { where: jsonPointer(['leads', index, 'to']), subjects: [lead.id, to.id], facts }),
      );
    } else if (from !== null && to !== null) {
      feeds.push({ lead: lead.id as LeadId, from: from.id as UnitId, to: to.id as UnitId }); // ids of records of these lists
    }
  }
  return { feeds, problems: [...problems, ...unfed(records, feeds)] };
}

function resolveEnd(records: Records, lead: LeadRecord, end: 'from' | 'to', index: number, problems: Problem[]): UnitRecord | null {
  const id = lead[end]?.unit;
  const where = jsonPointer(['leads', index, end]);
  if (id === undefined) {
    problems.push(makeProblem('lead-end-open', 'incomplete', { where, subjects: [lead.id], facts: { lead: cableName(lead), end } }));
    return null;
  }
  const unit = records.units.get(id as UnitId); // this is the look-up
  if (unit === undefined) {
    const facts = { thing: cableName(lead), field: end, id };
    problems.push(makeProblem('reference-unknown', 'error', { where: `${where}/unit`, subjects: [lead.id], facts }));
    return null;
  }
  return unit;
}

/** Whether the 24 V leads are documented: at least one with both ends in place. Without any, nothing is known of what feeds what. */
export function isFeedDocumented({ feeds }: { readonly feeds: readonly Feed[] }): boolean {
  return feeds.length > 0;
}

function unfed(records: Records, feeds: readonly Feed[]): readonly Problem[] {
  const ids = [...records.units.keys()].sort(compareNatural);
  const fedFrom = new Map<UnitId, UnitId[]>(ids.map((id) => [id, []]));
  const feedsTo = new Map<UnitId, UnitId[]>(ids.map((id) => [id, []]));
  for (const { from, to } of feeds) {
    fedFrom.get(to)?.push(from);
    feedsTo.get(from)?.push(to);
  }
  const next = (id: UnitId) => feedsTo.get(id) ?? [];
  const supplies = ids.filter((id) => records.units.get(id)?.kind === 'supply');
  const powered = reachable(supplies, next);
  const indexOf = new Map((records.content.units ?? []).map((unit, index) => [unit, index]));
  const about = (id: UnitId) => {
    const unit = records.units.get(id);
    return unit === undefined ? { where: '', name: id } : { where: jsonPointer(['units', indexOf.get(unit) ?? 0]), name: unitName(unit) };
  };

  const left = ids.filter((id) => records.units.get(id)?.kind !== 'supply');
  const [first] = left;
  if (!isFeedDocumented({ feeds }) && first !== undefined) {
    return [makeProblem('feeds-not-documented', 'incomplete', { where: about(first).where, subjects: left })];
  }
  const problems: Problem[] = [];
  const loops = cycles(ids, next);
  for (const members of loops) {
    const [first] = members;
    const code = first !== undefined && powered.has(first) ? 'feed-loop' : 'feed-loop-without-supply';
    const facts = { units: nameList(members.map((id) => about(id).name)), count: members.length };
    const where = first === undefined ? '' : about(first).where;
    problems.push(makeProblem(code, code === 'feed-loop' ? 'warning' : 'incomplete', { where, subjects: members, facts }));
  }
  const inLoop = new Set(loops.flat());
  for (const id of ids) {
    if (powered.has(id) || inLoop.has(id)) continue;
    const { where, name } = about(id);
    const [from] = fedFrom.get(id) ?? [];
    problems.push(
      from === undefined
        ? makeProblem('unit-not-fed', 'incomplete', { where, subjects: [id], facts: { unit: name } })
        : makeProblem('feed-without-supply', 'incomplete', { where, subjects: [id, from], facts: { unit: name, from: about(from).name } }),
    );
  }
  return problems;
}
