import type { Evidence } from '../schema/index.ts';
import { type FaultChoice, type SearchResult, search } from '../search/index.ts';
import { itemKey } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { type FaultSpace, listFaultSpace } from './elements.ts';
import { Evaluator } from './evaluator.ts';
import { type Plan, planEvidence } from './plan.ts';
import { defaultDaysSinceWhole, usesAssumedRates } from './rates.ts';
import { listScenarios, type Scenario } from './scenarios.ts';
import type { DiagnosisNote, HypothesisFault } from './types.ts';

export interface DiagnosisOptions {
  /** How many hypotheses to list. Default 200. */
  readonly keep?: number;
  /** Called now and then with the share of the work done; answering `false` gives up (the answer is then null). */
  readonly onProgress?: (share: number) => boolean;
}

/** What a diagnosis works with, once the evidence is laid out: also the start of everything that asks further. */
export interface Prepared {
  readonly cabinet: Cabinet;
  readonly plan: Plan;
  readonly space: FaultSpace;
  readonly scenarios: readonly Scenario[];
  readonly notes: readonly DiagnosisNote[];
}

/** Lays out evidence and fault space. */
export function prepare(cabinet: Cabinet, evidence: Evidence): Prepared {
  const plan = planEvidence(cabinet, evidence);
  const { scenarios, setToDefault } = listScenarios(cabinet, plan);
  const space = listFaultSpace(cabinet, {
    circumstances: evidence.circumstances ?? [],
    daysSinceWhole: evidence.daysSinceWhole ?? defaultDaysSinceWhole,
    withWiringMistakes: !plan.trips.some(({ onset }) => onset === 'while-running'),
  });
  const notes: DiagnosisNote[] = [
    ...(usesAssumedRates(cabinet.content) ? [{ code: 'rates-assumed' } as const] : []),
    ...setToDefault.map((type) => ({ code: 'type-set-to-default', type }) as const),
    ...(plan.observations.length === 0 ? [{ code: 'nothing-observed' } as const] : []),
  ];
  return { cabinet, plan, space, scenarios, notes };
}

/** A finished search with the evaluator that weighed it. `offset`: likelihoods are scaled by exp(−offset). */
export interface Searched {
  readonly prepared: Prepared;
  readonly evaluator: Evaluator;
  readonly result: SearchResult;
  readonly offset: number;
}

/** Weighs all hypotheses of up to two faults. Null when `onProgress` gave up. */
export function runSearch(prepared: Prepared, options: DiagnosisOptions = {}): Searched | null {
  const attempt = (offset: number): Searched | null => {
    const { plan, space, scenarios, cabinet } = prepared;
    const evaluator = new Evaluator(plan, space, scenarios, cabinet, offset);
    const result = search({
      elements: evaluator.book.elements,
      excludes: space.excludes,
      maxFaults: 2,
      predict: (faults) => evaluator.likelihood(faults),
      observations: [{ id: 'evidence', likelihood: (likelihood: number) => likelihood }],
      ...(options.keep === undefined ? {} : { keep: options.keep }),
      ...(options.onProgress === undefined ? {} : { onProgress: options.onProgress }),
    });
    return result === null ? null : { prepared, evaluator, result, offset };
  };
  const first = attempt(0);
  // Evidence so contradictory that every likelihood is below the least number: weigh again from the best one.
  if (first !== null && first.result.total === 0 && first.evaluator.bestLog > Number.NEGATIVE_INFINITY) {
    return attempt(first.evaluator.bestLog);
  }
  return first;
}

/** What a choice of the search stands for. */
export function faultOf({ prepared }: Searched, { element, mode }: FaultChoice): HypothesisFault {
  const fault = prepared.space.faults[element]?.[mode];
  if (fault === undefined) {
    throw new Error('a choice outside the fault space');
  }
  return { item: itemKey(fault), fault };
}
