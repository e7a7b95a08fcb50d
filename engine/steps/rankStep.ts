import { compareText } from '../base/index.ts';
import type { RankedHypothesis } from '../diagnosis/index.ts';
import type { Fault } from '../schema/index.ts';
import { isDarkNormal, type Setting } from './predictStep.ts';
import type { RankedStep, Step, StepOutcome } from './types.ts';

/** Hypotheses that together have less than this share are left out of the sums. */
const leftOut = 0.02;
const mostHypotheses = 60;
/** Suspects named for each outcome: enough to add up the items of the first few places. */
const mostSuspects = 8;
const leastInformation = 1e-9;

/** The most probable hypotheses that together make up nearly all. */
export function bulkOf(hypotheses: readonly RankedHypothesis[]): readonly RankedHypothesis[] {
  const kept: RankedHypothesis[] = [];
  let rest = hypotheses.reduce((sum, { probability }) => sum + probability, 0);
  for (const hypothesis of hypotheses) {
    if (rest <= leftOut || kept.length >= mostHypotheses) {
      break;
    }
    kept.push(hypothesis);
    rest -= hypothesis.probability;
  }
  return kept;
}

/**
 * A step with what it would tell about which hypothesis holds: entropy of its outcomes less what stays uncertain about them under each
 * hypothesis (de Kleer and Williams 1987; Shannon 1948). `spreads[h]` are its outcomes under each hypothesis, `mended[h]` how likely it
 * mends it.
 */
export function rankStep(
  step: Step,
  setting: Setting,
  hypotheses: readonly RankedHypothesis[],
  spreads: readonly ReadonlyMap<string, number>[],
  mended: readonly number[],
): RankedStep {
  const outcomes = new Map<string, { probability: number; items: Map<string, number> }>();
  const total = hypotheses.reduce((sum, { probability }) => sum + probability, 0);
  let mends = 0;
  hypotheses.forEach(({ faults, probability }, index) => {
    const weight = probability / total;
    const spread = spreads[index] ?? new Map<string, number>();
    mends += weight * (mended[index] ?? 0);
    for (const [outcome, share] of spread) {
      const entry = outcomes.get(outcome) ?? { probability: 0, items: new Map<string, number>() };
      outcomes.set(outcome, entry);
      entry.probability += weight * share;
      for (const item of new Set(faults.map(({ item: key }) => key))) {
        entry.items.set(item, (entry.items.get(item) ?? 0) + weight * share);
      }
    }
  });
  const list: StepOutcome[] = [...outcomes]
    .map(([outcome, { probability, items }]) => ({
      outcome,
      probability,
      suspects: [...items]
        .map(([item, share]) => ({ item, probability: share / probability }))
        .sort((a, b) => b.probability - a.probability || compareText(a.item, b.item))
        .slice(0, mostSuspects),
    }))
    .sort((a, b) => b.probability - a.probability || compareText(a.outcome, b.outcome));
  const information = informationAbout(hypotheses, spreads, (_hypothesis, index) => String(index));
  const first = hypotheses[0]?.group;
  const partsGroup = informationAbout(hypotheses, spreads, ({ group, faults }) => (group === first ? placesOf(faults) : null));
  return { step, information, partsGroup, mends, outcomes: list, darkIsNormal: isDarkNormal(step, setting) };
}

/**
 * Expected information of an outcome about the class in which the true hypothesis lies, in bit: H(outcome) − Σ P(class)
 * H(outcome | class). Hypotheses of class null are left out, and the rest taken as the whole.
 */
function informationAbout(
  hypotheses: readonly RankedHypothesis[],
  spreads: readonly ReadonlyMap<string, number>[],
  classOf: (hypothesis: RankedHypothesis, index: number) => string | null,
): number {
  const classes = new Map<string, { weight: number; outcomes: Map<string, number> }>();
  const all = new Map<string, number>();
  let total = 0;
  hypotheses.forEach((hypothesis, index) => {
    const name = classOf(hypothesis, index);
    if (name === null) {
      return;
    }
    const entry = classes.get(name) ?? { weight: 0, outcomes: new Map<string, number>() };
    classes.set(name, entry);
    entry.weight += hypothesis.probability;
    total += hypothesis.probability;
    for (const [outcome, share] of spreads[index] ?? []) {
      const weight = hypothesis.probability * share;
      entry.outcomes.set(outcome, (entry.outcomes.get(outcome) ?? 0) + weight);
      all.set(outcome, (all.get(outcome) ?? 0) + weight);
    }
  });
  if (classes.size < 2) {
    return 0;
  }
  const within = [...classes.values()].reduce((sum, { weight, outcomes }) => sum + (weight / total) * entropy(outcomes, weight), 0);
  const information = Math.max(0, entropy(all, total) - within);
  // Rounding alone can leave a trace where every hypothesis predicts the same.
  return information < leastInformation ? 0 : information;
}

/** Entropy in bit of weights that sum to `total`. */
function entropy(weights: ReadonlyMap<string, number>, total: number): number {
  let sum = 0;
  for (const weight of weights.values()) {
    const share = weight / total;
    sum -= share > 0 ? share * Math.log2(share) : 0;
  }
  return sum;
}

/** Where a person would go: a cable with its plugs and route is one place, a unit with all that is in it another. */
function placesOf(faults: RankedHypothesis['faults']): string {
  return [...new Set(faults.map(({ fault }) => placeOf(fault)))].sort(compareText).join(' ');
}

function placeOf(fault: Fault): string {
  if ('link' in fault) {
    return `link/${fault.link}`;
  }
  if ('unit' in fault) {
    return `unit/${fault.unit}`;
  }
  const { item } = fault;
  switch (item) {
    case 'controller-port':
      return `${item}/${fault.chain}`;
    case 'lead':
      return `${item}/${fault.lead}`;
    case 'feedback':
      return `${item}/${fault.feedback}`;
    default:
      return item;
  }
}
