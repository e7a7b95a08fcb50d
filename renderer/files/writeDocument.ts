import { makeFileName } from '../../engine/base/index.ts';
import { serializeCabinet, serializeCase } from '../../engine/cabinet/index.ts';
import type { DocumentState } from '../state/appState.ts';
import type { FilePart } from '../state/sitting.ts';

/** A part of the document as the text of its file. A case carries a copy of the cabinet as it is now, and its revision. */
export function writeDocument(part: FilePart, { cabinet, caseRecord }: DocumentState): string {
  if (part === 'cabinet') return serializeCabinet(cabinet);
  const { cabinetRevision: _before, ...rest } = caseRecord;
  return serializeCase({ ...rest, ...(cabinet.revision === undefined ? {} : { cabinetRevision: cabinet.revision }), cabinet });
}

/** What a file of this part would be called; every system takes the name. */
export function proposeName(part: FilePart, { cabinet, caseRecord }: DocumentState): string {
  return part === 'case' ? makeFileName(caseRecord.id, '.case.json', 'case') : makeFileName(cabinet.id, '.cabinet.json', 'cabinet');
}
