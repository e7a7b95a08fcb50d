import { checkCabinet, parseCabinetFile, parseCaseFile } from '../../cabinet/index.ts';
import { makeNames, type Names } from '../../messages/index.ts';
import type { CabinetContent, Evidence } from '../../schema/index.ts';
import type { Cabinet } from '../../topology/index.ts';
import { type JsonProblem, jsonProblem, jsonUsageProblem } from '../answer/index.ts';
import type { Io } from '../io.ts';
import { makeUsageProblem } from './asked.ts';

/** A file that was read: a cabinet, or a case with its evidence and the cabinet in it. */
export interface ReadFile {
  readonly file: string;
  readonly kind: 'cabinet' | 'case';
  readonly content: CabinetContent;
  readonly evidence: Evidence | null;
  /** Of a case. */
  readonly caseId: string | null;
}

/** A file, or the problems that kept it from being read. */
export type FileAnswer =
  | { readonly ok: true; readonly value: ReadFile }
  | { readonly ok: false; readonly problems: readonly JsonProblem[] };

/** Reads a cabinet or case file; what it is says the file itself, not its name. */
export async function readCabinetOrCase(io: Io, file: string): Promise<FileAnswer> {
  const read = await io.readFile(file);
  if ('reason' in read) {
    const problem = jsonUsageProblem(makeUsageProblem('file-not-readable', { file, reason: read.reason }));
    return { ok: false, problems: [{ ...problem, file }] };
  }
  const asCabinet = parseCabinetFile(read.bytes);
  if (asCabinet.ok) return { ok: true, value: { file, kind: 'cabinet', content: asCabinet.value, evidence: null, caseId: null } };
  const isCase = asCabinet.problems.some(({ code, facts }) => code === 'format-other-kind' && facts['format'] === 'linkwright-case');
  if (!isCase) return { ok: false, problems: asCabinet.problems.map((problem) => jsonProblem(problem, file)) };
  const asCase = parseCaseFile(read.bytes);
  if (!asCase.ok) return { ok: false, problems: asCase.problems.map((problem) => jsonProblem(problem, file)) };
  const { id, cabinet, evidence } = asCase.value;
  return { ok: true, value: { file, kind: 'case', content: cabinet, evidence, caseId: id } };
}

/** A cabinet that can be computed with, with its names, and what else was found in it. */
export interface SoundCabinet {
  readonly cabinet: Cabinet;
  readonly names: Names;
  /** Findings that do not stand in the way. */
  readonly remarks: readonly JsonProblem[];
}

/** Checks a cabinet; fails with all its errors, and a last line that says that they stand in the way. */
export function makeSound(
  content: CabinetContent,
  file: string | null,
): { readonly ok: true; readonly value: SoundCabinet } | { readonly ok: false; readonly problems: readonly JsonProblem[] } {
  const { cabinet, topology, problems } = checkCabinet(content);
  const worded = problems.map((problem) => jsonProblem(problem, file));
  if (cabinet) return { ok: true, value: { cabinet, names: makeNames(topology), remarks: worded } };
  const errors = worded.filter(({ severity }) => severity === 'error' || severity === 'refused');
  return {
    ok: false,
    problems: [...errors, { ...jsonUsageProblem(makeUsageProblem('cabinet-not-sound', { file: file ?? 'cabinet' })), file }],
  };
}
