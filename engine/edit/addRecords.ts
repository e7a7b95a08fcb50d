import { fail, makeProblem, ok } from '../base/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import type { EditResult } from './types.ts';
import { freeSharedId, unknownThing, Work } from './work.ts';

/** Lists of things that stand nowhere on the drawing; a line is added to them by hand. */
export type PlainList = 'spares' | 'fibres' | 'types';

const limits = { spares: 2000, fibres: 200, types: 500 } as const;

/** Adds an empty line: a spare cable, or a fibre or type of equipment of a name. */
export function addRecord(content: CabinetContent, list: PlainList, name: string): EditResult {
  const work = new Work(content);
  if (work.all(list).length >= limits[list]) {
    return fail(makeProblem('edit-too-many', 'refused', { facts: { list, maximum: limits[list] } }));
  }
  if (list === 'spares') work.put('spares', { id: work.freshId('s'), kind: 'cable' });
  else work.put(list, { id: freeSharedId(work.all(list), list === 'types' ? 'type-' : 'fibre-'), name });
  return ok(work.finish());
}

/** Takes a fibre or a type of equipment out, unless something is made of it. */
export function removeShared(content: CabinetContent, list: 'fibres' | 'types', id: string): EditResult {
  const work = new Work(content);
  const record = work.get(list, id);
  if (record === undefined) return fail(unknownThing(id));
  const users =
    list === 'fibres' ? work.all('links').filter(({ fibre }) => fibre === id) : work.all('units').filter(({ type }) => type === id);
  if (users.length > 0) {
    const facts = { thing: record.name.trim() || id, count: users.length };
    return fail(makeProblem('edit-record-in-use', 'refused', { subjects: users.map((user) => user.id), facts }));
  }
  work.drop(list, id);
  return ok(work.finish());
}
