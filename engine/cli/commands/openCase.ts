import type { Names, UsageProblem } from '../../messages/index.ts';
import type { Evidence } from '../../schema/index.ts';
import type { Cabinet } from '../../topology/index.ts';
import { type JsonProblem, jsonUsageProblem } from '../answer/index.ts';
import { type CommandAnswer, failed, firstValue } from '../command.ts';
import type { Io } from '../io.ts';
import type { GivenArguments } from '../options.ts';
import {
  type Asked,
  checkEvidence,
  makeSound,
  makeUsageProblem,
  readCabinetOrCase,
  readEvidence,
  readNumber,
  understood,
} from '../read/index.ts';

/** The options by which a command is told what was seen, besides its file. */
export const evidenceOptions = {
  display: { value: true, many: true },
  report: { value: true, many: true },
  onset: { value: true },
  halted: { value: true },
  days: { value: true },
  circumstance: { value: true, many: true },
} as const;

/** How many lines `--top` asks for; undefined where it was not given. */
export function readTop(given: GivenArguments): Asked<number | undefined> {
  const text = firstValue(given, 'top');
  return text === undefined ? understood(undefined) : readNumber('--top', text, 1, true);
}

/** A sound cabinet with what was seen and done, by a case file and by the command line together. */
export interface OpenCase {
  readonly file: string;
  readonly cabinet: Cabinet;
  readonly names: Names;
  readonly evidence: Evidence;
  /** Findings in the cabinet that do not stand in the way. */
  readonly remarks: readonly JsonProblem[];
}

/** Opens the one file that a command was given, with its evidence; or the answer that says why not. */
export async function openCase(
  io: Io,
  given: GivenArguments,
  command: string,
): Promise<{ readonly ok: true; readonly value: OpenCase } | { readonly ok: false; readonly answer: CommandAnswer }> {
  const refuse = (problem: UsageProblem) => ({ ok: false, answer: failed(2, [jsonUsageProblem(problem)]) }) as const;
  const fail = (exit: 1 | 2 | 3, problems: readonly JsonProblem[]) => ({ ok: false, answer: failed(exit, problems) }) as const;
  const [file, unwanted] = given.arguments;
  if (file === undefined) return refuse(makeUsageProblem('file-argument-missing', { command }));
  if (unwanted !== undefined) return refuse(makeUsageProblem('argument-unwanted', { argument: unwanted, command }));
  const read = await readCabinetOrCase(io, file);
  if (!read.ok) return fail(3, read.problems);
  const sound = makeSound(read.value.content, file);
  if (!sound.ok) return fail(1, sound.problems);
  const { cabinet, names, remarks } = sound.value;
  const asked = readEvidence(cabinet, read.value.evidence, given);
  if (!asked.ok) return fail(2, asked.problems.map(jsonUsageProblem));
  const unknown = checkEvidence(cabinet, names, asked.value);
  // What the command line names was found; so these stand in the case file.
  if (unknown.length > 0)
    return fail(
      3,
      unknown.map((problem) => ({ ...jsonUsageProblem(problem), file })),
    );
  return { ok: true, value: { file, cabinet, names, evidence: asked.value, remarks } };
}
