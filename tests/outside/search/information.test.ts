import { describe, expect, it } from 'vitest';
import { expectedInformation } from '../../../engine/search/index.ts';

const bitsOf = (...shares: readonly number[]) => expectedInformation(shares.map((probability, i) => ({ outcome: String(i), probability })));

describe('expectedInformation', () => {
  // D40. Source: S. Haykin, "Digital Communications", examples 2.1 and 2.2 (pp. 18-19). Status: read, recalculated.
  it('should be 1.5 bit for shares of a quarter, a quarter and a half', () => {
    expect(bitsOf(0.25, 0.25, 0.5)).toBeCloseTo(1.5, 12);
  });

  // D40, second extension of the same source: pairs of two independent draws. Status: read, recalculated.
  it('should be 3 bit for two such draws', () => {
    const shares = [0.25, 0.25, 0.5];
    expect(bitsOf(...shares.flatMap((a) => shares.map((b) => a * b)))).toBeCloseTo(3, 12);
  });

  // D40: the entropy of two outcomes is greatest, 1 bit, at one half. Status: read, recalculated.
  it('should be greatest at one half for two outcomes', () => {
    expect(bitsOf(0.5, 0.5)).toBeCloseTo(1, 12);
    for (let p = 0.01; p < 0.5; p += 0.01) expect(bitsOf(p, 1 - p)).toBeLessThan(bitsOf(p + 0.01, 0.99 - p));
  });

  it('should add up hypotheses that predict the same outcome', () => {
    const answer = expectedInformation([
      { outcome: 'none', probability: 0.2 },
      { outcome: 'bright', probability: 0.5 },
      { outcome: 'none', probability: 0.3 },
    ]);
    expect(answer).toBeCloseTo(1, 12);
  });

  // D42: one check after hop j of 10 equally likely places. Status: calculated, not published; to 1e-4.
  it('should be the half-split gain H(j/n)', () => {
    const gains = [0.469, 0.7219, 0.8813, 0.971, 1, 0.971, 0.8813, 0.7219, 0.469];
    gains.forEach((gain, i) => {
      expect(bitsOf((i + 1) / 10, 1 - (i + 1) / 10)).toBeCloseTo(gain, 4);
    });
  });

  // D41. Source: D. Knuth, "The Art of Computer Programming", vol. 3, 6.2.1 (from memory, recalculated): n places, one of them at fault and
  // all alike; each check says on which side of it. At worst ⌈log2 n⌉ = k checks; in the mean, by the best tree, k + 1 − 2^k / n.
  it.each([
    [5, 3, 2.4],
    [8, 3, 3],
    [10, 4, 3.4],
    [16, 4, 4],
    [17, 5, 4.1176],
    [38, 6, 5.3158],
    [272, 9, 8.1176],
  ])('should lead among %d places, check by check, by as few checks as there can be: %d at worst, %d in the mean', (n, worst, mean) => {
    const depths = (places: number): readonly number[] => {
      if (places === 1) return [0];
      const gain = (before: number) => bitsOf(before / places, 1 - before / places);
      const before = Array.from({ length: places - 1 }, (_, i) => i + 1).reduce((best, one) =>
        gain(one) > gain(best) + 1e-12 ? one : best,
      );
      return [...depths(before), ...depths(places - before)].map((depth) => depth + 1);
    };
    const found = depths(n);
    expect(Math.max(...found)).toBe(worst);
    expect(found.reduce((sum, depth) => sum + depth, 0) / n).toBeCloseTo(mean, 4);
  });
});
