import { jsonPointer, makeProblem, nameList, type Problem } from '../../base/index.ts';
import type { CabinetContent } from '../../schema/index.ts';

type Named = { readonly id: string; readonly designation?: string | undefined };

/**
 * Designations that are missing (a unit must have one; a cable may go without) or that two things of the cabinet bear, of whatever
 * kind: a reference designation names one object (IEC 81346-1, from memory).
 */
export function checkNames(content: CabinetContent): readonly Problem[] {
  const problems: Problem[] = [];
  const units = (content.units ?? []).map((unit, index) => ({ record: unit as Named, path: ['units', index] as (string | number)[] }));
  const controller =
    content.controller === undefined ? [] : [{ record: content.controller as Named, path: ['controller'] as (string | number)[] }];
  for (const { record, path } of [...controller, ...units]) {
    if (record.designation?.trim()) continue;
    const where = jsonPointer([...path, 'designation']);
    const thing = path[0] === 'controller' ? 'controller' : 'unit';
    problems.push(makeProblem('designation-missing', 'incomplete', { where, subjects: [record.id], facts: { thing, id: record.id } }));
  }
  const listed = (list: 'links' | 'leads' | 'feedbacks' | 'spares') =>
    (content[list] ?? []).map((record: Named, index) => ({ record, path: [list, index] }));
  doubled([...controller, ...units, ...listed('links'), ...listed('leads'), ...listed('feedbacks')]);
  // A spare lies in the store, and may bear the designation of what it is kept for.
  doubled(listed('spares'));
  return problems;

  function doubled(things: readonly { record: Named; path: readonly (string | number)[] }[]) {
    const byName = new Map<string, { record: Named; path: readonly (string | number)[] }[]>();
    for (const thing of things) {
      const name = thing.record.designation?.trim();
      if (name) byName.set(name, [...(byName.get(name) ?? []), thing]);
    }
    for (const [designation, same] of byName) {
      const second = same[1];
      if (second === undefined) continue;
      problems.push(
        makeProblem('designation-doubled', 'warning', {
          where: jsonPointer([...second.path, 'designation']),
          subjects: same.map(({ record }) => record.id),
          facts: { designation, ids: nameList(same.map(({ record }) => record.id)), count: same.length },
        }),
      );
    }
  }
}
