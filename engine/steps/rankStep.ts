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
  const summary = summaryOf(hypotheses);
  const { total, places, inFirstGroup } = summary;
  let mends = 0;
  hypotheses.forEach(({ probability }, index) => {
    mends += (probability / total) * (mended[index] ?? 0);
  });
  const list = outcomesOf(hypotheses, spreads, summary);
  const information = informationAbout(hypotheses, spreads, (index) => index);
  const partsGroup = informationAbout(hypotheses, spreads, (index) => (inFirstGroup[index] ? (places[index] ?? '') : null));
  return { step, information, partsGroup, mends, outcomes: list, darkIsNormal: isDarkNormal(step, setting) };
}

/** The outcomes of a step, likeliest first, with the items that each would leave suspected. */
function outcomesOf(
  hypotheses: readonly RankedHypothesis[],
  spreads: readonly ReadonlyMap<string, number>[],
  { total, items, alike }: Summary,
): readonly StepOutcome[] {
  // Many looks show the same for all hypotheses, and then leave the same suspected.
  const [first] = spreads;
  const isAlike = first !== undefined && spreads.length === hypotheses.length && spreads.every((spread) => spread === first);
  const known = isAlike ? alike.get(first) : undefined;
  if (known !== undefined) {
    return known;
  }
  const outcomes = new Map<string, { probability: number; items: Map<string, number> }>();
  hypotheses.forEach(({ probability }, index) => {
    const weight = probability / total;
    for (const [outcome, share] of spreads[index] ?? []) {
      let entry = outcomes.get(outcome);
      if (entry === undefined) {
        entry = { probability: 0, items: new Map<string, number>() };
        outcomes.set(outcome, entry);
      }
      entry.probability += weight * share;
      for (const item of items[index] ?? []) {
        entry.items.set(item, (entry.items.get(item) ?? 0) + weight * share);
      }
    }
  });
  const list: readonly StepOutcome[] = [...outcomes]
    .map(([outcome, { probability, items: suspected }]) => ({
      outcome,
      probability,
      suspects: [...suspected]
        .map(([item, share]) => ({ item, probability: share / probability }))
        .sort((a, b) => b.probability - a.probability || compareText(a.item, b.item))
        .slice(0, mostSuspects),
    }))
    .sort((a, b) => b.probability - a.probability || compareText(a.outcome, b.outcome));
  if (isAlike) {
    alike.set(first, list);
  }
  return list;
}

/** What many steps are ranked by: of each hypothesis its items, where they are, and whether it is in the first one's ambiguity group. */
interface Summary {
  readonly total: number;
  readonly items: readonly (readonly string[])[];
  readonly places: readonly string[];
  readonly inFirstGroup: readonly boolean[];
  /** Outcomes of steps that show the same for all, by what they show. */
  readonly alike: Map<ReadonlyMap<string, number>, readonly StepOutcome[]>;
}

const summaries = new WeakMap<readonly RankedHypothesis[], Summary>();

function summaryOf(hypotheses: readonly RankedHypothesis[]): Summary {
  let summary = summaries.get(hypotheses);
  if (summary === undefined) {
    summary = {
      total: hypotheses.reduce((sum, { probability }) => sum + probability, 0),
      items: hypotheses.map(({ faults }) => [...new Set(faults.map(({ item }) => item))]),
      places: hypotheses.map(({ faults }) => placesOf(faults)),
      inFirstGroup: hypotheses.map(({ group }) => group === hypotheses[0]?.group),
      alike: new Map(),
    };
    summaries.set(hypotheses, summary);
  }
  return summary;
}

/**
 * Expected information of an outcome about the class in which the true hypothesis lies, in bit: H(outcome) − Σ P(class)
 * H(outcome | class). Hypotheses of class null are left out, and the rest taken as the whole.
 */
function informationAbout(
  hypotheses: readonly RankedHypothesis[],
  spreads: readonly ReadonlyMap<string, number>[],
  classOf: (index: number) => string | number | null,
): number {
  // Equal certain predictions are the same object: where all are, the step tells nothing.
  if (spreads.every((spread) => spread === spreads[0])) {
    return 0;
  }
  const classes = new Map<string | number, { weight: number; outcomes: Weights }>();
  const all = new Map<string, number>();
  let total = 0;
  hypotheses.forEach(({ probability }, index) => {
    const name = classOf(index);
    if (name === null) {
      return;
    }
    const spread = spreads[index] ?? nothing;
    const entry = classes.get(name);
    if (entry === undefined) {
      // Most classes hold one hypothesis: its spread is the class's own, times its weight.
      classes.set(name, { weight: probability, outcomes: { of: spread, times: probability } });
    } else {
      const { of, times } = entry.outcomes;
      const sum = new Map([...of].map(([outcome, share]) => [outcome, times * share]));
      addTo(sum, spread, probability);
      entry.outcomes = { of: sum, times: 1 };
      entry.weight += probability;
    }
    total += probability;
    addTo(all, spread, probability);
  });
  if (classes.size < 2) {
    return 0;
  }
  const within = [...classes.values()].reduce((sum, { weight, outcomes }) => sum + (weight / total) * entropy(outcomes, weight), 0);
  const information = Math.max(0, entropy({ of: all, times: 1 }, total) - within);
  // Rounding alone can leave a trace where every hypothesis predicts the same.
  return information < leastInformation ? 0 : information;
}

/** Weights of outcomes: those of `of`, each `times` as much. */
interface Weights {
  readonly of: ReadonlyMap<string, number>;
  readonly times: number;
}

const nothing: ReadonlyMap<string, number> = new Map();

function addTo(sum: Map<string, number>, spread: ReadonlyMap<string, number>, probability: number): void {
  for (const [outcome, share] of spread) {
    sum.set(outcome, (sum.get(outcome) ?? 0) + probability * share);
  }
}

/** Entropy in bit of weights that sum to `total`. */
function entropy({ of, times }: Weights, total: number): number {
  let sum = 0;
  for (const weight of of.values()) {
    const share = (times * weight) / total;
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
