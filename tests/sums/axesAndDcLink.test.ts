import { describe, expect, it } from 'vitest';
import type { CabinetContent, UnitRecord } from '../../engine/schema/index.ts';
import { drive, feedOnly, lead, oneLink, optics, sumsOf, supply } from './sketch.ts';

/** A chain of drives with so many axes each. */
const chainOf = (axes: readonly number[], rest: Partial<CabinetContent> = {}): CabinetContent => ({
  id: 'c',
  name: 'Axes',
  controller: { id: 'k', designation: '-KF1' },
  chains: [{ id: 'ch1', number: 1, cycleClass: 'fast', optics }],
  types: [{ id: 't', name: 'Drive' }],
  units: axes.map((count, i) => drive(`u${i + 1}`, { axes: Array.from({ length: count }, (_, a) => ({ name: `A${i}${a}` })) })),
  links: axes.map((_, i) => ({ id: `w${i + 1}`, upper: i === 0 ? { chain: 'ch1' } : { unit: `u${i}` }, lower: { unit: `u${i + 1}` } })),
  ...rest,
});
// Common practice, no published source (domain section 8): never built in, here as a user might write it.
const axisLimits = [
  { cycleClass: 'fast', maximumAxes: 6, source: 'common practice' },
  { cycleClass: 'standard', maximumAxes: 28, source: 'common practice' },
];

describe('axes on a chain', () => {
  it('should be held against the table of the user, and against nothing without one', () => {
    const [full] = sumsOf(chainOf([2, 2, 2], { axisLimits })).axes;
    expect([full?.axes.value, full?.limit.value, full?.left.value]).toEqual([6, 6, 0]);
    expect(full?.limit.source).toBe('common practice');
    const [over] = sumsOf(chainOf([4, 3], { axisLimits })).axes;
    expect(over?.left.value).toBe(-1);
    expect(over?.classes).toEqual([
      { cycleClass: 'fast', maximumAxes: 6, fits: false },
      { cycleClass: 'standard', maximumAxes: 28, fits: true },
    ]);
    const bare = sumsOf(chainOf([4, 3]));
    expect(bare.axes[0]).toMatchObject({ limit: { value: null }, left: { value: null }, classes: [] });
    expect(bare.missing).toContainEqual({ figure: 'axis-limit', of: 'ch1' });
  });

  it('should count a drive without axes as one, and say so', () => {
    const [found] = sumsOf(chainOf([2, 0], { axisLimits })).axes;
    expect(found).toMatchObject({ axes: { value: 3 }, assumedDrives: 1 });
    expect(found?.axes.from.map(({ value, status }) => [value, status])).toEqual([
      [2, 'documented'],
      [1, 'assumed'],
    ]);
  });

  it('should tell a limit that the wire cannot carry', () => {
    const limits = (bytesPerAxis: number) => [{ cycleClass: 'fast', maximumAxes: 6, cycleUs: 100, bytesPerAxis }];
    // 5 MBd × 100 µs are 500 bits: six axes of 10 bytes fit, of 12 bytes not.
    expect(sumsOf(chainOf([3], { axisLimits: limits(10) })).problems).toEqual([]);
    expect(sumsOf(chainOf([3], { axisLimits: limits(10) })).axes[0]?.wireShare?.value).toBeCloseTo(48, 9);
    const [problem] = sumsOf(chainOf([3], { axisLimits: limits(12) })).problems;
    expect(problem).toMatchObject({ code: 'axis-limit-beyond-wire', where: '/axisLimits/0/maximumAxes', facts: { limit: 6, most: 5 } });
  });
});

const dcLink = { ratedKw: 10, capacitanceUf: 1000, dischargeOhm: 100_000, lineVoltageV: 400, lineTolerancePercent: 0 };
const withLink = (link: NonNullable<NonNullable<UnitRecord['supply']>['dcLink']>, ...drives: readonly UnitRecord[]) =>
  sumsOf(
    feedOnly(
      [supply('s', 24, { supply: { control24: { nominalV: 24 }, dcLink: link } }), ...drives],
      drives.map(({ id }) => lead(`d${id}`, 's', id)),
    ),
  );
const motor = drive('u1', { dcLinkKw: 4, dcLinkCapacitanceUf: 500 });
const figure = (field: keyof typeof dcLink) => Object.fromEntries(Object.entries(dcLink).filter(([key]) => key !== field));

describe('the DC link', () => {
  it('should add up power and capacitance, and tell when it is harmless', () => {
    const { dcLinks, waitingTimeS, problems } = withLink(dcLink, motor, drive('u2', { dcLinkKw: 6, dcLinkCapacitanceUf: 0 }));
    const [found] = dcLinks;
    expect([found?.power.value, found?.share, found?.over, found?.capacitance.value]).toEqual([10, 1, false, 1500]);
    const expected = 100_000 * 1500e-6 * Math.log((Math.SQRT2 * 400) / 60);
    expect(found?.discharge.value).toBeCloseTo(expected, 9);
    expect(waitingTimeS).toBeCloseTo(expected, 9);
    expect(problems).toEqual([]);
    const more = withLink(dcLink, motor, drive('u2', { dcLinkKw: 6.1, dcLinkCapacitanceUf: 0 }));
    expect(more.problems).toMatchObject([{ code: 'dc-link-overloaded', where: '/units/0/supply/dcLink', facts: { ratedKw: 10 } }]);
  });

  it.each(['capacitanceUf', 'dischargeOhm', 'lineVoltageV'] as const)(
    'should never give a time without %s, nor with nonsense in it',
    (field) => {
      for (const link of [figure(field), { ...dcLink, [field]: Number.NaN }, { ...dcLink, [field]: -5 }]) {
        const { dcLinks, waitingTimeS, missing } = withLink(link, motor);
        expect(dcLinks[0]?.discharge).toMatchObject({ value: null, status: 'not-known' });
        expect(waitingTimeS).toBeNull();
        expect(missing.length).toBeGreaterThan(0);
      }
    },
  );

  it('should never promise that there is nothing to wait for because of a nought', () => {
    for (const field of ['dischargeOhm', 'lineVoltageV'] as const)
      expect(withLink({ ...dcLink, [field]: 0 }, motor).waitingTimeS).toBeNull();
    expect(withLink({ ...dcLink, capacitanceUf: 0 }, drive('u1', { dcLinkKw: 1, dcLinkCapacitanceUf: 0 })).waitingTimeS).toBeNull();
  });

  it('should not know the time when one drive keeps its capacitance to itself', () => {
    const { dcLinks, missing } = withLink(dcLink, motor, drive('u2', { dcLinkKw: 1 }));
    expect(dcLinks[0]?.discharge.value).toBeNull();
    expect(missing).toContainEqual({ figure: 'capacitance', of: 'u2' });
  });

  it('should take 10 % of tolerance where none is given, and say so', () => {
    const [found] = withLink(figure('lineTolerancePercent'), motor).dcLinks;
    const [, , charged] = found?.discharge.from ?? [];
    expect(charged?.value).toBeCloseTo(Math.SQRT2 * 440, 9);
    expect(charged?.from[1]).toMatchObject({ value: 10, status: 'assumed', basis: 'usual-tolerance' });
  });

  it('should share drives among several links as they say, and know no time while one says nothing', () => {
    const link = { supply: { control24: { nominalV: 24 }, dcLink } };
    const build = (second: UnitRecord) =>
      sumsOf(
        feedOnly(
          [
            supply('s1', 24, link),
            supply('s2', 24, link),
            drive('u1', { dcLinkKw: 4, dcLinkCapacitanceUf: 500, dcLinkSupply: 's1' }),
            second,
          ],
          [lead('d1', 's1', 'u1'), lead('d2', 's2', 'u2')],
        ),
      );
    const said = build(drive('u2', { dcLinkKw: 3, dcLinkCapacitanceUf: 100, dcLinkSupply: 's2' }));
    expect(said.dcLinks.map(({ power, capacitance }) => [power.value, capacitance.value])).toEqual([
      [4, 1500],
      [3, 1100],
    ]);
    expect(said.waitingTimeS).toBe(said.dcLinks[0]?.discharge.value);
    const unsaid = build(drive('u2', { dcLinkKw: 3, dcLinkCapacitanceUf: 100 }));
    expect(unsaid.waitingTimeS).toBeNull();
    expect(unsaid.dcLinks.map(({ discharge, power }) => [discharge.value, power.bound ?? 'whole'])).toEqual([
      [null, 'at-least'],
      [null, 'whole'],
    ]);
    expect(unsaid.missing).toContainEqual({ figure: 'dc-link-supply', of: 'u2' });
  });

  it('should know no time of a cabinet without a DC link on record', () => {
    expect(sumsOf(oneLink()).waitingTimeS).toBeNull();
  });
});
