import type { Evidence } from '../schema/index.ts';
import { type FaultChoice, type SearchResult, search } from '../search/index.ts';
import { type Cabinet, isFeedDocumented } from '../topology/index.ts';
import { type FaultSpace, listFaultSpace, type SettledFault } from './elements.ts';
import { Evaluator } from './evaluator.ts';
import { narrowScenarios } from './narrow.ts';
import { mayBeSampled } from './patterns.ts';
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
  const { scenarios: all, setToDefault } = listScenarios(cabinet, plan);
  const space = listFaultSpace(cabinet, {
    circumstances: evidence.circumstances ?? [],
    daysSinceWhole: evidence.daysSinceWhole ?? defaultDaysSinceWhole,
    withWiringMistakes: !plan.trips.some(({ onset }) => onset === 'while-running'),
    rates: evidence.rates,
  });
  const scenarios = narrowScenarios(cabinet, plan, space, all);
  const notes: DiagnosisNote[] = [
    ...noteRates(cabinet, evidence),
    ...setToDefault.map((type) => ({ code: 'type-set-to-default', type }) as const),
    ...(mayBeSampled(plan) ? [{ code: 'presence-sampled' } as const] : []),
    ...(scenarios.length < all.length ? [{ code: 'behaviour-narrowed' } as const] : []),
    ...(isFeedDocumented(cabinet) ? [] : [{ code: 'feeds-not-documented' } as const]),
    ...(plan.observations.length === 0 ? [{ code: 'nothing-observed' } as const] : []),
  ];
  return { cabinet, plan, space, scenarios, notes };
}

/** On what the percentages stand, where it is not the cabinet's own figures alone. */
function noteRates({ content }: Cabinet, { rates }: Evidence): readonly DiagnosisNote[] {
  if (!usesAssumedRates(content)) return [];
  return [rates === undefined ? { code: 'rates-assumed' } : { code: 'rates-sharpened', cases: rates.cases }];
}

/** A finished search with the evaluator that weighed it. `offset`: likelihoods are scaled by exp(−offset). */
export interface Searched {
  readonly prepared: Prepared;
  readonly evaluator: Evaluator;
  readonly result: SearchResult;
  readonly offset: number;
  /** The pairs of effects that miss so little of what was observed that they may matter for a contradiction, as the search met them. */
  readonly closePairs: readonly ClosePair[];
}

/** Two faults that stand for their effects. */
export type ClosePair = readonly [FaultChoice, FaultChoice];

/** Weighs all hypotheses of up to two faults. Null when `onProgress` gave up. */
export function runSearch(prepared: Prepared, options: DiagnosisOptions = {}): Searched | null {
  const attempt = (offset: number): Searched | null => {
    const { plan, space, scenarios, cabinet } = prepared;
    const evaluator = new Evaluator(plan, space, scenarios, cabinet, offset);
    const least = leastForOneMiss(plan, scenarios, offset);
    const closePairs: ClosePair[] = [];
    const result = search({
      elements: evaluator.book.elements,
      excludes: space.excludes,
      maxFaults: 2,
      predict: (faults) => evaluator.likelihood(faults),
      weighRow: (first, seconds, start, likelihoods) => {
        evaluator.weighRow(first, seconds, start, likelihoods);
        for (let k = start; k < likelihoods.length; k += 1) {
          const second = seconds[k];
          if (second !== undefined && (likelihoods[k] ?? 0) >= least) {
            closePairs.push([first, second]);
          }
        }
      },
      observations: [{ id: 'evidence', likelihood: (likelihood: number) => likelihood }],
      ...(options.keep === undefined ? {} : { keep: options.keep }),
      ...(options.onProgress === undefined ? {} : { onProgress: options.onProgress }),
    });
    return result === null ? null : { prepared, evaluator, result, offset, closePairs };
  };
  let searched = attempt(0);
  // Evidence so contradictory that every likelihood is below the least number: weigh again from the best single fault.
  if (searched !== null && searched.result.total === 0) {
    const { evaluator } = searched;
    let best = evaluator.bestLog([]);
    evaluator.book.elements.forEach((element, e) => {
      element.modes.forEach((_, m) => {
        best = Math.max(best, evaluator.bestLog([{ element: e, mode: m }]));
      });
    });
    // A pair may explain far more than the best single fault: then step on until its likelihood is a number.
    for (let offset = best; searched !== null && offset > Number.NEGATIVE_INFINITY && offset <= 0; offset += overflowStep) {
      searched = attempt(offset);
      if (searched !== null && Number.isFinite(searched.result.total)) {
        return searched;
      }
    }
  }
  return searched;
}

/** A hypothesis that misses one observation only, in its best pattern, is at least this likely. */
export function leastForOneMiss(plan: Plan, scenarios: readonly Scenario[], offset: number): number {
  let worst = 0;
  for (const seen of plan.observations) {
    let low = 0;
    let high = Number.NEGATIVE_INFINITY;
    for (const log of seen.logFactors) {
      low = Math.min(low, log);
      high = Math.max(high, log);
    }
    worst = Math.min(worst, low - Math.max(0, high));
  }
  // Each moment drawn anew halves a pattern of each of two intermittent faults; scenarios share the weight.
  const patterns = 2 * plan.draws * Math.log(0.5) + Math.log(Math.min(...scenarios.map(({ share }) => share)));
  return Math.exp(Math.min(0, worst + patterns - offset) - 1e-9);
}

/** exp of this is near the greatest number. */
const overflowStep = 600;

/** What a choice of the search stands for. */
export function faultOfChoice({ space }: Prepared, { element, mode }: FaultChoice): SettledFault {
  const fault = space.faults[element]?.[mode];
  if (fault === undefined) {
    throw new Error('a choice outside the fault space');
  }
  return fault;
}

/** The same with the key of its item, as answers hold it. */
export function faultOf({ prepared }: Searched, choice: FaultChoice): HypothesisFault {
  return { item: prepared.space.itemOf[choice.element] ?? '', fault: faultOfChoice(prepared, choice) };
}
