import type { Diagnosis } from '../../diagnosis/index.ts';
import {
  changeEffectWords,
  endReasonWords,
  endStateWords,
  type Names,
  wordDisplaced,
  wordItem,
  wordRisk,
  wordStep,
  wordStepOutcome,
  wordUseless,
} from '../../messages/index.ts';
import type { Plan, PlannedStep } from '../../plan/index.ts';
import type { Step } from '../../steps/index.ts';

/** A plan, as the JSON interface gives it. */
export type JsonPlan = ReturnType<typeof jsonPlan>;

/** A plan with its words. `most` cuts the list of steps. */
export function jsonPlan(names: Names, diagnosis: Diagnosis, plan: Plan, most = Number.POSITIVE_INFINITY) {
  const labels = new Map(diagnosis.items.map(({ item }) => [item.key, wordItem(names, item.fault)]));
  return {
    method: plan.method.kind,
    depth: plan.method.kind === 'exact' ? null : plan.method.depth,
    expectedCost: plan.expectedCost,
    exhausted: plan.exhausted,
    stopping: plan.stopping,
    covered: plan.covered,
    state: plan.state,
    end: {
      state: plan.end.end,
      label: endStateWords[plan.end.end].label,
      because: plan.end.because.map((code) => ({ code, text: endReasonWords[code] })),
      mayComeBack: plan.end.mayComeBack,
    },
    displaced: plan.displaced.map((displaced) => ({ kind: displaced.kind, label: wordDisplaced(names, displaced) })),
    steps: plan.steps.slice(0, most).map((step) => jsonStep(names, labels, step)),
  };
}

function jsonStep(names: Names, labels: ReadonlyMap<string, string>, planned: PlannedStep) {
  const { step, useless } = planned;
  return {
    ...named(names, step),
    expectedCost: planned.expectedCost,
    own: planned.own,
    information: planned.information,
    mends: planned.mends,
    stateBefore: planned.stateBefore,
    stateNeeded: planned.stateNeeded,
    stateAfter: planned.stateAfter,
    changes: planned.changes.map(({ from, to, minutes, effects }) => ({
      from,
      to,
      minutes,
      effects: effects.map((code) => ({ code, text: changeEffectWords[code] })),
    })),
    risks: planned.risks.map((risk) => ({ code: risk.code, cost: risk.cost, text: wordRisk(names, risk) })),
    parts: planned.parts.map(({ kind, partNumber, spare, fits, mustBeGot }) => ({ kind, partNumber, spare, fits, mustBeGot })),
    outcomes: planned.outcomes.map(({ outcome, probability, costAfter, next, suspects }) => ({
      outcome,
      label: wordStepOutcome(names, step, outcome),
      probability,
      costAfter,
      next: next && named(names, next),
      suspects: suspects.map(({ item, probability: share }) => ({ item, label: labels.get(item) ?? item, probability: share })),
    })),
    useless: useless && { code: useless.code, text: wordUseless(names, step, useless) },
  };
}

/** A step as data, and in words. */
function named(names: Names, step: Step) {
  return { step, label: wordStep(names, step) };
}
