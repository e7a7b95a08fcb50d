import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { displayMeanings } from '../../engine/schema/index.ts';
import { listShortcuts } from '../../renderer/shell/shortcuts.ts';
import type { AppState, DocumentState } from '../../renderer/state/appState.ts';
import { commands } from '../../renderer/state/commands.ts';
import { type MakeEffects, makeWorkbench } from '../../renderer/state/dispatcher.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';
import { soundSamples } from '../samples/index.ts';

const cabinet = soundSamples.find(({ name }) => name === 'three-units')?.content ?? { id: 'none', name: 'none' };
const units = (cabinet.units ?? []).map(({ id }) => id);
const chain = cabinet.chains?.[0]?.id ?? '';
const at = '2026-11-25T10:42:00Z';
const look = { look: 'light-at-plug', link: cabinet.links?.[0]?.id ?? '', end: 'lower' } as const;

/** The laws below run no effect but undo and redo, which are the dispatcher's own. */
const noEffects = (() => ({ canvas: () => null })) as unknown as MakeEffects;

function makeBench() {
  const document: DocumentState = { cabinet, caseRecord: { id: 'case', name: 'case', evidence: { snapshots: [{}] } } };
  return makeWorkbench({ document, source: { kind: 'sample', name: 'test' }, preferences: defaultPreferences }, noEffects);
}
type Bench = ReturnType<typeof makeBench>;

const documentOf = ({ cabinet: drawn, caseRecord }: AppState): DocumentState => ({ cabinet: drawn, caseRecord });

/** Everything a user can do to a case, and what only changes the sitting. */
const deeds: fc.Arbitrary<(bench: Bench) => void> = fc.oneof(
  fc.tuple(fc.constantFrom(...units), fc.constantFrom(...displayMeanings)).map(
    ([unit, meaning]) =>
      ({ dispatch }: Bench) =>
        dispatch('enter-display', { unit, meanings: [meaning], at }),
  ),
  fc.constantFrom(...units).map(
    (unit) =>
      ({ dispatch }: Bench) =>
        dispatch('withdraw-display', { unit }),
  ),
  fc.constantFrom(1, 2, 3, 'none' as const).map(
    (gap) =>
      ({ dispatch }: Bench) =>
        dispatch('enter-report', { chain, gaps: [gap], at }),
  ),
  fc.constant(({ dispatch }: Bench) => dispatch('withdraw-report', { chain })),
  fc.constantFrom(['none'], ['weak', 'bright'], []).map(
    (outcomes) =>
      ({ dispatch }: Bench) =>
        dispatch('enter-check', { look, outcomes, snapshot: 0, at }),
  ),
  fc.constantFrom('while-running' as const, 'at-power-up' as const, 'unknown' as const).map(
    (onset) =>
      ({ dispatch }: Bench) =>
        dispatch('set-onset', { onset }),
  ),
  fc.constantFrom(true, false, null).map(
    (halted) =>
      ({ dispatch }: Bench) =>
        dispatch('set-halted', { halted }),
  ),
  fc.constantFrom('light' as const, 'dark' as const).map(
    (theme) =>
      ({ dispatch }: Bench) =>
        dispatch('set-theme', { theme }),
  ),
);

describe('the dispatcher', () => {
  it('should undo to every state there was, and redo to the same, whatever was done', () => {
    fc.assert(
      fc.property(fc.array(deeds, { maxLength: 25 }), (done) => {
        const bench = makeBench();
        // The model: the document after each step; a step that is joined to the one before replaces it.
        const model = [documentOf(bench.store.getState())];
        for (const deed of done) {
          const before = bench.store.getState().history.past.length;
          deed(bench);
          const after = bench.store.getState();
          if (after.history.past.length > before) model.push(documentOf(after));
          else model[model.length - 1] = documentOf(after);
        }
        for (const expected of model.slice(0, -1).reverse()) {
          bench.dispatch('undo');
          expect(documentOf(bench.store.getState())).toEqual(expected);
        }
        expect(bench.store.getState().history.past).toEqual([]);
        for (const expected of model.slice(1)) {
          bench.dispatch('redo');
          expect(documentOf(bench.store.getState())).toEqual(expected);
        }
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });

  it('should keep of a look what was entered last, and take it back', () => {
    const { store, dispatch } = makeBench();
    const looks = () => store.getState().caseRecord.evidence.snapshots[0]?.looks ?? [];
    const other = { look: 'voltage', unit: units[0] ?? '' } as const;
    dispatch('enter-check', { look, outcomes: ['bright'], snapshot: 0, at });
    dispatch('enter-check', { look: other, outcomes: ['steady'], snapshot: 0, at });
    dispatch('enter-check', { look, outcomes: ['none', 'weak'], snapshot: 0, at });
    expect(looks()).toEqual([
      { ...other, outcomes: ['steady'], at },
      { ...look, outcomes: ['none', 'weak'], at },
    ]);
    dispatch('enter-check', { look, outcomes: [], snapshot: 0, at });
    expect(looks()).toEqual([{ ...other, outcomes: ['steady'], at }]);
  });

  it('should make no step of what changes nothing, and none of what only changes the sitting', () => {
    const { store, dispatch } = makeBench();
    dispatch('withdraw-display', { unit: units[0] ?? '' });
    dispatch('set-theme', { theme: 'dark' });
    dispatch('announce', { text: 'said' });
    expect(store.getState().history.past).toEqual([]);
    expect(store.getState().revision).toBe(1);
  });

  it('should take nothing back from the case while Practice hides it', () => {
    const { store, dispatch } = makeBench();
    dispatch('enter-report', { chain, gaps: [1], at });
    dispatch('enter-report', { chain, gaps: [2], at });
    store.setState({ workspace: 'practice' });
    const hidden = documentOf(store.getState());
    dispatch('undo');
    expect(documentOf(store.getState())).toEqual(hidden);
    store.setState({ workspace: 'find' });
    dispatch('undo');
    expect(documentOf(store.getState())).not.toEqual(hidden);
    const undone = documentOf(store.getState());
    store.setState({ workspace: 'practice' });
    dispatch('redo');
    expect(documentOf(store.getState())).toEqual(undone);
  });

  it('should have no key that changes the case while Practice hides it', () => {
    const heard = listShortcuts().filter(({ workspace }) => workspace === null || workspace === undefined || workspace === 'practice');
    expect(heard.filter(({ id }) => commands[id].kind === 'document').map(({ id }) => id)).toEqual([]);
  });

  it('should make no step of what says the same again', () => {
    const { store, dispatch } = makeBench();
    const [unit = ''] = units;
    dispatch('enter-display', { unit, meanings: ['quiet'], at });
    const { revision } = store.getState();
    dispatch('enter-display', { unit, meanings: ['quiet'], at });
    expect(store.getState().history.past).toHaveLength(1);
    expect(store.getState().revision).toBe(revision);
  });

  it('should leave what could be redone alone when only the sitting changes, and forget it when something is done', () => {
    const { store, dispatch } = makeBench();
    dispatch('set-halted', { halted: true });
    dispatch('undo');
    dispatch('choose-candidate', { chosen: { by: 'nobody' }, subject: null });
    expect(store.getState().history.future).toHaveLength(1);
    dispatch('set-halted', { halted: false });
    expect(store.getState().history.future).toEqual([]);
  });

  it('should name its steps, join what is typed into one report, and bring the unit into view', () => {
    const { store, dispatch } = makeBench();
    const [unit = ''] = units;
    dispatch('enter-display', { unit, meanings: ['quiet'], at });
    dispatch('enter-report', { chain, gaps: [1], at });
    dispatch('enter-report', { chain, gaps: [2], at });
    expect(store.getState().history.past.map(({ name }) => name)).toEqual(['quiet at -TB1', 'report of chain 1']);
    dispatch('undo');
    dispatch('undo');
    expect(store.getState().spotlight?.subject).toBe(unit);
    expect(store.getState().announcement.text).toBe('Undone: quiet at -TB1.');
  });

  it('should count a revision for every change of the document, and check the cabinet only when that changed', () => {
    const { store, dispatch } = makeBench();
    const { checked } = store.getState();
    dispatch('set-halted', { halted: true });
    expect(store.getState().revision).toBe(2);
    expect(store.getState().checked).toBe(checked);
  });
});
