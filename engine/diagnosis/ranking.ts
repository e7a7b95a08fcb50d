import { compareText } from '../base/index.ts';
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
  const items = new Map<
    string,
    { fault: HypothesisFault; probability: number; elements: number[]; modes: Map<string, { probability: number; intermittent: number }> }
  >();
  prepared.space.faults.forEach((faults, element) => {
    faults.forEach((_, mode) => {
      const fault = faultOf(searched, { element, mode });
      const probability = result.modes[element]?.[mode] ?? 0;
      let entry = items.get(fault.item);
      if (entry === undefined) {
        entry = { fault, probability: 0, elements: [], modes: new Map() };
        items.set(fault.item, entry);
      }
      entry.probability += probability;
      if (!entry.elements.includes(element)) {
        entry.elements.push(element);
      }
      const own = entry.modes.get(fault.fault.mode) ?? { probability: 0, intermittent: 0 };
      own.probability += probability;
      own.intermittent += fault.fault.presence === 'intermittent' ? probability : 0;
      entry.modes.set(fault.fault.mode, own);
    });
  });
  return [...items]
    .map(([key, { fault, probability, elements, modes }]) => ({
      item: { key, kind: fault.fault.item, fault: fault.fault },
      probability: Math.max(0, probability - jointOf(searched, elements, probability)),
      modes: [...modes]
        .map(([mode, share]) => ({ mode, ...share }))
        .filter((mode) => mode.probability > 0)
        .sort((a, b) => b.probability - a.probability || compareText(a.mode, b.mode)),
    }))
    .filter(({ probability }) => probability > 0)
    .sort((a, b) => b.probability - a.probability || compareText(a.item.key, b.item.key));
}

/** Below this an item's own pairs (both fibres of one cable) need not be taken out of its sum: they cannot show. */
const negligible = 1e-12;

/** Probability that two elements of one item are at fault together: counted twice in the sum of its modes. */
function jointOf({ prepared, evaluator, result }: Searched, elements: readonly number[], probability: number): number {
  if (elements.length < 2 || probability < negligible) {
    return 0;
  }
  let joint = 0;
  elements.forEach((one, index) => {
    for (const other of elements.slice(index + 1)) {
      if (prepared.space.excludes.some(([a, b]) => (a === one && b === other) || (a === other && b === one))) {
        continue;
      }
      prepared.space.elements[one]?.modes.forEach((first, m) => {
        prepared.space.elements[other]?.modes.forEach((second, n) => {
          joint +=
            first.odds *
            second.odds *
            evaluator.likelihood([
              { element: one, mode: m },
              { element: other, mode: n },
            ]);
        });
      });
    }
  });
  return result.total > 0 ? joint / result.total : 0;
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
