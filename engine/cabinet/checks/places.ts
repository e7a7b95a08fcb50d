import { jsonPointer, makeProblem, nameList, type Problem } from '../../base/index.ts';
import type { CabinetContent } from '../../schema/index.ts';

/** Two things in one slot of one row, and rows that are named twice. */
export function checkPlaces(content: CabinetContent): readonly Problem[] {
  const problems: Problem[] = [];
  const slots = new Map<string, { id: string; name: string; where: string; row: number; slot: number }[]>();
  const things = [
    ...(content.controller === undefined ? [] : [{ thing: content.controller, path: ['controller'] as (string | number)[] }]),
    ...(content.units ?? []).map((thing, index) => ({ thing, path: ['units', index] as (string | number)[] })),
  ];
  for (const { thing, path } of things) {
    if (thing.row === undefined || thing.slot === undefined) continue;
    const key = `${thing.row}/${thing.slot}`;
    const entry = {
      id: thing.id,
      name: thing.designation.trim() || thing.id,
      where: jsonPointer([...path, 'slot']),
      row: thing.row,
      slot: thing.slot,
    };
    slots.set(key, [...(slots.get(key) ?? []), entry]);
  }
  for (const same of slots.values()) {
    const [first, second] = same;
    if (first === undefined || second === undefined) continue;
    const facts = { row: first.row, slot: first.slot, units: nameList(same.map(({ name }) => name)), count: same.length };
    problems.push(makeProblem('place-doubled', 'warning', { where: second.where, subjects: same.map(({ id }) => id), facts }));
  }
  const rows = new Set<number>();
  for (const [index, { row }] of (content.rows ?? []).entries()) {
    if (rows.has(row)) problems.push(makeProblem('row-doubled', 'warning', { where: jsonPointer(['rows', index, 'row']), facts: { row } }));
    rows.add(row);
  }
  return problems;
}
