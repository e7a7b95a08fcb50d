import { describe, expect, it } from 'vitest';
import { debrief, type Game, Planner, play } from '../../engine/exercise/index.ts';
import type { AnswerContent, ExerciseMove } from '../../engine/schema/index.ts';
import { Random } from '../generators/random.ts';
import { enumerateBest } from './enumerate.ts';
import { readyGame } from './readyGames.ts';

/** Exercises of at most five suspects, all of them steady. */
const small = ['counting', 'neighbours', 'one-fibre'];

describe('the best plan', () => {
  it.each(small)('should cost what trying every order of every step finds: %s', (part) => {
    const { game } = readyGame(part);
    expect(game.possible.length).toBeLessThanOrEqual(5);
    const planner = new Planner(game);
    expect(planner.startMinutes()).toBeCloseTo(enumerateBest(game), 9);
    expect(planner.isExact).toBe(true);
  });

  it('should cost what trying every order finds, also where the machine must be mended', () => {
    const { game } = readyGame('-place');
    // Fewer looks, so that every order can be tried.
    const few: Game = { ...game, steps: game.steps.filter(({ id }) => ['s1', 's5', 's6', 's7', 's8'].includes(id)) };
    expect(new Planner(few).startMinutes()).toBeCloseTo(enumerateBest(few), 9);
  });

  it.each([...small, '-place'])('should be reached on average by a player who follows it, whatever is wrong: %s', (part) => {
    const { game, answer } = readyGame(part);
    const planner = new Planner(game);
    const total = game.possible.reduce((sum, { weight }) => sum + weight, 0);
    let mean = 0;
    for (const one of game.possible) {
      const truth: AnswerContent = { ...answer, faults: [...one.faults] };
      const { plan, planMinutes } = debrief(game, truth, [{ do: 'give-up' }], planner) ?? { plan: [], planMinutes: Number.NaN };
      const end: ExerciseMove = game.exercise.solved === 'mended' ? { do: 'hand-over' } : { do: 'name', answer: one.answer };
      const played = play(game, truth, [...plan.map(({ step }) => move(step)), end]);
      expect(played).toMatchObject({ end: 'solved', minutes: planMinutes, refused: [] });
      mean += (one.weight / total) * played.minutes;
    }
    expect(mean).toBeCloseTo(planner.startMinutes(), 9);
  });

  it('should beat a player who takes steps by chance, over 1,000 plays', () => {
    const { game, answer } = readyGame('neighbours');
    const planner = new Planner(game);
    const random = new Random(20261126);
    let sum = 0;
    for (let i = 0; i < 1_000; i += 1) {
      const one = game.possible[i % game.possible.length] ?? game.possible[0];
      sum += playByChance(game, planner, { ...answer, faults: [...(one?.faults ?? [])] }, random);
    }
    expect(sum / 1_000).toBeGreaterThan(planner.startMinutes() + 1);
  });
});

function playByChance(game: Game, planner: Planner, truth: AnswerContent, random: Random): number {
  const moves: ExerciseMove[] = [];
  for (const { id } of random.shuffled(game.steps)) {
    moves.push(move(id));
    const { steps, minutes, stand } = play(game, truth, moves);
    const shown = new Map(steps.map(({ step, outcome }) => [step, outcome]));
    // What is still possible, asked possibility by possibility.
    const left = game.possible.filter(({ faults }) =>
      play(game, { ...truth, faults: [...faults] }, moves).steps.every(({ step, outcome }) => shown.get(step) === outcome),
    );
    if (new Set(left.map(({ answer }) => answer)).size === 1) return minutes;
    expect(planner.available(stand).length).toBeGreaterThan(0);
  }
  throw new Error('no end');
}

function move(step: string): ExerciseMove {
  return { do: 'step', step, suspects: [], heeded: [] };
}
