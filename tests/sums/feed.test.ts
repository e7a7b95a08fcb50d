import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { drive, feedOnly, lead, sumsOf, supply, voltagesOf } from './sketch.ts';

/** Resistance of a metre of 1.5 mm², class 5, there and back at 20 °C. */
const perMetre = 2 * 0.0133;
const need = { loadA: 2, inrushA: 0, minimumV: 20.4, maximumV: 28.8 };

/** Units in a row, each fed by the one before it. */
const row = (count: number, load: number, rest: Partial<CabinetContent> = {}) =>
  feedOnly(
    [supply('s'), ...Array.from({ length: count }, (_, i) => drive(`u${i + 1}`, { control24: { ...need, loadA: load } }))],
    Array.from({ length: count }, (_, i) => lead(`d${i + 1}`, i === 0 ? 's' : `u${i}`, `u${i + 1}`)),
    rest,
  );

describe('the 24 V of a cabinet', () => {
  it('E23 should drop r·I·n(n+1)/2 along a row of equal loads [CALC]', () => {
    for (const count of [1, 2, 5, 12]) {
      const volts = voltagesOf(row(count, 2));
      expect(24 - (volts[`u${count}`] ?? 0)).toBeCloseTo((perMetre * 2 * count * (count + 1)) / 2, 9);
    }
    expect(24 - (voltagesOf(row(5, 2))['u5'] ?? 0)).toBeCloseTo(0.798, 9);
  });

  it('should drop in a star what each lead alone makes', () => {
    const units = [1, 2, 3].map((i) => drive(`u${i}`, { control24: { ...need, loadA: i } }));
    const volts = voltagesOf(
      feedOnly(
        [supply('s'), ...units],
        units.map(({ id }, i) => lead(`d${i}`, 's', id, { lengthM: 4 })),
      ),
    );
    for (const i of [1, 2, 3]) expect(24 - (volts[`u${i}`] ?? 0)).toBeCloseTo(4 * perMetre * i, 9);
  });

  it('should share the load of a unit with two feeds by their resistances', () => {
    const { feed } = sumsOf(
      feedOnly(
        [supply('s'), drive('u1', { control24: { ...need, loadA: 3 } }), drive('u2', { control24: { ...need, loadA: 0 } })],
        [lead('d1', 's', 'u1'), lead('d2', 's', 'u2'), lead('d3', 'u2', 'u1')],
      ),
    );
    expect(feed.leads.map(({ lead: id, current }) => [id, Number(current.value?.toFixed(9))])).toEqual([
      ['d1', 2],
      ['d2', 1],
      ['d3', 1],
    ]);
  });

  it('should let two equal supplies share, and a higher one carry all, which is told', () => {
    const pair = (other: number) =>
      sumsOf(
        feedOnly(
          [supply('s1'), supply('s2', other), drive('u1', { control24: { ...need, loadA: 4 } })],
          [lead('d1', 's1', 'u1'), lead('d2', 's2', 'u1')],
        ),
      );
    expect(pair(24).feed.supplies.map(({ steady, backFed }) => [Number(steady.load.value?.toFixed(9)), backFed])).toEqual([
      [2, false],
      [2, false],
    ]);
    const high = pair(28);
    expect(high.feed.supplies.map(({ steady, backFed }) => [Number(steady.load.value?.toFixed(9)), backFed])).toEqual([
      [0, true],
      [4, false],
    ]);
    expect(high.feed.units[0]?.voltage.value).toBeCloseTo(28 - 4 * perMetre, 9);
    expect(high.problems.map(({ code }) => code)).toEqual(['supply-back-fed']);
  });

  it.each([
    [20.4, 28.8, 27.06, 'within'],
    [20.4, 28.8, 27.08, 'too-low'],
    [20.4, 23, 1, 'too-high'],
  ])('should judge the window from %d to %d V after %d m: %s (E24, E30)', (minimumV, maximumV, lengthM, verdict) => {
    const content = feedOnly(
      [supply('s'), drive('u1', { control24: { loadA: 5, inrushA: 5, minimumV, maximumV } })],
      [lead('d', 's', 'u1', { lengthM })],
    );
    const { feed, problems } = sumsOf(content);
    expect(feed.units[0]?.verdict).toBe(verdict);
    expect(problems.map(({ code }) => code)).toEqual(
      verdict === 'within' ? [] : [verdict === 'too-low' ? 'voltage-too-low' : 'voltage-too-high'],
    );
  });

  it('should name the unit that fails first, also where none does yet', () => {
    expect(sumsOf(row(4, 2)).feed.firstToFail).toBe('u4');
    const content = row(4, 2);
    const units = (content.units ?? []).map((unit) => (unit.id === 'u2' ? { ...unit, control24: { ...need, minimumV: 23 } } : unit));
    expect(sumsOf({ ...content, units }).feed.firstToFail).toBe('u2');
  });

  it('should hold load, inrush and outputs against their ratings', () => {
    const rated = (ratedA: number, inrushA: number, outA: number) =>
      sumsOf(
        feedOnly(
          [
            supply('s', 24, { supply: { control24: { nominalV: 24, ratedA, inrushA }, outputs: [{ id: 'x', name: 'X1', ratedA: outA }] } }),
            drive('u1', { control24: { loadA: 3, inrushA: 9, minimumV: 20 } }),
            drive('u2', { control24: { loadA: 2, inrushA: 1, minimumV: 20 } }),
          ],
          [lead('d1', 's', 'u1', { from: { unit: 's', output: 'x' } }), lead('d2', 's', 'u2')],
        ),
      );
    // At switching on a unit never draws less than its load.
    const fits = rated(5, 11, 3);
    expect(fits.problems).toEqual([]);
    expect(fits.feed.supplies[0]?.inrush.load.value).toBeCloseTo(11, 9);
    expect(fits.feed.supplies[0]?.steady.share).toBeCloseTo(1, 9);
    expect(rated(4.9, 10.9, 2.9).problems.map(({ code }) => code)).toEqual([
      'supply-inrush-too-high',
      'supply-output-overloaded',
      'supply-overloaded',
    ]);
  });

  it('should call an inrush "at least" so much where that of some unit is not written down, and prove no rating kept by it', () => {
    const of = (inrushA: number | undefined, ratedInrush: number) =>
      sumsOf(
        feedOnly(
          [
            supply('s', 24, { supply: { control24: { nominalV: 24, ratedA: 9, inrushA: ratedInrush } } }),
            drive('u1', { control24: { loadA: 3, inrushA: 9, minimumV: 20 } }),
            drive('u2', { control24: { loadA: 2, minimumV: 20, ...(inrushA === undefined ? {} : { inrushA }) } }),
          ],
          [lead('d1', 's', 'u1'), lead('d2', 's', 'u2')],
        ),
      );
    expect(of(5, 20).feed.supplies[0]?.inrush.load).toMatchObject({ value: 14, bound: null });
    const left = of(undefined, 20);
    expect(left.feed.supplies[0]?.inrush.load).toMatchObject({ value: 11, bound: 'at-least' });
    expect(left.missing).toContainEqual({ figure: 'inrush', of: 'u2' });
    expect(left.feed.supplies[0]?.steady.load).toMatchObject({ value: 5, bound: null });
    // What is at least too much is too much.
    expect(of(undefined, 10).problems.map(({ code }) => code)).toEqual(['supply-inrush-too-high']);
  });

  it('should say what a missing figure leaves open, and no more', () => {
    const content = row(3, 2);
    const without = (id: string, field: string): CabinetContent => ({
      ...content,
      leads: (content.leads ?? []).map((one) =>
        one.id === id ? Object.fromEntries(Object.entries(one).filter(([key]) => key !== field)) : one,
      ) as NonNullable<CabinetContent['leads']>, // only optional fields are taken out
    });
    const long = sumsOf(without('d2', 'lengthM'));
    expect(long.feed.units.map(({ unit, voltage, verdict }) => [unit, voltage.value === null, verdict])).toEqual([
      ['u1', false, 'within'],
      ['u2', true, 'not-known'],
      ['u3', true, 'not-known'],
    ]);
    // What hangs behind a lead flows through it whatever its resistance.
    expect(long.feed.leads.map(({ current }) => current.value)).toEqual([6, 4, 2]);
    expect(long.feed.supplies[0]?.steady.load.value).toBe(6);
    expect(long.missing).toContainEqual({ figure: 'lead-length', of: 'd2' });
    expect(long.problems).toEqual([]);

    const unloaded = sumsOf({
      ...content,
      units: (content.units ?? []).map((unit) => (unit.id === 'u3' ? drive('u3', { onChain: false }) : unit)),
    });
    expect(unloaded.feed.units.map(({ voltage }) => voltage.bound)).toEqual(['at-most', 'at-most', 'at-most']);
    expect(unloaded.feed.supplies[0]?.steady.load).toMatchObject({ value: 4, bound: 'at-least' });
    expect(unloaded.feed.units.map(({ verdict }) => verdict)).toEqual(['not-known', 'not-known', 'not-known']);
  });

  it('should not know the voltages of a mesh with one lead unknown, but what the only supply gives', () => {
    const { feed } = sumsOf(
      feedOnly(
        [supply('s'), drive('u1', { control24: need }), drive('u2', { control24: need })],
        [lead('d1', 's', 'u1'), lead('d2', 's', 'u2'), { id: 'd3', from: { unit: 'u1' }, to: { unit: 'u2' } }],
      ),
    );
    expect(feed.units.map(({ voltage }) => voltage.value)).toEqual([null, null]);
    expect(feed.supplies[0]?.steady.load.value).toBe(4);
  });

  it('should name what it takes where a figure is not written down', () => {
    const content = feedOnly(
      [{ id: 's', kind: 'supply', designation: '-S' }, drive('u1', { control24: need })],
      [{ id: 'd', from: { unit: 's' }, to: { unit: 'u1' }, lengthM: 10, crossSectionMm2: 2 }],
      { ambientC: 40 },
    );
    const [only] = sumsOf(content).feed.leads;
    const [length, conductor, temperature] = only?.resistance.from ?? [];
    expect(length).toMatchObject({ value: 10, status: 'documented' });
    expect(conductor).toMatchObject({ value: (13.3 * 1.5) / 2, status: 'assumed', basis: 'scaled-conductor' });
    expect(temperature).toMatchObject({ value: 40, status: 'assumed', basis: 'ambient-of-cabinet' });
    expect(sumsOf(content).feed.supplies[0]?.voltage).toMatchObject({ value: 24, status: 'assumed', basis: 'usual-24-volts' });
  });

  it('should never lower a voltage by a thicker, shorter or cooler lead in a tree', () => {
    const size = fc.constantFrom(0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10);
    const one = fc.record({
      from: fc.nat(),
      load: fc.double({ min: 0, max: 6, noNaN: true }),
      size,
      length: fc.double({ min: 0, max: 20, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(one, { minLength: 1, maxLength: 8 }),
        fc.nat(),
        fc.constantFrom('size', 'length', 'heat'),
        (parts, which, change) => {
          const at = which % parts.length;
          const build = (better: boolean) =>
            feedOnly(
              [supply('s'), ...parts.map(({ load }, i) => drive(`u${i}`, { control24: { ...need, loadA: load } }))],
              parts.map(({ from, size: mm2, length }, i) => {
                const changed = better && i === at;
                const start = from % (i + 1);
                return lead(`d${i}`, start === 0 ? 's' : `u${start - 1}`, `u${i}`, {
                  crossSectionMm2: changed && change === 'size' ? 10 : mm2,
                  lengthM: changed && change === 'length' ? length / 2 : length,
                  conductorTemperatureC: changed && change === 'heat' ? 20 : 60,
                });
              }),
            );
          const [before, after] = [voltagesOf(build(false)), voltagesOf(build(true))];
          for (const [unit, volts] of Object.entries(before)) expect(after[unit] ?? 0).toBeGreaterThanOrEqual(volts - 1e-9);
          expect(Object.keys(before)).toHaveLength(parts.length);
        },
      ),
      { seed: 8, numRuns: 80 },
    );
  });
});
