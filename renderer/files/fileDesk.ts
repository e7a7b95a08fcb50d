import type { Problem } from '../../engine/base/index.ts';
import { newMachine } from '../../engine/edit/index.ts';
import { fileWords, practiceWords } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { makeConfirmedDesk } from '../confirmed/confirmedDesk.ts';
import { keepPlay } from '../practice/keepPlay.ts';
import { loadSample } from '../samples/sampleCabinets.ts';
import type { Workbench } from '../state/dispatcher.ts';
import { makeEmptyCase } from '../state/emptyCase.ts';
import type { Answer, FileActions, KeptCopy } from '../state/sitting.ts';
import type { FileAccess } from './access.ts';
import { clearAlerts } from './alerts.ts';
import { type Desk, mayLeave, refuseOpening } from './desk.ts';
import { makeFilesBeside } from './filesBeside.ts';
import { type ComingFile, openTaken, place } from './opening.ts';
import { readDocument } from './readDocument.ts';
import { RecoveryKeeper } from './recoveryKeeper.ts';
import { restoreWork } from './restoring.ts';
import { lookOutside, saveAll, savePart } from './saving.ts';
import { isUnsaved } from './unsaved.ts';
import { newCabinetId } from './writeDocument.ts';

export interface FileDesk {
  readonly actions: FileActions;
  /** Takes in what waits at a start: unsaved work of an earlier run, then files that were named; tells what was found wrong. */
  readonly start: () => Promise<void>;
  /** Takes files that were handed over while the window is open. */
  readonly takeHandedOver: () => Promise<void>;
  /** Opens a file dropped onto the window. */
  readonly takeDropped: (item: DataTransferItem) => Promise<void>;
  /** Looks whether another program changed the open files. */
  readonly lookOutside: () => Promise<void>;
  /** The window shall be closed. */
  readonly closeAsked: () => Promise<void>;
  /** Brings the recovery copy up to date now. */
  readonly flush: () => Promise<void>;
}

interface DeskParts {
  readonly newId: () => string;
  readonly now: () => Date;
  readonly wordTime: (iso: string) => string;
}

/** Everything the window does with files. One thing is done at a time; what comes in during a question waits for its end. */
export function makeFileDesk(bench: Workbench, access: FileAccess, { newId, now, wordTime }: DeskParts): FileDesk {
  const { store } = bench;
  const confirmed = makeConfirmedDesk({ bench, access, now });
  const keeper = new RecoveryKeeper(store, access, newId);
  let answerNow: ((answer: Answer) => void) | null = null;
  const desk: Desk = {
    bench,
    access,
    keeper,
    now,
    wordTime,
    ask: (question) =>
      new Promise((resolve) => {
        answerNow = resolve;
        store.setState({ question });
      }),
    beginOn: confirmed.beginOn,
    save: () => saveAll(desk),
  };
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const turn = last.then(work);
    last = turn.catch(() => undefined);
    return turn;
  };

  const refuseToOpen = (name: string | undefined, problems: readonly Problem[]) => refuseOpening(bench, name, problems);

  const openCopy = async (kept: KeptCopy) => {
    const read = readDocument(kept.name, kept.content);
    if (!read.ok) return refuseToOpen(kept.name, read.problems);
    if (!(await mayLeave(desk, 'open'))) return;
    await place(desk, read.value, { handle: null, key: '', name: kept.name, modifiedAt: kept.keptAt, content: kept.content });
    bench.announce(fileWords.openedKept(kept.name, wordTime(kept.keptAt)));
  };

  /** Loads the open file anew; asks when that would lose something. */
  const loadFromDisk = async () => {
    const { files } = store.getState();
    const file = files.case ?? files.cabinet;
    if (!file) return;
    if (isUnsaved(store.getState())) {
      const answer = await desk.ask({ kind: 'revert', name: file.name, modifiedAt: file.modifiedAt });
      if (answer !== 'discard') return;
    }
    if (files.cabinet && files.case) {
      const today = await access.readAgain(files.cabinet);
      const cabinet = today.ok ? readDocument(files.cabinet.name, today.value.content) : today;
      if (cabinet.ok) store.setState(({ saved }) => ({ saved: { ...saved, cabinet: cabinet.value.document.cabinet } }));
    }
    const again = await access.readAgain(file);
    if (!again.ok) return refuseToOpen(file.name, again.problems);
    const read = readDocument(file.name, again.value.content);
    if (!read.ok) return refuseToOpen(file.name, read.problems);
    await place(desk, read.value, again.value);
  };

  const takeAll = async () => {
    for (const file of await access.takeHandedOver()) {
      if (file.ok) await openTaken(desk, file.value);
      else refuseToOpen(undefined, file.problems);
    }
  };

  const listRecent = async () => {
    const listed = await access.listRecent();
    if (listed.ok) store.setState({ recent: listed.value });
  };

  const begin = async (document: Parameters<typeof bench.openDocument>[0], files: { readonly keepCabinet: boolean }) => {
    const before = store.getState();
    bench.openDocument(document, {
      source: { kind: 'new', name: '' },
      ...(files.keepCabinet && {
        files: { case: null, cabinet: before.files.cabinet },
        saved: {
          caseRecord: document.caseRecord,
          caseCabinet: null,
          cabinet: before.files.cabinet ? before.saved.cabinet : document.cabinet,
        },
      }),
    });
    await keeper.begin();
  };

  const beginCase = (cabinet: CabinetContent) => desk.beginOn(makeEmptyCase(cabinet, now()));

  const actions: FileActions = {
    newCabinet: () =>
      inTurn(async () => {
        if (!(await mayLeave(desk, 'new'))) return;
        const cabinet = { id: newCabinetId(now()), name: fileWords.newCabinetName };
        await begin({ cabinet, caseRecord: beginCase(cabinet) }, { keepCabinet: false });
      }),
    newCase: () =>
      inTurn(async () => {
        if (!(await mayLeave(desk, 'new'))) return;
        const { cabinet } = store.getState();
        await begin({ cabinet, caseRecord: beginCase(cabinet) }, { keepCabinet: true });
      }),
    newMachine: (named) =>
      inTurn(async () => {
        // Made first: a question in between may change what stands in the window.
        const design = store.getState().cabinet;
        if (!(await mayLeave(desk, 'machine'))) return;
        const cabinet = newMachine(design, { id: newCabinetId(now()), ...named });
        await begin({ cabinet, caseRecord: beginCase(cabinet) }, { keepCabinet: false });
      }),
    compareWith: () =>
      inTurn(async () => {
        const file = await access.chooseFile();
        if (!file.ok) return refuseToOpen(undefined, file.problems);
        if (!file.value) return;
        const read = readDocument(file.value.name, file.value.content);
        if (!read.ok) return refuseToOpen(file.value.name, read.problems);
        const { cabinet: content } = read.value.document;
        bench.dispatch('show-comparison', { comparison: { kind: 'file', name: file.value.name, content } });
      }),
    openSample: (name) =>
      inTurn(async () => {
        const sample = await loadSample(name);
        if (!sample.ok) return refuseToOpen(name, sample.problems);
        if (!(await mayLeave(desk, 'open'))) return;
        bench.openDocument(sample.value, { source: { kind: 'sample', name } });
        await keeper.begin();
      }),
    open: () =>
      inTurn(async () => {
        const file = await access.chooseFile();
        if (!file.ok) refuseToOpen(undefined, file.problems);
        else if (file.value) await openTaken(desk, file.value);
      }),
    openRecent: (key) =>
      inTurn(async () => {
        const file = await access.openRecent(key);
        if (file.ok) await openTaken(desk, file.value);
        else refuseToOpen(store.getState().recent.find((entry) => entry.key === key)?.name, file.problems);
        await listRecent();
      }),
    listRecent,
    openKeptCopy: () =>
      inTurn(async () => {
        const { files } = store.getState();
        const file = files.case ?? files.cabinet;
        if (!file) return;
        const kept = await access.readKeptCopy(file);
        if (kept.ok) await openCopy(kept.value);
        else bench.refuse({ deed: 'kept', name: file.name, problems: [] });
      }),
    openRefusedKept: () =>
      inTurn(async () => {
        const kept = store.getState().refused?.kept;
        store.setState({ refused: null });
        if (kept) await openCopy(kept);
      }),
    save: () =>
      inTurn(async () => {
        await saveAll(desk);
      }),
    saveAs: (part) =>
      inTurn(async () => {
        await savePart(desk, part, null);
      }),
    ...makeFilesBeside(desk, inTurn),
    ...confirmed.actions,
    revert: () => inTurn(loadFromDisk),
    loadOutside: () => inTurn(loadFromDisk),
    compareOutside: (part) =>
      inTurn(async () => {
        const file = store.getState().files[part];
        if (!file) return;
        const today = await access.peek(file);
        const read = today.ok ? readDocument(file.name, today.value.content) : today;
        if (!read.ok) return refuseToOpen(file.name, read.problems);
        bench.dispatch('show-comparison', { comparison: { kind: 'file', name: file.name, content: read.value.document.cabinet } });
      }),
    keepMine: (part) =>
      inTurn(async () => {
        const file = store.getState().files[part];
        if (!file) return;
        await access.keepMine(file);
        clearAlerts(store, ['changed-outside'], part);
        await savePart(desk, part, file);
      }),
    answer(answer) {
      store.setState({ question: null });
      const resolve = answerNow;
      answerNow = null;
      resolve?.(answer);
    },
  };

  return {
    actions,
    start: () =>
      inTurn(async () => {
        keeper.follow();
        keepPlay(access, () => bench.announce(practiceWords.notKept));
        // Aside: nothing that is opened waits for it.
        void actions.readKeptCases();
        await restoreWork(desk);
        const problems = await access.takeNotices();
        if (problems.length > 0) bench.refuse({ deed: 'start', problems });
        await takeAll();
        await listRecent();
      }),
    takeHandedOver: () => inTurn(takeAll),
    takeDropped: async (item) => {
      // Taken at once: what was dropped cannot be read any more once the event is over.
      const taken = await access.takeDropped(item);
      await inTurn(async () => {
        if (!taken.ok) refuseToOpen(undefined, taken.problems);
        else await openTaken(desk, taken.value satisfies ComingFile);
      });
    },
    lookOutside: () =>
      inTurn(async () => {
        const { files } = store.getState();
        if (files.case) await lookOutside(desk, 'case', files.case);
        if (files.cabinet) await lookOutside(desk, 'cabinet', files.cabinet);
      }),
    closeAsked: async () => {
      // The question that is open already must be answered first.
      if (store.getState().question) return access.answerClose('stay');
      access.answerClose('asking');
      await inTurn(async () => {
        const leaves = await mayLeave(desk, 'close');
        if (leaves) await keeper.end();
        access.answerClose(leaves ? 'close' : 'stay');
      });
    },
    flush: () => keeper.flush(),
  };
}
