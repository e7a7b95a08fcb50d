import { join } from 'node:path';
import { app, type BrowserWindow } from 'electron';
import { ok, type Problem, type Result } from '../../engine/base/index.ts';
import type { CallHandlers } from '../ipc/answerCalls.ts';
import type { ChosenFile, SavedFile } from '../ipc/bridge.ts';
import { findCabinetBeside } from './cabinetBeside.ts';
import { ChosenFiles } from './chosenFiles.ts';
import type { CloseGate } from './closeGate.ts';
import { askWhatToOpen, askWhereToExport, askWhereToSave, askWhichList, askWhichResults } from './dialogs.ts';
import { KeptCases } from './keptCases.ts';
import { KeptCopies } from './keptCopies.ts';
import { thisMachine } from './machine.ts';
import { readList } from './readList.ts';
import { RecentFiles, type RecentMemory } from './recentFiles.ts';
import { RecoveryStore } from './recoveryStore.ts';
import { takeSeveral } from './severalFiles.ts';

/** What the file calls work with; some of it is there only once the program is ready. */
interface FileWork {
  readonly window: () => BrowserWindow | undefined;
  readonly gate: () => CloseGate | undefined;
  readonly settings: () => RecentMemory;
  /** Paths that wait to be taken by the page; taking them empties the list. */
  readonly waiting: string[];
  /** Where what is found wrong on the way is told. */
  readonly notices: Problem[];
  /** Where recovery files and kept copies lie. */
  readonly folder: string;
}

type FileCalls = Omit<CallHandlers, 'describeProgram' | 'changeTextSize' | 'takeNotices'>;

/** Answers every call about files. */
export function makeFileCalls(work: FileWork): FileCalls {
  const machine = thisMachine();
  const chosen = new ChosenFiles(machine, new KeptCopies(machine, join(work.folder, 'copies')));
  const recovery = new RecoveryStore(machine, join(work.folder, 'recovery'), chosen);
  const cases = new KeptCases(machine, join(work.folder, 'cases'));
  const recentFiles = () => new RecentFiles(work.settings(), chosen, machine.disk);

  /** What was opened or saved well stands first in the list of recent files. */
  const remembered = <T extends SavedFile | ChosenFile>(result: Result<T>): Result<T> => {
    const path = result.ok ? chosen.find(result.value.handle)?.path : undefined;
    if (path !== undefined) {
      recentFiles().remember(path, machine.now());
      app.addRecentDocument(path);
    }
    return result;
  };

  return {
    takeHandedOverFiles: async () => {
      const taken: Result<ChosenFile>[] = [];
      for (const path of work.waiting.splice(0)) taken.push(remembered(await chosen.take(path)));
      return ok(taken);
    },
    chooseFile: async () => {
      const window = work.window();
      const path = window && (await askWhatToOpen(window));
      return path === undefined ? ok(null) : remembered(await chosen.take(path));
    },
    saveFileAs: async (proposedName, content) => {
      const window = work.window();
      const path = window && (await askWhereToSave(window, proposedName));
      return path === undefined ? ok(null) : remembered(await chosen.saveAs(path, content));
    },
    exportFile: async (proposedName, content) => {
      const window = work.window();
      const path = window && (await askWhereToExport(window, proposedName));
      return path === undefined ? ok(null) : chosen.export(path, content);
    },
    saveFile: (handle, content) => chosen.save(handle, content),
    chooseList: async () => {
      const window = work.window();
      const path = window && (await askWhichList(window));
      return path === undefined ? ok(null) : readList(machine, path);
    },
    chooseJsonFiles: async (from) => {
      const window = work.window();
      const paths = window && (await askWhichResults(window, from));
      return paths === undefined ? ok(null) : takeSeveral(machine.disk, chosen, paths, from);
    },
    deleteResult: (handle) => chosen.deleteResult(handle),
    readFileAgain: (handle) => chosen.readAgain(handle),
    peekFile: (handle) => chosen.peek(handle),
    lookAtFile: (handle) => chosen.look(handle),
    keepMine: (handle) => chosen.keepMine(handle),
    readKeptCopy: (handle) => chosen.readKept(handle),
    findCabinetBeside: async (handle, cabinetId) => ok(await findCabinetBeside(machine.disk, chosen, handle, cabinetId)),
    listRecentFiles: async () => ok(await recentFiles().list()),
    openRecentFile: async (key) => remembered(await recentFiles().open(key)),
    keepRecovery: (id, files, document) => recovery.keep(id, files, document),
    dropRecovery: (id) => recovery.drop(id),
    listRecoveries: async () => {
      const { works, problems } = await recovery.list();
      work.notices.push(...problems);
      return ok(works);
    },
    keepCase: (id, content) => cases.keep(id, content),
    listKeptCases: () => cases.list(),
    dropKeptCase: (key) => cases.drop(key),
    tellUnsaved: (unsaved) => {
      const gate = work.gate();
      if (gate) gate.unsaved = unsaved;
      return ok(null);
    },
    answerClose: (word) => {
      work.gate()?.answer(word);
      return ok(null);
    },
  };
}
