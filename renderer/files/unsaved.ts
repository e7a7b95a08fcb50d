import type { AppState } from '../state/appState.ts';
import { sameContent } from './sameContent.ts';

type Part = Pick<AppState, 'cabinet' | 'caseRecord' | 'files' | 'saved'>;

/** Which parts of the document differ from what lies on the disk. Undone back to what was saved, a document is saved. */
export function unsavedParts({ cabinet, caseRecord, files, saved }: Part): { readonly case: boolean; readonly cabinet: boolean } {
  const caseDiffers = !sameContent(caseRecord, saved.caseRecord) || (files.case !== null && !sameContent(cabinet, saved.caseCabinet));
  // A case that stands alone carries its cabinet.
  const cabinetDiffers = (files.cabinet !== null || files.case === null) && !sameContent(cabinet, saved.cabinet);
  return { case: caseDiffers, cabinet: cabinetDiffers };
}

export function isUnsaved(state: Part): boolean {
  const parts = unsavedParts(state);
  return parts.case || parts.cabinet;
}

/** What the document is called: by its file, else by the case. */
export function documentName({ files, caseRecord, cabinet }: Pick<AppState, 'files' | 'caseRecord' | 'cabinet'>): string {
  return files.case?.name ?? files.cabinet?.name ?? `${cabinet.name}, ${caseRecord.name}`;
}
