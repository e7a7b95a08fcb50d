import { type Game, openExercise } from '../../engine/exercise/index.ts';
import type { AnswerContent, ExerciseContent } from '../../engine/schema/index.ts';
import { readyExercises } from '../samples/exercises.ts';

export interface ReadyGame {
  readonly exercise: ExerciseContent;
  readonly answer: AnswerContent;
  readonly game: Game;
}

/** A ready exercise by a part of its file name, opened. */
export function readyGame(part: string): ReadyGame {
  const found = readyExercises.find(({ file }) => file.includes(part));
  if (found === undefined) throw new Error(`no exercise ${part}`);
  const { exercise, answer } = found.make();
  const { game, problems } = openExercise(exercise);
  if (game === null) throw new Error(JSON.stringify(problems));
  return { exercise, answer, game };
}
