import { type Game, openExercise } from '../../engine/exercise/index.ts';
import type { AnswerContent, ExerciseContent } from '../../engine/schema/index.ts';
import { readyExercises } from '../samples/exercises.ts';

export interface ReadyGame {
  readonly exercise: ExerciseContent;
  readonly answer: AnswerContent;
  readonly game: Game;
}

const made = new Map<string, ReadyGame>();

/** A ready exercise by a part of its file name, opened; made once in each test file. */
export function readyGame(part: string): ReadyGame {
  const found = readyExercises.find(({ file }) => file.includes(part));
  if (found === undefined) throw new Error(`no exercise ${part}`);
  const known = made.get(found.file);
  if (known !== undefined) return known;
  const { exercise, answer } = found.make();
  const { game, problems } = openExercise(exercise);
  if (game === null) throw new Error(JSON.stringify(problems));
  const ready = { exercise, answer, game };
  made.set(found.file, ready);
  return ready;
}
