import fc from 'fast-check';
import { describe, expect, expectTypeOf, it } from 'vitest';
import { checkCabinet, parseCaseFile, serializeCabinet } from '../../engine/cabinet/index.ts';
import { fixOf } from '../../engine/edit/index.ts';
import { type CabinetContent, displayMeanings, unitKinds } from '../../engine/schema/index.ts';
import { isUnsaved } from '../../renderer/files/unsaved.ts';
import { writeDocument } from '../../renderer/files/writeDocument.ts';
import {
  type AppState,
  type DerivedState,
  type DocumentState,
  keysOfKind,
  type PreferenceState,
  type SessionState,
  stateTable,
} from '../../renderer/state/appState.ts';
import { type MakeEffects, makeWorkbench, type Workbench } from '../../renderer/state/dispatcher.ts';
import { emptyHistory, historyBytes, historyLimitBytes, pushStep, sealLast, type UndoStep } from '../../renderer/state/history.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';
import { brokenBy } from '../edit/brokenBy.ts';
import { Random } from '../generators/random.ts';
import { soundSamples } from '../samples/index.ts';

const cabinet = soundSamples.find(({ name }) => name === 'three-units')?.content;
if (!cabinet) throw new Error('the sample is missing');
const units = (cabinet.units ?? []).map(({ id }) => id);
const chains = (cabinet.chains ?? []).map(({ id }) => id);
const at = '2026-11-25T10:42:00Z';

// The commands below run no effect but undo and redo, which are the dispatcher's own.
const noEffects = (() => ({ canvas: () => null })) as unknown as MakeEffects;
const makeBench = () =>
  makeWorkbench(
    {
      document: { cabinet, caseRecord: { id: 'case', name: 'case', evidence: { snapshots: [{}] } } },
      source: { kind: 'sample', name: 'test' },
      preferences: defaultPreferences,
    },
    noEffects,
  );
const documentOf = ({ store }: Workbench): DocumentState => {
  const { cabinet: drawn, caseRecord } = store.getState();
  return { cabinet: drawn, caseRecord };
};

/** The model: the texts of all states that undo and redo lead to, and where we are among them. */
interface Model {
  states: string[];
  now: number;
  /** Which field was typed in last, while the next typing there joins. */
  typing: string | null;
  saved: string;
}

// As it would be saved: members in the order of the schema.
const textOf = (bench: Workbench) => writeDocument('case', documentOf(bench));

/** What must hold after every command, whatever it was. */
function checkIntegrity(model: Model, bench: Workbench): void {
  const state = bench.store.getState();
  expect(textOf(bench)).toBe(model.states[model.now]);
  expect(state.history.past.length).toBe(model.now);
  expect(state.history.past.length + state.history.future.length).toBe(model.states.length - 1);
  expect(parseCaseFile(writeDocument('case', state)).ok).toBe(true);
  expect(brokenBy(state.cabinet)).toEqual([]);
  expect(state.checked.problems).toEqual(checkCabinet(state.cabinet).problems);
  expect(isUnsaved(state)).toBe(textOf(bench) !== model.saved);
  expect(historyBytes(state.history)).toBeLessThanOrEqual(historyLimitBytes);
  expect(Object.keys(state).sort()).toEqual(Object.keys(stateTable).sort());
}

class Changes implements fc.Command<Model, Workbench> {
  readonly name: string;
  readonly #field: string | null;
  readonly #run: (bench: Workbench) => void;
  constructor(name: string, field: string | null, run: (bench: Workbench) => void) {
    this.name = name;
    this.#field = field;
    this.#run = run;
  }
  check() {
    return true;
  }
  run(model: Model, bench: Workbench) {
    this.#run(bench);
    const after = textOf(bench);
    if (after !== model.states[model.now]) {
      const joins = this.#field !== null && model.typing === this.#field;
      model.states = [...model.states.slice(0, joins ? model.now : model.now + 1), after];
      model.now = model.states.length - 1;
      model.typing = this.#field;
    }
    checkIntegrity(model, bench);
  }
  toString() {
    return this.name;
  }
}

class Travels implements fc.Command<Model, Workbench> {
  readonly #way: 'undo' | 'redo';
  constructor(way: 'undo' | 'redo') {
    this.#way = way;
  }
  check() {
    return true;
  }
  run(model: Model, bench: Workbench) {
    bench.dispatch(this.#way);
    const next = model.now + (this.#way === 'undo' ? -1 : 1);
    if (next >= 0 && next < model.states.length) {
      model.now = next;
      // Undoing uncovers a step that was typed; typing there again joins to it, after a redo it does not.
      model.typing = this.#way === 'undo' ? (bench.store.getState().history.past.slice(-1)[0]?.mergeKey ?? null) : null;
    }
    checkIntegrity(model, bench);
  }
  toString() {
    return this.#way;
  }
}

class Saves implements fc.Command<Model, Workbench> {
  check() {
    return true;
  }
  run(model: Model, bench: Workbench) {
    bench.store.setState((state) => ({
      saved: { caseRecord: state.caseRecord, caseCabinet: state.cabinet, cabinet: state.cabinet },
      history: sealLast(state.history),
    }));
    model.saved = textOf(bench);
    model.typing = null;
    checkIntegrity(model, bench);
  }
  toString() {
    return 'save';
  }
}

/** Draw's commands with random things of the cabinet that is there then; also such as must be refused. */
const drawEdits: Readonly<Record<string, (cabinet: CabinetContent, random: Random, bench: Workbench) => void>> = {
  insert: (_cabinet, random, { dispatch }) =>
    dispatch('insert-units', { units: [{ kind: random.pick(unitKinds) }], spot: random.pick(['apart', 'new-chain'] as const) }),
  'insert behind': (cabinet, random, { dispatch }) =>
    dispatch('insert-units', { units: [{ kind: random.pick(unitKinds) }], spot: { afterUnit: anyId(cabinet.units, random) } }),
  remove: (cabinet, random, { dispatch }) =>
    dispatch('remove-things', { ids: [anyId([...(cabinet.units ?? []), ...(cabinet.links ?? []), ...(cabinet.leads ?? [])], random)] }),
  move: (cabinet, random, { dispatch }) =>
    dispatch('move-units', {
      ids: [anyId(cabinet.units, random)],
      to: random.pick(['apart', 'new-chain', { endOf: anyId(cabinet.chains, random) }, { row: random.whole(0, 3), slot: 1 }] as const),
    }),
  duplicate: (cabinet, random, { dispatch }) => dispatch('duplicate-things', { ids: [anyId(cabinet.units, random)], target: {} }),
  join: (cabinet, random, { dispatch }) =>
    dispatch('join-ports', {
      a: { unit: anyId(cabinet.units, random), side: 'down' },
      b: { unit: anyId(cabinet.units, random), side: 'up' },
    }),
  replug: (cabinet, random, { dispatch }) =>
    dispatch('replug-end', {
      link: anyId(cabinet.links, random),
      end: random.pick(['upper', 'lower'] as const),
      port: random.chance(0.5) ? null : { unit: anyId(cabinet.units, random), side: random.pick(['up', 'down'] as const) },
    }),
  feed: (cabinet, random, { dispatch }) =>
    dispatch('feed-units', { from: { unit: anyId(cabinet.units, random) }, units: [anyId(cabinet.units, random)] }),
  field: (cabinet, random, { dispatch }) =>
    dispatch('set-fields', {
      edits: [{ of: { in: 'units', id: anyId(cabinet.units, random) }, path: ['model'], value: `M${random.whole(1, 9)}` }],
    }),
  number: (cabinet, random, { dispatch }) =>
    dispatch('renumber', { ids: (cabinet.units ?? []).map(({ id }) => id), numbering: { prefix: '=M1-', first: random.whole(0, 50) } }),
  rows: (_cabinet, random, { dispatch }) =>
    dispatch('paste-row-text', { text: `-Q${random.whole(1, 99)}\tservo drive\t${random.whole(1, 4)}` }),
  picture: (_cabinet, random, { dispatch }) =>
    dispatch('add-picture', {
      of: { in: 'cabinet' },
      field: 'cabinetPhotos',
      picture: { caption: `${random.whole(1, 9)}`, mediaType: 'image/png', data: 'iVBORw0KGgo=' },
    }),
  fix: (_cabinet, random, bench) => {
    const fixable = bench.store.getState().checked.problems.filter((problem) => fixOf(bench.store.getState().cabinet, problem) !== null);
    if (fixable.length > 0) bench.dispatch('fix-problem', { problem: random.pick(fixable), what: 'it' });
  },
};

const anyId = (list: readonly { readonly id: string }[] | undefined, random: Random) =>
  random.pick([...(list ?? []), { id: 'nowhere' }]).id;
const isThere = ({ store }: Workbench, id: string) =>
  [...(store.getState().cabinet.units ?? []), ...(store.getState().cabinet.chains ?? [])].some((one) => one.id === id);

const renamed = ['Cabinet one', 'Cabinet two', cabinet.name].map((name) => ({ ...cabinet, name }));
const commands = [
  fc.tuple(fc.constantFrom(...units), fc.constantFrom(...displayMeanings)).map(
    ([unit, meaning]) =>
      new Changes(`${meaning} at ${unit}`, null, (bench) => {
        if (isThere(bench, unit)) bench.dispatch('enter-display', { unit, meanings: [meaning], at });
      }),
  ),
  fc
    .tuple(fc.constantFrom(...Object.keys(drawEdits)), fc.nat())
    .map(
      ([name, seed]) =>
        new Changes(`${name} ${seed}`, null, (bench) => drawEdits[name]?.(bench.store.getState().cabinet, new Random(seed), bench)),
    ),
  fc.constantFrom(...units).map((unit) => new Changes(`withdraw ${unit}`, null, ({ dispatch }) => dispatch('withdraw-display', { unit }))),
  fc.tuple(fc.constantFrom(...chains), fc.constantFrom(1, 2, 3, 'none' as const)).map(
    ([chain, gap]) =>
      new Changes(`report ${chain} ${gap}`, `report/${chain}`, (bench) => {
        if (isThere(bench, chain)) bench.dispatch('enter-report', { chain, gaps: [gap], at });
      }),
  ),
  fc
    .constantFrom('while-running' as const, 'at-power-up' as const)
    .map((onset) => new Changes(onset, null, ({ dispatch }) => dispatch('set-onset', { onset }))),
  fc
    .constantFrom(true, false, null)
    .map((halted) => new Changes(`halted ${halted}`, null, ({ dispatch }) => dispatch('set-halted', { halted }))),
  fc
    .constantFrom(...renamed)
    .map((other) => new Changes(`cabinet ${other.name}`, null, ({ dispatch }) => dispatch('take-cabinet', { cabinet: other, name: '' }))),
  fc.constantFrom(
    new Changes('choose', null, ({ dispatch }) => dispatch('choose-candidate', { chosen: { by: 'nobody' }, subject: null })),
    new Changes('look', null, ({ dispatch }) => dispatch('show-on-cabinet', { subject: units[0] ?? '' })),
    new Changes('theme', null, ({ dispatch }) => dispatch('set-theme', { theme: 'dark' })),
    new Changes('entry', null, ({ dispatch }) =>
      dispatch('open-entry', { entry: { kind: 'display', unit: units[0] ?? '', walking: false } }),
    ),
  ),
  fc.constantFrom(new Travels('undo'), new Travels('undo'), new Travels('redo'), new Saves()),
];

describe('undo and redo, against a list of all states', () => {
  it('should go to every state there was and hold together after each command', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(fc.commands([...commands, ...commands.slice(-1), ...commands.slice(-1)], { maxCommands: 60, size: '+2' }), (run) => {
        const real = makeBench();
        const start = textOf(real);
        fc.modelRun(() => ({ model: { states: [start], now: 0, typing: null, saved: start }, real }), run);
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });
});

describe('the history of steps', () => {
  const step = (name: string, size: number, mergeKey: string | null = null): UndoStep => ({
    name,
    mergeKey,
    subject: null,
    patches: [{ op: 'replace', path: ['x'], value: 'x'.repeat(size) }],
    inverse: [],
  });

  it('should hold 64 MB, forget the oldest steps first, and always keep the newest', () => {
    expect(historyLimitBytes).toBe(64 * 1024 * 1024);
    let history = emptyHistory;
    for (let i = 0; i < 100; i += 1) history = pushStep(history, step(`s${i}`, 1_000), 50_000);
    expect(historyBytes(history)).toBeLessThanOrEqual(50_000);
    expect(historyBytes(history)).toBeGreaterThan(45_000);
    expect(history.past[history.past.length - 1]?.name).toBe('s99');
    expect(history.past.map(({ name }) => name)).toEqual(history.past.map((_, index) => `s${100 - history.past.length + index}`));
    expect(pushStep(history, step('huge', 100_000), 50_000).past.map(({ name }) => name)).toEqual(['huge']);
  });

  it('should count what is joined as much as what stands alone', () => {
    const alone = pushStep(pushStep(emptyHistory, step('a', 1_000)), step('b', 1_000));
    const joined = pushStep(pushStep(emptyHistory, step('a', 1_000, 'field')), step('b', 1_000, 'field'));
    expect(joined.past).toHaveLength(1);
    expect(historyBytes(joined)).toBe(historyBytes(alone));
  });

  it('should not join to a step that was saved, so that undo finds the saved state', () => {
    const saved = sealLast(pushStep(emptyHistory, step('a', 1, 'field')));
    expect(pushStep(saved, step('b', 1, 'field')).past).toHaveLength(2);
  });
});

describe('the table of state keys', () => {
  it('should declare each key as what it is', () => {
    expectTypeOf<keyof AppState>().toEqualTypeOf<keyof DocumentState | keyof SessionState | keyof PreferenceState | keyof DerivedState>();
    expectTypeOf<keyof typeof stateTable>().toEqualTypeOf<keyof AppState>();
    expectTypeOf<(typeof stateTable)['cabinet']>().toEqualTypeOf<'document'>();
    expectTypeOf<(typeof stateTable)['alerts']>().toEqualTypeOf<'session'>();
    expectTypeOf<(typeof stateTable)['theme']>().toEqualTypeOf<'preference'>();
    expectTypeOf<(typeof stateTable)['checked']>().toEqualTypeOf<'derived'>();
    expect(keysOfKind('document')).toEqual(['cabinet', 'caseRecord']);
  });
});

it('should write a cabinet the same after a change and its undo', () => {
  const bench = makeBench();
  bench.dispatch('take-cabinet', { cabinet: { ...cabinet, revision: '99', units: (cabinet.units ?? []).slice(1) }, name: '' });
  bench.dispatch('undo');
  expect(serializeCabinet(bench.store.getState().cabinet)).toBe(serializeCabinet(cabinet));
});
