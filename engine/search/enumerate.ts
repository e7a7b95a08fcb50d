import { sumAllOdds } from './classes.ts';
import type { FaultChoice, SearchHypothesis, SearchProblem, SearchResult } from './types.ts';

/**
 * The same search by visiting every combination on its own, of any size. Plain and slow; used beyond two faults, for minimal
 * hypotheses only, and in tests beside the fast search.
 */
export function enumerate<Prediction>(problem: SearchProblem<Prediction>): SearchResult | null {
  const excluded = new Set((problem.excludes ?? []).flatMap(([a, b]) => [`${a},${b}`, `${b},${a}`]));
  const found: { faults: readonly FaultChoice[]; odds: number; likelihood: number }[] = [];
  let visitedOdds = 0;
  let visited = 0;
  const step = (from: number, faults: readonly FaultChoice[], odds: number): void => {
    if (faults.length <= problem.maxFaults) {
      visited += 1;
      visitedOdds += faults.length === 0 ? 0 : odds;
      const likelihood = weigh(problem, faults);
      if (likelihood > 0) {
        found.push({ faults, odds, likelihood });
      }
    }
    if (faults.length >= problem.maxFaults) {
      return;
    }
    for (let element = from; element < problem.elements.length; element += 1) {
      if (faults.some((chosen) => excluded.has(`${chosen.element},${element}`))) {
        continue;
      }
      problem.elements[element]?.modes.forEach((mode, index) => {
        if (mode.odds > 0) {
          step(element + 1, [...faults, { element, mode: index }], odds * mode.odds);
        }
      });
    }
  };
  step(0, [], 1);
  const kept =
    problem.minimalOnly === true ? found.filter((one) => !found.some((other) => isProperSubset(other.faults, one.faults))) : found;
  const total = kept.reduce((sum, { odds, likelihood }) => sum + odds * likelihood, 0);
  const hypotheses: SearchHypothesis[] = kept
    .map((one) => ({ ...one, probability: total > 0 ? (one.odds * one.likelihood) / total : 0 }))
    // Array.prototype.sort is stable: equal ones stay in the order of elements and modes.
    .sort((a, b) => b.probability - a.probability);
  const modes = problem.elements.map((element, e) =>
    element.modes.map((_, m) =>
      hypotheses.reduce(
        (sum, { faults, probability }) => (faults.some((f) => f.element === e && f.mode === m) ? sum + probability : sum),
        0,
      ),
    ),
  );
  return {
    total,
    visitedOdds,
    unvisitedOdds: Math.max(0, sumAllOdds(problem) - 1 - visitedOdds),
    visited,
    nothing: hypotheses.find(({ faults }) => faults.length === 0)?.probability ?? 0,
    modes,
    hypotheses: hypotheses.slice(0, problem.keep ?? hypotheses.length),
    classes: hypotheses.map(({ faults, likelihood, probability }) => ({ example: faults, likelihood, probability })),
  };
}

function weigh<Prediction>(problem: SearchProblem<Prediction>, faults: readonly FaultChoice[]): number {
  const prediction = problem.predict(faults);
  return problem.observations.reduce((product, observation) => product * observation.likelihood(prediction), 1);
}

function isProperSubset(small: readonly FaultChoice[], large: readonly FaultChoice[]): boolean {
  return small.length < large.length && small.every((a) => large.some((b) => a.element === b.element && a.mode === b.mode));
}
