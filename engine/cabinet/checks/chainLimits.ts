import { jsonPointer, makeProblem, type Problem } from '../../base/index.ts';
import { countAxes } from '../../sums/index.ts';
import { chainName, type Topology } from '../../topology/index.ts';

/**
 * Axes on each chain against the limit of its control-cycle class (the user's own table). A drive whose axes are not documented
 * counts as one axis, and the problem says how many such there are.
 */
export function checkChains(topology: Topology): readonly Problem[] {
  const { content } = topology;
  const problems: Problem[] = [];
  const limits = new Map<string, number>();
  for (const [index, { cycleClass, maximumAxes }] of (content.axisLimits ?? []).entries()) {
    const name = cycleClass.trim();
    if (limits.has(name)) {
      problems.push(
        makeProblem('axis-limit-doubled', 'warning', {
          where: jsonPointer(['axisLimits', index, 'cycleClass']),
          facts: { cycleClass: name },
        }),
      );
    }
    limits.set(name, Math.min(maximumAxes, limits.get(name) ?? maximumAxes));
  }
  for (const [index, record] of (content.chains ?? []).entries()) {
    const chain = topology.chains.find((candidate) => candidate.record === record);
    const cycleClass = record.cycleClass?.trim();
    if (chain === undefined || !cycleClass) continue;
    const at = { where: jsonPointer(['chains', index, 'cycleClass']), subjects: [record.id] };
    const limit = limits.get(cycleClass);
    if (limit === undefined) {
      problems.push(makeProblem('axis-limit-missing', 'incomplete', { ...at, facts: { chain: chainName(record), cycleClass } }));
      continue;
    }
    const { axes, assumedDrives } = countAxes(topology, chain);
    if (axes > limit) {
      problems.push(
        makeProblem('axis-limit-exceeded', 'warning', {
          ...at,
          facts: { chain: chainName(record), axes, limit, cycleClass, assumedDrives },
        }),
      );
    }
  }
  return problems;
}
