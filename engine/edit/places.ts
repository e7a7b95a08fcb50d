import { makeProblem, type Problem } from '../base/index.ts';
import type { Place } from './types.ts';
import type { Work } from './work.ts';

const mostSlots = 9999;
const mostRows = 999;

type Standing = { readonly id: string; readonly row?: number | undefined; readonly slot?: number | undefined };

/** Whether units of this cabinet have places at all; in an empty one the first unit gets one. */
export function hasPlaces(work: Work): boolean {
  const units = work.all('units');
  return units.length === 0 || units.some(({ row, slot }) => row !== undefined && slot !== undefined);
}

export function placeOf({ row, slot }: { readonly row?: number | undefined; readonly slot?: number | undefined }): Place | null {
  return row === undefined || slot === undefined ? null : { row, slot };
}

/** The first row in which nothing stands yet, below all others. */
export function nextRow(work: Work): number {
  return 1 + Math.max(0, ...everything(work).map(({ row }) => row ?? 0));
}

/** The slot behind the last thing of a row. */
export function endOfRow(work: Work, row: number): number {
  return 1 + Math.max(0, ...everything(work).map((thing) => (thing.row === row ? (thing.slot ?? 0) : 0)));
}

/** Puts a unit behind the last thing of a row, in a slot in which nothing stands. */
export function standBehind(work: Work, id: string, { row, slot }: Place): Problem | null {
  const unit = work.get('units', id);
  if (!isRow(row) || slot > mostSlots) return noRoom(row);
  if (unit !== undefined) work.put('units', { ...unit, row, slot });
  return null;
}

/** The slots of a row in which something stands. */
export function slotsOf(work: Work, row: number): ReadonlySet<number> {
  return new Set(everything(work).flatMap((thing) => (thing.row === row && thing.slot !== undefined ? [thing.slot] : [])));
}

/** Puts a unit into a slot; what stands there moves one slot on, and so does what stands in its way, up to the next empty slot. */
export function standAt(work: Work, id: string, { row, slot }: Place): Problem | null {
  const unit = work.get('units', id);
  if (unit === undefined) return null;
  if (!isRow(row) || slot < 0 || !Number.isInteger(slot)) return noRoom(row);
  let free = slot;
  const inRow = new Map(everything(work).flatMap((thing) => (thing.row === row && thing.id !== id ? [[thing.slot ?? -1, thing]] : [])));
  while (inRow.has(free)) free += 1;
  if (free > mostSlots) return noRoom(row);
  for (let at = free - 1; at >= slot; at -= 1) moveThing(work, inRow.get(at), at + 1);
  work.put('units', { ...unit, row, slot });
  return null;
}

/** Takes a unit out of its slot: what stood right behind it, without an empty slot between, moves up by one. */
export function leavePlace(work: Work, id: string): void {
  const place = placeOf(work.get('units', id) ?? {});
  const unit = work.get('units', id);
  if (place === null || unit === undefined) return;
  const { row: _row, slot: _slot, ...rest } = unit;
  work.put('units', rest);
  const inRow = new Map(everything(work).flatMap((thing) => (thing.row === place.row ? [[thing.slot ?? -1, thing]] : [])));
  // Two things in one slot: the other one still fills it.
  if (inRow.has(place.slot)) return;
  for (let at = place.slot + 1; inRow.has(at); at += 1) moveThing(work, inRow.get(at), at - 1);
}

function moveThing(work: Work, thing: Standing | undefined, slot: number): void {
  const unit = thing && work.get('units', thing.id);
  if (unit) work.put('units', { ...unit, slot });
  else if (thing && work.rest.controller?.id === thing.id)
    work.setRest({ controller: { ...work.rest.controller, slot } }, work.rest.controller.id);
}

function everything(work: Work): readonly Standing[] {
  return [...work.all('units'), ...(work.rest.controller === undefined ? [] : [work.rest.controller])];
}

function isRow(row: number): boolean {
  return row >= 0 && row <= mostRows && Number.isInteger(row);
}

function noRoom(row: number): Problem {
  return makeProblem('edit-row-full', 'refused', { facts: { row } });
}
