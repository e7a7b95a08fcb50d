import { describe, expect, it } from 'vitest';
import type { UnitId } from '../../engine/base/index.ts';
import { groupPatterns, isolationFigures, isolationOf, simulateSingles } from '../../engine/patterns/index.ts';
import { simulate } from '../../engine/simulation/index.ts';
import { plainCabinet } from '../bench/cabinets.ts';

describe('isolation figures', () => {
  // D44, D45. Calculated, not published: the definitions of MIL-HDBK-2165 and IEEE Std 1522-2004 (from memory) applied by hand to groups with
  // λ = 5 (one part), 3 (two), 1 (three), and 1 undetected: 9/10, 5/9, 8/9, 9/9, (5·1 + 3·2 + 1·3)/9 = 14/9.
  it('should be those of the worked ratio example', () => {
    const groups = [
      { ratePerYear: 5, parts: 1 },
      { ratePerYear: 3, parts: 2 },
      { ratePerYear: 1, parts: 3 },
    ];
    const found = isolationOf(groups, 1);
    expect(found.detected).toBeCloseTo(0.9, 12);
    expect(found.isolated.one).toBeCloseTo(0.5556, 4);
    expect(found.isolated.two).toBeCloseTo(0.8889, 4);
    expect(found.isolated.three).toBe(1);
    expect(found.meanParts).toBeCloseTo(1.5556, 4);
  });

  it('should be null where nothing is found, and not a number that looks like one', () => {
    expect(isolationOf([], 3)).toEqual({ detected: 0, isolated: { one: null, two: null, three: null }, meanParts: null });
    expect(isolationOf([], 0).detected).toBeNull();
  });

  it('should never get worse by the report, and never better by switching off', () => {
    const { displays, displaysAndReport, afterSwitchingOff } = isolationFigures(plainCabinet(2, 4));
    const worth = (one: typeof displays) => [one.detected ?? 0, one.isolated.one ?? 0, one.isolated.two ?? 0, one.isolated.three ?? 0];
    for (const other of [displays, afterSwitchingOff]) {
      for (const [index, value] of worth(displaysAndReport).entries()) expect(value).toBeGreaterThanOrEqual(worth(other)[index] ?? 1);
    }
    expect(displaysAndReport.meanParts).toBeLessThanOrEqual(displays.meanParts ?? 0);
  });
});

describe('patterns', () => {
  const cabinet = plainCabinet(2, 4);
  const singles = simulateSingles(cabinet, 'while-running');
  const patterns = groupPatterns(cabinet, singles, 'while-running', 'displays-and-report');

  it('should hold every single fault once, in the group of what the simulation shows for it', () => {
    const listed = [...patterns.groups.flatMap(({ faults }) => faults), ...patterns.unseen];
    expect(new Set(listed.map(({ fault }) => JSON.stringify(fault))).size).toBe(singles.length);
    expect(listed).toHaveLength(singles.length);
    for (const group of patterns.groups) {
      for (const { fault } of group.faults) {
        const { displays, reports } = simulate({ cabinet, faults: [fault], onset: 'while-running' });
        for (const [unit, { meaning }] of displays) expect(group.displays.get(unit)).toBe(meaning);
        for (const [chain, { gap }] of reports) expect(group.reports.get(chain)).toBe(gap);
      }
    }
  });

  it('should put no two groups with the same pattern, and read along the chain', () => {
    const prints = patterns.groups.map(({ displays, reports }) => JSON.stringify([[...displays], [...reports]]));
    expect(new Set(prints).size).toBe(prints.length);
    const gaps = patterns.groups.map(({ reports }) => [...reports.values()].findIndex((gap) => gap !== 'none'));
    expect(gaps.filter((chain) => chain >= 0)).toEqual([...gaps.filter((chain) => chain >= 0)].sort((a, b) => a - b));
  });

  // Common practice, no published source: two neighbours that complain about each other point at what lies between them.
  it('should put a cut cable with the ports at its two ends, and a dead board apart from it', () => {
    const between = patterns.groups.find(({ faults }) => faults.some(({ fault }) => fault.item === 'cable' && fault.link === 'w1.3'));
    expect(between?.displays.get('u1.2' as UnitId)).toBe('downstream-loss');
    expect(between?.displays.get('u1.3' as UnitId)).toBe('upstream-loss');
    const parts = new Set(between?.faults.map(({ part }) => part));
    expect([...parts].sort()).toEqual(['board/u1.2', 'board/u1.3', 'cable/w1.3', 'route/w1.3']);
    expect(between?.faults.some(({ fault }) => fault.mode === 'dead-dark')).toBe(false);
  });
});
