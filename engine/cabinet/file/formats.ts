import type { Result } from '../../base/index.ts';
import type { CabinetContent, CaseContent, ExerciseContent, ResultContent, TruthContent } from '../../schema/index.ts';
import { cabinetFile, caseFile, exerciseFile, resultFile, truthFile } from './fileKinds.ts';
import { parseFile } from './parseFile.ts';
import { orderCabinet, orderCase, serializeFile } from './serializeFile.ts';

/** Opens a cabinet file. Failure: problems of severity `refused`; whether the cabinet is sound is for `checkCabinet` to say. */
export function parseCabinetFile(source: string | Uint8Array): Result<CabinetContent> {
  return parseFile(cabinetFile, source);
}

/** Writes a cabinet file. Any content can be written, also an unfinished one; opening it again gives the same content. */
export function serializeCabinet(content: CabinetContent): string {
  return serializeFile(cabinetFile, orderCabinet(content));
}

/** Opens a case file: what was seen and done at a machine, with its cabinet as documented then. */
export function parseCaseFile(source: string | Uint8Array): Result<CaseContent> {
  return parseFile(caseFile, source);
}

/** Writes a case file. */
export function serializeCase(content: CaseContent): string {
  return serializeFile(caseFile, orderCase(content));
}

/** Opens a truth file: what was really wrong in a sample case. */
export function parseTruthFile(source: string | Uint8Array): Result<TruthContent> {
  return parseFile(truthFile, source);
}

/** Writes a truth file. */
export function serializeTruth(content: TruthContent): string {
  return serializeFile(truthFile, content);
}

/** Opens an exercise file. Whether it can be played is for `checkExercise` to say. */
export function parseExerciseFile(source: string | Uint8Array): Result<ExerciseContent> {
  return parseFile(exerciseFile, source);
}

/** Writes an exercise file; what is sealed in it stays sealed. */
export function serializeExercise(content: ExerciseContent): string {
  return serializeFile(exerciseFile, { ...content, cabinet: orderCabinet(content.cabinet) });
}

/** Opens the result of an exercise. Whether its checksum is right is for `engine/exercise` to say. */
export function parseResultFile(source: string | Uint8Array): Result<ResultContent> {
  return parseFile(resultFile, source);
}

/** Writes the result of an exercise. */
export function serializeResult(content: ResultContent): string {
  return serializeFile(resultFile, content);
}

/** Whether this opens as any of the files that the window saves. */
export function isOwnFile(source: string | Uint8Array): boolean {
  return [parseCaseFile, parseCabinetFile, parseExerciseFile, parseResultFile].some((parse) => parse(source).ok);
}
