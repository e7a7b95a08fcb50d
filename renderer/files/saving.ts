import { fileWords } from '../../engine/messages/index.ts';
import { sealLast } from '../state/history.ts';
import type { FilePart, FileRef } from '../state/sitting.ts';
import { clearAlerts, raiseAlert } from './alerts.ts';
import type { Desk } from './desk.ts';
import { unsavedParts } from './unsaved.ts';
import { proposeName, writeDocument } from './writeDocument.ts';

export type SaveOutcome = 'saved' | 'cancelled' | 'failed';

/**
 * Saves what is unsaved: the cabinet into its file, the case into its own; a part without a file asks for its place. With nothing
 * unsaved the files are written once more, so that the user can rely on what the key does.
 */
export async function saveAll(desk: Desk): Promise<SaveOutcome> {
  const state = desk.bench.store.getState();
  const unsaved = unsavedParts(state);
  const { files } = state;
  const cabinetToo = files.cabinet !== null && (unsaved.cabinet || files.case === null);
  const caseToo = files.case !== null || unsaved.case || !cabinetToo;
  if (cabinetToo) {
    const outcome = await savePart(desk, 'cabinet', files.cabinet);
    if (outcome !== 'saved') return outcome;
  }
  return caseToo ? savePart(desk, 'case', files.case) : 'saved';
}

/** Saves one part, into `file` or, without one, where the user says. What goes wrong stays on the screen until a save succeeds. */
export async function savePart(desk: Desk, part: FilePart, file: FileRef | null): Promise<SaveOutcome> {
  const { store, announce } = desk.bench;
  const { cabinet, caseRecord } = store.getState();
  const proposed = proposeName(part, { cabinet, caseRecord });
  const content = new TextEncoder().encode(writeDocument(part, { cabinet, caseRecord }));
  // First the recovery copy: whatever ends the program during the save, the newest work is kept.
  await desk.keeper.flush();
  const done = file ? await desk.access.save(file, content) : await desk.access.saveAs(proposed, content);
  if (!done.ok) {
    const name = file?.name ?? proposed;
    if (file && done.problems.some(({ code }) => code === 'file-changed-outside')) await lookOutside(desk, part, file);
    else raiseAlert(store, { kind: 'not-saved', part, name, problems: done.problems });
    return 'failed';
  }
  if (!done.value) return 'cancelled';
  const saved = done.value;
  store.setState((state) => ({
    files: { ...state.files, [part]: saved },
    saved: part === 'case' ? { ...state.saved, caseRecord, caseCabinet: cabinet } : { ...state.saved, cabinet },
    source: { kind: 'file', name: saved.name },
    history: sealLast(state.history),
  }));
  clearAlerts(store, ['not-saved', 'changed-outside', 'gone'], part);
  clearAlerts(store, ['restored']);
  if (desk.access.means === 'download') raiseAlert(store, { kind: 'downloaded', name: saved.name });
  announce(fileWords.saved(saved.name));
  await desk.keeper.flush();
  return 'saved';
}

/** Looks whether another program changed the file, and tells it. */
export async function lookOutside(desk: Desk, part: FilePart, file: FileRef): Promise<void> {
  const { store } = desk.bench;
  const look = await desk.access.look(file);
  // A drive that does not answer now is told of when something shall be saved there.
  if (!look.ok || store.getState().files[part]?.handle !== file.handle) return;
  if (look.value.state === 'changed') {
    const { modifiedAt } = look.value;
    const known = store
      .getState()
      .alerts.some((alert) => alert.kind === 'changed-outside' && alert.part === part && alert.modifiedAt === modifiedAt);
    if (!known) raiseAlert(store, { kind: 'changed-outside', part, name: file.name, modifiedAt });
  } else clearAlerts(store, ['changed-outside'], part);
  if (look.value.state !== 'missing') clearAlerts(store, ['gone'], part);
  else if (!store.getState().alerts.some((alert) => alert.kind === 'gone' && alert.part === part)) {
    raiseAlert(store, { kind: 'gone', part, name: file.name });
  }
}
