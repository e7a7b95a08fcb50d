import { ratedModes } from '../diagnosis/index.ts';
import { gammaQuantile } from './gamma.ts';
import type { CauseKind, ConfirmedCase, Estimate, SharpenedRate } from './types.ts';

/** How many confirmed cases of its own kind each assumed rate is worth, where nobody says (assumed; common practice has no figure). */
export const usualStrength = 2;
export const leastStrength = 0.1;
export const mostStrength = 1000;

/** What sharpening needs of a case. */
export type CountedCase = Pick<ConfirmedCase, 'causes' | 'exposures' | 'fixedWeight'>;

const keyOf = ({ item, mode }: CauseKind) => `${item}/${mode}`;

/** Both ends of an interval leave out this probability. */
const tail = 0.05;
/** A bound, so that nothing hangs: some dozens of turns settle the times of usual cases to 1e-12. */
const mostTurns = 2000;

/**
 * Sharpens the assumed rates by confirmed cases, and says by how much each moved.
 *
 * Model: the rate of kind m is r·λ, λ assumed, with r ~ Gamma(s, s): mean 1, worth s cases of its kind. Of cases in a known time the number
 * is Poisson, so r | cases ~ Gamma(s + x, s + e), with x cases seen and e expected at the assumed rate (Gamma prior of a failure rate:
 * NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.6; Gelman et al., Bayesian Data Analysis, 2.6, from memory). A collection of
 * repairs holds no time: machines that ran are not in it. So each case is given the time in which its own cabinet has one fault in the
 * mean, by the sharpened rates: e = Σ over cases of w / (Σ w·r), w the exposure to the kind (parts × assumed rate × circumstances).
 * Repeating both until nothing moves is variational Bayes for competing risks (Caron and Doucet 2012, from memory). So kinds are
 * weighed against each other only, and Σ r stays what it was, wherever all kinds could have been the cause.
 */
export function sharpen(cases: readonly CountedCase[], strength: number): readonly SharpenedRate[] {
  const seen = new Map<string, number>();
  for (const { causes } of cases) {
    for (const cause of causes) seen.set(keyOf(cause), (seen.get(keyOf(cause)) ?? 0) + cause.share);
  }
  // What a case could have been does not move; only the time that it stands for does.
  const exposures = cases.map(({ exposures: list }) => list.map((one) => [keyOf(one), one.weight] as const));
  let factors = new Map<string, number>();
  let expected = new Map<string, number>();
  for (let turn = 0; turn < mostTurns; turn += 1) {
    const before = factors;
    expected = expectedCases(cases, exposures, before);
    factors = new Map(
      [...expected].map(([key, count]) => [key, (strength + (seen.get(key) ?? 0)) / (strength + count)]), // the mean of the posterior
    );
    if ([...factors].every(([key, factor]) => Math.abs(factor - (before.get(key) ?? 1)) <= 1e-12 * factor)) break;
  }
  return ratedModes.map(({ item, mode, rate }) => {
    const key = keyOf({ item, mode });
    const count = seen.get(key) ?? 0;
    const should = expected.get(key) ?? 0;
    const sharpened = estimate(rate.perYear, strength + count, strength + should);
    return {
      item,
      mode,
      assumed: estimate(rate.perYear, strength, strength),
      sharpened,
      factor: (strength + count) / (strength + should),
      cases: count,
      expected: should,
    };
  });
}

/** By kind, how many cases there should have been at the assumed rates in the times that the cases stand for. */
function expectedCases(
  cases: readonly CountedCase[],
  exposures: readonly (readonly (readonly [string, number])[])[],
  factors: ReadonlyMap<string, number>,
): Map<string, number> {
  const expected = new Map<string, number>();
  cases.forEach(({ fixedWeight }, index) => {
    const list = exposures[index] ?? [];
    const whole = list.reduce((sum, [key, weight]) => sum + weight * (factors.get(key) ?? 1), fixedWeight);
    for (const [key, weight] of list) expected.set(key, (expected.get(key) ?? 0) + weight / whole);
  });
  return expected;
}

function estimate(perYear: number, shape: number, rate: number): Estimate {
  return {
    value: (perYear * shape) / rate,
    low: perYear * gammaQuantile(tail, shape, rate),
    high: perYear * gammaQuantile(1 - tail, shape, rate),
  };
}
