import { describe, expect, it } from 'vitest';
import { debrief } from '../../engine/exercise/index.ts';
import { makeNames, wordGuess, wordLookedBack, wordSolved } from '../../engine/messages/index.ts';
import type { ExerciseMove } from '../../engine/schema/index.ts';
import { readyGame } from './readyGames.ts';

function lookedBack(part: string, steps: readonly Partial<Extract<ExerciseMove, { do: 'step' }>>[]) {
  const { game, answer } = readyGame(part);
  const moves = steps.map((one): ExerciseMove => ({ do: 'step', step: 's1', suspects: [], heeded: [], ...one }));
  const looked = debrief(game, answer, [...moves, { do: 'give-up' }]);
  const names = makeNames(game.cabinet);
  return (looked?.steps ?? []).map((one) => wordLookedBack(names, game, one));
}

describe('a look back in words', () => {
  it('should say what a step ruled out, and what was one too many', () => {
    const [first, second, third] = lookedBack('neighbours', [{ predicted: 'none' }, { step: 's2' }, { step: 's3' }]);
    expect(first).toEqual({
      told: 'Rules out unit -BG1. Left: cable -WH3 with plugs and route or unit -TB2.',
      predicted: 'You expected none: right.',
      choice: 'The best choice.',
    });
    expect(second?.told).toBe('Rules out unit -TB2. Left: cable -WH3 with plugs and route.');
    expect(third?.choice).toBe('One step too many: only cable -WH3 with plugs and route fitted what was seen.');
  });

  it('should say why a choice was worse: what it could not tell, and what the better one would have told', () => {
    const [volts] = lookedBack('neighbours', [{ step: 's5' }]);
    expect(volts?.told).toBe('It could tell nothing: whatever of what was left is wrong, it shows steady.');
    expect(volts?.choice).toMatch(
      /^Better: Check light at -WH3, .* leaves .*From there .* min to the end on average, instead of .* min\.$/,
    );
  });

  it('should say how a wrong prediction goes against what was suspected', () => {
    const [step] = lookedBack('neighbours', [{ suspects: ['unit/BG1'], predicted: 'weak' }]);
    expect(step?.predicted).toBe('You expected weak: not so. With unit -BG1, which you suspected, it shows bright.');
  });

  it('should tell a right answer that was proved from a guess', () => {
    const { game, answer } = readyGame('neighbours');
    const trueAnswer = debrief(game, answer, [{ do: 'give-up' }])?.trueAnswer ?? '';
    const looks = ['s1', 's2'].map((step): ExerciseMove => ({ do: 'step', step, suspects: [], heeded: [] }));
    const guess = debrief(game, answer, [{ do: 'name', answer: trueAnswer }]);
    const proved = debrief(game, answer, [...looks, { do: 'name', answer: trueAnswer }]);
    expect([guess?.end, proved?.end]).toEqual(['solved', 'solved']);
    expect(guess && wordGuess(guess)).toMatch(/^It was a guess: what had been seen spoke for it at \d+ %\./);
    expect(proved && wordGuess(proved)).toBe('');
    expect([0, 2].map((steps) => wordSolved({ solved: true, steps, bestMinutes: 8 }))).toEqual(['solved, without a look', 'solved']);
  });

  it('should name things, not pairs, where several may be wrong', () => {
    const [step] = lookedBack('two-faults', [{}]);
    expect(step?.told).toMatch(/^Rules out upper plug of cable -WH4\. Left: /);
  });
});
