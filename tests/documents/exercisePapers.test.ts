import { describe, expect, it } from 'vitest';
import { debriefPaper, exerciseAnswer, exerciseSheet } from '../../engine/documents/index.ts';
import { debrief, makeExercise, openExercise } from '../../engine/exercise/index.ts';
import { exercisePaperWords } from '../../engine/messages/index.ts';
import { type PaperSize, paperNames, writeHtml, writeSvg } from '../../engine/paper/index.ts';
import type { ExerciseMove } from '../../engine/schema/index.ts';
import { type ReadyGame, readyGame } from '../exercise/readyGames.ts';
import { readyExercises } from '../samples/exercises.ts';
import { readContent } from '../support/sampleCabinets.ts';
import { findOverlaps, readInk } from './svgBoxes.ts';

const date = '2026-11-26';
const textOf = (paper: Parameters<typeof writeHtml>[0]) => writeHtml(paper, { language: 'en' });

function overlapsOf({ pages, title }: ReturnType<typeof exerciseSheet>): readonly string[] {
  return pages.flatMap((page, index) => findOverlaps(readInk(writeSvg(page, title))).map((pair) => `page ${index + 1}: ${pair}`));
}

/** Some dear steps first, then the best plan, every one predicted. */
function playOf({ game, answer }: ReadyGame, dear: number) {
  const safe = ['live-cabinet', 'all-feeds', 'lock-out', 'dc-link', 'reference-position'];
  const plan = debrief(game, answer, [{ do: 'give-up' }])?.plan ?? [];
  const first = game.steps.slice(0, dear).map(({ id }): ExerciseMove => ({ do: 'step', step: id, suspects: [], heeded: [] }));
  const best = plan.map(
    ({ step, outcome }): ExerciseMove => ({
      do: 'step',
      step,
      suspects: [game.possible[0]?.answer ?? ''],
      predicted: outcome,
      heeded: safe,
    }),
  );
  return debrief(game, answer, [...first, ...best, { do: 'give-up' }]);
}

describe('an exercise on paper', () => {
  it.each(readyExercises)('should tell nothing of the answer on its sheet, and all of it on the other: $file', ({ file }) => {
    const ready = readyGame(file);
    const { game, answer } = ready;
    const sheet = textOf(exerciseSheet({ game, date, size: 'a4' }).paper);
    const other = textOf(exerciseAnswer({ game, date, size: 'a4' }, answer).paper);
    for (const hidden of [answer.story, answer.lesson, exercisePaperWords.answerTitle(''), 'Best plan']) {
      expect(sheet).not.toContain(hidden);
      expect(other).toContain(hidden);
    }
    for (const { minutes } of game.steps) expect(sheet).toContain(exercisePaperWords.minutes(minutes));
    const best = debrief(game, answer, [{ do: 'give-up' }]);
    expect(other).toContain(exercisePaperWords.minutes(best?.planMinutes ?? Number.NaN));
  });

  it('should be the same sheet whatever is the answer', () => {
    const { game } = readyGame('neighbours');
    const sealed = (text: string) => ({ ...game, exercise: { ...game.exercise, sealed: text } });
    const text = (from: typeof game) => textOf(exerciseSheet({ game: from, date, size: 'a4' }).paper);
    expect(text(sealed('one'))).toBe(text(sealed('another')));
  });

  it.each(paperNames)('should have no text that lies on another or is crossed: %s', (size: PaperSize) => {
    for (const file of ['counting', 'power', 'two-faults', 'intermittent']) {
      const ready = readyGame(file);
      const { game, answer } = ready;
      const looked = playOf(ready, 3);
      const papers = [exerciseSheet({ game, date, size }), exerciseAnswer({ game, date, size }, answer)];
      for (const made of papers) expect(overlapsOf(made), file).toEqual([]);
      if (looked !== null) expect(overlapsOf(debriefPaper({ game, date, size }, looked, 'B-07')), file).toEqual([]);
    }
  });

  it('should spread forty units over its pages', () => {
    const made = makeExercise({
      id: 'x',
      name: 'X',
      kind: 'neighbours',
      task: 'Find it.',
      cabinet: readContent('forty-units'),
      onset: 'while-running',
      seed: 1,
      known: { displays: [], reports: [] },
      faults: [{ item: 'cable', link: 'WH3', mode: 'cut', presence: 'steady' }],
      possible: ['WH3', 'WH4'].map((link) => ({ faults: [{ item: 'cable', link, mode: 'cut', presence: 'steady' }], weight: 1 })),
      solved: 'place',
    });
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    const { game } = openExercise({ ...made.value.exercise, sealed: '' });
    if (game === null) throw new Error('not opened');
    const sheet = exerciseSheet({ game, date, size: 'a4' });
    const text = textOf(sheet.paper);
    for (const { designation } of game.cabinet.content.units ?? []) expect(text).toContain(designation);
    expect(overlapsOf(sheet)).toEqual([]);
  });

  it('should look back on one page of a usual play, with what was unsafe apart', () => {
    for (const { file } of readyExercises) {
      const ready = readyGame(file);
      const looked = playOf(ready, 1);
      if (looked === null) throw new Error('not ended');
      const made = debriefPaper({ game: ready.game, date, size: 'a4' }, looked, 'B-07');
      expect(made.pages, `${file}, ${looked.steps.length} steps`).toHaveLength(1);
      const text = textOf(made.paper);
      if (looked.steps.some(({ judgement }) => judgement === 'best')) expect(text).toContain(exercisePaperWords.wasBest);
      expect(text).toContain(looked.unsafe.length > 0 ? exercisePaperWords.unsafe : exercisePaperWords.safe);
    }
  });
});
