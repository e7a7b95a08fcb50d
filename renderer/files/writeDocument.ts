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

/** An id that says when the cabinet was begun. */
export function newCabinetId(now: Date): string {
  return `cabinet-${now.toISOString().slice(0, 19).replace(/\D/g, '')}`;
}

/** The id of a cabinet that was begun here, with what was put behind it. */
const begunHere = /^cabinet-[0-9]{14}(.*)$/s;

/** What a file of this part would be called; every system takes the name. An id that nobody gave yields to the cabinet's name. */
export function proposeName(part: FilePart, { cabinet, caseRecord }: DocumentState): string {
  const { id } = part === 'case' ? caseRecord : cabinet;
  const behind = begunHere.exec(id)?.[1];
  const base = behind === undefined ? id : `${cabinet.name.trim().replace(/\s+/g, '-')}${behind}`;
  return makeFileName(base, `.${part}.json`, part);
}
