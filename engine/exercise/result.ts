import { fail, makeProblem, ok, type Result } from '../base/index.ts';
import { serializeResult } from '../cabinet/index.ts';
import type { ExerciseContent, ExerciseMove, ResultContent } from '../schema/index.ts';
import { checksum } from './checksum.ts';
import type { Debrief } from './debrief.ts';

/** Who played when, as far as it is told: a free code, never a person's name. */
export interface ResultHead {
  readonly code: string;
  readonly startedAt?: string;
  readonly seconds?: number;
}

/** The result of a play that has ended, with its checksum. */
export function makeResult(exercise: ExerciseContent, moves: readonly ExerciseMove[], looked: Debrief, head: ResultHead): ResultContent {
  const round = (minutes: number) => Math.round(minutes * 100) / 100;
  const content = {
    exercise: exercise.id,
    name: exercise.name,
    ...head,
    moves: [...moves],
    solved: looked.end === 'solved',
    minutes: round(looked.minutes),
    bestMinutes: round(looked.planMinutes),
    predictions: looked.predictions,
    predictionsRight: looked.predictionsRight,
    unsafe: [...looked.unsafe],
    checksum: '',
  };
  return { ...content, checksum: resultChecksum(content) };
}

/** The checksum that a result must have. */
export function resultChecksum(content: ResultContent): string {
  const text = serializeResult({ ...content, checksum: '' });
  return checksum(text.slice(text.indexOf('"content"')));
}

/** Whether two results are of one play: the same in every word, or begun in the same instant with the same moves under another code. */
export function isSamePlay(a: ResultContent, b: ResultContent): boolean {
  const playOf = ({ exercise, moves, startedAt }: ResultContent) => JSON.stringify([exercise, moves, startedAt]);
  return JSON.stringify(a) === JSON.stringify(b) || (a.startedAt !== undefined && playOf(a) === playOf(b));
}

/** Whether a result is as it was written. */
export function checkResult(content: ResultContent): Result<ResultContent> {
  return content.checksum === resultChecksum(content)
    ? ok(content)
    : fail(makeProblem('result-changed', 'refused', { where: '/checksum' }));
}
