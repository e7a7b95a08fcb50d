import { compareText } from '../base/index.ts';
import type { FaultChoice } from '../search/index.ts';
import type { SettledFault } from './elements.ts';
import type { Groups } from './groups.ts';
import { faultOf, type Searched } from './searched.ts';
import type { BehaviourBelief, HypothesisFault, RankedHypothesis, RankedItem } from './types.ts';

/** The listed hypotheses, most probable first, ties by the ids of their faults. */
export function rankHypotheses(searched: Searched, groups: Groups): readonly RankedHypothesis[] {
  return searched.result.hypotheses
    .map(({ faults, probability, odds, likelihood }) => ({
      faults: faults.map((choice) => faultOf(searched, choice)).sort((a, b) => compareText(nameOf(a), nameOf(b))),
      probability,
      priorOdds: odds,
      likelihood,
      group: groups.groupOf(faults),
    }))
    .sort((a, b) => b.probability - a.probability || compareText(a.faults.map(nameOf).join(), b.faults.map(nameOf).join()));
}

function nameOf({ item, fault }: HypothesisFault): string {
  return `${item}:${fault.mode}:${fault.presence}`;
}

/** Items by the summed probability of the hypotheses that contain them, their modes likewise; ties by id. */
export function rankItems(searched: Searched): readonly RankedItem[] {
  const { prepared, result } = searched;
  const ranked: RankedItem[] = [];
  for (const [key, elements] of prepared.space.items) {
    const shares = new Map<string, { probability: number; intermittent: number }>();
    let first: SettledFault | undefined;
    let sum = 0;
    for (const element of elements) {
      prepared.space.faults[element]?.forEach((fault, mode) => {
        const probability = result.modes[element]?.[mode] ?? 0;
        const own = shares.get(fault.mode) ?? { probability: 0, intermittent: 0 };
        first ??= fault;
        sum += probability;
        own.probability += probability;
        own.intermittent += fault.presence === 'intermittent' ? probability : 0;
        shares.set(fault.mode, own);
      });
    }
    const probability = Math.max(0, sum - jointOf(searched, elements, sum));
    if (first !== undefined && probability > 0) {
      const modes = [...shares].map(([mode, share]) => ({ mode, ...share })).filter((mode) => mode.probability > 0);
      modes.sort((a, b) => b.probability - a.probability || compareText(a.mode, b.mode));
      ranked.push({ item: { key, kind: first.item, fault: first }, probability, modes });
    }
  }
  return ranked.sort((a, b) => b.probability - a.probability || compareText(a.item.key, b.item.key));
}

/** Below this an item's own pairs (both fibres of one cable) need not be taken out of its sum: they cannot show. */
const negligible = 1e-12;

/** Probability that two elements of one item are at fault together: counted twice in the sum of its modes. */
function jointOf({ prepared, evaluator, result }: Searched, elements: readonly number[], probability: number): number {
  if (elements.length < 2 || probability < negligible) {
    return 0;
  }
  let joint = 0;
  // Modes that do the same weigh the same: each pair of effects is weighed once.
  const known = new Map<string, number>();
  const weigh = (a: FaultChoice, b: FaultChoice): number => {
    const key = `${evaluator.effectOf(a)} ${evaluator.effectOf(b)}`;
    const likelihood = known.get(key) ?? evaluator.likelihood([a, b]);
    known.set(key, likelihood);
    return likelihood;
  };
  elements.forEach((one, index) => {
    for (const other of elements.slice(index + 1)) {
      if (isExcluded(prepared.space, one, other)) {
        continue;
      }
      prepared.space.elements[one]?.modes.forEach((first, m) => {
        prepared.space.elements[other]?.modes.forEach((second, n) => {
          joint += first.odds * second.odds * weigh({ element: one, mode: m }, { element: other, mode: n });
        });
      });
    }
  });
  return result.total > 0 ? joint / result.total : 0;
}

function isExcluded({ excludes }: Searched['prepared']['space'], one: number, other: number): boolean {
  return excludes.some(([a, b]) => (a === one && b === other) || (a === other && b === one));
}

/** Classes less probable than this do not move the beliefs about behaviour. */
const tooRare = 1e-9;

/** How the evidence spreads over the values of unknown behaviour, from the most probable hypotheses. */
export function rankBehaviours({ prepared, evaluator, result }: Searched): readonly BehaviourBelief[] {
  if (!prepared.scenarios.some(({ alike }) => alike.some((assumed) => assumed.length > 0)) || result.total === 0) {
    return [];
  }
  const weights = prepared.scenarios.map(({ share }, scenario) => {
    let sum = 0;
    for (const { example, likelihood, probability } of result.classes) {
      if (probability > tooRare && likelihood > 0) {
        sum += (probability / likelihood) * evaluator.likelihoodIn(scenario, example);
      }
    }
    return share * (sum + evaluator.likelihoodIn(scenario, []) / result.total);
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const beliefs = new Map<
    string,
    {
      type: BehaviourBelief['type'];
      parameter: BehaviourBelief['parameter'];
      values: Map<BehaviourBelief['values'][number]['value'], number>;
    }
  >();
  prepared.scenarios.forEach(({ alike }, scenario) => {
    // Ways that predict the same are equally likely: each has an equal part of the weight.
    const part = total > 0 ? (weights[scenario] ?? 0) / total / alike.length : 0;
    for (const { type, parameter, value } of alike.flat()) {
      const key = `${type}/${parameter}`;
      const belief = beliefs.get(key) ?? { type, parameter, values: new Map() };
      beliefs.set(key, belief);
      belief.values.set(value, (belief.values.get(value) ?? 0) + part);
    }
  });
  return [...beliefs.values()].map(({ type, parameter, values }) => ({
    type,
    parameter,
    values: [...values]
      .map(([value, probability]) => ({ value, probability }))
      .sort((a, b) => b.probability - a.probability || compareText(a.value, b.value)),
  }));
}
