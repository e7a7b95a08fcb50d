import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseCaseFile } from '../../engine/cabinet/index.ts';
import { isUnread } from '../../engine/diagnosis/index.ts';
import { makeQuickCabinet, parseQuickLine } from '../../engine/quick/index.ts';
import { circumstanceKinds, displayMeanings } from '../../engine/schema/index.ts';
import { writeDocument } from '../../renderer/files/writeDocument.ts';
import type { Seen } from '../../renderer/quick/entryCommands.ts';
import { type MakeEffects, makeWorkbench, type Workbench } from '../../renderer/state/dispatcher.ts';
import { currentSnapshot } from '../../renderer/state/evidence.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';

const plan = parseQuickLine('2s,e,p');
if (!plan.ok) throw new Error('the line is not read');
const parts = makeQuickCabinet(plan.value, { typeName: 'as found' });
const units = parts.units.map(({ id }) => id);
const at = '2026-11-25T10:42:00Z';

// Only undo and redo are run, which are the dispatcher's own.
const noEffects = (() => ({ canvas: () => null })) as unknown as MakeEffects;
function makeBench(): Workbench {
  const document = { cabinet: { id: 'new', name: 'New cabinet' }, caseRecord: { id: 'case', name: 'case', evidence: { snapshots: [{}] } } };
  return makeWorkbench({ document, source: { kind: 'new', name: '' }, preferences: defaultPreferences }, noEffects);
}

const seen: fc.Arbitrary<Seen> = fc.oneof(
  fc.constantFrom(...units).map((unit): Seen => ({ kind: 'display', unit })),
  fc.constant<Seen>({ kind: 'report', chain: 'chain1' }),
);
const deed: fc.Arbitrary<(bench: Workbench) => void> = fc.oneof(
  fc.tuple(fc.constantFrom(...units), fc.constantFrom(...displayMeanings)).map(
    ([unit, meaning]) =>
      ({ dispatch }: Workbench) =>
        dispatch('enter-display', { unit, meanings: [meaning], at }),
  ),
  fc.constantFrom(...units).map(
    (unit) =>
      ({ dispatch }: Workbench) =>
        dispatch('withdraw-display', { unit }),
  ),
  fc.constant(({ dispatch }: Workbench) => dispatch('enter-report', { chain: 'chain1', gaps: [2], at })),
  fc.constant(({ dispatch }: Workbench) => dispatch('withdraw-report', { chain: 'chain1' })),
  fc.tuple(seen, fc.constantFrom('', ' ', 'flickers', 'second row')).map(
    ([what, note]) =>
      ({ dispatch }: Workbench) =>
        dispatch('note-seen', { seen: what, note, at }),
  ),
  fc.tuple(seen, fc.constantFrom('AAAA', 'BBBB')).map(
    ([what, data]) =>
      ({ dispatch }: Workbench) =>
        dispatch('add-photo', { seen: what, data, takenOn: '2026-11-25', at }),
  ),
  seen.map(
    (what) =>
      ({ dispatch }: Workbench) =>
        dispatch('remove-photo', { seen: what }),
  ),
  fc.tuple(fc.constantFrom(...circumstanceKinds), fc.constantFrom(null, [], ['TB1'])).map(
    ([kind, subjects]) =>
      ({ dispatch }: Workbench) =>
        dispatch('set-circumstance', { kind, subjects }),
  ),
  fc.constantFrom(null, 0, 2.5).map(
    (days) =>
      ({ dispatch }: Workbench) =>
        dispatch('set-days-since-whole', { days }),
  ),
);

describe('the commands of entering', () => {
  it('should build an ordinary cabinet in one step, and only where there is none', () => {
    const { store, dispatch } = makeBench();
    dispatch('build-quick-chain', { parts, supplyAssumed: true });
    expect(store.getState().cabinet).toMatchObject({ id: 'new', name: 'Cabinet as found' });
    expect(store.getState().checked.problems).toEqual([]);
    expect(store.getState().history.past.map(({ name }) => name)).toEqual(['cabinet as found, 4 units']);
    dispatch('build-quick-chain', { parts, supplyAssumed: true });
    expect(store.getState().history.past).toHaveLength(1);
    dispatch('undo');
    expect(store.getState().cabinet).toEqual({ id: 'new', name: 'New cabinet' });
  });

  it('should keep every photo that is named and no other, no empty observation, and a case that opens; and undo all of it', () => {
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 30 }), (deeds) => {
        const bench = makeBench();
        bench.dispatch('build-quick-chain', { parts, supplyAssumed: true });
        for (const one of deeds) {
          one(bench);
          const state = bench.store.getState();
          const { displays = [], reports = [] } = currentSnapshot(state.caseRecord);
          const named = [...displays, ...reports].flatMap(({ photo }) => (photo === undefined ? [] : [photo]));
          expect((state.cabinet.photos ?? []).map(({ id }) => id).sort()).toEqual([...named].sort());
          expect(new Set(named).size).toBe(named.length);
          const empty = displays.filter(({ meanings, note, photo }) => isUnread(meanings) && note === undefined && photo === undefined);
          expect(empty).toEqual([]);
          expect(parseCaseFile(writeDocument('case', state)).ok).toBe(true);
        }
        while (bench.store.getState().history.past.length > 0) bench.dispatch('undo');
        const { cabinet, caseRecord } = bench.store.getState();
        expect({ cabinet, caseRecord }).toEqual({
          cabinet: { id: 'new', name: 'New cabinet' },
          caseRecord: { id: 'case', name: 'case', evidence: { snapshots: [{}] } },
        });
      }),
      { seed: 4, numRuns: 150 },
    );
  });

  it('should keep note and photo when a display is read anew, and the picture of the cabinet when a photo is added', () => {
    const { store, dispatch } = makeBench();
    dispatch('build-quick-chain', { parts, supplyAssumed: true });
    const { checked } = store.getState();
    dispatch('add-photo', { seen: { kind: 'display', unit: 'TB1' }, data: 'AAAA', takenOn: '2026-11-25', at });
    dispatch('note-seen', { seen: { kind: 'display', unit: 'TB1' }, note: 'flickers', at });
    dispatch('enter-display', { unit: 'TB1', meanings: ['dark'], at });
    expect(currentSnapshot(store.getState().caseRecord).displays).toEqual([
      { unit: 'TB1', meanings: ['dark'], note: 'flickers', photo: 'photo1', at },
    ]);
    expect(store.getState().checked).toBe(checked);
  });
});
