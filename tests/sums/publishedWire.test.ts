import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { axesOnWire, chargedVoltage, dischargeTime, harmlessVoltage, shareOfCycle } from '../../engine/sums/formulas.ts';
import { bytes, count, megabauds, microfarads, microseconds, percent, ratedVolts, resistorOhms } from '../../engine/sums/units.ts';
import { check, type Row } from './publishedRows.ts';

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

  const drives = 'pages of an open drive ring, IEC 61491';
  const fast = 'pages of an open real-time Ethernet bus';
  const never = (id: string, what: string, source: string, status: Row['status'], axes: number, most: () => number): Row => ({
    id,
    what: `${what}: ${axes} axes are not called impossible`,
    source,
    status,
    found: () => Math.min(axes, most()),
    expected: axes,
    within: 0,
  });
  // Where a source gives no bytes for each axis, 4 are taken: one position.
  check([
    never('A3', 'the shortest cycle, 62.5 µs at 16 Mbit/s', drives, 'READ', 8, () =>
      axesOnWire(bytes(4), megabauds(16), microseconds(62.5)),
    ),
    never('A3', 'packaging, 1 ms at 16 Mbit/s', drives, 'READ', 40, () => axesOnWire(bytes(4), megabauds(16), microseconds(1000))),
    never('A3', 'web printing, 1 ms at 16 Mbit/s', drives, 'READ', 100, () => axesOnWire(bytes(4), megabauds(16), microseconds(1000))),
    never('A4', 'new targets every 0.5 ms at 16 Mbit/s', drives, 'READ', 6, () => axesOnWire(bytes(4), megabauds(16), microseconds(500))),
    never('A6', '100 servo axes every 100 µs', fast, 'READ', 100, () => axesOnWire(bytes(8), megabauds(100), microseconds(100))),
    {
      id: 'A5',
      what: '20 devices of 4 bytes in separate frames of 84: part of the wire',
      source: 'pages of an open real-time Ethernet bus, SERCOS III',
      status: 'READ+CALC',
      found: () => shareOfCycle(count(20), bytes(4), megabauds(100), microseconds(20 * 84 * 0.08)),
      expected: 4.76,
      within: 0.005,
    },
    {
      id: 'A5',
      what: 'one telegram of 1494 bytes with 44 of overhead: part of the wire',
      source: 'pages of an open real-time Ethernet bus, SERCOS III',
      status: 'READ+CALC',
      found: () => shareOfCycle(count(1), bytes(1494), megabauds(100), microseconds(1538 * 0.08)),
      expected: 97.1,
      within: 0.05,
    },
    {
      id: 'A7',
      what: '1538 bytes at 100 Mbit/s take all of 123.04 µs',
      source: 'frame arithmetic, 80 ns for each byte (overheads MEM)',
      status: 'CALC',
      found: () => shareOfCycle(count(1), bytes(1538), megabauds(100), microseconds(123.04)),
      expected: 100,
      within: 0.01,
    },
    {
      id: 'A8',
      what: '100 axes of 8 bytes, 852 on the wire: part of 100 µs',
      source: 'frame arithmetic (overheads MEM)',
      status: 'CALC',
      found: () => shareOfCycle(count(100), bytes(8.52), megabauds(100), microseconds(100)),
      expected: 68.2,
      within: 0.1,
    },
    {
      id: 'A8',
      what: '100 axes of 16 bytes, 1704 on the wire: more than all of 100 µs',
      source: 'frame arithmetic (overheads MEM)',
      status: 'CALC',
      found: () => shareOfCycle(count(100), bytes(17.04), megabauds(100), microseconds(100)),
      expected: 136.3,
      within: 0.1,
    },
    {
      id: 'A8',
      what: '12.5 bytes on the wire for each axis are the most that 100 axes may have in 100 µs',
      source: 'frame arithmetic (overheads MEM)',
      status: 'CALC',
      found: () => axesOnWire(bytes(12.5), megabauds(100), microseconds(100)),
      expected: 100,
      within: 0,
    },
    {
      id: 'A9',
      what: '1486 bytes are 11 888 points of one bit',
      source: 'pages of an open real-time Ethernet bus: almost 12 000 in one frame',
      status: 'READ+CALC',
      found: () => axesOnWire(bytes(1 / 8), megabauds(100), microseconds(1486 * 0.08)),
      expected: 11_888,
      within: 0,
    },
  ]);
});

/* Rows of the collected figures that touch no formula of the product, and why. */
describe('published figures that no sum of the product uses', () => {
  const unused = [
    ['O1, O2, O4, O5, O12, O13', 'figures of fibres', 'attenuation and geometry are entries of the user; none is built in'],
    ['O10', 'bend loss grows below 20 mm', 'a quarter turn loses what the entry of the fibre says; no curve is built in'],
    ['O20–O27 receiver figures by temperature', 'minimum powers', 'used as inputs of the lengths above, not built in'],
    ['O30, O32', 'budget of 820 nm parts; consumer audio', 'other optics: nothing to compute from them'],
    ['O51–O54', 'lengths of other buses, from memory', 'limits are entries of the user; the rows that were read stand for them'],
    ['E5 (second example)', '27 Ω at 35 °C with α0 = 0.0038', 'not copper; a lead is always copper'],
    ['E25', '5 % of nominal from supply to load', 'from memory; the window of each unit decides, as its manual gives it'],
    ['E32', '0.9 to 1.1 of nominal, ripple, interruptions', 'from memory; the sums are of steady voltages'],
    ['S2, S3', 'harmless charge, 60 µC or 50 µC', 'the product never calls a DC link harmless by its charge, only by 60 V'],
  ] as const;

  it.each(unused)('%s: %s (%s)', (id) => {
    // Whoever begins to use one moves it to a table above: no row stands in both.
    const tables = ['publishedLight', 'publishedFeed', 'publishedWire'].map((name) =>
      readFileSync(new URL(`${name}.test.ts`, import.meta.url), 'utf8'),
    );
    for (const one of id.split(', ').filter((part) => /^[EOS]\d+$/.test(part))) {
      expect(tables.filter((text) => text.includes(`id: '${one}'`) || text.includes(`limit('${one}'`))).toEqual([]);
    }
  });
});
