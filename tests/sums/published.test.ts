import { describe, expect, it } from 'vitest';
import { conductorTable, findLeadResistance, resistancePerKilometre, tableSizes } from '../../engine/sums/conductors.ts';
import {
  axesOnWire,
  chargedVoltage,
  copperFactor,
  dbmOfMilliwatts,
  dischargeTime,
  harmlessVoltage,
  lengthForLoss,
  lossOfLength,
  overloadMargin,
  sensitivityMargin,
  shareOfCycle,
  temperatureEffect,
  voltageDrop,
} from '../../engine/sums/formulas.ts';
import {
  amperes,
  bytes,
  celsius,
  count,
  db,
  dbm,
  dbPerKelvin,
  dbPerMetre,
  lossDb,
  megabauds,
  metres,
  microfarads,
  microseconds,
  percent,
  ratedVolts,
  resistorOhms,
} from '../../engine/sums/units.ts';

/*
 * Published figures, and what the formulas of the sums make of the same input. `status` says how far each row may be trusted:
 * READ: the number was read in a copy of the source. READ+CALC: the input was read, the output recomputed. MEM: from memory.
 * MEM✓: from memory, and several remembered numbers agree through one formula. CALC: computed, not published: a regression value.
 */
interface Row {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  readonly status: 'READ' | 'READ+CALC' | 'MEM' | 'MEM✓' | 'MEM✓ + READ length' | 'MEM + CALC' | 'CALC';
  readonly found: () => number | null;
  readonly expected: number;
  readonly within: number;
}

const check = (rows: readonly Row[]) =>
  it.each(rows.map((row) => [`${row.id} ${row.what} [${row.status}; ${row.source}]`, row] as const))(
    '%s',
    (_, { found, expected, within }) => {
      const value = found();
      expect(value).not.toBeNull();
      expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(within);
    },
  );

/** The length that light allows: launch power − sensitivity − extras, by the attenuation. */
const lengthOf = (launch: number, sensitivity: number, attenuation: number, extras = 0) =>
  lengthForLoss(sensitivityMargin(dbm(launch), [lossDb(extras)], dbm(sensitivity)), dbPerMetre(attenuation));

const channel = (id: string, alpha: number, length: number, expected: number): Row => ({
  id,
  what: `${length} m of ${alpha} dB/m and two connections of 1.5 dB`,
  source: 'EN 50173-1, greatest channel attenuation of its optical classes (read in a summary)',
  status: 'CALC',
  found: () => lossOfLength(dbPerMetre(alpha), metres(length)) + 2 * 1.5,
  expected,
  within: 1e-9,
});

const links = (
  [
    ['O20', '5 MBd, 0–70 °C', -16.5, -21.6, 18.9, 22.2],
    ['O21', '5 MBd, 25 °C', -14.3, -21.6, 27.0, 31.7],
    ['O22', '1 MBd, 0–70 °C', -13.6, -24.0, 38.5, 45.2],
    ['O23', '1 MBd, 25 °C', -11.2, -24.0, 47.4, 55.7],
    ['O24', '40 kBd, 0–70 °C', -13.6, -39.0, 94.1, 110.4],
    ['O26', '1 MBd standard, 0–70 °C', -17.8, -20.0, 8.1, 9.6],
    ['O27', '1 MBd standard, 25 °C', -15.5, -20.0, 16.7, 19.6],
  ] as const
).flatMap(([id, what, launch, sensitivity, standard, lowLoss]): Row[] =>
  (
    [
      [0.27, standard],
      [0.23, lowLoss],
    ] as const
  ).map(([alpha, expected]) => ({
    id,
    what: `${what}, ${alpha} dB/m`,
    source: 'data sheets of a family of 1 mm plastic-fibre components, HFBR-15xx/25xx',
    status: 'MEM✓',
    found: () => lengthOf(launch, sensitivity, alpha),
    expected,
    within: 0.06,
  })),
);

describe('optical sums against published figures', () => {
  check([
    channel('O15', 0.18, 25, 7.5),
    channel('O15', 0.18, 50, 12),
    channel('O15', 0.1, 100, 13),
    channel('O15', 0.1, 200, 23),
    channel('O15', 0.033, 100, 6.3),
    channel('O15', 0.033, 200, 9.6),
    ...links,
    {
      id: 'O25',
      what: '40 kBd, 25 °C, low-loss fibre: up to 120 m',
      source: 'the same data sheets; the length was read in AV02-1501EN',
      status: 'MEM✓ + READ length',
      found: () => lengthOf(-11.2, -39, 0.23),
      expected: 120.9,
      within: 0.06,
    },
    {
      id: 'O31',
      what: 'light of an LED at 70 °C against 25 °C, by −0.85 % for each degree, as a coefficient in dB/K',
      source: 'the same family of data sheets',
      status: 'MEM✓',
      found: () => temperatureEffect(dbPerKelvin((10 * Math.log10(1 - 0.0085 * 45)) / 45), celsius(70)),
      expected: -2.09,
      within: 0.01,
    },
    {
      id: 'O7',
      what: 'high-temperature fibre, 10 m: 2.0 dB at 25 °C and 2.5 dB over its range, × 1.25',
      source: 'specification table of a high-temperature plastic fibre, ESKA BH4001',
      status: 'READ',
      found: () => lossOfLength(dbPerMetre(0.25), metres(10)) / lossOfLength(dbPerMetre(0.2), metres(10)),
      expected: 1.25,
      within: 1e-9,
    },
    {
      id: 'O40',
      what: '+2 to −30 dBm, coupling 16 dB, connectors 6 dB, margin 4 dB, 0.5 dB/km: 12 km',
      source: 'Palais, Fiber Optic Communications, example 5.4',
      status: 'READ+CALC',
      found: () => lengthOf(2, -30, 0.5e-3, 16 + 6 + 4),
      expected: 12_000,
      within: 1e-6,
    },
    {
      id: 'O42',
      what: '0 to −25 dBm, 3 + 0.5 dB/km, connectors 1.5 dB, margin 7 dB: 4.714 km',
      source: 'Khare, Fiber Optics and Optoelectronics, example 12.2(a)',
      status: 'READ+CALC',
      found: () => lengthOf(0, -25, 3.5e-3, 1.5 + 7),
      expected: 4714,
      within: 0.5,
    },
    {
      id: 'O44',
      what: 'transmitter for a budget of 10 dB and 3 dB of margin to −30 dBm: −17 dBm leaves nothing over',
      source: 'Kolimbiris, Fiber Optics Communication, example 12.4',
      status: 'READ+CALC',
      found: () => sensitivityMargin(dbm(-17), [lossDb(10), lossDb(3)], dbm(-30)),
      expected: 0,
      within: 1e-9,
    },
    {
      id: 'O45',
      what: '10 µW is −20 dBm',
      source: 'Kolimbiris, Fiber Optics Communication, example 12.1',
      status: 'READ+CALC',
      found: () => dbmOfMilliwatts(0.01),
      expected: -20,
      within: 1e-9,
    },
    {
      id: 'O45',
      what: '10 µW against 1 µW: a margin of 10 dB',
      source: 'Kolimbiris, Fiber Optics Communication, example 12.1',
      status: 'READ+CALC',
      found: () => sensitivityMargin(dbmOfMilliwatts(0.01), [], dbmOfMilliwatts(0.001)),
      expected: 10,
      within: 1e-9,
    },
    {
      id: 'O46',
      what: '−15 to −28 dBm: a budget of 13 dB',
      source: 'cabling guide of a network vendor',
      status: 'READ',
      found: () => sensitivityMargin(dbm(-15), [], dbm(-28)),
      expected: 13,
      within: 1e-9,
    },
    {
      id: 'S11',
      what: '0.3548 mW is −4.5 dBm',
      source: 'definition of dBm',
      status: 'CALC',
      found: () => dbmOfMilliwatts(0.3548),
      expected: -4.5,
      within: 0.001,
    },
    {
      id: 'O29',
      what: 'a case in which light is not the limit: (11 − 3) dB by 0.27 dB/m is more than the 20 m that the sheet guarantees',
      source: 'data sheet HFBR-0507Z, page 2',
      status: 'READ',
      found: () => lengthForLoss(db(11 - 3), dbPerMetre(0.27)),
      expected: 29.6,
      within: 0.05,
    },
    {
      id: '1.4',
      what: 'a grade of 0.23 instead of 0.27 dB/m lengthens by 1.1739',
      source: 'the formula itself',
      status: 'CALC',
      found: () => (lengthOf(-13.6, -24, 0.23) ?? 0) / (lengthOf(-13.6, -24, 0.27) ?? 1),
      expected: 1.1739,
      within: 5e-5,
    },
  ]);

  it('should take the strongest light for the overload: less loss, less margin', () => {
    expect(overloadMargin(dbm(-4.5), lossDb(0), dbm(-2))).toBeCloseTo(2.5, 12);
    expect(overloadMargin(dbm(-4.5), lossDb(3), dbm(-2))).toBeCloseTo(5.5, 12);
  });
});

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
});

describe('the discharge of a DC link against published figures', () => {
  const time = (farads: number, resistor: number, from: number, to?: number) =>
    dischargeTime(resistorOhms(resistor), microfarads(farads), ratedVolts(from), ...(to === undefined ? [] : [ratedVolts(to)]));

  it('S1 should wait for 60 V [READ; IEC 60204-1, 6.2.4]', () => {
    expect(harmlessVoltage).toBe(60);
  });

  check([
    {
      id: 'S4',
      what: 'τ = 0.8 s (50 kΩ, 16 µF), 100 to 20 V: 1.288 s',
      source: 'Bird, Electrical and Electronic Principles and Technology, problem 18.6',
      status: 'READ+CALC',
      found: () => time(16, 50_000, 100, 20),
      expected: 1.288,
      within: 0.01,
    },
    ...(
      [
        [1000, 100_000, 565, 224.2],
        [2000, 10_000, 565, 44.85],
        [4700, 22_000, 325, 174.7],
        [1000, 33_000, 680, 80.1],
      ] as const
    ).map(([capacitance, resistor, from, expected]) => ({
      id: 'S6',
      what: `${capacitance} µF, ${resistor} Ω, ${from} V`,
      source: 'R·C·ln(V0/60 V)',
      status: 'CALC' as const,
      found: () => time(capacitance, resistor, from),
      expected,
      within: expected * 0.001,
    })),
    {
      id: 'S7',
      what: '2229.7 Ω discharge 1000 µF from 565 V in 5 s',
      source: 'R·C·ln(V0/60 V)',
      status: 'CALC',
      found: () => time(1000, 2229.7, 565),
      expected: 5,
      within: 0.001,
    },
    {
      id: 'S8',
      what: '60 V or less: no waiting',
      source: 'the rule itself',
      status: 'CALC',
      found: () => time(1000, 1000, 60),
      expected: 0,
      within: 0,
    },
    {
      id: 'S8',
      what: '400 V line: 565.7 V',
      source: '√2·V',
      status: 'CALC',
      found: () => chargedVoltage(ratedVolts(400), percent(0)),
      expected: 565.7,
      within: 0.05,
    },
    {
      id: 'S8',
      what: '400 V line + 10 %: 622.3 V',
      source: '√2·V·(1 + tolerance)',
      status: 'CALC',
      found: () => chargedVoltage(ratedVolts(400), percent(10)),
      expected: 622.3,
      within: 0.05,
    },
  ]);
});

describe('the wire of a chain against published figures', () => {
  const rows = [
    [8, 31.25, 8, 16.4],
    [12, 250, 70, 26.9],
    [32, 1000, 150, 38.4],
    [16, 1000, 254, 32.5],
  ] as const;
  check(
    rows.map(([perAxis, cycle, axes, expected]) => ({
      id: 'A2',
      what: `${axes} drives of ${perAxis} bytes in ${cycle} µs at 100 Mbit/s (A1, READ): part of the cycle`,
      source: 'cycle table of an open real-time Ethernet bus, SERCOS III',
      status: 'CALC' as const,
      found: () => shareOfCycle(count(axes), bytes(perAxis), megabauds(100), microseconds(cycle)),
      expected,
      within: 0.05,
    })),
  );

  it.each(rows)('A1 should not call %d bytes in %d µs for %d drives impossible [READ]', (perAxis, cycle, axes) => {
    expect(axesOnWire(bytes(perAxis), megabauds(100), microseconds(cycle))).toBeGreaterThanOrEqual(axes);
  });

  it('A10 should never allow fewer axes for a faster wire or a longer cycle [CALC]', () => {
    for (let rate = 1; rate <= 32; rate += 1) {
      for (const cycle of [62.5, 125, 250, 500, 1000]) {
        const most = axesOnWire(bytes(4), megabauds(rate), microseconds(cycle));
        expect(axesOnWire(bytes(4), megabauds(rate + 1), microseconds(cycle))).toBeGreaterThanOrEqual(most);
        expect(axesOnWire(bytes(4), megabauds(rate), microseconds(2 * cycle))).toBeGreaterThanOrEqual(2 * most);
      }
    }
  });
});
