import { serializeExercise } from '../cabinet/index.ts';
import type { AnswerContent, ExerciseContent } from '../schema/index.ts';
import { checksum } from './checksum.ts';

/** The checksum of what stands in the open of an exercise, to which its seal belongs. What was measured, and the seal, are left out. */
export function plainChecksum(exercise: ExerciseContent): string {
  const { figures: _figures, sealed: _sealed, ...plain } = exercise;
  // The version of the program that writes it must not matter.
  const text = serializeExercise({ ...plain, sealed: '' });
  return checksum(text.slice(text.indexOf('"content"')));
}

/** The answer of an exercise as it goes under the seal. */
export function makeAnswer(exercise: ExerciseContent, rest: Omit<AnswerContent, 'exercise' | 'check'>): AnswerContent {
  return { exercise: exercise.id, check: plainChecksum(exercise), ...rest };
}
