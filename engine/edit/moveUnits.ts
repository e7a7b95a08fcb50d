import { fail, makeProblem, ok, type Problem } from '../base/index.ts';
import type { CabinetContent, LinkRecord } from '../schema/index.ts';
import { buildTopology, unitName } from '../topology/index.ts';
import { findGap, putIn, takeOut, unplug } from './chainWork.ts';
import { leavePlace, placeOf, slotsOf, standAt } from './places.ts';
import type { ChainSpot, EditResult, Place } from './types.ts';
import { unknownThing, Work } from './work.ts';

/**
 * Moves units to another spot of the same or another chain, in the order given. The gaps that they leave are joined; each takes one
 * cable along, so there are as many cables as before. A unit that was off the chain is on it then.
 * Refused: supplies, a spot beside one of the units themselves, what is not there. Where they stand does not change.
 */
export function moveInChain(content: CabinetContent, ids: readonly string[], at: ChainSpot): EditResult {
  const work = new Work(content);
  const moved = [...new Set(ids)];
  const problems = moved.flatMap((id) => whyNotMove(work, id) ?? []);
  if (problems.length > 0) return fail(...problems);
  const found = settleSpot(work, moved, at);
  if (!found.ok) return found;
  let spot = found.value;
  const cables = new Map<string, LinkRecord | null>();
  for (const id of moved) cables.set(id, takeOut(work, id));
  for (const id of moved) {
    const gap = findGap(work, spot);
    if (!gap.ok) return gap;
    putIn(work, id, gap.value, cables.get(id) ?? null);
    spot = { afterUnit: id };
  }
  const edited = work.finish();
  // Put back where it was: then no cable is another one either.
  return ok(sameOrder(content, edited.cabinet) ? new Work(content).finish() : edited);
}

function sameOrder(before: CabinetContent, after: CabinetContent): boolean {
  const order = (content: CabinetContent) => {
    const { chains, orphans, offChain } = buildTopology(content).topology;
    return JSON.stringify([chains.map(({ units }) => units), orphans, offChain]);
  };
  return order(before) === order(after);
}

function whyNotMove(work: Work, id: string): Problem | null {
  const unit = work.get('units', id);
  if (unit === undefined) return unknownThing(id);
  return unit.kind === 'supply' ? makeProblem('join-supply', 'refused', { subjects: [id], facts: { unit: unitName(unit) } }) : null;
}

/** The spot in terms of what stays where it is: behind the last unit before the spot that does not move, or at the chain's port. */
function settleSpot(work: Work, moved: readonly string[], at: ChainSpot) {
  const found = findGap(work, at);
  if (!found.ok) return found;
  const gap = found.value;
  if ('above' in gap) {
    const below = gap.above.lower?.unit;
    // Nothing leads to the unit below, and it moves itself: there is no spot left.
    if (below === undefined || moved.includes(below)) return noSpot(work, below);
    return ok<ChainSpot>({ beforeUnit: below });
  }
  let port = gap.port;
  const seen = new Set<string>();
  while ('unit' in port && moved.includes(port.unit)) {
    if (seen.has(port.unit)) return noSpot(work, port.unit);
    seen.add(port.unit);
    const upper = work.linkInto(port.unit)?.upper;
    if (upper === undefined) return noSpot(work, port.unit);
    port = upper;
  }
  return ok<ChainSpot>('chain' in port ? { chain: port.chain, position: 1 } : { afterUnit: port.unit });
}

function noSpot(work: Work, id: string | undefined) {
  const unit = id === undefined ? undefined : work.get('units', id);
  const facts = { unit: unit === undefined ? (id ?? '') : unitName(unit) };
  return fail<ChainSpot>(makeProblem('edit-no-spot', 'refused', { subjects: id === undefined ? [] : [id], facts }));
}

/**
 * Takes drives off their chains: they stay in the cabinet, marked as on no chain, the chains are joined behind them, and the cables
 * that are left over go. What is on no chain already stays as it is.
 * Refused: supplies, encoder interfaces (they are on a chain or nowhere), what is not there.
 */
export function takeOffChain(content: CabinetContent, ids: readonly string[]): EditResult {
  const work = new Work(content);
  const units = [...new Set(ids)];
  const problems = units.flatMap((id) => whyNotMove(work, id) ?? whyNotOff(work, id) ?? []);
  if (problems.length > 0) return fail(...problems);
  for (const id of units) {
    unplug(work, id);
    const unit = work.get('units', id);
    if (unit !== undefined && unit.onChain !== false) work.put('units', { ...unit, onChain: false });
  }
  return ok(work.finish());
}

function whyNotOff(work: Work, id: string): Problem | null {
  return work.get('units', id)?.kind === 'encoder-interface' ? makeProblem('edit-encoder-off-chain', 'refused', { subjects: [id] }) : null;
}

/**
 * Moves units to a place in a row, one behind another from the slot on; the slot is counted as things stand before the move. What
 * stands there moves on, and the rows that they leave close up. The chain does not change.
 */
export function moveToPlace(content: CabinetContent, ids: readonly string[], place: Place): EditResult {
  const work = new Work(content);
  let slot = place.slot;
  for (const id of new Set(ids)) {
    const unit = work.get('units', id);
    if (unit === undefined) return fail(unknownThing(id));
    const left = placeOf(unit);
    const standsOn = left !== null && left.row === place.row && left.slot < slot && isFull(work, place.row, left.slot, slot);
    leavePlace(work, id);
    if (standsOn) slot -= 1;
  }
  for (const [index, id] of [...new Set(ids)].entries()) {
    const trouble = standAt(work, id, { row: place.row, slot: slot + index });
    if (trouble !== null) return fail(trouble);
  }
  return ok(work.finish());
}

/** Whether every slot from `from` up to the one before `to` is taken: then what stands there closes up when one of them leaves. */
function isFull(work: Work, row: number, from: number, to: number): boolean {
  const taken = slotsOf(work, row);
  for (let slot = from; slot < to; slot += 1) if (!taken.has(slot)) return false;
  return true;
}
