import { describe, expect, it } from 'vitest';
import { insertUnits, moveInChain, removeThings } from '../../engine/edit/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { CaseRecord } from '../../renderer/state/appState.ts';
import { type MakeEffects, makeWorkbench } from '../../renderer/state/dispatcher.ts';
import { keepEvidence } from '../../renderer/state/keepEvidence.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';
import { writeCabinet } from '../../renderer/state/writeCabinet.ts';
import { done, small } from './small.ts';

const record = (): CaseRecord => ({
  id: 'case',
  name: 'case',
  evidence: {
    snapshots: [
      {
        displays: [
          { unit: 'a', meanings: ['dark'] },
          { unit: 'b', meanings: ['quiet'] },
        ],
        reports: [{ chain: 'ch1', gaps: [2] }],
        looks: [{ look: 'lamp', link: 'w2', fibre: 'outbound', outcomes: ['clear'] }],
        interventions: [{ do: 'replace-unit', unit: 'a' }],
      },
    ],
    circumstances: [{ kind: 'heat', subjects: ['a'] }, { kind: 'storm' }],
  },
});

const kept = (after: CabinetContent, before = small) => {
  const draft = structuredClone(record()) as Parameters<typeof keepEvidence>[0];
  keepEvidence(draft, before, after);
  return draft.evidence;
};
const gaps = (after: CabinetContent) => kept(after).snapshots[0]?.reports?.[0]?.gaps;

describe('keepEvidence', () => {
  it('should drop what was seen of, and done to, things that are gone', () => {
    const { snapshots, circumstances } = kept(done(removeThings(small, ['a'])).cabinet);
    expect(snapshots[0]?.displays).toEqual([{ unit: 'b', meanings: ['quiet'] }]);
    expect(snapshots[0]?.looks).toEqual([]);
    expect(snapshots[0]?.interventions).toEqual([]);
    expect(circumstances).toEqual([{ kind: 'storm' }]);
  });

  it('should count the gaps of a report anew, between the same units', () => {
    const at = { chain: 'ch1', position: 1 } as const;
    expect(gaps(done(insertUnits(small, { units: [{ kind: 'servo-drive' }], at })).cabinet)).toEqual([3]);
    expect(gaps(done(insertUnits(small, { units: [{ kind: 'servo-drive' }], at: { onLink: 'w2' } })).cabinet)).toEqual([2, 3]);
    expect(gaps(done(insertUnits(small, { units: [{ kind: 'servo-drive' }], at: { endOf: 'ch1' } })).cabinet)).toEqual([2]);
    expect(gaps(done(removeThings(small, ['a'])).cabinet)).toEqual([1]);
    expect(gaps(done(removeThings(small, ['b'])).cabinet)).toEqual([2]);
    expect(gaps(done(moveInChain(small, ['b', 'c'], { endOf: 'ch2' })).cabinet)).toBeUndefined();
  });

  it('should change nothing when only fields change', () => {
    const renamed = { ...small, name: 'Other' };
    expect(kept(renamed)).toEqual(record().evidence);
  });
});

describe('writeCabinet', () => {
  it('should make of one cabinet the other', () => {
    for (const after of [
      done(removeThings(small, ['a', 'd', 'ch2'])).cabinet,
      done(insertUnits(small, { units: [{ kind: 'servo-drive' }], at: { onLink: 'w2' } })).cabinet,
      { id: 'x', name: 'bare' },
    ]) {
      const draft = structuredClone(small) as Parameters<typeof writeCabinet>[0];
      writeCabinet(draft, small, after);
      expect(draft).toEqual(after);
    }
  });
});

describe('editing in the window', () => {
  const bench = () =>
    makeWorkbench(
      { document: { cabinet: small, caseRecord: record() }, source: { kind: 'sample', name: 'test' }, preferences: defaultPreferences },
      (() => ({ canvas: () => null })) as unknown as MakeEffects,
    );

  it('should make one named step of many fields, and take it back', () => {
    const { store, dispatch } = bench();
    const edits = ['a', 'b', 'd'].map((id) => ({ of: { in: 'units', id }, path: ['partNumber'], value: 'Q-1' }) as const);
    dispatch('set-fields', { edits });
    expect(store.getState().history.past.map(({ name }) => name)).toEqual(['part number of 3 units']);
    dispatch('undo');
    expect(store.getState().cabinet).toEqual(small);
    dispatch('set-fields', { edits: edits.slice(0, 1) });
    expect(store.getState().history.past[0]?.name).toBe('part number of -TB1');
  });

  it('should number anew, mend and re-plug as one step each', () => {
    const { store, dispatch } = bench();
    dispatch('renumber', { ids: ['d', 'a'] });
    expect(
      store
        .getState()
        .cabinet.units?.filter(({ id }) => id === 'd' || id === 'a')
        .map(({ designation }) => designation),
    ).toEqual(['-TB3', '-TB1']);
    dispatch('plug-end', { link: 'w3', end: 'upper', port: { unit: 'd', side: 'down' } });
    dispatch('reconnect-lead', { lead: 'l2', from: { unit: 'p' } });
    dispatch('add-feedback', { unit: 'b' });
    dispatch('add-record', { list: 'fibres' });
    dispatch('remove-record', { list: 'fibres', id: 'fibre-1', name: 'New fibre' });
    expect(store.getState().history.past.map(({ name }) => name)).toEqual([
      'designations of 2 things, numbered anew',
      'another end of cable -WH3',
      'another end of lead -WD2',
      'feedback cable of -TB2',
      'new fibre',
      'without New fibre',
    ]);
    for (let i = 0; i < 6; i += 1) dispatch('undo');
    expect(store.getState().cabinet).toEqual(small);
  });

  it('should tell a refusal, change nothing, and forget it with the next deed', () => {
    const { store, dispatch } = bench();
    dispatch('set-fields', { edits: [{ of: { in: 'units', id: 'a' }, path: ['kind'], value: 'lamp' }] });
    expect(store.getState().refusal?.problems[0]?.code).toBe('field-not-allowed');
    expect(store.getState().announcement.text).not.toBe('');
    expect(store.getState().cabinet).toBe(small);
    expect(store.getState().history.past).toEqual([]);
    dispatch('set-fields', { edits: [{ of: { in: 'units', id: 'a' }, path: ['model'], value: 'Q' }] });
    expect(store.getState().refusal).toBeNull();
  });
});
