import { jsonPointer, makeProblem, nameList, type Problem } from '../../base/index.ts';
import type { Topology } from '../../topology/index.ts';
import { unknownOfType } from '../behaviour.ts';

/** The diagnosis averages over the behaviour of at most this many unknown types at once; more are set to their defaults. */
export const mostUnknownTypes = 2;

/** Types of unknown behaviour that units use, when there are too many; and codes that stand twice in a legend. */
export function checkBehaviours({ content }: Topology): readonly Problem[] {
  const problems: Problem[] = [];
  // A supply has no optical ports, so nothing of its behaviour is asked.
  const used = new Set((content.units ?? []).filter(({ kind }) => kind !== 'supply').map(({ type }) => type));
  const unknown = (content.types ?? []).filter((type) => used.has(type.id) && unknownOfType(type).length > 0);
  if (unknown.length > mostUnknownTypes) {
    const facts = { types: nameList(unknown.map((type) => type.name.trim() || type.id)), count: unknown.length, limit: mostUnknownTypes };
    problems.push(makeProblem('unknown-behaviours-too-many', 'warning', { where: '/types', subjects: unknown.map(({ id }) => id), facts }));
  }
  for (const [index, legend] of (content.legends ?? []).entries()) {
    const seen = new Set<string>();
    for (const [at, { code }] of legend.codes.entries()) {
      const written = code.trim();
      if (seen.has(written)) {
        const where = jsonPointer(['legends', index, 'codes', at, 'code']);
        problems.push(
          makeProblem('legend-code-doubled', 'warning', { where, subjects: [legend.id], facts: { legend: legend.name, code: written } }),
        );
      }
      seen.add(written);
    }
  }
  return problems;
}
