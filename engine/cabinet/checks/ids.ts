import { jsonPointer, makeProblem, type Problem, type Severity } from '../../base/index.ts';
import type { CabinetContent } from '../../schema/index.ts';

type Identified = readonly { readonly id: string }[] | undefined;

/**
 * Ids that are given twice. Everything that stands in the cabinet (controller, chains, units, links, leads, feedback cables,
 * spares) shares one set of ids, since observations, faults and problems name things by their id alone; equipment types, legends,
 * fibre types and photos each have their own, and so have the outputs of each supply.
 *
 * @param severity `refused` where a file is read, `error` where a document in work is checked
 * @param base pointer to the cabinet inside what was read
 */
export function checkIds(content: CabinetContent, severity: Severity, base = ''): readonly Problem[] {
  const problems: Problem[] = [];
  const standing = new Map<string, string>();
  if (content.controller !== undefined) standing.set(content.controller.id, `${base}/controller`);
  for (const list of ['chains', 'units', 'links', 'leads', 'feedbacks', 'spares'] as const) {
    note(content[list], [list], standing);
  }
  for (const list of ['types', 'legends', 'fibres', 'photos'] as const) {
    note(content[list], [list], new Map());
  }
  for (const [index, unit] of (content.units ?? []).entries()) {
    note(unit.supply?.outputs, ['units', index, 'supply', 'outputs'], new Map());
  }
  return problems;

  function note(records: Identified, path: readonly (string | number)[], seen: Map<string, string>) {
    for (const [index, { id }] of (records ?? []).entries()) {
      const second = base + jsonPointer([...path, index]);
      const first = seen.get(id);
      if (first === undefined) seen.set(id, second);
      else problems.push(makeProblem('id-duplicate', severity, { where: `${second}/id`, subjects: [id], facts: { id, first, second } }));
    }
  }
}
