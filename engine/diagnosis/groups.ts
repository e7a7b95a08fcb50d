import { compareText } from '../base/index.ts';
import type { FaultChoice } from '../search/index.ts';
import { type Member, membersByEffect } from './members.ts';
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
      signature = evaluator.signatureOf(faults);
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
    } else if (first !== undefined && second !== undefined) {
      draft.hypotheses += countPairs(members.get(evaluator.effectOf(first)) ?? [], members.get(evaluator.effectOf(second)) ?? [], searched);
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

/** How many pairs of members of two effects (or one) may be at fault together: all pairs, less those of elements that bar each other. */
function countPairs(ones: readonly Member[], others: readonly Member[], { prepared }: Searched): number {
  const count = (members: readonly Member[]) => {
    const counts = new Map<number, number>();
    for (const { choice } of members) {
      counts.set(choice.element, (counts.get(choice.element) ?? 0) + 1);
    }
    return counts;
  };
  const [first, second] = [count(ones), count(others)];
  let pairs = ones.length * others.length;
  for (const [element, many] of first) {
    pairs -= many * (second.get(element) ?? 0);
  }
  for (const [a, b] of prepared.space.excludes) {
    pairs -= (first.get(a) ?? 0) * (second.get(b) ?? 0) + (first.get(b) ?? 0) * (second.get(a) ?? 0);
  }
  return ones === others ? pairs / 2 : pairs;
}
