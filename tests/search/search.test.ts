import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { enumerate } from '../../engine/search/enumerate.ts';
import { type FaultChoice, type SearchProblem, search } from '../../engine/search/index.ts';

/*
 * The fast search against plain enumeration: problems in which every mode does one of a few things (bits of a mask), so that many
 * modes are predicted alike and are merged by the fast way only.
 */

interface Drawn {
  readonly elements: readonly { readonly odds: number; readonly effect: number }[][];
  readonly excludes: readonly (readonly [number, number])[];
  readonly factors: readonly number[];
}

const drawn: fc.Arbitrary<Drawn> = fc
  .record({
    elements: fc.array(
      fc.array(fc.record({ odds: fc.double({ min: 1e-6, max: 2, noNaN: true }), effect: fc.integer({ min: 0, max: 5 }) }), {
        minLength: 0,
        maxLength: 4,
      }),
      { minLength: 1, maxLength: 7 },
    ),
    excluded: fc.array(fc.tuple(fc.nat(6), fc.nat(6)), { maxLength: 3 }),
    factors: fc.array(fc.oneof(fc.constant(0), fc.double({ min: 1e-9, max: 1, noNaN: true })), { minLength: 64, maxLength: 64 }),
  })
  .map(({ elements, excluded, factors }) => ({
    elements,
    factors,
    excludes: excluded
      .filter(([a, b]) => a < b && b < elements.length)
      .filter(([a, b], i, all) => all.findIndex(([c, d]) => c === a && d === b) === i),
  }));

function problemOf({ elements, excludes, factors }: Drawn, merged: boolean): SearchProblem<number> {
  return {
    elements: elements.map((modes, e) => ({
      id: `e${e}`,
      modes: modes.map(({ odds, effect }, m) => ({ id: `m${m}`, odds, ...(merged ? { effect: `x${effect}` } : {}) })),
    })),
    excludes,
    maxFaults: 2,
    predict: (faults: readonly FaultChoice[]) =>
      faults.reduce((mask, { element, mode }) => mask | (1 << (elements[element]?.[mode]?.effect ?? 0)), 0),
    observations: [{ id: 'all', likelihood: (mask) => factors[mask] ?? 0 }],
    keep: 40,
  };
}

describe('search', () => {
  it('should weigh what enumeration weighs, merged or not', () => {
    fc.assert(
      fc.property(drawn, (input) => {
        const slow = enumerate(problemOf(input, false));
        for (const merged of [true, false]) {
          const fast = search(problemOf(input, merged));
          expect(fast?.total).toBeCloseTo(slow?.total ?? Number.NaN, 9);
          expect(fast?.visited).toBe(slow?.visited);
          expect(fast?.visitedOdds).toBeCloseTo(slow?.visitedOdds ?? Number.NaN, 9);
          expect(fast?.unvisitedOdds).toBeCloseTo(slow?.unvisitedOdds ?? Number.NaN, 6);
          expect(fast?.nothing).toBeCloseTo(slow?.nothing ?? Number.NaN, 9);
          fast?.modes.forEach((row, e) => {
            row.forEach((probability, m) => {
              expect(probability).toBeCloseTo(slow?.modes[e]?.[m] ?? Number.NaN, 9);
            });
          });
          const best = fast?.hypotheses.map(({ probability }) => probability) ?? [];
          const expected = slow?.hypotheses.map(({ probability }) => probability).filter((probability) => probability > 0) ?? [];
          expect(best.length).toBe(Math.min(40, expected.length));
          best.forEach((probability, index) => {
            expect(probability).toBeCloseTo(expected[index] ?? Number.NaN, 9);
          });
        }
      }),
      { numRuns: 300, seed: 20261125 },
    );
  });

  it('should leave unvisited exactly the odds of three faults and more', () => {
    fc.assert(
      fc.property(drawn, (input) => {
        const all = enumerate({ ...problemOf(input, false), maxFaults: input.elements.length });
        const some = search(problemOf(input, true));
        expect(some?.unvisitedOdds).toBeCloseTo((all?.visitedOdds ?? Number.NaN) - (some?.visitedOdds ?? Number.NaN), 6);
      }),
      { numRuns: 100, seed: 20261125 },
    );
  });

  it('should give up when told so', () => {
    const problem = problemOf(
      { elements: [[{ odds: 1, effect: 0 }], [{ odds: 1, effect: 1 }]], excludes: [], factors: Array.from({ length: 64 }, () => 1) },
      true,
    );
    expect(search({ ...problem, onProgress: () => false })).toBeNull();
  });

  it('should answer with a total of zero when the observations exclude everything', () => {
    const problem = problemOf({ elements: [[{ odds: 1, effect: 0 }]], excludes: [], factors: Array.from({ length: 64 }, () => 0) }, true);
    const result = search(problem);
    expect(result?.total).toBe(0);
    expect(result?.hypotheses).toEqual([]);
    expect(result?.modes).toEqual([[0]]);
  });
});
