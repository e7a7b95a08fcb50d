import { applyPatches, enablePatches, type Patch, produceWithPatches } from 'immer';
import { createStore, type StoreApi } from 'zustand/vanilla';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { startSentence, windowTexts, wordProblem } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { nothingConfirmed } from '../confirmed/confirmedState.ts';
import { nothingDrawn } from '../draw/drawState.ts';
import { sameContent } from '../files/sameContent.ts';
import { notHandedBack } from '../handback/handBackState.ts';
import { nothingInjected } from '../inject/injectState.ts';
import { closedEquipment } from '../legend/equipmentState.ts';
import { noPapers } from '../papers/papersState.ts';
import { nothingTried } from '../sums/sumsState.ts';
import type { AppState, DocumentSource, DocumentState, PreferenceState, RefusedFile } from './appState.ts';
import type { Command, DocumentCommand, EffectContext } from './command.ts';
import { type CommandArgs, type CommandId, commands } from './commands.ts';
import { emptyHistory, popFuture, popPast, pushStep } from './history.ts';
import type { OpenFiles, SavedContent } from './sitting.ts';
import { writeLog } from './writeLog.ts';

enablePatches();

/** Runs a command by its id; commands without arguments take none. */
export type Dispatch = <K extends CommandId>(
  id: K,
  ...args: undefined extends CommandArgs<K> ? [args?: CommandArgs<K>] : [args: CommandArgs<K>]
) => void;

/** Where a document came from. Without `files` it was not saved yet; without `saved` it is as it was begun. */
export interface OpenedAs {
  readonly source: DocumentSource;
  readonly files?: OpenFiles;
  readonly saved?: SavedContent;
}

/** The document store with its one dispatcher. */
export interface Workbench {
  readonly store: StoreApi<AppState>;
  readonly dispatch: Dispatch;
  /** Takes another document in; its history begins anew. */
  readonly openDocument: (document: DocumentState, opened: OpenedAs) => void;
  /** Tells a screen reader something that was done. */
  readonly announce: (text: string) => void;
  /** Tells that something did not work, and leaves the document alone. */
  readonly refuse: (refused: RefusedFile) => void;
}

const isDocumentCommand = (command: Command<never>): command is DocumentCommand<never> => command.kind === 'document';

/** What the dispatcher is given besides: what effects do, given how to undo and redo. */
export type MakeEffects = (bench: Workbench) => Omit<EffectContext, 'undo' | 'redo' | 'canvas'> & {
  readonly canvas: () => EffectContext['canvas'];
};

/** Makes the store over a first document. */
export function makeWorkbench(
  first: {
    readonly document: DocumentState;
    readonly source: DocumentSource;
    readonly preferences: PreferenceState;
    /** When something is entered, for the case's log, ISO 8601; without it the log bears no times. */
    readonly now?: () => string;
  },
  makeEffects: MakeEffects,
): Workbench {
  const store = createStore<AppState>(() => ({
    ...first.document,
    planned: null,
    ...freshSession(first.document, { source: first.source }),
    recent: [],
    confirmed: nothingConfirmed,
    question: null,
    workspace: 'find',
    practice: 'exercises',
    practiceLarge: false,
    practiceListAsked: 0,
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
      ...(differInPhotosOnly(document.cabinet, before.cabinet) ? {} : { checked: checkCabinet(document.cabinet) }),
      ...rest,
    });
  };

  const announce = (text: string) => store.setState(({ announcement }) => ({ announcement: { text, number: announcement.number + 1 } }));

  const runDocumentCommand = (command: DocumentCommand<never>, args: never) => {
    const state = store.getState();
    const before: DocumentState = { cabinet: state.cabinet, caseRecord: state.caseRecord };
    const refusal = command.refusal?.(state, args) ?? [];
    if (refusal.length > 0) {
      store.setState({ refusal: { problems: refusal, number: (state.refusal?.number ?? 0) + 1 } });
      announce(refusal.map((problem) => wordProblem(problem).title).join('. '));
      return;
    }
    if (state.refusal !== null) store.setState({ refusal: null });
    const [changed, ownPatches, ownInverse] = produceWithPatches(before, (draft) => command.run(draft, args, before));
    // What says the same again is no step, even where it was written anew.
    if (ownPatches.length === 0 || sameContent(before, changed)) return;
    const name = command.name(state, args);
    const mergeKey = command.undo === 'step' ? null : command.undo.mergeBy(args);
    const last = state.history.past[state.history.past.length - 1];
    const goesOn = mergeKey !== null && last?.mergeKey === mergeKey;
    // What happens to the case stands in its log; typing on in one field is one line of it.
    const [after, logPatches, logInverse] = produceWithPatches(changed, (draft) => {
      if (changed.caseRecord !== before.caseRecord) writeLog(draft.caseRecord, { what: startSentence(name), at: first.now?.() }, goesOn);
    });
    const patches = [...ownPatches, ...logPatches];
    const inverse = [...logInverse, ...ownInverse];
    const step = {
      name,
      patches: patches as readonly Patch[],
      inverse: inverse as readonly Patch[],
      mergeKey,
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

  const openDocument = (document: DocumentState, opened: OpenedAs) => {
    setDocument(document, { ...freshSession(document, opened), diagnosis: { state: 'idle' }, planned: null });
    announce(windowTexts.opened(document.cabinet.name));
  };
  const refuse = (refused: RefusedFile) => store.setState({ refused });
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

  const bench = { store, dispatch, openDocument, refuse, announce };
  const effects = makeEffects(bench);
  return bench;
}

/** Photos say nothing of how a cabinet hangs together: the picture need not be worked out anew for one. */
function differInPhotosOnly(a: CabinetContent, b: CabinetContent): boolean {
  // Object.keys is typed as string[]; these are the keys of the two cabinets.
  const keys = [...Object.keys(a), ...Object.keys(b)] as (keyof CabinetContent)[];
  return keys.every((key) => key === 'photos' || a[key] === b[key]);
}

/** A failed effect is a bug of ours: it goes where the error boundary's reports go, with its stack. */
function reportBug(error: unknown): void {
  queueMicrotask(() => {
    throw error;
  });
}

function freshSession({ cabinet, caseRecord }: DocumentState, opened: OpenedAs) {
  return {
    source: opened.source,
    files: opened.files ?? { case: null, cabinet: null },
    saved: opened.saved ?? { caseRecord, caseCabinet: cabinet, cabinet },
    alerts: [],
    history: emptyHistory,
    chosen: { by: 'rank' },
    entry: null,
    spotlight: null,
    refused: null,
    refusal: null,
    comparison: null,
    machineAsked: false,
    help: null,
    aboutShown: false,
    allCandidates: false,
    equipment: closedEquipment,
    chosenStep: null,
    inject: nothingInjected,
    sums: nothingTried,
    handBack: notHandedBack,
    repairTableShown: false,
    ratesShown: false,
    papers: noPapers,
    draw: nothingDrawn,
  } as const;
}
