import { fileWords } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { FileRef } from '../state/sitting.ts';
import type { TakenFile } from './access.ts';
import { raiseAlert } from './alerts.ts';
import { type Desk, mayLeave } from './desk.ts';
import { cabinetDifferences, hasDifferences } from './differences.ts';
import { openPracticeFile } from './practiceFiles.ts';
import { type ReadDocument, readDocument } from './readDocument.ts';
import { isUnsaved } from './unsaved.ts';

/** A file that came in; without a handle it is a copy that cannot be saved to. */
export type ComingFile = Omit<TakenFile, 'handle'> & { readonly handle: string | null };

/** Opens what stands in a file, or tells why not. Asks first when unsaved work would have to leave. */
export async function openTaken(desk: Desk, file: ComingFile): Promise<void> {
  const { store, refuse, announce } = desk.bench;
  const { files } = store.getState();
  const ref = refOf(file);
  const isOpen = ref !== null && [files.case, files.cabinet].some((open) => open?.key === ref.key);
  if (isOpen && isUnsaved(store.getState())) return announce(fileWords.alreadyOpen(file.name));
  const read = readDocument(file.name, file.content);
  if (!read.ok) {
    if (openPracticeFile(desk, file, read.problems)) return;
    const kept = ref ? await desk.access.readKeptCopy(ref) : null;
    return refuse({ deed: 'open', name: file.name, problems: read.problems, ...(kept?.ok && { kept: kept.value }) });
  }
  if (await mayLeave(desk, 'open')) await place(desk, read.value, file);
}

/** Puts a read file into the window, and says when the cabinet of a case has changed since. */
export async function place(desk: Desk, { part, document: read }: ReadDocument, file: ComingFile): Promise<void> {
  const { bench, keeper } = desk;
  // With a cabinet a case begins; a case that was begun elsewhere keeps the rates on which it stands.
  const document = part === 'cabinet' ? { ...read, caseRecord: desk.beginOn(read.caseRecord) } : read;
  const ref = refOf(file);
  const source = { kind: ref ? 'file' : 'copy', name: file.name } as const;
  const today = part === 'case' ? await findToday(desk, document.cabinet, ref) : null;
  const differences = today && cabinetDifferences(document.cabinet, today.cabinet);
  const changed = differences !== null && hasDifferences(differences);
  bench.openDocument(document, {
    source,
    // Beside its cabinet only while both say the same; else saving would write the old state over the new.
    files: part === 'case' ? { case: ref, cabinet: changed ? null : (today?.open ?? null) } : { case: null, cabinet: ref },
  });
  if (today && changed) {
    const revisions = { copy: document.cabinet.revision ?? null, today: today.cabinet.revision ?? null };
    raiseAlert(bench.store, { kind: 'cabinet-changed', name: today.name, today: today.cabinet, revisions, differences });
  }
  if (!ref) bench.announce(fileWords.openedAsCopy(file.name));
  await keeper.begin();
}

interface CabinetToday {
  readonly name: string;
  readonly cabinet: CabinetContent;
  /** The file, where the user has it open in this window. */
  readonly open: FileRef | null;
}

/** The cabinet of a case as it is documented today: open in the window, or in the folder of the case. */
async function findToday(desk: Desk, copy: CabinetContent, caseFile: FileRef | null): Promise<CabinetToday | null> {
  const { files, saved } = desk.bench.store.getState();
  if (files.cabinet && saved.cabinet?.id === copy.id) return { name: files.cabinet.name, cabinet: saved.cabinet, open: files.cabinet };
  const beside = caseFile && (await desk.access.findCabinetBeside(caseFile, copy.id));
  if (!beside?.ok || !beside.value) return null;
  const read = readDocument(beside.value.name, beside.value.content);
  if (!read.ok || read.value.part !== 'cabinet') return null;
  return { name: beside.value.name, cabinet: read.value.document.cabinet, open: null };
}

function refOf({ handle, key, name, modifiedAt }: ComingFile): FileRef | null {
  return handle === null ? null : { handle, key, name, modifiedAt };
}
