import { describe, expect, it } from 'vitest';
import { conductorTable, findLeadResistance, resistancePerKilometre, tableSizes } from '../../engine/sums/conductors.ts';
import { copperFactor, leadResistance, voltageDrop } from '../../engine/sums/formulas.ts';
import { amperes, celsius, metres, ohmsPerKilometre } from '../../engine/sums/units.ts';
import { check } from './publishedRows.ts';
import { drive, feedOnly, lead, sumsOf, supply } from './sketch.ts';

/** What is left above its minimum at a unit that draws nothing. */
const headroomOf = (nominalV: number, minimumV: number) => {
  const units = [supply('s', nominalV), drive('u', { control24: { loadA: 0, minimumV } })];
  return sumsOf(feedOnly(units, [lead('l', 's', 'u')])).feed.units[0]?.headroom.value ?? null;
};

describe('electrical sums against published figures', () => {
  // E1, IEC 60228:2004 tables 1 to 3; READ in three independent copies that agree on every row.
  const printed = [
    [0.5, '39.0', '40.1', '36.0'],
    [0.75, '26.0', '26.7', '24.5'],
    [1, '19.5', '20.0', '18.1'],
    [1.5, '13.3', '13.7', '12.1'],
    [2.5, '7.98', '8.21', '7.41'],
    [4, '4.95', '5.09', '4.61'],
    [6, '3.30', '3.39', '3.08'],
    [10, '1.91', '1.95', '1.83'],
  ] as const;

  it.each(printed)('E1 %d mm² [READ; IEC 60228:2004, tables 1 to 3]', (size, flexible, tinned, solid) => {
    expect(resistancePerKilometre('class-5', size)).toEqual({ value: Number(flexible), exact: true });
    expect(resistancePerKilometre('class-5-tinned', size)).toEqual({ value: Number(tinned), exact: true });
    expect(resistancePerKilometre('class-1-2', size)).toEqual({ value: Number(solid), exact: true });
  });

  it('should have no other sizes in its table than those that were read', () => {
    expect(tableSizes).toEqual(printed.map(([size]) => size));
    for (const row of Object.values(conductorTable)) expect(row).toHaveLength(printed.length);
  });

  const annex = [
    [5, 1.064],
    [10, 1.042],
    [15, 1.02],
    [25, 0.98],
    [30, 0.962],
    [40, 0.926],
    [50, 0.893],
    [60, 0.862],
    [70, 0.833],
    [75, 0.82],
    [90, 0.781],
    [100, 0.758],
  ] as const;
  // The tool uses the copper form (E3), which differs from the rounded table of the annex by less than 0.0035; it says so.
  check(
    annex.map(([at, expected]) => ({
      id: 'E2',
      what: `a reading at ${at} °C, back to 20 °C`,
      source: 'IEC 60228, annex, correction to 20 °C',
      status: 'READ+CALC' as const,
      found: () => 1 / copperFactor(celsius(at)),
      expected,
      within: 0.0035,
    })),
  );
  check(
    (
      [
        [30, 0.962],
        [40, 0.927],
        [70, 0.836],
        [90, 0.784],
        [100, 0.761],
      ] as const
    ).map(([at, expected]) => ({
      id: 'E3',
      what: `254.5/(234.5 + t) at ${at} °C`,
      source: 'IEC 60228, annex, note',
      status: 'MEM + CALC' as const,
      found: () => 1 / copperFactor(celsius(at)),
      expected,
      within: 0.0006,
    })),
  );

  const dropIn = (size: number, temperature: number, length = 10) => {
    const found = findLeadResistance(
      { id: 'l', lengthM: length, crossSectionMm2: size, conductorClass: 'class-5', conductorTemperatureC: temperature },
      null,
    );
    return found.term.value === null ? null : voltageDrop(amperes(5), found.term.value);
  };
  check([
    ...(
      [
        [0.5, 3.9],
        [0.75, 2.6],
        [1, 1.95],
        [1.5, 1.33],
        [2.5, 0.798],
        [4, 0.495],
        [6, 0.33],
        [10, 0.191],
      ] as const
    ).map(([size, expected]) => ({
      id: size === 1.5 ? 'E21' : 'E22',
      what: `${size} mm² class 5, 10 m, 5 A: drop`,
      source: 'IEC 60228 table',
      status: 'CALC' as const,
      found: () => dropIn(size, 20),
      expected,
      within: 0.0005,
    })),
    {
      id: 'E21',
      what: '1.5 mm² class 5, 10 m, 5 A, conductor at 70 °C',
      source: 'IEC 60228 table and copper form',
      status: 'CALC',
      found: () => dropIn(1.5, 70),
      expected: 1.591,
      within: 0.001,
    },
    {
      id: 'E24',
      what: 'the longest run from 24.0 V to 20.4 V at 5 A on 1.5 mm² is 27.07 m',
      source: 'IEC 60228 table',
      status: 'CALC',
      found: () => dropIn(1.5, 20, 27.07),
      expected: 3.6,
      within: 0.002,
    },
  ]);

  // The product knows copper alone, by the copper form (α20 = 1/254.5 K⁻¹); the books round α, hence the tolerances.
  const from = (at: number, to: number) => copperFactor(celsius(to)) / copperFactor(celsius(at));
  const bird = 'Bird, Electrical and Electronic Principles and Technology';
  check([
    {
      id: 'E4',
      what: '10 Ω at 20 °C are 13.2 Ω at 100 °C (α20 taken as 0.004 there)',
      source: `${bird}, problem 3.11`,
      status: 'READ+CALC',
      found: () => 10 * from(20, 100),
      expected: 13.2,
      within: 0.06,
    },
    {
      id: 'E5',
      what: '100 Ω at 0 °C are 130.1 Ω at 70 °C (α0 taken as 0.0043 there)',
      source: `${bird}, problem 3.8`,
      status: 'READ+CALC',
      found: () => 100 * from(0, 70),
      expected: 130.1,
      within: 0.3,
    },
    {
      id: 'E6',
      what: '200 Ω at 18 °C are 240 Ω at 69.28 °C (α18 taken as 0.0039 there)',
      source: `${bird}, problem 3.12`,
      status: 'READ+CALC',
      found: () => 200 * from(18, 69.28),
      expected: 240,
      within: 0.7,
    },
    {
      id: 'E8',
      what: '40 m of 3.2 mm² and 0.02 µΩ·m: 0.25 Ω, as 20 m there and back',
      source: `${bird}, problem 3.5`,
      status: 'READ+CALC',
      found: () => leadResistance(ohmsPerKilometre((0.02 / 3.2) * 1000), metres(20), celsius(20)),
      expected: 0.25,
      within: 1e-9,
    },
    {
      id: 'E8',
      what: '8 m of 3 mm² with 0.16 Ω: three times the length of a third of the area has 1.44 Ω',
      source: `${bird}, problem 3.3`,
      status: 'READ+CALC',
      found: () => leadResistance(ohmsPerKilometre((0.16 / 8) * 3 * 1000), metres(12), celsius(20)),
      expected: 1.44,
      within: 1e-9,
    },
    {
      id: 'E12',
      what: '10.371 Ω·cmil/ft over 4110 cmil, from 20 to 75 °C: Ω per 1000 ft',
      source: 'cross-check of the row above',
      status: 'CALC',
      found: () => (10.371 / 4110) * 1000 * from(20, 75),
      expected: 3.069,
      within: 0.01,
    },
    {
      id: 'E33',
      what: '24.0 V at a unit that needs 20.4 V leave 3.6 V',
      source: 'the window of IEC 61131-2 (E30, READ)',
      status: 'CALC',
      found: () => headroomOf(24, 20.4),
      expected: 3.6,
      within: 1e-9,
    },
    {
      id: 'E33',
      what: '24.0 V at a unit that needs 19.2 V leave 4.8 V',
      source: 'the window of IEC 61131-2 (E31, MEM✓ by arithmetic)',
      status: 'CALC',
      found: () => headroomOf(24, 19.2),
      expected: 4.8,
      within: 1e-9,
    },
  ]);

  // Sizes between those of the table are scaled by area from the greatest resistance of the next smaller one: never less than the
  // published resistance of such a wire, and less than a tenth more.
  check(
    (
      [
        ['E10', 14, 2.081, 3.07, 'solid', 'READ'],
        ['E10', 12, 3.309, 1.93, 'solid', 'READ'],
        ['E10', 10, 5.261, 1.21, 'solid', 'READ'],
        ['E10', 8, 8.366, 0.764, 'solid', 'READ'],
        ['E11', 18, 0.823, 7.95, 'stranded', 'MEM'],
        ['E11', 16, 1.309, 4.99, 'stranded', 'MEM'],
        ['E11', 14, 2.081, 3.14, 'stranded', 'MEM'],
        ['E11', 12, 3.309, 1.98, 'stranded', 'MEM'],
        ['E11', 10, 5.261, 1.24, 'stranded', 'MEM'],
        ['E11', 8, 8.366, 0.778, 'stranded', 'MEM'],
      ] as const
    ).map(([id, gauge, area, perThousandFeet, build, status]) => ({
      id,
      what: `${gauge} AWG ${build}, ${area} mm² (E9), at 75 °C: ours by the published one`,
      source: 'NEC, chapter 9, table 8 (read in a public copy of weak standing)',
      status,
      found: () => {
        const ours = leadResistance(resistancePerKilometre('class-1-2', area).value, metres(500), celsius(75));
        return ours / (perThousandFeet / 0.3048);
      },
      expected: 1.045,
      within: 0.045,
    })),
  );

  check(
    (
      [
        [14, 1.628, 2.081],
        [10, 2.588, 5.261],
        [24, 0.511, 0.205],
      ] as const
    ).map(([gauge, diameter, area]) => ({
      id: 'E9',
      what: `${gauge} AWG: ${diameter} mm is ${area} mm², which scales a lead's resistance`,
      source: 'ASTM B258, read in Lessons in Electric Circuits, reference tables',
      status: 'READ+CALC' as const,
      found: () =>
        resistancePerKilometre('class-1-2', (Math.PI / 4) * diameter ** 2).value / resistancePerKilometre('class-1-2', area).value,
      expected: 1,
      within: 0.002,
    })),
  );
});
