import { compareText } from '../base/index.ts';
import type { FaultChoice } from '../search/index.ts';
import { listFits } from './fit.ts';
import { membersByEffect } from './members.ts';
import { faultOf, type Searched } from './searched.ts';
import type { AmbiguityGroup } from './types.ts';

/** The ambiguity groups of a search, and to which one a hypothesis belongs. */
export interface Groups {
  readonly list: readonly AmbiguityGroup[];
  /** Id of the group of a hypothesis, or −1 when it is too improbable to be grouped. */
  readonly groupOf: (faults: readonly FaultChoice[]) => number;
}

/** Combinations less probable than this are not grouped. */
const tooRare = 1e-7;

interface Draft {
  probability: number;
  hypotheses: number;
  readonly items: Map<string, number>;
}

/**
 * Gathers hypotheses that predict the same of all that was observed, for every pattern of presence and every scenario. Items of a
 * group are those that explain it alone; inside a group only the prior ranks.
 */
export function makeGroups(searched: Searched): Groups {
  const { result, evaluator } = searched;
  const drafts = new Map<string, Draft>();
  const signatures = new Map<string, string>();
  const members = membersByEffect(evaluator);
  const effectsOf = (faults: readonly FaultChoice[]) => faults.map((choice) => evaluator.effectOf(choice)).sort();
  const signatureOf = (faults: readonly FaultChoice[]): string => {
    const key = effectsOf(faults).join('\u0000');
    let signature = signatures.get(key);
    if (signature === undefined) {
      signature = evaluator.scenarios.map((_, scenario) => patternSignature(searched, scenario, faults)).join('/');
      signatures.set(key, signature);
    }
    return signature;
  };
  const draftOf = (faults: readonly FaultChoice[]): Draft => {
    const signature = signatureOf(faults);
    let draft = drafts.get(signature);
    if (draft === undefined) {
      draft = { probability: 0, hypotheses: 0, items: new Map() };
      drafts.set(signature, draft);
    }
    return draft;
  };

  if (result.nothing > tooRare) {
    draftOf([]).probability += result.nothing;
    draftOf([]).hypotheses += 1;
  }
  for (const { example, likelihood, probability } of result.classes) {
    if (probability <= tooRare) {
      continue;
    }
    const draft = draftOf(example);
    draft.probability += probability;
    const [first, second] = example;
    if (first !== undefined && second === undefined) {
      for (const { choice, odds } of members.get(evaluator.effectOf(first)) ?? []) {
        const { item } = faultOf(searched, choice);
        draft.items.set(item, (draft.items.get(item) ?? 0) + (odds * likelihood) / result.total);
        draft.hypotheses += 1;
      }
    } else {
      draft.hypotheses += 1;
    }
  }
  const ordered = [...drafts].sort(([a, one], [b, other]) => other.probability - one.probability || compareText(a, b));
  const ids = new Map(ordered.map(([signature], index) => [signature, index]));
  return {
    list: ordered.map(([, { probability, hypotheses, items }], id) => ({
      id,
      probability,
      hypotheses,
      items: [...items]
        .map(([item, share]) => ({ item, probability: share }))
        .sort((a, b) => b.probability - a.probability || compareText(a.item, b.item)),
    })),
    groupOf: (faults) => {
      const signature = signatures.get(effectsOf(faults).join('\u0000'));
      return signature === undefined ? -1 : (ids.get(signature) ?? -1);
    },
  };
}

/** What a hypothesis predicts of all that was observed, as a text: each distinct pattern outcome with its share of the patterns. */
function patternSignature({ evaluator, prepared }: Searched, scenario: number, faults: readonly FaultChoice[]): string {
  const counts = new Map<string, number>();
  const fits = listFits(evaluator, scenario, faults);
  const isHaltSeen = prepared.plan.snapshots.some(({ halted }) => halted !== null);
  for (const { predictions, broken } of fits) {
    const key = `${predictions.join()}${isHaltSeen ? broken.map(Number).join('') : ''}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return [...counts]
    .sort(([a], [b]) => compareText(a, b))
    .map(([key, count]) => `${key}:${count / fits.length}`)
    .join(';');
}
