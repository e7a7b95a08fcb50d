import { Rules } from '../../engine/plan/decision.ts';
import { ExactPlanner } from '../../engine/plan/exact.ts';
import { Random } from '../generators/random.ts';
import { drawDecision } from '../plan/decisions.ts';
import { cheapestFirst, costOf, halfSplit, mostProbableFirst, planned, type Strategy } from './strategies.ts';
import { Diagnoses, drawRepair, payFor } from './wrongWorld.ts';

/*
 * How good the planner is, on a fixed generator and seed: on drawn repairs with suspects, looks, acts, misreadings, bad spares, faults that
 * come and go, and changes of the machine's state that cost; and in repairs of generated cabinets.
 */

const seed = 20_261_126;
const strategies: Readonly<Record<string, (rules: Rules) => Strategy>> = {
  planner: planned,
  'most probable first': mostProbableFirst,
  'cheapest first': cheapestFirst,
  'half-split': halfSplit,
};
/** An exact plan of more situations is given up. */
const mostSituations = 20_000;

const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / Math.max(1, list.length);
const percent = (share: number) => `${(share * 100).toFixed(2)} %`;

/** Strategies against each other: their means, and how many times the planner's that is. */
function printStrategies(title: string, costs: Readonly<Record<string, readonly number[]>>): void {
  const own = mean(costs['planner'] ?? []);
  console.log(`\n${title.padEnd(48)}${'mean'.padStart(10)}${'× planner'.padStart(12)}`);
  for (const name of Object.keys(strategies)) {
    const cost = mean(costs[name] ?? []);
    console.log(`${name.padEnd(48)}${cost.toFixed(1).padStart(10)}${(cost / own).toFixed(2).padStart(12)}`);
  }
}

function progress(done: number, count: number, since: number): void {
  if (done % 50 === 0) console.log(`  ${done} of ${count}, ${((performance.now() - since) / 1_000).toFixed(0)} s`);
}

/** Prints how good plans are over `count` drawn repairs, by the rules they reckon with. */
export function benchPlans(count: number): void {
  console.log(
    `\nPlanner on ${count} drawn repairs, 6 to 8 suspects, 8 to 10 steps; look-ahead against the exact optimum where computable.`,
  );
  const over: number[] = [];
  const expected: Record<string, number[]> = {};
  const since = performance.now();
  for (let index = 0; index < count; index += 1) {
    const random = new Random(seed + index);
    const decision = drawDecision(seed + index, { worlds: random.whole(6, 8), looks: random.whole(4, 5), acts: random.whole(4, 5) });
    const rules = new Rules(decision);
    const best = new ExactPlanner(rules, mostSituations).best(rules.begin());
    for (const [name, make] of Object.entries(strategies)) {
      const cost = costOf(rules, make(rules));
      expected[name] = [...(expected[name] ?? []), cost];
      if (name === 'planner' && best !== null) over.push(cost / best.cost - 1);
    }
    progress(index + 1, count, since);
  }
  console.log(`exact optimum known for ${over.length}; above it: mean ${percent(mean(over))}, worst ${percent(Math.max(...over))}`);
  printStrategies('expected cost', expected);
}

/** Prints what repairs of `count` generated cabinets really cost, where nature is as reckoned with and where it is not. */
export function benchWrongWorld(count: number): void {
  console.log(
    `\nRepairs of ${count} generated cabinets of 4 to 6 units, carried out step by step with the simulation as nature; minutes paid.`,
  );
  console.log('Wrong world: rates three times off, misreadings doubled, wrong behaviour in 10 % of the cases, 5 % come and go.');
  for (const isWrong of [false, true]) {
    const paid: Record<string, number[]> = {};
    const since = performance.now();
    for (let index = 0; index < count; index += 1) {
      const drawn = drawRepair(seed + index, isWrong);
      const diagnoses = new Diagnoses(drawn.cabinet);
      for (const [name, make] of Object.entries(strategies)) {
        // The same luck for every strategy.
        paid[name] = [...(paid[name] ?? []), payFor(drawn, make, diagnoses, new Random(seed ^ (index * 2 + 1)))];
      }
      progress(index + 1, count, since);
    }
    printStrategies(isWrong ? 'paid in a wrong world' : 'paid in the world as reckoned with', paid);
  }
}
