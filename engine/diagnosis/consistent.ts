import type { Evidence, Fault } from '../schema/index.ts';
import type { FaultChoice } from '../search/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { Evaluator } from './evaluator.ts';
import { listFits } from './fit.ts';
import { prepare } from './searched.ts';

/**
 * All visited hypotheses of one or two faults, each with its presence, that predict every observation in some pattern
 * of presence, under some scenario. For proofs and teaching: visits every pair one by one, so only for small cabinets.
 */
export function consistentHypotheses(cabinet: Cabinet, evidence: Evidence): readonly (readonly Fault[])[] {
  const prepared = prepare(cabinet, evidence);
  const evaluator = new Evaluator(prepared.plan, prepared.space, prepared.scenarios, cabinet, 0);
  const choices: FaultChoice[] = prepared.space.elements.flatMap((element, e) => element.modes.map((_, m) => ({ element: e, mode: m })));
  const excluded = new Set(prepared.space.excludes.flatMap(([a, b]) => [`${a},${b}`, `${b},${a}`]));
  const fits = (faults: readonly FaultChoice[]) =>
    evaluator.scenarios.some((_, scenario) => listFits(evaluator, scenario, faults).some(({ mispredicted }) => mispredicted.length === 0));
  const found: (readonly FaultChoice[])[] = [];
  choices.forEach((one, index) => {
    if (fits([one])) {
      found.push([one]);
    }
    for (const other of choices.slice(index + 1)) {
      if (one.element !== other.element && !excluded.has(`${one.element},${other.element}`) && fits([one, other])) {
        found.push([one, other]);
      }
    }
  });
  return found.map((faults) =>
    faults.map(({ element, mode }) => {
      const fault = prepared.space.faults[element]?.[mode];
      if (fault === undefined) {
        throw new Error('a choice outside the fault space');
      }
      return fault;
    }),
  );
}
