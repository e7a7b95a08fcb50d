import { describe, expect, it } from 'vitest';
import { type Game, generateExercise, generateSet, openExercise, Planner, play, stepMinutes } from '../../engine/exercise/index.ts';
import { isMended } from '../../engine/exercise/outcomes.ts';
import { beliefsAlong } from '../../engine/exercise/play.ts';
import { exerciseKindTexts } from '../../engine/messages/index.ts';
import type { AnswerContent, ExerciseMove } from '../../engine/schema/index.ts';
import { schoolCabinet } from '../samples/schoolCabinet.ts';

/** Minutes of somebody who always takes the cheapest step that can tell or mend anything, over all that may be wrong. */
function plainMinutes(game: Game, answer: AnswerContent): number {
  const planner = new Planner(game);
  const total = game.possible.reduce((sum, { weight }) => sum + weight, 0);
  return game.possible.reduce((mean, one) => mean + (one.weight / total) * plainPlay(planner, { ...answer, faults: [...one.faults] }), 0);
}

function plainPlay(planner: Planner, truth: AnswerContent): number {
  const { game, predictions } = planner;
  const moves: ExerciseMove[] = [];
  for (;;) {
    const { minutes, steps } = play(game, truth, moves);
    const here = beliefsAlong(game, steps, predictions).at(-1);
    if (here === undefined || planner.isSettled(here.belief, here.stand)) return minutes;
    const { stand, belief } = here;
    const helps = planner.available(stand).filter((step) => {
      if (predictions.branchesOf(step, stand, belief).length > 1) return true;
      const acts = step.step.do === 'act' ? [...stand.acts, ...step.step.acts] : stand.acts;
      const faults = belief.flatMap(({ index }) => game.possible[index]?.faults ?? []);
      return faults.some((fault) => !isMended(game.cabinet, stand, [fault]) && isMended(game.cabinet, { acts }, [fault]));
    });
    const [next] = helps.sort((a, b) => stepMinutes(game, stand, a) - stepMinutes(game, stand, b));
    if (next === undefined) return minutes;
    moves.push({ do: 'step', step: next.id, suspects: [], heeded: [] });
  }
}

/** Places in the order of the values, equal ones sharing theirs. */
const placesOf = (values: readonly number[]) =>
  values.map((value) => values.filter((one) => one < value).length + (values.filter((one) => one === value).length - 1) / 2);

/** Rank correlation (Spearman 1904): 1 where both order alike. */
function orderAlike(one: readonly number[], other: readonly number[]): number {
  const [a, b] = [placesOf(one), placesOf(other)];
  const mean = (one.length - 1) / 2;
  const sum = (f: (i: number) => number) => a.reduce((total, _, i) => total + f(i), 0);
  const apart = (places: readonly number[], i: number) => (places[i] ?? 0) - mean;
  return sum((i) => apart(a, i) * apart(b, i)) / Math.sqrt(sum((i) => apart(a, i) ** 2) * sum((i) => apart(b, i) ** 2));
}

describe('the level of a generated exercise', () => {
  it('should order as the minutes do that a plain way of searching takes', () => {
    const sets = generateSet({ cabinet: schoolCabinet, seed: 2, texts: exerciseKindTexts }, 10);
    const measured = sets.map(({ exercise, answer }) => {
      const { game } = openExercise(exercise);
      if (game === null) throw new Error('not opened');
      return { level: exercise.figures?.level ?? 0, minutes: plainMinutes(game, answer) };
    });
    expect(
      orderAlike(
        measured.map(({ level }) => level),
        measured.map(({ minutes }) => minutes),
      ),
    ).toBeGreaterThan(0.7);
    const means = [1, 2, 3, 4].map((level) => {
      const list = measured.filter((one) => one.level === level).map(({ minutes }) => minutes);
      return list.reduce((sum, minutes) => sum + minutes, 0) / list.length;
    });
    expect(means).toEqual([...means].sort((a, b) => a - b));
  }, 60_000);

  it.each([1, 2, 3, 4])(
    'should be found where it is asked for: %d',
    (level) => {
      const made = generateExercise({ cabinet: schoolCabinet, seed: 1, texts: exerciseKindTexts, level });
      expect(made.ok && made.value.exercise.figures?.level).toBe(level);
    },
    30_000,
  );
});
