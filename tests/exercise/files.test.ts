import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseExerciseFile, serializeExercise } from '../../engine/cabinet/index.ts';
import {
  checkAnswer,
  checkResult,
  checksum,
  classCsv,
  classTable,
  debrief,
  generateSet,
  makeResult,
  openExercise,
} from '../../engine/exercise/index.ts';
import { exerciseKindTexts } from '../../engine/messages/index.ts';
import { openSeal, readyPassphrase } from '../../engine/sealing/index.ts';
import { readyExercises } from '../samples/exercises.ts';
import { schoolCabinet } from '../samples/schoolCabinet.ts';
import { readyGame } from './readyGames.ts';

const read = (file: string) => readFileSync(new URL(`../../sample-cabinets/${file}`, import.meta.url), 'utf8');

describe('the ready exercises', () => {
  // `npm run exercises` writes them anew.
  it.each(readyExercises)(
    'should be current, and hold: $file',
    async ({ file, make }) => {
      const { exercise, answer } = make();
      const text = read(file);
      const opened = parseExerciseFile(text);
      if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
      expect(serializeExercise({ ...opened.value, sealed: '' })).toBe(serializeExercise({ ...exercise, sealed: '' }));
      const seal = await openSeal(opened.value.sealed, readyPassphrase);
      expect(seal).toEqual({ ok: true, value: answer });
      const { game } = openExercise(opened.value);
      expect(game && checkAnswer(game, answer)).toEqual([]);
      // Nothing of what is sealed stands in the file: neither the story nor the lesson, nor the fault alone.
      for (const hidden of [answer.story ?? 'no story', answer.lesson ?? 'no lesson']) expect(text).not.toContain(hidden);
      expect(opened.value.possible.length).toBeGreaterThan(1);
    },
    30_000,
  );

  it('should be ten of ten kinds, from the first level up', () => {
    const made = readyExercises.map(({ make }) => make().exercise);
    expect(new Set(made.map(({ kind }) => kind)).size).toBe(10);
    const levels = made.map(({ figures }) => figures?.level ?? 0);
    expect(levels).toEqual([...levels].sort());
    expect(new Set(levels).size).toBe(4);
    // Each best plan is proved, so that a debrief may say "better".
    expect(made.every(({ figures }) => figures?.exact)).toBe(true);
  }, 30_000);
});

describe('the seal', () => {
  const { answer } = readyGame('neighbours');

  it('should not stand on another exercise', () => {
    const { game, exercise } = readyGame('neighbours');
    const changed = { ...game, exercise: { ...exercise, task: 'Another task.' } };
    expect(checkAnswer(changed, answer).map(({ code }) => code)).toEqual(['exercise-seal-foreign']);
  });
});

describe('results', () => {
  it('should use the checksum of ISO/IEC/IEEE 8802-3', () => {
    // Check value of CRC-32 for the nine digits (catalogue of parametrised CRC algorithms, from memory).
    expect(checksum('123456789')).toBe('cbf43926');
    expect(checksum('')).toBe('00000000');
  });

  it('should notice a change, and make a table and CSV that a spreadsheet takes as text', () => {
    const { game, answer, exercise } = readyGame('neighbours');
    const moves = [
      { do: 'step' as const, step: 's1', suspects: [], heeded: [], predicted: 'none' },
      { do: 'name' as const, answer: 'link/WH3' },
    ];
    const looked = debrief(game, answer, moves);
    if (looked === null) throw new Error('not ended');
    const result = makeResult(exercise, moves, looked, { code: '=1+1, "x"' });
    expect(checkResult(result).ok).toBe(true);
    expect(checkResult({ ...result, minutes: 1 }).ok).toBe(false);
    const rows = classTable([result, { ...result, code: 'b10' }, { ...result, code: 'b2' }]);
    expect(rows.map(({ code }) => code)).toEqual(['=1+1, "x"', 'b2', 'b10']);
    expect(rows[0]).toMatchObject({ solved: true, unsafe: 1, steps: 1, predictions: 1, predictionsRight: 1 });
    const heads = Object.fromEntries(Object.keys(rows[0] ?? {}).map((key) => [key, key])) as Parameters<typeof classCsv>[1];
    expect(classCsv(rows.slice(0, 1), heads).split('\r\n')[1]).toMatch(/^"'=1\+1, ""x""",/);
  });
});

describe('a generated set', () => {
  it('should differ in kind, be repeatable, and hold', () => {
    const wish = { cabinet: schoolCabinet, seed: 11, texts: exerciseKindTexts };
    const set = generateSet(wish, 10);
    expect(new Set(set.map(({ exercise }) => exercise.kind)).size).toBe(10);
    expect(generateSet(wish, 2)).toEqual(set.slice(0, 2));
    for (const { exercise, answer } of set) {
      const { game } = openExercise(exercise);
      expect(game && checkAnswer(game, answer)).toEqual([]);
    }
  }, 60_000);
});
