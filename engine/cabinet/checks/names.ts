import { jsonPointer, makeProblem, nameList, type Problem } from '../../base/index.ts';
import type { CabinetContent } from '../../schema/index.ts';

type Named = { readonly id: string; readonly designation?: string | undefined };

/**
 * Designations that are missing (a unit must have one; a cable may go without) or that two things bear. Units and the controller
 * are compared with each other, cables of a kind among themselves.
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
  doubled([...controller, ...units]);
  for (const list of ['links', 'leads', 'feedbacks', 'spares'] as const) {
    doubled((content[list] ?? []).map((record: Named, index) => ({ record, path: [list, index] })));
  }
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
