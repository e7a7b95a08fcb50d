import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ratedModes } from '../../engine/diagnosis/index.ts';
import { gammaProbability, gammaQuantile } from '../../engine/experience/gamma.ts';
import { type CountedCase, sharpen } from '../../engine/experience/sharpen.ts';

const kinds = ratedModes.slice(0, 4).map(({ item, mode }) => ({ item, mode }));

/** A case of kind `cause` in a cabinet that is exposed to the first kinds with these weights. */
function caseOf(cause: number, weights: readonly number[], fixedWeight = 0): CountedCase {
  const kind = kinds[cause];
  return {
    causes: kind ? [{ ...kind, share: 1 }] : [],
    exposures: weights.flatMap((weight, index) => (kinds[index] ? [{ ...kinds[index], weight }] : [])),
    fixedWeight,
  };
}

const factorsOf = (cases: readonly CountedCase[], strength = 2) => sharpen(cases, strength).map(({ factor }) => factor);

const someCase = fc
  .record({ cause: fc.nat({ max: 2 }), weights: fc.array(fc.double({ min: 0.05, max: 20, noNaN: true }), { minLength: 3, maxLength: 3 }) })
  .map(({ cause, weights }) => caseOf(cause, weights));
const someCases = fc.array(someCase, { maxLength: 25 });
const someStrength = fc.double({ min: 0.1, max: 50, noNaN: true });

describe('the gamma distribution', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.6 (the formulas were read there, the figures are from memory): a prior with
  // a = 2, b = 1400 hours and two failures in 1909 hours give a′ = 4, b′ = 3309, an even-money MTBF of 901 hours and a lower 80 % bound of
  // 600 hours.
  it('should give the published bounds of a failure rate after a test', () => {
    expect(1 / gammaQuantile(0.5, 2 + 2, 1400 + 1909)).toBeCloseTo(901, 0);
    expect(1 / gammaQuantile(0.8, 2 + 2, 1400 + 1909)).toBeCloseTo(600, 0);
  });

  // The same work, 8.2.5 (from memory): MTBF of 600 at 50 % and 250 at 5 % are met by a = 2.863, b = 1522.46.
  it('should meet the published prior of two guesses', () => {
    expect(1 / gammaQuantile(0.5, 2.863, 1522.46)).toBeCloseTo(600, 0);
    expect(1 / gammaQuantile(0.95, 2.863, 1522.46)).toBeCloseTo(250, 0);
  });

  it('should agree with the sum of Poisson terms where the shape is whole', () => {
    for (const shape of [1, 2, 5, 20, 150]) {
      for (const x of [0.01, 0.5, 1, 4, 19, 160]) {
        let term = Math.exp(-x);
        let fewer = term;
        for (let n = 1; n < shape; n += 1) {
          term *= x / n;
          fewer += term;
        }
        expect(gammaProbability(shape, x)).toBeCloseTo(1 - fewer, 10);
      }
    }
  });

  it('should turn probabilities into quantiles and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (shape, probability) => {
          expect(gammaProbability(shape, gammaQuantile(probability, shape, 1))).toBeCloseTo(probability, 9);
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });
});

describe('sharpen', () => {
  it('should leave every rate exactly as assumed without a case', () => {
    for (const { factor, sharpened, assumed, cases, expected } of sharpen([], 2)) {
      expect(factor).toBe(1);
      expect(sharpened).toEqual(assumed);
      expect([cases, expected]).toEqual([0, 0]);
    }
  });

  it('should be the Dirichlet posterior where all cases could have been any kind alike', () => {
    // Exact then: the share of kind m is (s + x) / (k·s + N) by Dirichlet–multinomial (Gelman et al., 3.4, from memory).
    const cases = [0, 0, 0, 1].map((cause) => caseOf(cause, [1, 1, 1]));
    expect(factorsOf(cases, 2).slice(0, 3)).toEqual(
      [2 + 3, 2 + 1, 2].map((count) => expect.closeTo((3 * count) / (3 * 2 + 4), 10) as number),
    );
  });

  it('should not care about the order of cases', () => {
    fc.assert(
      fc.property(someCases, someStrength, (cases, strength) => {
        const there = factorsOf(cases, strength);
        const back = factorsOf([...cases].reverse(), strength);
        there.forEach((factor, index) => {
          expect(back[index]).toBeCloseTo(factor, 9);
        });
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it('should weigh kinds against each other only: what they lose together they gain together', () => {
    fc.assert(
      fc.property(someCases, someStrength, (cases, strength) => {
        const sum = factorsOf(cases, strength)
          .slice(0, 3)
          .reduce((total, factor) => total + factor, 0);
        expect(sum).toBeCloseTo(3, 8);
      }),
      { seed: 12, numRuns: 60 },
    );
  });

  it('should not care in which unit a case counts its exposure', () => {
    fc.assert(
      fc.property(someCases, fc.double({ min: 0.001, max: 1000, noNaN: true }), (cases, unit) => {
        const scaled = cases.map((one) => ({ ...one, exposures: one.exposures.map((of) => ({ ...of, weight: of.weight * unit })) }));
        const there = factorsOf(cases);
        factorsOf(scaled).forEach((factor, index) => {
          expect(factor).toBeCloseTo(there[index] ?? 0, 9);
        });
      }),
      { seed: 13, numRuns: 60 },
    );
  });

  it('should raise a kind with each case of it', () => {
    fc.assert(
      fc.property(someCases, fc.array(fc.double({ min: 0.05, max: 20, noNaN: true }), { minLength: 3, maxLength: 3 }), (cases, weights) => {
        expect(factorsOf([...cases, caseOf(0, weights)])[0]).toBeGreaterThan(factorsOf(cases)[0] ?? 0);
      }),
      { seed: 14, numRuns: 60 },
    );
  });

  it('should tend to what really happens, in cabinets that differ', () => {
    // What really happens: the second kind four times as often as assumed, the third half as often.
    const truth = [1, 4, 0.5];
    const cabinets = [
      [1, 1, 1],
      [10, 1, 3],
      [0.5, 2, 8],
    ];
    const off = [10, 60, 500].map((many) => {
      const cases = cabinets.flatMap((weights) => {
        const parts = weights.map((weight, kind) => weight * (truth[kind] ?? 0));
        const whole = parts.reduce((sum, part) => sum + part, 0);
        return parts.flatMap((part, kind) => Array.from({ length: Math.round((many * part) / whole) }, () => caseOf(kind, weights)));
      });
      const factors = factorsOf(cases);
      return Math.max(...[1, 2].map((kind) => Math.abs((factors[kind] ?? 0) / (factors[0] ?? 1) / (truth[kind] ?? 1) - 1)));
    });
    expect(off[1]).toBeLessThan(off[0] ?? 0);
    expect(off[2]).toBeLessThan(off[1] ?? 0);
    expect(off[2]).toBeLessThan(0.03);
  });

  it('should come near the exact posterior, which a numerical integration gives', () => {
    // Two kinds: likelihood ∏ w·r / Σ w·r, prior Gamma(s, s) of each. With b = r₁ / (r₁ + r₂) the sum of both is apart from the data.
    fc.assert(
      fc.property(
        fc.array(fc.record({ cause: fc.nat({ max: 1 }), ratio: fc.double({ min: 0.05, max: 20, noNaN: true }) }), {
          minLength: 1,
          maxLength: 12,
        }),
        fc.constantFrom(2, 5),
        (drawn, strength) => {
          const exact = 2 * exactShare(drawn, strength);
          const [found = 0] = factorsOf(
            drawn.map(({ cause, ratio }) => caseOf(cause, [ratio, 1])),
            strength,
          );
          expect(Math.abs(found - exact)).toBeLessThan(0.1);
        },
      ),
      { seed: 21, numRuns: 80 },
    );
  });

  it('should leave alone what could not have been the cause, and kinds with a rate of their own', () => {
    const factors = factorsOf([caseOf(0, [1, 1]), caseOf(-1, [1, 1], 5)]);
    expect(factors[0]).toBeGreaterThan(1);
    expect(factors.slice(2).every((factor) => factor === 1)).toBe(true);
  });
});

/** Mean of b by Simpson's rule: prior Beta(s, s), each case b·w / (b·w + 1 − b) or its complement. */
function exactShare(cases: readonly { readonly cause: number; readonly ratio: number }[], strength: number): number {
  const steps = 1000;
  let whole = 0;
  let mean = 0;
  for (let step = 1; step < steps; step += 1) {
    const b = step / steps;
    let log = (strength - 1) * Math.log(b * (1 - b));
    for (const { cause, ratio } of cases) log += Math.log((cause === 0 ? b * ratio : 1 - b) / (b * ratio + 1 - b));
    const weight = Math.exp(log) * (step % 2 === 1 ? 4 : 2);
    whole += weight;
    mean += weight * b;
  }
  return mean / whole;
}
