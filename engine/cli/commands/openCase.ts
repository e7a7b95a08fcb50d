import { gatherExperience, leastStrength, mostStrength, ratesFor, usualStrength } from '../../experience/index.ts';
import type { Names, UsageProblem } from '../../messages/index.ts';
import type { Evidence, SharpenedRates } from '../../schema/index.ts';
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
  readCases,
  readEvidence,
  readLevel,
  readNumber,
  understood,
} from '../read/index.ts';
import { wordRemarks } from '../show/index.ts';

/** The options by which a command is told what was seen, besides its file. */
export const evidenceOptions = {
  display: { value: true, many: true },
  report: { value: true, many: true },
  onset: { value: true },
  halted: { value: true },
  days: { value: true },
  circumstance: { value: true, many: true },
  confirmed: { value: true, many: true },
  strength: { value: true },
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
  /** What does not stand in the way and should be known: findings in the cabinet, no case that is confirmed. */
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
  const sharpened = await sharpenedBy(io, given, read.value.caseId);
  if (!sharpened.ok) return fail(sharpened.exit, sharpened.problems);
  const { rates, remarks: ofCases } = sharpened.value;
  const evidence = rates === undefined ? asked.value : { ...asked.value, rates };
  return { ok: true, value: { file, cabinet, names, evidence, remarks: [...wordRemarks(file, remarks), ...ofCases] } };
}

/** The rates that the confirmed cases of `--confirmed` sharpen, without the case that is asked about; none where it was not given. */
async function sharpenedBy(
  io: Io,
  given: GivenArguments,
  caseId: string | null,
): Promise<
  | { readonly ok: true; readonly value: { readonly rates?: SharpenedRates; readonly remarks: readonly JsonProblem[] } }
  | { readonly ok: false; readonly exit: 2 | 3; readonly problems: readonly JsonProblem[] }
> {
  const paths = given.options.get('confirmed') ?? [];
  const text = firstValue(given, 'strength');
  if (paths.length === 0 && text !== undefined) {
    const problem = makeUsageProblem('option-needs', { option: '--strength', other: '--confirmed' });
    return { ok: false, exit: 2, problems: [jsonUsageProblem(problem)] };
  }
  if (paths.length === 0) return { ok: true, value: { remarks: [] } };
  const strength = text === undefined ? understood(usualStrength) : readLevel('--strength', text, leastStrength, mostStrength);
  if (!strength.ok) return { ok: false, exit: 2, problems: strength.problems.map(jsonUsageProblem) };
  const { cases, unreadable } = await readCases(io, paths);
  // An answer on other rates than were asked for would not be noticed.
  if (unreadable.length > 0) return { ok: false, exit: 3, problems: unreadable };
  const others = cases.map(({ content }) => content).filter(({ id }) => id !== caseId);
  const rates = ratesFor(gatherExperience(others, strength.value));
  if (rates !== undefined) return { ok: true, value: { rates, remarks: [] } };
  const none = jsonUsageProblem(makeUsageProblem('no-case-confirmed', { where: paths.join(', ') }));
  return { ok: true, value: { remarks: [{ ...none, severity: 'warning' }] } };
}
