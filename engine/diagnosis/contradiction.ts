import type { FaultChoice, SearchMode } from '../search/index.ts';
import { bestFit, onlyMisprediction, refOf } from './fit.ts';
import { faultOf, leastForOneMiss, type Searched } from './searched.ts';
import type { Contradiction } from './types.ts';

/** Beyond this many different effects, pairs that mispredict one observation are sought among the likeliest effects only. */
const pairLimit = 400;

/**
 * The contradiction, if there is one: the most probable hypothesis mispredicts an observation that counted. Named are the
 * observations without which some visited hypothesis predicts all the rest (domain section 6).
 */
export function findContradiction(searched: Searched): Contradiction | null {
  const { result, evaluator, prepared } = searched;
  const [best] = result.hypotheses;
  if (best === undefined) {
    return null;
  }
  const fit = bestFit(evaluator, best.faults);
  if (fit === null || fit.mispredicted.length === 0) {
    return null;
  }
  const without = new Map<number, { readonly faults: readonly FaultChoice[]; readonly odds: number }>();
  const consider = (faults: readonly FaultChoice[], odds: number) => {
    for (let scenario = 0; scenario < evaluator.scenarios.length; scenario += 1) {
      for (const view of evaluator.patternsIn(scenario, faults)) {
        const only = onlyMisprediction(prepared.plan, view);
        if (only !== null && odds > (without.get(only)?.odds ?? 0)) {
          without.set(only, { faults, odds });
        }
      }
    }
  };
  consider([], 1);
  const likeliest = likeliestByEffect(searched);
  const least = leastForOneMiss(prepared.plan, prepared.scenarios, searched.offset);
  for (const { choice, odds, likelihood } of likeliest) {
    if (likelihood >= least) {
      consider([choice], odds);
    }
  }
  for (const [one, other] of listClosePairs(searched, likeliest.slice(0, pairLimit))) {
    if (isAllowed(searched, one.choice, other.choice)) {
      consider([one.choice, other.choice], one.odds * other.odds);
    }
  }
  const named = [...without].sort(([, a], [, b]) => b.odds - a.odds);
  return {
    mispredicted: fit.mispredicted.map((index) => refOf(prepared.plan, index)),
    withoutWhich: named.map(([index, { faults }]) => ({
      observation: refOf(prepared.plan, index),
      instead: faults.map((choice) => faultOf(searched, choice)),
    })),
  };
}

interface Likely {
  readonly choice: FaultChoice;
  readonly odds: number;
  readonly likelihood: number;
}

/** The likeliest mode of every effect, by its weight alone. */
function likeliestByEffect({ evaluator }: Searched): readonly Likely[] {
  const byEffect = new Map<string, { mode: SearchMode; choice: FaultChoice }>();
  evaluator.book.elements.forEach((element, e) => {
    element.modes.forEach((mode, m) => {
      const effect = mode.effect ?? `${e}/${m}`;
      const known = byEffect.get(effect);
      if (known === undefined || mode.odds > known.mode.odds) {
        byEffect.set(effect, { mode, choice: { element: e, mode: m } });
      }
    });
  });
  return [...byEffect.values()]
    .map(({ mode, choice }) => ({ choice, odds: mode.odds, likelihood: evaluator.likelihood([choice]) }))
    .sort((a, b) => b.odds * b.likelihood - a.odds * a.likelihood);
}

/** The close pairs of a search among some effects, by the likeliest mode of each; in the order of the list. */
function listClosePairs({ evaluator, closePairs }: Searched, some: readonly Likely[]): readonly (readonly [Likely, Likely])[] {
  const ranks = new Map(some.map(({ choice }, rank) => [evaluator.effectOf(choice), rank]));
  const pairs: (readonly [Likely, Likely])[] = [];
  const places = closePairs.flatMap(([first, second]) => {
    const [a, b] = [ranks.get(evaluator.effectOf(first)), ranks.get(evaluator.effectOf(second))];
    return a === undefined || b === undefined ? [] : [Math.min(a, b) * some.length + Math.max(a, b)];
  });
  for (const place of places.sort((a, b) => a - b)) {
    const [one, other] = [some[Math.floor(place / some.length)], some[place % some.length]];
    if (one !== undefined && other !== undefined) {
      pairs.push([one, other]);
    }
  }
  return pairs;
}

function isAllowed({ prepared }: Searched, a: FaultChoice, b: FaultChoice): boolean {
  return (
    a.element !== b.element &&
    !prepared.space.excludes.some(
      ([one, other]) => (one === a.element && other === b.element) || (one === b.element && other === a.element),
    )
  );
}
