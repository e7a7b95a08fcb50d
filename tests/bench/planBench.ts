import { Rules } from '../../engine/plan/decision.ts';
import { ExactPlanner } from '../../engine/plan/exact.ts';
import { Random } from '../generators/random.ts';
import { drawDecision } from '../plan/decisions.ts';
import { cheapestFirst, costOf, halfSplit, mostProbableFirst, payIn, planned, type Strategy } from './strategies.ts';

/*
 * How good the planner is, on drawn repairs of a fixed generator and seed, with suspects, looks, acts, misreadings,
 * bad spares, faults that come and go, and changes of the machine's state that cost.
 */

const seed = 20_261_126;
const strategies: Readonly<Record<string, (rules: Rules) => Strategy>> = {
  planner: planned,
  'most probable first': mostProbableFirst,
  'cheapest first': cheapestFirst,
  'half-split': halfSplit,
};
const wrongWorld = { ratesOff: 3, misreading: 0.04, wrongBehaviour: 0.1, intermittent: 0.05 };
/** An exact plan of more situations is given up. */
const mostSituations = 20_000;

const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / Math.max(1, list.length);
const percent = (share: number) => `${(share * 100).toFixed(2)} %`;

/** Prints quality over `count` drawn repairs. */
export function benchPlans(count: number): void {
  const over: number[] = [];
  const expected: Record<string, number[]> = {};
  const paid: Record<string, number[]> = {};
  for (let index = 0; index < count; index += 1) {
    const random = new Random(seed + index);
    const decision = drawDecision(seed + index, { worlds: random.whole(6, 8), looks: random.whole(4, 5), acts: random.whole(4, 5) });
    const rules = new Rules(decision);
    const best = new ExactPlanner(rules, mostSituations).best(rules.begin());
    for (const [name, make] of Object.entries(strategies)) {
      const strategy = make(rules);
      const cost = costOf(rules, strategy);
      expected[name] = [...(expected[name] ?? []), cost];
      if (name === 'planner' && best !== null) over.push(cost / best.cost - 1);
      // The same luck for every strategy.
      const luck = new Random(seed ^ (index * 2 + 1));
      paid[name] = [...(paid[name] ?? []), payIn(rules, strategy, luck, wrongWorld)];
    }
  }
  console.log(
    `\nPlanner on ${count} drawn repairs, 6 to 8 suspects, 8 to 10 steps; look-ahead against the exact optimum where that is computable.`,
  );
  console.log(`exact optimum known for ${over.length}; above it: mean ${percent(mean(over))}, worst ${percent(Math.max(...over))}`);
  console.log(
    `\n${'strategy'.padEnd(24)}${'expected'.padStart(12)}${'× planner'.padStart(12)}${'paid in a wrong world'.padStart(24)}${'× planner'.padStart(12)}`,
  );
  for (const name of Object.keys(strategies)) {
    const [cost, real] = [mean(expected[name] ?? []), mean(paid[name] ?? [])];
    const [ownCost, ownReal] = [mean(expected['planner'] ?? []), mean(paid['planner'] ?? [])];
    console.log(
      `${name.padEnd(24)}${cost.toFixed(1).padStart(12)}${(cost / ownCost).toFixed(2).padStart(12)}${real.toFixed(1).padStart(24)}${(real / ownReal).toFixed(2).padStart(12)}`,
    );
  }
  console.log('Wrong world: rates three times off, misreadings doubled, wrong behaviour in 10 % of the cases, 5 % come and go.');
}
