import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeCallouts } from '../../renderer/canvas/callouts.ts';

describe('placeCallouts', () => {
  it('should place every callout, and the first ones of a crowd without covering each other', () => {
    const crowd = fc.uniqueArray(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(crowd, (slots) => {
        const requests = slots.map((slot) => ({ id: `u${slot}`, x: slot * 26, words: '-TB12 downstream loss' }));
        const places = placeCallouts(requests);
        expect([...places.keys()].sort()).toEqual(requests.map(({ id }) => id).sort());
        const spans = requests.map(({ id, x, words }) => {
          const { level, side } = places.get(id) ?? { level: 0, side: 'left' };
          const width = words.length * 6.6 + 14;
          return { level, from: side === 'left' ? x + 12 - width : x - 12, to: side === 'left' ? x + 12 : x - 12 + width };
        });
        spans.forEach((span, index) => {
          for (const other of spans.slice(index + 1)) {
            const covers = other.level === span.level && other.from < span.to - 0.001 && span.from < other.to - 0.001;
            expect(covers).toBe(false);
          }
        });
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });

  it('should keep callouts off both edges where there is room', () => {
    const words = '-TB12 downstream loss';
    const places = placeCallouts(
      [20, 46, 754, 780].map((x) => ({ id: `u${x}`, x, words })),
      { leftmost: 0, rightmost: 800 },
    );
    expect([...places.values()].map(({ side }) => side)).toEqual(['right', 'right', 'left', 'left']);
  });
});
