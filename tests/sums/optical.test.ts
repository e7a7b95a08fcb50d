import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LinkId } from '../../engine/base/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { findToleratedLoss } from '../../engine/sums/index.ts';
import { fibre, oneLink, optics, sound, sumsOf } from './sketch.ts';

const outbound = (...given: Parameters<typeof oneLink>) => {
  const found = sumsOf(oneLink(...given)).optical.find(({ direction }) => direction === 'outbound');
  if (found === undefined) throw new Error('no budget');
  return found;
};
const codesOf = (...given: Parameters<typeof oneLink>) => sumsOf(oneLink(...given)).problems.map(({ code }) => code);

describe('the optical budget of a fibre', () => {
  it('should be launch power less losses, reserve and sensitivity, every term with its origin', () => {
    const { margin, overloadMargin, toleratedDb, loss } = outbound();
    // −13.6 − (8 × 0.25 = 2) − 2 − (−24)
    expect(margin).toMatchObject({ value: expect.closeTo(6.4, 9), unit: 'dB', status: 'computed', basis: 'power-budget' });
    expect(margin.from.map(({ code, value, status, source, of }) => [code, value, status, source, of])).toEqual([
      ['launch-power-least', -13.6, 'documented', 'invented data sheet', 'ch1'],
      ['sensitivity', -24, 'documented', 'invented data sheet', 'u1'],
      ['cable-loss', 2, 'computed', null, 'w1'],
      ['ageing-reserve', 2, 'documented', null, null],
    ]);
    expect(loss.from[0]?.from.map(({ code, value, source }) => [code, value, source])).toEqual([
      ['cable-length', 8, null],
      ['attenuation', 0.25, 'invented'],
    ]);
    // −2 − (−4.5 − 8 × 0.15)
    expect(overloadMargin.value).toBeCloseTo(3.7, 9);
    expect(toleratedDb).toBeCloseTo(8.4, 9);
  });

  it('should count couplers, bends and ends, and nothing for ends that the powers of the ports include', () => {
    const { loss } = outbound({ couplers: 2, bends: [{ radiusMm: 30, quarterTurns: 3 }, { radiusMm: 40 }] });
    expect(loss.value).toBeCloseTo(2 + 2 * 1.5 + 4 * 0.5, 9);
    expect(loss.from.map(({ code }) => code)).toEqual(['fibre-loss', 'coupler-loss', 'bend-loss']);
    // Of one and of all are two terms, so that a person can tell them apart.
    expect(loss.from.slice(1).map(({ from }) => from.map(({ code, value }) => [code, value]))).toEqual([
      [
        ['couplers', 2],
        ['loss-per-coupler', 1.5],
      ],
      [
        ['quarter-turns', 4],
        ['quarter-turn-loss', 0.5],
      ],
    ]);
    expect(outbound({}, { fibres: [{ ...fibre, endDb: 0.75 }] }).loss.value).toBeCloseTo(2 + 2 * 0.75, 9);
    expect(codesOf({ bends: [{ radiusMm: 20 }] })).toEqual(['bend-too-tight']);
  });

  it('should take a measured loss instead of the computed one, for its own fibre only', () => {
    const [out, back] = sumsOf(oneLink({ measuredLossDb: { outbound: 5 } })).optical;
    expect(out?.loss).toMatchObject({ value: 5, status: 'measured' });
    expect(out?.margin.value).toBeCloseTo(3.4, 9);
    expect(back?.loss).toMatchObject({ value: 2, status: 'computed' });
  });

  it('should move the launch power with the temperature of the cabinet where the sheet says how', () => {
    const hot = { ...optics, temperatureDbPerK: -0.05 };
    const content = { chains: [{ id: 'ch1', number: 1, optics: hot }] };
    expect(outbound({}, content).margin.value).toBeCloseTo(6.4, 9);
    expect(outbound({}, content).margin.from[1]?.from[1]).toMatchObject({ code: 'ambient-temperature', value: 25, status: 'assumed' });
    expect(outbound({}, { ...content, ambientC: 55 }).margin.value).toBeCloseTo(6.4 - 1.5, 9);
    expect(outbound({}, { ...content, ambientC: 55 }).overloadMargin.value).toBeCloseTo(3.7 + 1.5, 9);
  });

  const { lengthM: _length, ...unmeasured } = oneLink().links?.[0] ?? { id: 'w1' };
  const lacking: readonly (readonly [string, Partial<CabinetContent>])[] = [
    ['launch power', { chains: [{ id: 'ch1', number: 1 }] }],
    ['sensitivity', { types: [{ id: 't', name: 'Drive' }] }],
    ['attenuation', { fibres: [{ id: 'f', name: 'unknown fibre' }] }],
    ['length', { links: [unmeasured] }],
  ];
  it.each(lacking)('should assume 3 dB, and say so, without %s', (_, content) => {
    const found = sumsOf(oneLink({}, content));
    const [budget] = found.optical;
    expect(budget?.margin).toMatchObject({ value: 3, status: 'assumed', basis: 'margin-without-data' });
    expect(budget?.toleratedDb).toBe(5);
    expect(found.missing.length).toBeGreaterThan(0);
    expect(found.problems).toEqual([]);
  });

  it('should assume 3 dB of nothing at all, with no reserve', () => {
    const { optical } = sumsOf({
      id: 'c',
      name: 'Bare',
      chains: [{ id: 'ch1', number: 1 }],
      units: [{ id: 'u1', kind: 'servo-drive', designation: '-U1' }],
      links: [{ id: 'w1', upper: { chain: 'ch1' }, lower: { unit: 'u1' } }],
    });
    expect(
      optical.map(({ margin, overloadMargin, toleratedDb }) => [margin.value, margin.status, overloadMargin.value, toleratedDb]),
    ).toEqual([
      [3, 'assumed', null, 3],
      [3, 'assumed', null, 3],
    ]);
  });

  it('should name a link without margin, one with too much light, and one that is too long, apart', () => {
    expect(codesOf({ lengthM: 40 })).toEqual(['link-without-margin', 'link-without-margin']);
    expect(codesOf({ lengthM: 70 })).toContain('link-too-long');
    expect(codesOf({ lengthM: 8 }, { types: [{ id: 't', name: 'Drive', optics: { ...optics, overloadDbm: -8 } }] })).toEqual([
      'link-overloaded',
    ]);
    // Longer cures it: 25 m take 3.75 dB at least.
    expect(codesOf({ lengthM: 25 }, { types: [{ id: 't', name: 'Drive', optics: { ...optics, overloadDbm: -8 } }] })).toEqual([]);
  });

  it('should hold the length against the row for the data rate, and say when no row is fast enough', () => {
    const limits = [
      { dataRateMbd: 1, maximumLengthM: 45 },
      { dataRateMbd: 10, maximumLengthM: 12, source: 'invented row' },
    ];
    const content = { fibres: [{ ...fibre, lengthLimits: limits }] };
    const [fast] = sumsOf(oneLink({ lengthM: 14 }, content)).optical;
    expect(fast?.limits.map(({ rule, limit, exceeded }) => [rule, limit.value, limit.source, exceeded])).toEqual([
      ['fibre', 60, 'invented', false],
      ['data-rate', 12, 'invented row', true],
    ]);
    expect(codesOf({ lengthM: 14 }, content)).toEqual(['link-too-long-for-rate']);
    const tooFast = { ...content, chains: [{ id: 'ch1', number: 1, optics: { ...optics, dataRateMbd: 20 } }] };
    expect(sumsOf(oneLink({ lengthM: 14 }, tooFast)).missing).toContainEqual({ figure: 'length-limit-at-rate', of: 'w1' });
    expect(codesOf({ lengthM: 14 }, tooFast)).toEqual([]);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, -1])('should take %d for a length as not given', (lengthM) => {
    expect(outbound({ lengthM }).margin.status).toBe('assumed');
  });

  it('should never get more light from a longer fibre, nor be blinded more', () => {
    const length = fc.double({ min: 0, max: 500, noNaN: true });
    fc.assert(
      fc.property(length, length, (a, b) => {
        const [short, long] = [Math.min(a, b), Math.max(a, b)].map((lengthM) => outbound({ lengthM }));
        expect(long?.margin.value ?? 0).toBeLessThanOrEqual((short?.margin.value ?? 0) + 1e-9);
        expect(long?.overloadMargin.value ?? 0).toBeGreaterThanOrEqual((short?.overloadMargin.value ?? 0) - 1e-9);
      }),
      { seed: 8, numRuns: 60 },
    );
  });

  it('should give back length, attenuation or margin from the other two', () => {
    const figure = fc.double({ min: 0.05, max: 1, noNaN: true });
    fc.assert(
      fc.property(figure, fc.double({ min: 0.1, max: 100, noNaN: true }), (attenuationDbPerM, lengthM) => {
        const { margin } = outbound({ lengthM }, { fibres: [{ ...fibre, attenuationDbPerM }] });
        const left = -13.6 + 24 - 2 - (margin.value ?? Number.NaN);
        expect(left / attenuationDbPerM).toBeCloseTo(lengthM, 6);
        expect(left / lengthM).toBeCloseTo(attenuationDbPerM, 6);
      }),
      { seed: 8, numRuns: 60 },
    );
  });

  it('should tell the simulation how much more a fibre may lose', () => {
    expect(findToleratedLoss(sound(oneLink()), 'w1' as LinkId, 'outbound')).toBeCloseTo(8.4, 9); // an id of this cabinet
    expect(findToleratedLoss(sound(oneLink()), 'nowhere' as LinkId, 'outbound')).toBe(3); // an id of none
  });
});
