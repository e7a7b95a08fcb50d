import { type ClassRow, debrief, type Game, suspectsOf } from '../../exercise/index.ts';
import {
  classHeads,
  exerciseWords,
  makeNames,
  type Names,
  namesForPlay,
  solvedWords,
  startSentence,
  wordAnswerKey,
  wordExerciseOutcome,
  wordExerciseStep,
  wordFaultClause,
  wordGiven,
  wordPossible,
  wordSolved,
} from '../../messages/index.ts';
import type { AnswerContent } from '../../schema/index.ts';
import { formatTable } from '../table.ts';
import { paragraph } from '../text.ts';

interface Wanted {
  readonly as: 'check' | 'sheet';
  readonly withAnswer: boolean;
  readonly columns: number;
}

/** An exercise on paper, or what a check of it found; with the answer where it is wanted and the seal was opened. */
export function formatExercise(game: Game, answer: AnswerContent | null, { as, withAnswer, columns }: Wanted): string {
  const names = namesForPlay(game);
  const { exercise } = game;
  const { figures } = exercise;
  const level = figures === undefined ? '' : `, ${exerciseWords.level(figures.level)}`;
  const head = paragraph(`${exercise.name} (${exercise.cabinet.name}${level})`, columns);
  if (as === 'check') {
    const says = paragraph(`${startSentence(answer === null ? exerciseWords.closed : exerciseWords.holds)}.`, columns);
    const measured =
      figures === undefined
        ? ''
        : paragraph(
            `${exerciseWords.plan}: ${exerciseWords.expected(figures.bestMinutes, figures.exact)}. ${startSentence(exerciseWords.figures(figures.firstGroup, figures.misleading))}.`,
            columns,
          );
    return head + says + measured;
  }
  const { openMinutes, isolateMinutes, bootMinutes } = exercise.times;
  return [
    head,
    paragraph(exercise.task, columns),
    section(exerciseWords.known, wordGiven(names, game), columns),
    section(exerciseWords.asked, [solvedWords[exercise.solved].meaning], columns),
    section(
      wordPossible(game),
      suspectsOf(game).map((key) => wordAnswerKey(names, game.cabinet, key)),
      columns,
    ),
    `\n${exerciseWords.allowed}\n`,
    paragraph(exerciseWords.changes(openMinutes, isolateMinutes, bootMinutes), columns, '  '),
    formatTable(
      [{ head: '' }, { head: '', grow: true }, { head: '', align: 'right' }],
      game.steps.map((step, index) => [String(index + 1), wordExerciseStep(names, step), exerciseWords.minutes(step.minutes)]),
      columns,
    )
      .split('\n')
      .slice(2)
      .join('\n'),
    paragraph(exerciseWords.write, columns),
    withAnswer && answer !== null ? answerSheet(game, answer, makeNames(game.cabinet), columns) : '',
  ].join('');
}

function answerSheet(game: Game, answer: AnswerContent, names: Names, columns: number): string {
  const looked = debrief(game, answer, [{ do: 'give-up' }]);
  const step = (id: string) => game.steps.find((one) => one.id === id);
  const plan = (looked?.plan ?? []).flatMap(({ step: id, outcome, minutes }) => {
    const taken = step(id);
    return taken === undefined
      ? []
      : [`${wordExerciseStep(names, taken)}: ${wordExerciseOutcome(names, taken, outcome)} (${exerciseWords.minutes(minutes)})`];
  });
  return [
    section(
      exerciseWords.answer,
      [...answer.faults.map((fault) => startSentence(wordFaultClause(names, fault))), answer.story ?? ''],
      columns,
    ),
    section(exerciseWords.plan, plan, columns),
    section(exerciseWords.lesson, [answer.lesson ?? ''], columns),
  ].join('');
}

function section(head: string, lines: readonly string[], columns: number): string {
  const shown = lines.filter(Boolean);
  return shown.length === 0 ? '' : `\n${head}\n${shown.map((line) => paragraph(line, columns, '    ', '  ')).join('')}`;
}

/** The table of a class. */
export function formatClass(rows: readonly ClassRow[], columns: number): string {
  return formatTable(
    [
      { head: classHeads.code },
      { head: classHeads.name, grow: true },
      { head: classHeads.solved },
      { head: classHeads.minutes, align: 'right' },
      { head: classHeads.bestMinutes, align: 'right' },
      { head: classHeads.predictionsRight, align: 'right' },
      { head: classHeads.unsafe, align: 'right' },
    ],
    rows.map((row) => [
      row.code,
      row.name,
      wordSolved(row),
      exerciseWords.minutes(row.minutes),
      exerciseWords.minutes(row.bestMinutes),
      `${row.predictionsRight}/${row.predictions}`,
      String(row.unsafe),
    ]),
    columns,
  );
}
