import { parseExerciseFile, parseResultFile } from '../../cabinet/index.ts';
import { checkAnswer, checkResult, type Game, openExercise } from '../../exercise/index.ts';
import type { AnswerContent, ExerciseContent, ResultContent } from '../../schema/index.ts';
import { openSeal, readyPassphrase } from '../../sealing/index.ts';
import { type JsonProblem, jsonProblem, jsonUsageProblem } from '../answer/index.ts';
import type { Io } from '../io.ts';
import { makeUsageProblem } from './asked.ts';

type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly JsonProblem[] };

/** An exercise that can be played; with its answer where the seal was opened. */
export interface OpenedExercise {
  readonly exercise: ExerciseContent;
  readonly game: Game;
  readonly answer: AnswerContent | null;
  /** What is wrong with the answer, or with the passphrase. */
  readonly problems: readonly JsonProblem[];
}

/** Reads an exercise. Without a passphrase the one of the ready exercises is tried, and a seal that does not open is left closed. */
export async function readExercise(io: Io, file: string, passphrase: string | undefined): Promise<Read<OpenedExercise>> {
  const bytes = await readBytes(io, file);
  if (!bytes.ok) return bytes;
  const parsed = parseExerciseFile(bytes.value);
  if (!parsed.ok) return { ok: false, problems: parsed.problems.map((problem) => jsonProblem(problem, file)) };
  const exercise = parsed.value;
  const { game, problems } = openExercise(exercise);
  if (game === null) return { ok: false, problems: problems.map((problem) => jsonProblem(problem, file)) };
  const seal = await openSeal(exercise.sealed, passphrase ?? readyPassphrase);
  const found = seal.ok ? checkAnswer(game, seal.value) : passphrase === undefined ? [] : seal.problems;
  return {
    ok: true,
    value: { exercise, game, answer: seal.ok ? seal.value : null, problems: found.map((problem) => jsonProblem(problem, file)) },
  };
}

/** Reads the result of an exercise, and looks at its checksum. */
export async function readResult(io: Io, file: string): Promise<Read<ResultContent>> {
  const bytes = await readBytes(io, file);
  if (!bytes.ok) return bytes;
  const parsed = parseResultFile(bytes.value);
  const checked = parsed.ok ? checkResult(parsed.value) : parsed;
  return checked.ok ? checked : { ok: false, problems: checked.problems.map((problem) => jsonProblem(problem, file)) };
}

async function readBytes(io: Io, file: string): Promise<Read<Uint8Array>> {
  const read = await io.readFile(file);
  if ('bytes' in read) return { ok: true, value: read.bytes };
  const problem = jsonUsageProblem(makeUsageProblem('file-not-readable', { file, reason: read.reason }));
  return { ok: false, problems: [{ ...problem, file }] };
}
