/** Entropy in bit of a distribution given as weights (need not sum to 1; zeros count nothing). Shannon 1948. */
function entropy(weights: Iterable<number>): number {
  let total = 0;
  let sum = 0;
  for (const weight of weights) {
    if (weight > 0) {
      total += weight;
      sum += weight * Math.log2(weight);
    }
  }
  return total > 0 ? Math.log2(total) - sum / total : 0;
}

/**
 * The information, in bit, that a look is expected to give when each hypothesis predicts one sure outcome: the entropy of the
 * outcomes (de Kleer and Williams 1987, with no noise in the look).
 */
export function expectedInformation(outcomes: readonly { readonly outcome: string; readonly probability: number }[]): number {
  const weights = new Map<string, number>();
  for (const { outcome, probability } of outcomes) {
    weights.set(outcome, (weights.get(outcome) ?? 0) + probability);
  }
  return entropy(weights.values());
}
