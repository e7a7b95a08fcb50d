import { ok, type Result } from '../../engine/base/index.ts';
import { parseCabinetFile, parseCaseFile } from '../../engine/cabinet/index.ts';
import type { DocumentState } from '../state/appState.ts';
import { makeEmptyCase } from '../state/emptyCase.ts';
import type { FilePart } from '../state/sitting.ts';

/** What stood in a file, and which kind of file it was. */
export interface ReadDocument {
  readonly part: FilePart;
  readonly document: DocumentState;
}

/** The file is one of ours, of another kind than was asked for. */
const wrongKind = 'format-other-kind';

/** Reads a cabinet file or a case file, whichever it is: tried as what its name says, else as the other. */
export function readDocument(name: string, source: string | Uint8Array): Result<ReadDocument> {
  const asCase = (): Result<ReadDocument> => {
    const parsed = parseCaseFile(source);
    if (!parsed.ok) return parsed;
    const { cabinet, ...caseRecord } = parsed.value;
    return ok({ part: 'case', document: { cabinet, caseRecord } });
  };
  const asCabinet = (): Result<ReadDocument> => {
    const parsed = parseCabinetFile(source);
    return parsed.ok ? ok({ part: 'cabinet', document: { cabinet: parsed.value, caseRecord: makeEmptyCase(parsed.value) } }) : parsed;
  };
  const [first, second] = name.toLowerCase().endsWith('.case.json') ? [asCase, asCabinet] : [asCabinet, asCase];
  const answer = first();
  if (answer.ok || !answer.problems.some(({ code }) => code === wrongKind)) return answer;
  return second();
}
