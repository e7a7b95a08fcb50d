import { describe, expect, it } from 'vitest';
import { makeProblem } from '../../engine/base/index.ts';
import { serializeExercise, serializeResult } from '../../engine/cabinet/index.ts';
import { debrief, makeResult } from '../../engine/exercise/index.ts';
import type { ExerciseMove } from '../../engine/schema/index.ts';
import { addResults, type ClassFiles, countExercises, noClassFiles, orderLines } from '../../renderer/practice/classModel.ts';
import type { SeveralFiles } from '../../renderer/state/sitting.ts';
import { readyGame } from '../exercise/readyGames.ts';

function resultText(code: string, part = 'neighbours', moves: ExerciseMove[] = [{ do: 'give-up' }], seconds?: number): string {
  const { game, answer, exercise } = readyGame(part);
  const looked = debrief(game, answer, moves);
  if (looked === null) throw new Error('not ended');
  return serializeResult(makeResult(exercise, moves, looked, { code, ...(seconds === undefined ? {} : { seconds }) }));
}

const chosen = (files: Readonly<Record<string, string>>, rest: Partial<SeveralFiles> = {}): SeveralFiles => ({
  files: Object.entries(files).map(([name, text]) => ({
    handle: name,
    key: '',
    name,
    modifiedAt: '2026-11-26T10:00:00Z',
    content: new TextEncoder().encode(text),
  })),
  problems: [],
  leftOut: 0,
  ...rest,
});

const look = (id: string, predicted: string): ExerciseMove => ({ do: 'step', step: id, suspects: [], predicted, heeded: ['live-cabinet'] });

describe('the results of a class', () => {
  it('should be taken whole, and what is damaged be named by what is wrong', () => {
    const good = resultText('a');
    const unread = makeProblem('file-unreadable', 'refused', { facts: { file: 'held.json', reason: 'EBUSY' } });
    const files = addResults(
      noClassFiles,
      chosen(
        {
          'a.json': good,
          'changed.json': good.replace('"code": "a"', '"code": "b"'),
          'cut.json': good.slice(0, 200),
          'exercise.json': serializeExercise(readyGame('neighbours').exercise),
          'elsewhere.json': '{"format": "elsewhere"}',
        },
        { problems: [unread] },
      ),
    );
    expect(files.results.map(({ file }) => file.name)).toEqual(['a.json']);
    expect(files.damaged.map(({ name, problem }) => `${name} ${problem.code}`)).toEqual([
      'changed.json result-changed',
      'cut.json json-damaged',
      'elsewhere.json format-foreign',
      'held.json file-unreadable',
    ]);
    expect(files.foreign.map(({ name }) => name)).toEqual(['exercise.json']);
  });

  it('should not be taken twice, be it the same file or a copy', () => {
    const first = addResults(noClassFiles, chosen({ 'a.json': resultText('a') }));
    const again = addResults(first, chosen({ 'a (1).json': resultText('a'), 'b.json': resultText('b') }));
    expect(again.results.map(({ file }) => file.name)).toEqual(['a.json', 'b.json']);
    expect(again.twice).toEqual([{ name: 'a (1).json', other: 'a.json', code: 'a' }]);
  });

  it('should count a play once that was saved under two codes, but two plays with equal moves twice', () => {
    const playAt = (code: string, startedAt: string) => {
      const { game, answer, exercise } = readyGame('neighbours');
      const looked = debrief(game, answer, [{ do: 'give-up' }]);
      if (looked === null) throw new Error('not ended');
      return serializeResult(makeResult(exercise, [{ do: 'give-up' }], looked, { code, startedAt }));
    };
    const files = addResults(
      noClassFiles,
      chosen({
        '1.json': playAt('kiln', '2026-11-26T09:00:00.123Z'),
        '2.json': playAt('quartz', '2026-11-26T09:00:00.123Z'),
        '3.json': playAt('quartz', '2026-11-26T09:00:07.000Z'),
        '4.json': resultText('reed'),
        '5.json': resultText('slate'),
      }),
    );
    expect(files.results.map(({ file }) => file.name)).toEqual(['1.json', '3.json', '4.json', '5.json']);
    expect(files.twice).toEqual([{ name: '2.json', other: '1.json', code: 'kiln' }]);
  });

  it('should say of which exercises they are', () => {
    const { results } = addResults(noClassFiles, chosen({ a: resultText('a'), b: resultText('b', 'counting'), c: resultText('c') }));
    expect(countExercises(results)).toEqual([expect.stringMatching(/ \(1\)$/), expect.stringMatching(/ \(2\)$/)]);
  });

  it('should name a result of a newer program, and count the others', () => {
    const newer = resultText('n').replace(/"formatVersion": \d+/, '"formatVersion": 99');
    const { results, damaged } = addResults(noClassFiles, chosen({ 'newer.json': newer, 'a.json': resultText('a') }));
    expect(results.map(({ file }) => file.name)).toEqual(['a.json']);
    expect(damaged.map(({ name, problem }) => `${name} ${problem.code}`)).toEqual(['newer.json version-too-new']);
  });

  it('should be sorted by every column, what is not told last whichever way round', () => {
    const files: ClassFiles = addResults(
      noClassFiles,
      chosen({
        '1': resultText('kiln 10', 'neighbours', [look('s1', 'none'), { do: 'give-up' }], 600),
        '2': resultText('kiln 9', 'counting', [{ do: 'give-up' }]),
        '3': resultText('kiln 11', 'counting', [look('s1', '1'), { do: 'give-up' }], 60),
      }),
    );
    const codes = (by: Parameters<typeof orderLines>[1]['by'], descending = false) =>
      orderLines(files.results, { by, descending }).map(({ code }) => code.slice(5));
    expect(codes('code')).toEqual(['9', '10', '11']);
    expect(codes('code', true)).toEqual(['11', '10', '9']);
    expect(codes('seconds')).toEqual(['11', '10', '9']);
    expect(codes('seconds', true)).toEqual(['10', '11', '9']);
    expect(codes('minutes')).toEqual(['9', '11', '10']);
    // One of one right before none of one; who predicted nothing stands last.
    expect(codes('predictionsRight', true)).toEqual(['10', '11', '9']);
  });
});
