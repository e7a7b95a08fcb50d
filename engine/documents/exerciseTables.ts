import { type Debrief, type DebriefStep, type Game, type GameStep, play } from '../exercise/index.ts';
import {
  exerciseWords,
  type Names,
  startSentence,
  unsafeWords,
  wordAnswerKey,
  wordExerciseOutcome,
  wordExerciseStep,
  wordList,
  wordProbability,
  exercisePaperWords as words,
} from '../messages/index.ts';
import type { RichText, TableBlock, TableCell, TableColumn } from '../paper/index.ts';
import type { AnswerContent, ExerciseMove } from '../schema/index.ts';

/*
 * The tables on the papers of an exercise.
 */

/** What may be done, and at which price. */
export function priceTable(game: Game, names: Names): TableBlock {
  const spareName = (id: string | undefined) => game.exercise.spares?.find((one) => one.id === id)?.name;
  return numberedTable(
    exerciseWords.allowed,
    [
      { head: words.step, grow: 1 },
      { head: words.cost, align: 'right' },
    ],
    game.steps.map((step) => {
      const spare = spareName(step.spare);
      const line = wordExerciseStep(names, step);
      return [spare === undefined ? line : { text: line, below: [words.uses(spare)] }, words.minutes(step.minutes)];
    }),
  );
}

/** A table to fill in with a pencil, one row for each step. */
export function logTable(count: number): TableBlock {
  const { number, suspects, predicted, outcome, cost, total } = words.logHeads;
  return {
    kind: 'table',
    words: words.log,
    rowHeight: 10,
    columns: [
      { head: number, width: 16 },
      { head: suspects, grow: 3 },
      { head: predicted, grow: 2 },
      { head: outcome, grow: 2 },
      { head: cost, width: 15 },
      { head: total, width: 15 },
    ],
    rows: Array.from({ length: Math.min(count, 40) }, () => ['', '', '', '', '', '']),
  };
}

/** The best plan against the answer, with what each step shows and the cost so far. */
export function planTable(game: Game, names: Names, looked: Pick<Debrief, 'plan'> | null): TableBlock {
  return numberedTable(
    exerciseWords.plan,
    [
      { head: words.step, grow: 2 },
      { head: words.logHeads.outcome, grow: 1 },
      { head: words.logHeads.cost, align: 'right' },
      { head: words.logHeads.total, align: 'right' },
    ],
    (looked?.plan ?? []).map(({ step: id, outcome, minutes, until }) => {
      const step = stepOf(game, id);
      const shown = startSentence(wordExerciseOutcome(names, step, outcome));
      return [wordExerciseStep(names, step), shown, words.minutes(minutes), words.minutes(until)];
    }),
  );
}

/** What each step shows at the start, and after the machine was switched off and on with nothing else done. */
export function showsTable(game: Game, names: Names, answer: AnswerContent): TableBlock {
  const { limits: _limits, ...exercise } = game.exercise;
  const restart: GameStep = { id: restartId(game), minutes: 0, step: { do: 'act', acts: [] } };
  const free: Game = { ...game, exercise, steps: [...game.steps, restart] };
  const move = (step: string): ExerciseMove => ({ do: 'step', step, suspects: [], heeded: [] });
  const outcome = (step: GameStep, before: readonly string[]) => {
    const shown = play(free, answer, [...before, step.id].map(move)).steps.at(-1);
    return shown === undefined ? '' : startSentence(wordExerciseOutcome(names, step, shown.outcome));
  };
  return numberedTable(
    words.shows,
    [
      { head: words.step, grow: 2 },
      { head: words.atFirst, grow: 1 },
      { head: words.afterRestart, grow: 1 },
    ],
    game.steps.map((step) => [wordExerciseStep(names, step), outcome(step, []), outcome(step, [restart.id])]),
  );
}

/** An id that no step of the exercise has. */
function restartId({ steps }: Game): string {
  let id = 'restart';
  while (steps.some((step) => step.id === id)) id += '-';
  return id;
}

/** What was done, with what was believed before and after, what could have come out, and what would have been better. */
export function stepTable(game: Game, names: Names, looked: Debrief): TableBlock {
  const heads = words.stepHeads;
  return {
    ...numberedTable(
      words.steps,
      [
        { head: heads.step, grow: 5 },
        { head: heads.known, grow: 6 },
        { head: heads.predicted, grow: 3 },
        { head: heads.could, grow: 4 },
        { head: heads.cost, align: 'right', width: 14 },
        { head: heads.better, grow: 4 },
      ],
      looked.steps.map((one) => stepCells(game, names, one)),
    ),
    size: 8,
  };
}

function stepCells(game: Game, names: Names, one: DebriefStep): readonly TableCell[] {
  const step = stepOf(game, one.step);
  const word = (outcome: string) => wordExerciseOutcome(names, step, outcome);
  const [before] = one.before;
  const [after] = one.after;
  const likeliest = (top: typeof before) =>
    top === undefined ? '' : `${wordAnswerKey(names, game.cabinet, top.answer)} ${wordProbability(top.share)}`;
  // Names of several things each would fill the page.
  const areSeveral = game.possible.some(({ faults }) => faults.length > 1);
  const known = areSeveral
    ? words.waysLeft(one.before.length, one.after.length)
    : before?.answer === after?.answer
      ? `${likeliest(before)} → ${wordProbability(after?.share ?? 0)}`
      : `${likeliest(before)} → ${likeliest(after)}`;
  const suspects = one.suspects.map((answer) => wordAnswerKey(names, game.cabinet, answer));
  return [
    {
      text: `${wordExerciseStep(names, step)}: ${word(one.outcome)}`,
      below: one.unsafe.map((kind): RichText => [{ text: unsafeWords[kind].label, face: 'bold' }]),
    },
    { text: known, below: suspects.length === 0 ? [] : [words.suspected(wordList(suspects))] },
    one.predicted === null ? words.noPrediction : words.predicted(word(one.predicted), one.predictedRight === true),
    {
      text: wordList(
        one.couldTell.map(({ outcome, probability }) => `${word(outcome)} ${wordProbability(probability)}`),
        'or',
      ),
      below: one.taught ? [] : [words.taughtNothing],
    },
    words.minutes(one.minutes),
    betterWords(game, names, one),
  ];
}

function betterWords(game: Game, names: Names, { better, judgement, expectedMinutes, bestMinutes }: DebriefStep): string {
  if (judgement === 'best') return words.wasBest;
  if (judgement === 'as-good') return words.asGood;
  if (better === null) return words.tooMany;
  const worth = (minutes: number | null) => (minutes === null ? words.noEnd : words.minutes(minutes));
  return words.instead(wordExerciseStep(names, stepOf(game, better)), worth(expectedMinutes), worth(bestMinutes));
}

function stepOf({ steps }: Game, id: string): GameStep {
  const step = steps.find((one) => one.id === id);
  if (step === undefined) throw new Error(`no step ${id}`);
  return step;
}

/** A table whose rows are counted: 1, 2, 3. */
function numberedTable(title: string, columns: readonly TableColumn[], rows: readonly (readonly TableCell[])[]): TableBlock {
  return {
    kind: 'table',
    words: title,
    tight: true,
    columns: [{ head: words.number, align: 'right' }, ...columns],
    rows: rows.map((cells, index) => [String(index + 1), ...cells]),
  };
}
