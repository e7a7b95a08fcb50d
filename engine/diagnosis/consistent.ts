import type { Evidence, Fault } from '../schema/index.ts';
import type { FaultChoice } from '../search/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { Evaluator } from './evaluator.ts';
import { listFits } from './fit.ts';
import { membersByEffect } from './members.ts';
import { faultOfChoice, prepare } from './searched.ts';

/**
 * All visited hypotheses of one or two faults, each with its presence, that predict every observation in some pattern
 * of presence, under some scenario. For proofs and teaching: there may be thousands, and most are far-fetched pairs.
 */
export function consistentHypotheses(cabinet: Cabinet, evidence: Evidence): readonly (readonly Fault[])[] {
  const prepared = prepare(cabinet, evidence);
  const evaluator = new Evaluator(prepared.plan, prepared.space, prepared.scenarios, cabinet, 0);
  const excluded = new Set(prepared.space.excludes.flatMap(([a, b]) => [`${a},${b}`, `${b},${a}`]));
  const isAllowed = (a: FaultChoice, b: FaultChoice) => a.element !== b.element && !excluded.has(`${a.element},${b.element}`);
  const fits = (faults: readonly FaultChoice[]) =>
    evaluator.scenarios.some((_, scenario) => listFits(evaluator, scenario, faults).some(({ mispredicted }) => mispredicted.length === 0));
  const found: (readonly FaultChoice[])[] = [];
  // What is predicted depends on the effects alone: one question for each pair of effects answers for all its members.
  const classes = [...membersByEffect(evaluator).values()];
  classes.forEach((members, index) => {
    const [first] = members;
    if (first !== undefined && fits([first.choice])) {
      found.push(...members.map(({ choice }) => [choice]));
    }
    for (const others of classes.slice(index)) {
      const pairs = members.flatMap(({ choice: a }, i) =>
        others.flatMap(({ choice: b }, j) => ((others !== members || i < j) && isAllowed(a, b) ? [[a, b] as const] : [])),
      );
      if (pairs[0] !== undefined && fits(pairs[0])) {
        found.push(...pairs);
      }
    }
  });
  return found.map((faults) => faults.map((choice) => faultOfChoice(prepared, choice)));
}
