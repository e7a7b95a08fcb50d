import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wordCount, wordList, wordProbability, wordUnvisitedShare, wordUpperBound } from '../../engine/messages/index.ts';

const seed = 20_261_125;

describe('wordProbability', () => {
  it.each([
    [0, '0 %'],
    [1e-9, '<0.1 %'],
    [0.00099, '<0.1 %'],
    [0.001, '0.1 %'],
    [0.0044, '0.4 %'],
    [0.0096, '1 %'],
    [0.015, '2 %'],
    [0.824, '82 %'],
    [0.99, '99 %'],
    [0.9949, '99.4 %'],
    [0.99899, '99.8 %'],
    [0.9995, '>99.9 %'],
    [1 - 1e-12, '>99.9 %'],
    [1, '100 %'],
  ])('should write %d as %s', (probability, text) => {
    expect(wordProbability(probability)).toBe(text);
  });

  it('should claim certainty only where it is exact, and stay within half a step of the truth', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (probability) => {
        const text = wordProbability(probability);
        expect(text === '100 %').toBe(probability === 1);
        expect(text === '0 %').toBe(probability === 0);
        const figure = Number(/[\d.]+/.exec(text)?.[0]);
        if (!/[<>]/.test(text))
          expect(Math.abs(figure - probability * 100)).toBeLessThanOrEqual(probability > 0.0095 && probability < 0.99 ? 0.5 + 1e-9 : 0.1);
      }),
      { seed },
    );
  });

  it('should never order two probabilities the wrong way', () => {
    const value = (text: string) => (text.startsWith('<') ? 0.05 : text.startsWith('>') ? 99.95 : Number.parseFloat(text));
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(value(wordProbability(low))).toBeLessThanOrEqual(value(wordProbability(high)));
      }),
      { seed },
    );
  });
});

describe('wordUpperBound', () => {
  it('should never write less than the bound', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const text = wordUpperBound(share);
        if (text.startsWith('<')) expect(share).toBeLessThan(0.001);
        else if (text.startsWith('>')) expect(share).toBeGreaterThan(0.999);
        else expect(Number.parseFloat(text)).toBeGreaterThanOrEqual(share * 100 - 1e-6);
      }),
      { seed },
    );
  });

  it('should say the unvisited share only when it matters', () => {
    expect(wordUnvisitedShare(0.01)).toBeNull();
    expect(wordUnvisitedShare(0)).toBeNull();
    expect(wordUnvisitedShare(0.0101)).toContain('At most 2 %');
    expect(wordUnvisitedShare(0.4)).toContain('At most 40 %');
    expect(wordUnvisitedShare(0.5)).toContain('At most 50 %');
    // An upper bound as high as this is no estimate, and must not be read as one.
    expect(wordUnvisitedShare(0.992)).toMatch(/no useful limit .*at most 99\.2 %/);
  });
});

describe('lists and counts', () => {
  it('should read as a person would say it', () => {
    expect([wordList([]), wordList(['a']), wordList(['a', 'b']), wordList(['a', 'b', 'c'], 'or')]).toEqual([
      '',
      'a',
      'a and b',
      'a, b or c',
    ]);
    expect([wordCount(1, 'unit'), wordCount(0, 'unit'), wordCount(2, 'supply', 'supplies')]).toEqual(['1 unit', '0 units', '2 supplies']);
  });
});
