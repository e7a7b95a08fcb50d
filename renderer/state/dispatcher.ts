import { applyPatches, enablePatches, type Patch, produceWithPatches } from 'immer';
import { createStore, type StoreApi } from 'zustand/vanilla';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { windowTexts } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { AppState, CaseRecord, DocumentSource, DocumentState, PreferenceState, RefusedFile } from './appState.ts';
import type { Command, DocumentCommand, EffectContext } from './command.ts';
import { type CommandArgs, type CommandId, commands } from './commands.ts';
import { emptyHistory, popFuture, popPast, pushStep } from './history.ts';

enablePatches();

/** Runs a command by its id; commands without arguments take none. */
export type Dispatch = <K extends CommandId>(
  id: K,
  ...args: undefined extends CommandArgs<K> ? [args?: CommandArgs<K>] : [args: CommandArgs<K>]
) => void;

/** The document store with its one dispatcher. */
export interface Workbench {
  readonly store: StoreApi<AppState>;
  readonly dispatch: Dispatch;
  /** Takes another document in; its history begins anew. */
  readonly openDocument: (document: DocumentState, source: DocumentSource) => void;
  /** Tells that something did not work, and leaves the document alone. */
  readonly refuse: (refused: RefusedFile) => void;
}

const isDocumentCommand = (command: Command<never>): command is DocumentCommand<never> => command.kind === 'document';

/** What the dispatcher is given besides: what effects do, given how to undo and redo. */
export type MakeEffects = (bench: Pick<Workbench, 'store' | 'openDocument' | 'refuse'>) => Omit<
  EffectContext,
  'undo' | 'redo' | 'canvas'
> & {
  readonly canvas: () => EffectContext['canvas'];
};

/** Makes the store over a first document. */
export function makeWorkbench(
  first: { readonly document: DocumentState; readonly source: DocumentSource; readonly preferences: PreferenceState },
  makeEffects: MakeEffects,
): Workbench {
  const store = createStore<AppState>(() => ({
    ...first.document,
    ...freshSession(first.source),
    announcement: { text: '', number: 0 },
    ...first.preferences,
    revision: 1,
    checked: checkCabinet(first.document.cabinet),
    diagnosis: { state: 'idle' },
  }));

  const setDocument = (document: DocumentState, rest: Partial<AppState>) => {
    const before = store.getState();
    store.setState({
      ...document,
      revision: before.revision + 1,
      ...(document.cabinet === before.cabinet ? {} : { checked: checkCabinet(document.cabinet) }),
      ...rest,
    });
  };

  const announce = (text: string) => store.setState(({ announcement }) => ({ announcement: { text, number: announcement.number + 1 } }));

  const runDocumentCommand = (command: DocumentCommand<never>, args: never) => {
    const state = store.getState();
    const before: DocumentState = { cabinet: state.cabinet, caseRecord: state.caseRecord };
    const [after, patches, inverse] = produceWithPatches(before, (draft) => command.run(draft, args));
    if (patches.length === 0) return;
    const step = {
      name: command.name(state, args),
      patches: patches as readonly Patch[],
      inverse: inverse as readonly Patch[],
      mergeKey: command.undo === 'step' ? null : command.undo.mergeBy(args),
      subject: command.subject?.(args) ?? null,
    };
    setDocument(after, { history: pushStep(state.history, step) });
  };

  /** Goes one step back or forth along the history. */
  const travel = (back: boolean) => {
    const state = store.getState();
    const popped = back ? popPast(state.history) : popFuture(state.history);
    if (!popped) return;
    const { step, history } = popped;
    const before: DocumentState = { cabinet: state.cabinet, caseRecord: state.caseRecord };
    // Patches are immer's own output over this very document; it only wants them as a mutable array.
    const document = applyPatches(before, [...(back ? step.inverse : step.patches)]);
    const spotlight = step.subject === null ? state.spotlight : { subject: step.subject, number: (state.spotlight?.number ?? 0) + 1 };
    setDocument(document, { history, spotlight });
    announce(back ? windowTexts.undone(step.name) : windowTexts.redone(step.name));
  };

  const openDocument = (document: DocumentState, source: DocumentSource) => {
    setDocument(document, { ...freshSession(source), diagnosis: { state: 'idle' } });
    announce(windowTexts.opened(document.cabinet.name));
  };
  const refuse = (refused: RefusedFile) => store.setState({ refused });
  const effects = makeEffects({ store, openDocument, refuse });

  const dispatch: Dispatch = (id, ...rest) => {
    // The argument's type was checked against this very id at the call; the table's union cannot carry that on.
    const command = commands[id] as unknown as Command<never>;
    const args = rest[0] as never;
    const state = store.getState();
    if (!command.isEnabled(state)) return;
    if (isDocumentCommand(command)) {
      runDocumentCommand(command, args);
    } else if (command.kind === 'view') {
      store.setState(command.run(state, args));
    } else {
      const { canvas, ...others } = effects;
      const done = command.run({ ...others, canvas: canvas(), undo: () => travel(true), redo: () => travel(false) }, args);
      if (done instanceof Promise) done.catch((error: unknown) => reportBug(error));
    }
  };

  return { store, dispatch, openDocument, refuse };
}

/** A failed effect is a bug of ours: it goes where the error boundary's reports go, with its stack. */
function reportBug(error: unknown): void {
  queueMicrotask(() => {
    throw error;
  });
}

function freshSession(source: DocumentSource) {
  return {
    source,
    history: emptyHistory,
    chosen: { by: 'rank' },
    entry: null,
    spotlight: null,
    refused: null,
    shortcutsShown: false,
    allCandidates: false,
  } as const;
}

/** A case about a cabinet, with nothing seen yet. */
export function makeEmptyCase(cabinet: CabinetContent): CaseRecord {
  return { id: `${cabinet.id}-case`.slice(0, 64), name: windowTexts.newCaseName, evidence: { snapshots: [{}] } };
}
