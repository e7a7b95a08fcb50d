import { fail, makeProblem, ok, type Problem } from '../base/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import { findGap, putIn } from './chainWork.ts';
import { nextDesignation } from './designation.ts';
import { endOfRow, hasPlaces, nextRow, placeOf, standAt } from './places.ts';
import type { ChainSpot, EditResult, NewUnit, Place } from './types.ts';
import { Work } from './work.ts';

/** The greatest number of units that a file holds. */
export const mostUnits = 5000;

/** What is put in, and where. `at: null`: off the chain; `place`: where the first one stands, the others behind it. */
export interface Insertion {
  readonly units: readonly NewUnit[];
  readonly at: ChainSpot | null;
  readonly place?: Place;
}

/**
 * Puts new units in, one after another from the controller outwards. On a cable, the cable is split: it keeps its upper plug, and a
 * new one leads on. Without a place they stand beside their neighbour in the chain, in a row of their own where there is none, or
 * at the end of the last row; what stands in the way moves on.
 * Refused: supplies on a chain, encoder interfaces off one, a spot that is not there, more units than a file holds.
 */
export function insertUnits(content: CabinetContent, { units, at, place }: Insertion): EditResult {
  const work = new Work(content);
  const refused = refusal(content, units, at);
  if (refused !== null) return fail(refused);
  const made: string[] = [];
  for (const unit of units) {
    const id = work.freshId('u');
    const designation = unit.designation?.trim() || nextDesignation(work, unit.kind);
    const off = at === null && unit.kind !== 'supply' ? { onChain: false } : {};
    work.put('units', { ...unit, id, designation, ...off });
    made.push(id);
  }
  if (at !== null) {
    let spot = at;
    for (const id of made) {
      const gap = findGap(work, spot);
      if (!gap.ok) return gap;
      putIn(work, id, gap.value, null);
      spot = { afterUnit: id };
    }
  }
  const trouble = placeUnits(work, made, place ?? null);
  return trouble === null ? ok(work.finish()) : fail(trouble);
}

/** Whether units of this kind may go there; null when they may. */
export function whyNotInsert(kind: NewUnit['kind'], at: ChainSpot | null): Problem | null {
  if (at !== null && kind === 'supply') return makeProblem('edit-supply-on-chain', 'refused');
  if (at === null && kind === 'encoder-interface') return makeProblem('edit-encoder-off-chain', 'refused');
  return null;
}

function refusal(content: CabinetContent, units: readonly NewUnit[], at: ChainSpot | null): Problem | null {
  for (const { kind } of units) {
    const why = whyNotInsert(kind, at);
    if (why !== null) return why;
  }
  return (content.units ?? []).length + units.length > mostUnits
    ? makeProblem('edit-too-many', 'refused', { facts: { list: 'units', maximum: mostUnits } })
    : null;
}

/** Gives units their places: at `place` and behind it, or beside their neighbours. */
export function placeUnits(work: Work, ids: readonly string[], place: Place | null): Problem | null {
  if (place !== null) {
    for (const [index, id] of ids.entries()) {
      const trouble = standAt(work, id, { row: place.row, slot: place.slot + index });
      if (trouble !== null) return trouble;
    }
    return null;
  }
  if (!work.all('units').some((unit) => !ids.includes(unit.id)) || hasPlaces(work)) {
    for (const id of ids) {
      const trouble = standAt(work, id, besideNeighbour(work, id));
      if (trouble !== null) return trouble;
    }
  }
  return null;
}

/** Behind the unit above it in the chain, before the one below it, at the head of a new row, or at the end of the last one. */
function besideNeighbour(work: Work, id: string): Place {
  const above = work.linkInto(id)?.upper;
  const before = above !== undefined && 'unit' in above ? placeOf(work.get('units', above.unit) ?? {}) : null;
  if (before !== null) return { row: before.row, slot: before.slot + 1 };
  const below = work.linkFrom({ unit: id })?.lower;
  const behind = below === undefined ? null : placeOf(work.get('units', below.unit) ?? {});
  if (behind !== null) return behind;
  if (above !== undefined) return { row: nextRow(work), slot: 1 };
  const last = Math.max(1, nextRow(work) - 1);
  return { row: last, slot: endOfRow(work, last) };
}
