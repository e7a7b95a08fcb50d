import { fail, makeProblem, ok, type Problem } from '../base/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import { chainName } from '../topology/index.ts';
import { chainUnits, takeOut } from './chainWork.ts';
import { leavePlace } from './places.ts';
import type { EditResult } from './types.ts';
import { unknownThing, Work } from './work.ts';

const removable = ['links', 'leads', 'feedbacks', 'spares', 'chains'] as const;

/**
 * Takes things out: units, cables, leads, feedback cables, spares, chains. Where a unit goes, the chain is joined again: the cable
 * above it now leads to the unit below it, the cable below it goes. What it passed on of the 24 V comes from where it was fed
 * itself; without a feed these leads go too. Its feedback cables go with it, and its row closes up.
 * Refused: the controller, a chain on which units stay, and what is not there.
 */
export function removeThings(content: CabinetContent, ids: readonly string[]): EditResult {
  const work = new Work(content);
  const wanted = [...new Set(ids)];
  const problems = wanted.flatMap((id) => whyNotRemove(content, work, id, wanted) ?? []);
  if (problems.length > 0) return fail(...problems);
  for (const id of wanted) if (work.get('units', id) !== undefined) removeUnit(work, id);
  for (const id of wanted) for (const list of removable) work.drop(list, id);
  const gone = new Set(wanted.filter((id) => content.chains?.some((chain) => chain.id === id)));
  for (const link of work.all('links')) {
    if (link.upper !== undefined && 'chain' in link.upper && gone.has(link.upper.chain)) work.drop('links', link.id);
  }
  return ok(work.finish());
}

function whyNotRemove(content: CabinetContent, work: Work, id: string, wanted: readonly string[]): Problem | null {
  if (content.controller?.id === id) return makeProblem('edit-controller-stays', 'refused', { subjects: [id] });
  const chain = work.get('chains', id);
  if (chain !== undefined) {
    const staying = chainUnits(work, id).filter((unit) => !wanted.includes(unit));
    const facts = { chain: chainName(chain), count: staying.length };
    return staying.length === 0 ? null : makeProblem('edit-chain-in-use', 'refused', { subjects: [id, ...staying], facts });
  }
  const known = (['units', 'links', 'leads', 'feedbacks', 'spares'] as const).some((list) => work.get(list, id) !== undefined);
  return known ? null : unknownThing(id);
}

function removeUnit(work: Work, id: string): void {
  takeOut(work, id);
  leavePlace(work, id);
  const feed = work.all('leads').find((lead) => lead.to?.unit === id && lead.from !== undefined && lead.from.unit !== id)?.from;
  for (const lead of work.all('leads')) {
    if (lead.to?.unit === id) work.drop('leads', lead.id);
    else if (lead.from?.unit === id) {
      if (feed === undefined || lead.to?.unit === feed.unit) work.drop('leads', lead.id);
      else work.put('leads', { ...lead, from: feed });
    }
  }
  for (const feedback of work.all('feedbacks')) if (feedback.unit === id) work.drop('feedbacks', feedback.id);
  for (const link of work.all('links')) {
    const there = link.lower?.unit === id || (link.upper !== undefined && 'unit' in link.upper && link.upper.unit === id);
    if (there) work.drop('links', link.id);
  }
  for (const unit of work.all('units')) {
    if (unit.dcLinkSupply !== id) continue;
    const { dcLinkSupply: _supply, ...rest } = unit;
    work.put('units', rest);
  }
  work.drop('units', id);
}
