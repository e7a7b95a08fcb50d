import { describe, expect, it } from 'vitest';
import { checkCabinet, parseCabinetFile, serializeCabinet } from '../../engine/cabinet/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { emptyLibrary, readLibrary, writeLibrary } from '../../renderer/legend/library.ts';
import { makeWorkbench } from '../../renderer/state/dispatcher.ts';
import { makeEmptyCase } from '../../renderer/state/emptyCase.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';
import { soundSamples } from '../samples/index.ts';

const found = soundSamples.find(({ name }) => name === 'two-chains');
if (!found) throw new Error('no such sample');
const sample = found.content;

function openBench(cabinet: CabinetContent = sample) {
  // No command here works through the picture or the files.
  const noEffects = () => ({ canvas: () => null, files: null as never });
  const document = { cabinet, caseRecord: makeEmptyCase(cabinet) };
  return makeWorkbench({ document, source: { kind: 'sample', name: 'test' }, preferences: defaultPreferences }, noEffects as never);
}

const legend = sample.legends?.[0];
const type = sample.types?.find((one) => one.legend === legend?.id);
const unit = sample.units?.find((one) => one.type === type?.id)?.id ?? '';
const code = legend?.codes.find(({ meanings }) => meanings.includes('upstream-loss') && meanings.length === 1)?.code ?? '';

describe('legends', () => {
  it('should read the codes of the case anew when they change, in the same step, and back with undo', () => {
    const { store, dispatch } = openBench();
    dispatch('enter-display', { unit, meanings: ['upstream-loss'], code, at: '2026-11-25T10:00:00Z' });
    const seen = () => store.getState().caseRecord.evidence.snapshots[0]?.displays?.[0];
    const codes = (legend?.codes ?? []).map((row) => (row.code === code ? { ...row, meanings: ['both-losses' as const] } : row));
    dispatch('set-legend-codes', { legend: legend?.id ?? '', codes });
    expect(seen()).toMatchObject({ code, meanings: ['both-losses'] });
    dispatch('undo');
    expect(seen()).toMatchObject({ code, meanings: ['upstream-loss'] });
    // Without any legend the code is kept, and says no more than that the display was lit.
    dispatch('remove-legend', { legend: legend?.id ?? '' });
    expect(seen()).toMatchObject({ code, meanings: ['other'] });
    expect(checkCabinet(store.getState().cabinet).problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    dispatch('undo');
    expect(store.getState().cabinet).toEqual(sample);
  });

  it('should leave what was entered by its mark alone', () => {
    const { store, dispatch } = openBench();
    dispatch('enter-display', { unit, meanings: ['dark'], at: '2026-11-25T10:00:00Z' });
    dispatch('remove-legend', { legend: legend?.id ?? '' });
    expect(store.getState().caseRecord.evidence.snapshots[0]?.displays?.[0]?.meanings).toEqual(['dark']);
  });
});

describe('types', () => {
  it('should change by named steps that undo, and save as a sound file', () => {
    const { store, dispatch } = openBench();
    const id = type?.id ?? '';
    dispatch('set-behaviour', { type: id, parameter: 'holds', value: 'unknown' });
    dispatch('set-behaviour', { type: id, parameter: 'holds', value: 'live' });
    expect(store.getState().history.past).toHaveLength(1);
    expect(store.getState().history.past[0]?.name).toContain('after the trip it follows the light');
    const changed = store.getState().cabinet.types?.find((one) => one.id === id);
    expect(changed?.behaviour?.holds).toBe('live');
    expect(changed?.behaviourVerified).toBeUndefined();
    dispatch('verify-behaviour', {
      verified: [{ type: id, behaviour: { holds: 'until-reset' }, on: '2026-11-25', how: 'Staged break: -WH2' }],
    });
    const file = parseCabinetFile(serializeCabinet(store.getState().cabinet));
    expect(file.ok && file.value.types?.find((one) => one.id === id)).toMatchObject({
      behaviour: { holds: 'until-reset' },
      behaviourVerified: { on: '2026-11-25' },
    });
    dispatch('undo');
    dispatch('undo');
    expect(store.getState().cabinet).toEqual(sample);
  });

  it('should be taken off their units when they are removed', () => {
    const { store, dispatch } = openBench();
    dispatch('remove-type', { type: type?.id ?? '' });
    expect(store.getState().cabinet.units?.some((one) => one.type === type?.id)).toBe(false);
    dispatch('undo');
    expect(store.getState().cabinet).toEqual(sample);
  });
});

describe('the own library', () => {
  it('should be kept, read again, and copied into another cabinet with its legend', () => {
    const first = openBench();
    first.dispatch('keep-in-library', { kind: 'type', id: type?.id ?? '' });
    const { library } = first.store.getState();
    const kept = new Map<string, string>();
    const storage = { getItem: (key: string) => kept.get(key) ?? null, setItem: (key: string, value: string) => void kept.set(key, value) };
    writeLibrary(storage, library);
    expect(readLibrary(storage)).toEqual(library);

    const { types: _types, legends: _legends, defaultLegend: _default, ...bare } = sample;
    const other = openBench({ ...bare, units: (bare.units ?? []).map(({ type: _type, ...one }) => one) });
    const [record] = library.types;
    if (!record) throw new Error('nothing kept');
    other.dispatch('take-from-library', { kind: 'type', record, legend: library.legends.find(({ id }) => id === record.legend) ?? null });
    const { cabinet } = other.store.getState();
    expect(cabinet.types?.[0]).toMatchObject({ name: type?.name, behaviour: type?.behaviour });
    expect(cabinet.legends?.find(({ id }) => id === cabinet.types?.[0]?.legend)?.codes).toEqual(legend?.codes);
    expect(checkCabinet(cabinet).problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    // Twice is two types, and still one legend.
    other.dispatch('take-from-library', { kind: 'type', record, legend: library.legends[0] ?? null });
    expect(other.store.getState().cabinet.types?.map(({ id }) => id).length).toBe(2);
    expect(other.store.getState().cabinet.legends).toHaveLength(1);
  });

  it.each(['', 'x', '[]', '{"version":2}', '{"version":1,"types":[{"id":"a"}],"legends":[]}'])(
    'should be empty when it cannot be read: %s',
    (text) => {
      expect(readLibrary({ getItem: () => text })).toEqual(emptyLibrary);
    },
  );
});
