import { isKeptPlay, readKeptPlay } from '../../engine/exercise/index.ts';
import { makeWords, practiceWords } from '../../engine/messages/index.ts';
import { isKeptDrafts, keepDrafts, readKeptDrafts } from '../practice/keepDrafts.ts';
import { restoreDrafts } from '../practice/makeStore.ts';
import { resumePlay, takeLeft } from '../practice/practiceStore.ts';
import type { DocumentState } from '../state/appState.ts';
import type { CaseRecord, SavedContent } from '../state/sitting.ts';
import type { RecoveredFile, RecoveredWork } from './access.ts';
import { raiseAlert } from './alerts.ts';
import type { Desk } from './desk.ts';
import { findDifferences } from './differences.ts';
import { place } from './opening.ts';
import { type ReadDocument, readDocument } from './readDocument.ts';
import { sameContent } from './sameContent.ts';

const nowhere: SavedContent = { caseRecord: null, caseCabinet: null, cabinet: null };

/** Brings back the newest work that an earlier run ended without saving. Never over a newer file: then the user says. */
export async function restoreWork(desk: Desk): Promise<void> {
  const listed = await desk.access.listRecoveries();
  if (!listed.ok) {
    restoreKeptDrafts(desk, []);
    return desk.bench.refuse({ deed: 'start', problems: listed.problems });
  }
  const startOf = ({ content }: RecoveredWork) => new TextDecoder().decode(content.subarray(0, 100));
  const plays = listed.value.filter((one) => isKeptPlay(startOf(one)));
  const drafts = listed.value.filter((one) => isKeptDrafts(startOf(one)));
  restorePlays(desk, plays);
  const [work, ...others] = listed.value.filter((one) => !plays.includes(one) && !drafts.includes(one));
  if (work) await restore(desk, work, others.length);
  // Their cabinet may be the one that has just come back.
  restoreKeptDrafts(desk, drafts);
}

/** Brings back exercises that were being made. What is damaged is told of once. */
function restoreKeptDrafts({ bench, access }: Desk, works: readonly RecoveredWork[]): void {
  const read = works.flatMap(({ id, content }) => {
    const kept = readKeptDrafts(new TextDecoder().decode(content));
    if (kept.ok) return [{ id, kept: kept.value }];
    bench.refuse({ deed: 'restore', problems: kept.problems });
    void access.dropRecovery(id);
    return [];
  });
  const [newest, ...older] = read;
  keepDrafts(access, newest?.id ?? crypto.randomUUID(), () => bench.announce(makeWords.notKept));
  if (newest === undefined) return;
  const others = older.flatMap(({ kept: { current, aside } }) => [...(current === null ? [] : [current]), ...aside]);
  restoreDrafts(newest.kept.current, [...newest.kept.aside, ...others], bench.store.getState().cabinet);
  for (const { id } of older) void access.dropRecovery(id);
}

/** Goes on with the newest play that was interrupted; the others wait in the list. One that cannot be read is told of once. */
function restorePlays({ bench, access }: Desk, works: readonly RecoveredWork[]): void {
  const read = works.flatMap(({ id, content }) => {
    const kept = readKeptPlay(new TextDecoder().decode(content));
    if (kept.ok) return [{ keptAs: id, kept: kept.value }];
    bench.refuse({ deed: 'restore', problems: kept.problems });
    void access.dropRecovery(id);
    return [];
  });
  const interrupted = read.find(({ kept }) => kept.left !== true);
  takeLeft(read.filter((one) => one !== interrupted));
  if (interrupted === undefined) return;
  resumePlay(interrupted.keptAs, interrupted.kept);
  bench.dispatch('practice-exercises', { goesOn: true });
  bench.announce(practiceWords.resumed(interrupted.kept.exercise.name));
}

async function restore(desk: Desk, work: RecoveredWork, others: number): Promise<void> {
  const read = readDocument('.case.json', work.content);
  if (!read.ok) return desk.bench.refuse({ deed: 'restore', problems: read.problems });
  const { document } = read.value;
  const caseOnDisk = openOnDisk(work.caseFile);
  const cabinetOnDisk = openOnDisk(work.cabinetFile);
  const onDisk = caseOnDisk ?? cabinetOnDisk;
  const file = work.caseFile ?? work.cabinetFile;
  if (file?.file && onDisk && isOnDisk(document, caseOnDisk, work.cabinetFile && cabinetOnDisk)) {
    // It was saved, and the program ended before it could take the copy away.
    await desk.access.dropRecovery(work.id);
    return place(desk, onDisk, file.file);
  }
  const newer = [work.caseFile, work.cabinetFile].find((one) => one?.state === 'changed');
  if (newer?.file) {
    const differences = onDisk && findDifferences(document, onDisk.document);
    const { name, modifiedAt } = newer.file;
    const answer = await desk.ask({ kind: 'recovery', name, keptAt: work.keptAt, modifiedAt, differences });
    if (answer === 'later') return;
    if (answer === 'discard' && onDisk) {
      await desk.access.dropRecovery(work.id);
      return place(desk, onDisk, newer.file);
    }
    if (answer === 'discard') return;
    return takeIn(desk, work, document, { caseFile: null, cabinetFile: null }, others);
  }
  return takeIn(desk, work, document, work, others);
}

async function takeIn(
  desk: Desk,
  work: RecoveredWork,
  document: DocumentState,
  files: Pick<RecoveredWork, 'caseFile' | 'cabinetFile'>,
  others: number,
): Promise<void> {
  const { bench, keeper } = desk;
  const caseRead = openOnDisk(files.caseFile);
  const cabinetRead = openOnDisk(files.cabinetFile);
  const refOf = (file: RecoveredFile | null, read: ReadDocument | null) => {
    if (!file?.file || !read) return null;
    const { handle, key, name, modifiedAt } = file.file;
    return { handle, key, name, modifiedAt };
  };
  const open = { case: refOf(files.caseFile, caseRead), cabinet: refOf(files.cabinetFile, cabinetRead) };
  bench.openDocument(document, {
    source: { kind: 'restored', name: files.caseFile?.name ?? files.cabinetFile?.name ?? '' },
    files: open,
    saved: {
      ...nowhere,
      ...(caseRead && { caseRecord: caseRead.document.caseRecord, caseCabinet: caseRead.document.cabinet }),
      ...(cabinetRead && { cabinet: cabinetRead.document.cabinet }),
      // Beside an opened cabinet the case began empty.
      ...(cabinetRead && !caseRead && { caseRecord: begunBeside(cabinetRead, document) }),
    },
  });
  await keeper.adopt(work.id);
  const file = files.caseFile ?? files.cabinetFile;
  raiseAlert(bench.store, {
    kind: 'restored',
    keptAt: work.keptAt,
    file: file && { name: file.name, modifiedAt: file.file?.modifiedAt ?? null },
    others,
  });
}

function openOnDisk(file: RecoveredFile | null): ReadDocument | null {
  const read = file?.file && readDocument(file.file.name, file.file.content);
  return read?.ok ? read.value : null;
}

/** The case as it began beside this cabinet: empty, on the rates on which the document stands. */
function begunBeside({ document: { caseRecord } }: ReadDocument, document: DocumentState): CaseRecord {
  const { rates } = document.caseRecord.evidence;
  return rates === undefined ? caseRecord : { ...caseRecord, evidence: { ...caseRecord.evidence, rates } };
}

/** Whether the files hold all of the work already. */
function isOnDisk(document: DocumentState, caseRead: ReadDocument | null, cabinetRead: ReadDocument | null): boolean {
  if (!caseRead) {
    if (cabinetRead === null) return false;
    return sameContent(document, { cabinet: cabinetRead.document.cabinet, caseRecord: begunBeside(cabinetRead, document) });
  }
  return sameContent(document, caseRead.document) && (!cabinetRead || sameContent(document.cabinet, cabinetRead.document.cabinet));
}
