import { findCabinetBeside } from '../../electron/files/cabinetBeside.ts';
import { ChosenFiles } from '../../electron/files/chosenFiles.ts';
import { KeptCases } from '../../electron/files/keptCases.ts';
import { KeptCopies } from '../../electron/files/keptCopies.ts';
import type { Machine } from '../../electron/files/machine.ts';
import { readList } from '../../electron/files/readList.ts';
import { RecentFiles, type RecentMemory } from '../../electron/files/recentFiles.ts';
import { RecoveryStore } from '../../electron/files/recoveryStore.ts';
import { takeSeveral } from '../../electron/files/severalFiles.ts';
import { ok, type Problem, type Result } from '../../engine/base/index.ts';
import type { TakenFile } from '../../renderer/files/access.ts';
import { makeDesktopAccess } from '../../renderer/files/desktopAccess.ts';
import type { DesktopBridge } from '../../renderer/files/desktopBridge.ts';
import { type FileDesk, makeFileDesk } from '../../renderer/files/fileDesk.ts';
import type { DocumentState } from '../../renderer/state/appState.ts';
import { makeWorkbench, type Workbench } from '../../renderer/state/dispatcher.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';
import type { Answer, Question } from '../../renderer/state/sitting.ts';

/*
 * A whole sitting without a window: the store, the commands and the files of the page, joined to the files of the desktop program as
 * the bridge joins them, over any disk.
 */

export interface Session {
  readonly bench: Workbench;
  readonly desk: FileDesk;
  readonly files: ChosenFiles;
  /** What was asked, in order. */
  readonly questions: Question[];
  /** What the page said when it was asked whether to close. */
  readonly closing: string[];
  /** Where the next save-as goes, and what the next open takes; null cancels. */
  dialog: string | null;
  /** What the next questions are answered with; the last one stays. */
  answers: Answer[];
  /** Opens a file as the dialog does. */
  readonly open: (path: string) => Promise<void>;
}

export interface SessionOptions {
  readonly machine: Machine;
  readonly document: DocumentState;
  readonly memory?: RecentMemory;
  /** Paths named at the start. */
  readonly named?: readonly string[];
}

/** Starts a sitting; comes back when all that waits has been taken in. */
export async function startSession({ machine, document, memory = { recent: [] }, named = [] }: SessionOptions): Promise<Session> {
  const files = new ChosenFiles(machine, new KeptCopies(machine, '/user/copies'));
  const recovery = new RecoveryStore(machine, '/user/recovery', files);
  const cases = new KeptCases(machine, '/user/cases');
  const recent = new RecentFiles(memory, files, machine.disk);
  const waiting = [...named];
  const notices: Problem[] = [];
  const closing: string[] = [];
  const questions: Question[] = [];
  const state: { dialog: string | null; answers: Answer[] } = { dialog: null, answers: ['cancel'] };

  const bridge: DesktopBridge = {
    changeTextSize: async () => ok(null),
    describeProgram: async () => ok({ version: '', platform: '', runtime: '', browser: '' }),
    takeNotices: async () => ok(notices.splice(0)),
    takeHandedOverFiles: async () => {
      const taken: Result<TakenFile>[] = [];
      for (const path of waiting.splice(0)) taken.push(await files.take(path));
      return ok(taken);
    },
    chooseFile: async () => (state.dialog === null ? ok(null) : files.take(state.dialog)),
    saveFileAs: async (_name, content) => (state.dialog === null ? ok(null) : files.saveAs(state.dialog, content)),
    exportFile: async (_name, content) => (state.dialog === null ? ok(null) : files.export(state.dialog, content)),
    saveFile: (handle, content) => files.save(handle, content),
    chooseList: async () => (state.dialog === null ? ok(null) : readList(machine, state.dialog)),
    chooseJsonFiles: async (from) => (state.dialog === null ? ok(null) : takeSeveral(machine.disk, files, [state.dialog], from)),
    deleteResult: (handle) => files.deleteResult(handle),
    readFileAgain: (handle) => files.readAgain(handle),
    peekFile: (handle) => files.peek(handle),
    lookAtFile: (handle) => files.look(handle),
    keepMine: (handle) => files.keepMine(handle),
    readKeptCopy: (handle) => files.readKept(handle),
    findCabinetBeside: async (handle, id) => ok(await findCabinetBeside(machine.disk, files, handle, id)),
    listRecentFiles: async () => ok(await recent.list()),
    openRecentFile: (key) => recent.open(key),
    keepRecovery: (id, of, text) => recovery.keep(id, of, text),
    dropRecovery: (id) => recovery.drop(id),
    listRecoveries: async () => {
      const { works, problems } = await recovery.list();
      notices.push(...problems);
      return ok(works);
    },
    keepCase: (id, content) => cases.keep(id, content),
    listKeptCases: () => cases.list(),
    dropKeptCase: (key) => cases.drop(key),
    tellUnsaved: async () => ok(null),
    answerClose: async (word) => {
      closing.push(word);
      return ok(null);
    },
    onFilesHandedOver: () => () => undefined,
    onCloseAsked: () => () => undefined,
  };

  const access = makeDesktopAccess(bridge);
  const desks: FileDesk[] = [];
  const bench = makeWorkbench({ document, source: { kind: 'sample', name: 'test' }, preferences: defaultPreferences }, (inner) => {
    const desk = makeFileDesk(inner, access, { newId: () => crypto.randomUUID(), now: machine.now, wordTime: (iso) => iso });
    desks.push(desk);
    return { canvas: () => null, files: desk.actions };
  });
  const [desk] = desks;
  if (!desk) throw new Error('no desk was made');
  const session: Session = {
    bench,
    desk,
    files,
    questions,
    closing,
    get dialog() {
      return state.dialog;
    },
    set dialog(path) {
      state.dialog = path;
    },
    get answers() {
      return state.answers;
    },
    set answers(answers) {
      state.answers = answers;
    },
    open: async (path) => {
      state.dialog = path;
      await desk.actions.open();
    },
  };
  // The user answers each question as it comes.
  bench.store.subscribe(({ question }, before) => {
    if (!question || question === before.question) return;
    questions.push(question);
    const answer = (state.answers.length > 1 ? state.answers.shift() : state.answers[0]) ?? 'cancel';
    queueMicrotask(() => bench.dispatch('answer-question', { answer }));
  });
  await desk.start();
  return session;
}
