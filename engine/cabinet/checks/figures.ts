import { jsonPointer, makeProblem, type Problem } from '../../base/index.ts';
import type { CabinetContent, TypeRecord } from '../../schema/index.ts';
import { chainName, unitName } from '../../topology/index.ts';

/** What a cabinet must have at all, and pairs of figures of which the lower one is above the higher one. */
export function checkFigures(content: CabinetContent): readonly Problem[] {
  const problems: Problem[] = [];
  if ((content.units ?? []).length === 0) problems.push(makeProblem('cabinet-empty', 'incomplete', { where: '/units' }));
  if (content.controller === undefined && (content.chains ?? []).length > 0) {
    problems.push(makeProblem('controller-missing', 'incomplete', { where: '/controller' }));
  }
  for (const [index, type] of (content.types ?? []).entries())
    optics(type.optics, ['types', index, 'optics'], { id: type.id, name: type.name });
  for (const [index, chain] of (content.chains ?? []).entries()) {
    optics(chain.optics, ['chains', index, 'optics'], { id: chain.id, name: chainName(chain) });
  }
  for (const [index, unit] of (content.units ?? []).entries()) {
    const path = ['units', index, 'control24'];
    ordered(unit.control24?.minimumV, unit.control24?.maximumV, [...path, 'minimumV'], 'control-voltage', {
      id: unit.id,
      name: unitName(unit),
    });
  }
  return problems;

  function optics(figures: TypeRecord['optics'], path: readonly (string | number)[], owner: { id: string; name: string }) {
    ordered(figures?.launchPowerMinDbm, figures?.launchPowerMaxDbm, [...path, 'launchPowerMinDbm'], 'launch-power', owner);
    ordered(figures?.sensitivityDbm, figures?.overloadDbm, [...path, 'sensitivityDbm'], 'receive-power', owner);
  }

  function ordered(
    low: number | undefined,
    high: number | undefined,
    path: readonly (string | number)[],
    quantity: string,
    owner: { id: string; name: string },
  ) {
    if (low === undefined || high === undefined || low <= high) return;
    const facts = { thing: owner.name, quantity, low, high };
    problems.push(makeProblem('figures-crossed', 'warning', { where: jsonPointer(path), subjects: [owner.id], facts }));
  }
}
