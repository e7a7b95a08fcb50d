import { describe, expect, it } from 'vitest';
import type { CabinetContent, LinkRecord } from '../../engine/schema/index.ts';
import {
  dbmOfMilliwatts,
  lengthForLoss,
  lossOfLength,
  overloadMargin,
  sensitivityMargin,
  temperatureEffect,
} from '../../engine/sums/formulas.ts';
import { celsius, db, dbm, dbPerKelvin, dbPerMetre, lossDb, metres } from '../../engine/sums/units.ts';
import { check, type Row } from './publishedRows.ts';
import { oneLink, sumsOf } from './sketch.ts';

type FibreRecord = NonNullable<CabinetContent['fibres']>[number];

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

  // What the fibre's entry says of bends, couplers and ends goes into the loss of a cable as it stands there.
  const lossOf = (link: Partial<LinkRecord>, entry: Partial<FibreRecord>) => {
    const [budget] = sumsOf(oneLink(link, { fibres: [{ id: 'f', name: 'fibre', attenuationDbPerM: 0.2, ...entry }] })).optical;
    return budget?.loss.value ?? null;
  };
  const overLength = (entry: Partial<FibreRecord>, lengthM: number, dataRateMbd: number) => {
    const content = oneLink({ lengthM }, { fibres: [{ id: 'f', name: 'fibre', attenuationDbPerM: 0.001, ...entry }] });
    const chains = (content.chains ?? []).map((chain) => ({ ...chain, optics: { ...chain.optics, dataRateMbd } }));
    return sumsOf({ ...content, chains }).optical[0]?.limits.filter(({ exceeded }) => exceeded).length ?? null;
  };
  const limit = (id: string, what: string, source: string, status: Row['status'], metresAllowed: number, rate: number): readonly Row[] =>
    [metresAllowed, metresAllowed + 0.1].map((length, at) => ({
      id,
      what: `${what}: ${length} m is ${at === 0 ? 'within' : 'beyond'} its limit`,
      source,
      status,
      found: () => overLength({ lengthLimits: [{ dataRateMbd: rate, maximumLengthM: metresAllowed }] }, length, rate),
      expected: at,
      within: 0,
    }));

  check([
    {
      id: 'O8',
      what: 'four quarter turns of 0.5 dB on 10 m of 0.2 dB/m',
      source: 'specification table of a high-temperature plastic fibre, ESKA BH4001: a quarter bend of 15 mm adds 0.5 dB at most',
      status: 'READ',
      found: () => lossOf({ lengthM: 10, bends: [{ radiusMm: 15, quarterTurns: 4 }] }, { quarterBendDb: 0.5 }),
      expected: 2 + 4 * 0.5,
      within: 1e-9,
    },
    {
      id: 'O9',
      what: '100 m of a 1 mm fibre of 200 dB/km',
      source: 'description of generic 1 mm plastic fibre',
      status: 'READ',
      found: () => lossOf({ lengthM: 100 }, { attenuationDbPerM: 0.2 }),
      expected: 20,
      within: 1e-9,
    },
    {
      id: 'O16',
      what: 'two ends of 0.75 dB on 10 m of 0.2 dB/m',
      source: 'connector allowance of class tables for multimode fibre',
      status: 'READ',
      found: () => lossOf({ lengthM: 10 }, { endDb: 0.75 }),
      expected: 2 + 2 * 0.75,
      within: 1e-9,
    },
    {
      id: 'O17',
      what: 'without a figure for the ends none is added: the powers of plastic-fibre ports include them',
      source: 'data sheets of a family of 1 mm plastic-fibre components, HFBR-0500Z',
      status: 'READ',
      found: () => lossOf({ lengthM: 10 }, {}),
      expected: 2,
      within: 1e-9,
    },
    {
      id: 'O18',
      what: 'one coupler of 2.0 dB on 10 m of 0.2 dB/m',
      source: 'data sheets of in-line couplers, 1.0 to 2.0 dB',
      status: 'MEM',
      found: () => lossOf({ lengthM: 10, couplers: 1 }, { couplerDb: 2 }),
      expected: 4,
      within: 1e-9,
    },
    ...limit('O28', '10 MBd on 1 mm plastic fibre', 'data sheet HFBR-0508Z', 'READ', 50, 10),
    ...limit('O28', '10 MBd on 200 µm hard-clad silica', 'data sheet HFBR-0508Z', 'READ', 500, 10),
    ...limit('O29', '125 MBd on standard plastic fibre', 'data sheet HFBR-0507Z, page 2', 'READ', 20, 125),
    ...limit('O50', '16 Mbit/s ring, plastic', 'introduction of an open drive ring, IEC 61491', 'READ', 50, 16),
    ...limit('O50', '16 Mbit/s ring, glass', 'introduction of an open drive ring, IEC 61491', 'READ', 250, 16),
  ]);

  it.each([
    ['O6', 35, 'data sheet of a 1 mm plastic-fibre cable: 35 mm for good'],
    ['O9', 25, 'description of generic 1 mm plastic fibre'],
    ['O11', 25, 'handling note for plastic fibre in vehicles'],
  ])('%s should call a bend below %d mm too tight, and that one not [READ; %s]', (_, minimumBendMm) => {
    const tight = (radiusMm: number) =>
      sumsOf(oneLink({ bends: [{ radiusMm }] }, { fibres: [{ id: 'f', name: 'fibre', minimumBendMm }] })).problems.map(({ code }) => code);
    expect(tight(minimumBendMm - 1)).toContain('bend-too-tight');
    expect(tight(minimumBendMm)).not.toContain('bend-too-tight');
  });
});
