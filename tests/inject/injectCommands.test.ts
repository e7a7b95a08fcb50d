import { describe, expect, it } from 'vitest';
import { checkCabinet, parseCaseFile, serializeCase } from '../../engine/cabinet/index.ts';
import type { Fault } from '../../engine/schema/index.ts';
import { modeKey, simulate } from '../../engine/simulation/index.ts';
import { inReadingOrder } from '../../renderer/canvas/projectFrame.ts';
import { listPattern } from '../../renderer/inject/injectCommands.ts';
import { selectInjectModel } from '../../renderer/inject/injectModel.ts';
import type { DocumentState } from '../../renderer/state/appState.ts';
import { type MakeEffects, makeWorkbench } from '../../renderer/state/dispatcher.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';
import { soundSamples } from '../samples/index.ts';

const content = soundSamples.find(({ name }) => name === 'two-chains')?.content ?? { id: 'none', name: 'none' };
const { cabinet } = checkCabinet(content);
if (!cabinet) throw new Error('the sample is not sound');
const [first, second] = cabinet.chains;
const link = first?.links[2] ?? '';
const unit = second?.units[1] ?? '';
const cut: Fault = { item: 'cable', link, mode: 'outbound-cut' };
const fuse: Fault = { item: 'fuse', unit, mode: 'open' };
const loose: Fault = { item: 'plug', link, end: 'lower', mode: 'loose' };

/** The simulation runs no effect but undo and redo, which are the dispatcher's own. */
const noEffects = (() => ({ canvas: () => null })) as unknown as MakeEffects;

function makeBench() {
  const evidence = { snapshots: [{ displays: [{ unit, meanings: ['quiet' as const] }] }, { restarted: true }] };
  const document: DocumentState = { cabinet: content, caseRecord: { id: 'case', name: 'case', evidence } };
  return makeWorkbench({ document, source: { kind: 'sample', name: 'test' }, preferences: defaultPreferences }, noEffects);
}

const at = '2026-11-25T10:42:00Z';

describe('the simulation', () => {
  it('should show what the engine simulates, for several faults, and say so', () => {
    const { store, dispatch } = makeBench();
    dispatch('toggle-inject');
    expect(store.getState().announcement.text).toMatch(/^Simulation\. Nothing here was seen/);
    dispatch('inject-fault', { fault: cut });
    dispatch('inject-fault', { fault: fuse });
    const model = selectInjectModel(store.getState());
    const expected = simulate({ cabinet, faults: [cut, fuse], onset: 'while-running' });
    expect([...(model?.simulation.displays ?? [])]).toEqual([...expected.displays]);
    expect([...(model?.simulation.reports ?? [])]).toEqual([...expected.reports]);
    expect(store.getState().announcement.text).toContain('control fuse');
    dispatch('set-inject-onset', { onset: 'at-power-up' });
    expect([...(selectInjectModel(store.getState())?.simulation.displays ?? [])]).toEqual([
      ...simulate({ cabinet, faults: [cut, fuse], onset: 'at-power-up' }).displays,
    ]);
  });

  it('should be of the sitting: no undo step, no change of the document, gone with it', () => {
    const bench = makeBench();
    const { store, dispatch } = bench;
    const { cabinet: before, caseRecord } = store.getState();
    dispatch('toggle-inject');
    dispatch('inject-fault', { fault: cut });
    dispatch('set-presence', { key: modeKey(cut), steadiness: 'gone' });
    dispatch('next-hop');
    dispatch('end-inject');
    expect(store.getState().history.past).toEqual([]);
    expect(store.getState().cabinet).toBe(before);
    expect(store.getState().caseRecord).toBe(caseRecord);
    // Left and begun again it stands as it was; another document begins anew.
    dispatch('toggle-inject');
    expect(store.getState().inject.faults).toHaveLength(1);
    bench.openDocument({ cabinet: content, caseRecord }, { source: { kind: 'sample', name: 'other' } });
    expect(store.getState().inject).toMatchObject({ on: false, faults: [] });
  });

  it('should let nothing be entered or undone while it shows', () => {
    const { store, dispatch } = makeBench();
    dispatch('enter-display', { unit, meanings: ['dark'], at });
    dispatch('toggle-inject');
    const before = store.getState().caseRecord;
    dispatch('enter-display', { unit, meanings: ['quiet'], at });
    dispatch('withdraw-display', { unit });
    dispatch('enter-report', { chain: first?.id ?? '', gaps: [1], at });
    dispatch('set-onset', { onset: 'at-power-up' });
    dispatch('set-halted', { halted: true });
    dispatch('open-entry', { entry: { kind: 'display', unit, walking: false } });
    dispatch('undo');
    expect(store.getState().caseRecord).toBe(before);
    expect(store.getState().entry).toBeNull();
    dispatch('end-inject');
    dispatch('undo');
    expect(store.getState().caseRecord).not.toBe(before);
  });

  it('should tell the trip from now where a fault is gone', () => {
    const { store, dispatch } = makeBench();
    dispatch('toggle-inject');
    dispatch('inject-fault', { fault: loose });
    expect(selectInjectModel(store.getState())?.momentsAlike).toBe(true);
    dispatch('set-presence', { key: modeKey(loose), steadiness: 'gone' });
    const stops = () => selectInjectModel(store.getState())?.hops.filter((hop) => 'fibre' in hop && !hop.fibre.hears).length;
    expect(stops()).toBe(0);
    dispatch('show-moment', { moment: 'trip' });
    expect(stops()).toBe(2);
    const gone: Fault = { ...loose, presence: 'intermittent', absentNow: true };
    const pattern = selectInjectModel(store.getState())?.pattern;
    expect([...(pattern?.displays ?? [])]).toEqual([...simulate({ cabinet, faults: [gone], onset: 'while-running' }).displays]);
  });

  it('should never make a fault intermittent that is only steady', () => {
    const { store, dispatch } = makeBench();
    dispatch('toggle-inject');
    dispatch('inject-fault', { fault: fuse });
    dispatch('set-presence', { key: modeKey(fuse), steadiness: 'intermittent' });
    expect(store.getState().inject.faults).toEqual([fuse]);
  });

  it('should keep a loss only for a dim fibre, and follow the light budget with it', () => {
    const { store, dispatch } = makeBench();
    const dim: Fault = { item: 'cable', link, mode: 'return-dim' };
    dispatch('toggle-inject');
    dispatch('inject-fault', { fault: dim });
    const report = () => selectInjectModel(store.getState())?.simulation.reports.get(first?.id as never)?.gap;
    expect(report()).toBe(3);
    dispatch('set-loss', { key: modeKey(dim), lossDb: 0.1 });
    expect(store.getState().inject.faults).toEqual([{ ...dim, lossDb: 0.1 }]);
    expect(report()).toBe(
      simulate({ cabinet, faults: [{ ...dim, lossDb: 0.1 }], onset: 'while-running' }).reports.get(first?.id as never)?.gap,
    );
    dispatch('set-loss', { key: modeKey(dim), lossDb: null });
    expect(store.getState().inject.faults).toEqual([dim]);
    dispatch('inject-fault', { fault: fuse });
    dispatch('set-loss', { key: modeKey(fuse), lossDb: 4 });
    expect(store.getState().inject.faults[1]).toEqual(fuse);
  });

  it('should walk hop by hop within the way, follow the chain of the last fault, and find the stops', () => {
    const { store, dispatch } = makeBench();
    dispatch('toggle-inject');
    dispatch('inject-fault', { fault: fuse });
    expect(selectInjectModel(store.getState())?.chain).toBe(second?.id);
    dispatch('inject-fault', { fault: cut });
    expect(selectInjectModel(store.getState())?.chain).toBe(first?.id);
    const last = 2 * (first?.units.length ?? 0) + 1;
    for (let i = 0; i < last + 5; i += 1) dispatch('next-hop');
    expect(store.getState().inject.hop).toBe(last);
    for (let i = 0; i < last + 5; i += 1) dispatch('previous-hop');
    expect(store.getState().inject.hop).toBeNull();
    dispatch('next-stop');
    expect(store.getState().inject.hop).toBe(3);
    expect(store.getState().announcement.text).toMatch(
      /^Step 4 of \d+\. The outbound fibre of cable \S+ is cut, so \S+ hears nothing at up\./,
    );
  });

  it('should take a pattern into the case as one undo step that a file can hold', () => {
    const { store, dispatch } = makeBench();
    dispatch('toggle-inject');
    dispatch('inject-fault', { fault: cut });
    const state = store.getState();
    const topology = state.checked.topology;
    const pattern = listPattern(
      state,
      inReadingOrder(topology),
      topology.chains.map(({ id }) => id),
    );
    expect(pattern.displays).toHaveLength(topology.units.size);
    const displays = pattern.displays.filter(({ meaning }) => meaning !== 'quiet');
    const before = state.caseRecord;
    dispatch('take-pattern', { ...pattern, displays, onset: 'while-running', halted: true, note: 'n', wholeNote: 'w', at });
    const { caseRecord, history, cabinet: drawn } = store.getState();
    expect(history.past).toHaveLength(1);
    expect(caseRecord.evidence.snapshots).toHaveLength(1);
    expect(caseRecord.evidence.snapshots[0]).toMatchObject({ onset: 'while-running', halted: true, note: 'w' });
    expect(caseRecord.evidence.snapshots[0]?.displays?.map(({ meanings }) => meanings)).toEqual([['downstream-loss'], ['upstream-loss']]);
    expect(parseCaseFile(serializeCase({ ...caseRecord, cabinet: drawn })).ok).toBe(true);
    dispatch('end-inject');
    dispatch('undo');
    expect(store.getState().caseRecord).toEqual(before);
  });
});
