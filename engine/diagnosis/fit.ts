import { displayMeanings } from '../schema/index.ts';
import type { FaultChoice } from '../search/index.ts';
import type { Evaluator } from './evaluator.ts';
import type { PatternView } from './patternViews.ts';
import type { Plan, PlanObservation } from './plan.ts';

/** How one hypothesis meets the evidence in one joint pattern of presence, under one scenario. */
export interface PatternFit {
  /** Index of the prediction of every observation. */
  readonly predictions: readonly number[];
  /** Indices of the observations that counted and were predicted otherwise. */
  readonly mispredicted: readonly number[];
  /** Whether a chain is broken at each trip group. */
  readonly broken: readonly boolean[];
  /** Log likelihood of the pattern, up to a constant; patterns that the halted rule excludes are not listed at all. */
  readonly log: number;
}

/** All fits of a hypothesis under one scenario: one for each joint pattern of presence that is not excluded. */
export function listFits(evaluator: Evaluator, scenario: number, faults: readonly FaultChoice[]): readonly PatternFit[] {
  const { plan } = evaluator;
  const views = evaluator.patternsIn(scenario, faults);
  return views.map(({ predict, broken }) => {
    const predictions = plan.observations.map((_, index) => predict(index));
    const mispredicted: number[] = [];
    let log = 0;
    plan.observations.forEach((seen, index) => {
      const own = predictions[index] ?? 0;
      // A repeated reading of an equal prediction adds no factor, so it does not count.
      if (!seen.earlier.some((other) => predictions[other] === own)) {
        log += seen.logFactors[own] ?? 0;
        if (!isPredicted(seen, own)) {
          mispredicted.push(index);
        }
      }
    });
    return { predictions, mispredicted, broken, log };
  });
}

/** The only observation that counts and is mispredicted in one pattern, by index; null where there is none, or more than one. */
export function onlyMisprediction(plan: Plan, { predict }: Pick<PatternView, 'predict'>): number | null {
  let only: number | null = null;
  for (let index = 0; index < plan.observations.length; index += 1) {
    const seen = plan.observations[index];
    const own = predict(index);
    if (seen !== undefined && !isPredicted(seen, own) && !seen.earlier.some((other) => predict(other) === own)) {
      if (only !== null) {
        return null;
      }
      only = index;
    }
  }
  return only;
}

/** Whether a prediction (by index) is among what was observed. */
export function isPredicted(seen: PlanObservation, prediction: number): boolean {
  switch (seen.kind) {
    case 'display': {
      const meaning = displayMeanings[prediction] ?? 'other';
      return seen.fits.includes(meaning) || (seen.fits.includes('other') && meaning !== 'dark');
    }
    case 'report':
      return seen.fits.includes(prediction === 0 ? 'none' : prediction) || isSilent(seen);
    case 'look':
      return seen.fits.some((outcome) => seen.outcomes[prediction] === outcome);
  }
}

/** A report that tells nothing has the same factor for every gap. */
function isSilent(seen: Extract<PlanObservation, { kind: 'report' }>): boolean {
  return seen.logFactors.every((factor) => factor === 0);
}

/** The most likely fit of a hypothesis over all scenarios; null when the evidence excludes it. */
export function bestFit(evaluator: Evaluator, faults: readonly FaultChoice[]): PatternFit | null {
  let best: PatternFit | null = null;
  for (let scenario = 0; scenario < evaluator.scenarios.length; scenario += 1) {
    for (const fit of listFits(evaluator, scenario, faults)) {
      if (best === null || fit.log > best.log) {
        best = fit;
      }
    }
  }
  return best;
}

/** What an observation names, for messages. */
export function refOf(plan: Plan, index: number): PlanObservation['ref'] {
  const seen = plan.observations[index];
  if (seen === undefined) {
    throw new Error('no such observation');
  }
  return seen.ref;
}
