import { cautionsOf, type Debrief, debrief, type Game, measure, suspectsOf } from '../exercise/index.ts';
import {
  cautionWords,
  exerciseWords,
  makeNames,
  meaningWords,
  type Names,
  namesForPlay,
  playEndWords,
  practiceWords,
  solvedWords,
  startSentence,
  unsafeWords,
  wordAnswerKey,
  wordFaultClause,
  wordGiven,
  wordGuess,
  wordLevel,
  wordNeeded,
  wordPossible,
  exercisePaperWords as words,
} from '../messages/index.ts';
import { type Block, bodySize, layOut, type Paper, type PaperSize, type RichText } from '../paper/index.ts';
import { type AnswerContent, displayMeanings } from '../schema/index.ts';
import { drawBeliefs } from './beliefFigure.ts';
import { cautionBlocks } from './cautionBlocks.ts';
import { drawKnown } from './exerciseFigure.ts';
import { logTable, planTable, priceTable, showsTable, stepTable } from './exerciseTables.ts';
import type { MadeDocument } from './makeDocument.ts';
import { type DocumentSource, makePaper } from './source.ts';

/** What the papers of an exercise are made from. */
export interface ExerciseSource {
  readonly game: Game;
  /** The day on which it is made: 2026-11-26. */
  readonly date: string;
  readonly size: PaperSize;
}

type ExercisePaper = MadeDocument & { readonly paper: Paper };

/** Rows to write on, where the exercise does not say how many steps there may be. */
const logRows = 12;

/** An exercise to be played on paper: what is known, what may be done at which price, a table to fill in. Nothing of its answer. */
export function exerciseSheet(source: ExerciseSource): ExercisePaper {
  const { game } = source;
  const { exercise } = game;
  const base = { ...baseOf(source), names: namesForPlay(game) };
  const empty = makePaper(base, { id: words.sheetId, title: '', blocks: [] });
  const { width } = bodySize(empty, source.size);
  const { code, date, begun, ended } = words.fields;
  return made(source, base, words.sheetId, words.sheetTitle(exercise.name), [
    { kind: 'fields', columns: 4, fields: [code, date, begun, ended].map((label) => ({ label })) },
    heading(words.task),
    { kind: 'paragraph', text: exercise.task },
    { kind: 'paragraph', text: [{ text: `${exerciseWords.asked}: `, face: 'bold' }, { text: `${solvedWords[exercise.solved].meaning}.` }] },
    heading(exerciseWords.known),
    ...listOf(knownLines(game, base.names)),
    heading(words.drawing),
    { kind: 'paragraph', text: words.drawingNote },
    ...drawKnown(game, base.names, width).map((figure): Block => ({ kind: 'figure', figure })),
    heading(wordPossible(game)),
    ...listOf(suspectsOf(game).map((answer) => answerWords(source, base.names, answer))),
    heading(exerciseWords.allowed),
    priceTable(game, base.names),
    ...rulesOf(game).map((text): Block => ({ kind: 'paragraph', text })),
    { kind: 'together', blocks: [heading(words.cautions), ...cautions(game)] },
    {
      kind: 'together',
      blocks: [
        heading(words.log),
        { kind: 'paragraph', text: words.choose },
        logTable(exercise.limits?.steps ?? logRows),
        { kind: 'fields', columns: 1, fields: [{ label: words.final }] },
      ],
    },
  ]);
}

/** What the instructor needs beside a printed exercise: the answer, what each step shows, the best plan and its cost. */
export function exerciseAnswer(source: ExerciseSource, answer: AnswerContent): ExercisePaper {
  const { game } = source;
  const base = baseOf(source);
  const { names } = base;
  const looked = debrief(game, answer, [{ do: 'give-up' }]);
  const figures = game.exercise.figures ?? measure(game, answer);
  const expected = figures === null ? '' : words.expectedAll(exerciseWords.expected(figures.bestMinutes, figures.exact));
  const hints = (game.exercise.hints ?? []).map(({ text, minutes }) => words.hint(text, minutes));
  return made(source, base, words.answerId, words.answerTitle(game.exercise.name), [
    { kind: 'paragraph', text: [{ text: words.keepApart, face: 'bold' }] },
    heading(words.answer),
    ...listOf(answer.faults.map((fault) => startSentence(wordFaultClause(names, fault)))),
    ...said(answer.story),
    heading(exerciseWords.plan),
    { kind: 'paragraph', text: words.planCost(looked?.planMinutes ?? 0, expected) },
    planTable(game, names, looked),
    heading(words.shows),
    { kind: 'paragraph', text: words.showsNote },
    ...(game.changes ? [{ kind: 'paragraph', text: words.comesAndGoes } as const] : []),
    showsTable(game, names, answer),
    ...(hints.length === 0 ? [] : [heading(words.hintsHead), ...listOf(hints)]),
    ...(answer.lesson === undefined ? [] : [heading(words.lesson), ...said(answer.lesson)]),
  ]);
}

/** A play that has ended, beside the best plan: for one page. `code` stands for the person. */
export function debriefPaper(source: ExerciseSource, looked: Debrief, code: string): ExercisePaper {
  const { game } = source;
  const base = baseOf(source);
  const { names } = base;
  const empty = makePaper(base, { id: words.debriefId, title: '', blocks: [] });
  const nameOf = (answer: string) => answerWords(source, names, answer);
  const unsafe = [...new Set(looked.unsafe)].map((kind) => `${unsafeWords[kind].label}: ${unsafeWords[kind].meaning}.`);
  return made(source, base, words.debriefId, words.debriefTitle(game.exercise.name), [
    {
      kind: 'fields',
      columns: 2,
      fields: [
        { label: words.fields.code, ...(code.trim() === '' ? {} : { value: code }) },
        { label: words.fields.date, value: source.date },
      ],
    },
    { kind: 'paragraph', size: 12, text: [{ text: `${playEndWords[looked.end].label}: ${nameOf(looked.trueAnswer)}.`, face: 'bold' }] },
    {
      kind: 'paragraph',
      text: [
        wordNeeded(looked),
        wordGuess(looked),
        ...(looked.exact ? [] : [practiceWords.notProved]),
        ...(looked.hintMinutes > 0 ? [words.hintCost(looked.hintMinutes)] : []),
        words.predictions(looked.predictionsRight, looked.predictions),
        looked.story ?? '',
      ]
        .filter(Boolean)
        .join(' '),
    },
    {
      kind: 'paragraph',
      text: [
        { text: `${words.safety}: ${unsafe.length === 0 ? words.safe : words.unsafe}`, face: 'bold' },
        { text: ` ${unsafe.join(' ')}` },
      ],
    },
    smallHeading(words.belief),
    { kind: 'figure', figure: drawBeliefs(looked, { width: bodySize(empty, source.size).width, nameOf }) },
    smallHeading(words.steps),
    stepTable(game, names, looked),
    smallHeading(words.planSteps),
    planTable(game, names, looked),
    ...(looked.lesson === null
      ? []
      : [{ kind: 'paragraph', text: [{ text: `${words.lesson}: `, face: 'bold' }, { text: looked.lesson }] } as const]),
  ]);
}

const baseOf = ({ game: { cabinet }, date }: ExerciseSource): DocumentSource => ({
  topology: cabinet,
  cabinet,
  names: makeNames(cabinet),
  date,
});

function made({ game, size }: ExerciseSource, base: DocumentSource, id: string, title: string, blocks: readonly Block[]): ExercisePaper {
  const { name, figures, cabinet } = game.exercise;
  const subtitle = [cabinet.name, figures === undefined ? '' : wordLevel(figures.level)].filter(Boolean).join(' · ');
  const paper = makePaper(base, { id, title, subtitle, foot: name, blocks });
  return { id, title, paper, pages: layOut(paper, size) };
}

const heading = (text: string): Block => ({ kind: 'heading', level: 1, text });
const smallHeading = (text: string): Block => ({ kind: 'heading', level: 2, text });
const listOf = (items: readonly RichText[]): readonly Block[] => (items.length === 0 ? [] : [{ kind: 'list', items }]);
const said = (text: string | undefined): readonly Block[] => (text === undefined || text === '' ? [] : [{ kind: 'paragraph', text }]);
const answerWords = ({ game: { cabinet } }: Pick<ExerciseSource, 'game'>, names: Names, answer: string): string =>
  startSentence(wordAnswerKey(names, cabinet, answer));

/** What is known, with the displays that show the same in one line. */
function knownLines(game: Game, names: Names): readonly string[] {
  const displays = game.exercise.given.displays ?? [];
  const same = displayMeanings.flatMap((meaning) => {
    const units = displays.filter((one) => one.meaning === meaning).map(({ unit }) => names.unit(unit));
    return units.length === 0 ? [] : [`${startSentence(meaningWords[meaning].label)}: ${units.join(', ')}`];
  });
  const { given, ...exercise } = game.exercise;
  return [...wordGiven(names, { ...game, exercise: { ...exercise, given: { ...given, displays: [] } } }), ...same];
}

function rulesOf({ exercise: { times, limits, spares, hints } }: Game): readonly string[] {
  return [
    exerciseWords.changes(times.openMinutes, times.isolateMinutes, times.bootMinutes),
    ...(spares ?? []).map(({ name, count }) => words.spare(name, count)),
    ...(limits?.minutes === undefined ? [] : [words.limit(limits.minutes)]),
    ...(limits?.steps === undefined ? [] : [words.stepLimit(limits.steps)]),
    ...((hints ?? []).length === 0 ? [] : [words.hints((hints ?? []).map(({ minutes }) => minutes))]),
  ];
}

/** The cautions that concern any of the steps, each once. */
function cautions(game: Game): readonly Block[] {
  const codes = [...new Set(game.steps.flatMap((step) => cautionsOf(game, step)))];
  return cautionBlocks(codes.map((code) => cautionWords[code]));
}
