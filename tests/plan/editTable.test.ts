import { describe, expect, it } from 'vitest';
import { actsOfThing, editTable, repairTable, rowOf } from '../../engine/repair/index.ts';
import { drivesContent, soundCabinet } from './smallCabinet.ts';

const content = drivesContent(2);

describe('editTable', () => {
  it('should put a figure in the place of the usual one, with its origin, and give the usual one back', () => {
    const edited = editTable(content, { of: 'act', act: 'replace-board', field: 'minutes', value: 33 });
    const row = rowOf(repairTable(edited), { do: 'replace-board', unit: 'u1' });
    expect(row.minutes).toEqual({ value: 33, origin: 'cabinet' });
    expect(row.partMinutes.origin).toBe('assumed');
    expect(soundCabinet(edited)).toBeTruthy();
    expect(editTable(edited, { of: 'act', act: 'replace-board', field: 'minutes', value: null })).toEqual(content);
  });

  it('should leave figures of one part, other fields and other acts as they are', () => {
    const acts = [{ act: 'replace-board', subject: 'u1', minutes: 50 } as const, { act: 're-route', minutes: 7 } as const];
    const edited = editTable(
      { ...content, repair: { acts: [...acts] } },
      { of: 'act', act: 'replace-board', field: 'partMinutes', value: 1 },
    );
    expect(edited.repair?.acts).toEqual([...acts, { act: 'replace-board', partMinutes: 1 }]);
  });

  it('should give one thing figures of its own with their source, which hold for that thing alone', () => {
    const key = { act: 'replace-board', subject: 'u1' } as const;
    const edited = [
      { of: 'act', ...key, field: 'minutes', value: 50 } as const,
      { of: 'act-source', ...key, value: 'work order of last year' } as const,
    ].reduce(editTable, content);
    expect(edited.repair?.acts).toEqual([{ ...key, minutes: 50, source: 'work order of last year' }]);
    const table = repairTable(edited);
    expect(rowOf(table, { do: 'replace-board', unit: 'u1' }).minutes).toEqual({ value: 50, origin: 'work order of last year' });
    expect(rowOf(table, { do: 'replace-board', unit: 'u2' }).minutes.origin).toBe('assumed');
    expect(soundCabinet(edited)).toBeTruthy();
    expect(editTable(edited, { of: 'act-usual', ...key })).toEqual(content);
    // A source of nothing is not kept.
    expect(editTable(content, { of: 'act-source', ...key, value: 'somewhere' })).toEqual(content);
  });

  it('should say which acts concern a thing, by what it is', () => {
    expect(actsOfThing(content, 'u1')).toContain('replace-board');
    for (const { id } of content.links ?? []) expect(actsOfThing(content, id)).toContain('replace-cable');
    const supply = content.units?.find(({ kind }) => kind === 'supply');
    expect(actsOfThing(content, supply?.id ?? '')).toEqual(['replace-supply']);
    expect(actsOfThing(content, 'nothing')).toEqual([]);
    // Each of them names its thing when it is done, so that a figure of that thing is found.
    for (const act of actsOfThing(content, 'u1')) {
      const own = editTable(content, { of: 'act', act, subject: 'u1', field: 'minutes', value: 77 });
      const done = { do: act, unit: 'u1', other: 'u2', cable: 'w' } as Parameters<typeof rowOf>[1];
      expect(rowOf(repairTable(own), done).minutes.value).toBe(77);
    }
  });

  it('should edit changes of state, weights and chances alike', () => {
    const edited = [
      { of: 'change', part: 'boot', value: 9 } as const,
      { of: 'weight', name: 'comeback', value: 60 } as const,
      { of: 'chance', name: 'badSpare', value: 0.2 } as const,
    ].reduce(editTable, content);
    const table = repairTable(edited);
    expect([table.changes.boot.value, table.weights.comeback.value, table.chances.badSpare.value]).toEqual([9, 60, 0.2]);
    expect(editTable(edited, { of: 'change', part: 'boot', value: null })).not.toHaveProperty('times');
  });
});

describe('the discharge time', () => {
  const dcLink = { ratedKw: 10, capacitanceUf: 1000, dischargeOhm: 100_000, lineVoltageV: 400, lineTolerancePercent: 0 };
  const units = (content.units ?? []).map((unit) =>
    unit.kind === 'supply' ? { ...unit, supply: { dcLink } } : { ...unit, dcLinkCapacitanceUf: 0 },
  );

  it('should be that of the DC-link sums where they give one', () => {
    // R·C·ln(√2·400 V / 60 V) = 100 s · 2.243, so 3.74 minutes, rounded up to a tenth.
    expect(repairTable({ ...content, units }).changes.discharge).toEqual({ value: 3.8, origin: 'sums' });
    expect(repairTable(content).changes.discharge).toEqual({ value: 5, origin: 'assumed' });
  });

  it('should be what the cabinet says itself, before any sum', () => {
    expect(repairTable({ ...content, units, times: { dischargeMinutes: 9 } }).changes.discharge).toEqual({ value: 9, origin: 'cabinet' });
  });
});
