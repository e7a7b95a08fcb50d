import { describe, expect, it } from 'vitest';
import { type Game, generateExercise, openExercise, play } from '../../engine/exercise/index.ts';
import { isMendedByOneKind } from '../../engine/exercise/oneKind.ts';
import { exerciseKindTexts } from '../../engine/messages/index.ts';
import type { AnswerContent, ExerciseMove } from '../../engine/schema/index.ts';
import { schoolCabinet } from '../samples/schoolCabinet.ts';
import { readyGame } from './readyGames.ts';

/** Least minutes of a play that does everything of one kind without a look, and hands over when the machine runs; infinite: none mends it. */
function thoughtlessMinutes(game: Game, answer: AnswerContent): number {
  const kindOf = ({ step }: Game['steps'][number]) => (step.do === 'act' ? step.acts.map((act) => act.do).join() : '');
  const kinds = [...new Set(game.steps.map(kindOf))].filter(Boolean);
  return Math.min(
    ...kinds.map((kind) => {
      const moves: ExerciseMove[] = [];
      for (const step of game.steps.filter((one) => kindOf(one) === kind)) {
        moves.push({ do: 'step', step: step.id, suspects: [], heeded: [] });
        if (play(game, answer, moves).steps.at(-1)?.outcome === 'runs') break;
      }
      const { end, minutes } = play(game, answer, [...moves, { do: 'hand-over' }]);
      return end === 'solved' ? minutes : Number.POSITIVE_INFINITY;
    }),
  );
}

describe('two hidden faults', () => {
  it('should never be mended about as cheaply by doing everything of one kind, where they are generated', () => {
    for (let seed = 1; seed <= 6; seed += 1) {
      const made = generateExercise({ cabinet: schoolCabinet, seed, texts: exerciseKindTexts, kind: 'two-faults' });
      if (!made.ok) throw new Error(`seed ${seed}: ${JSON.stringify(made.problems)}`);
      const { exercise, answer } = made.value;
      const { game } = openExercise(exercise);
      if (game === null) throw new Error(`seed ${seed}: not opened`);
      expect(thoughtlessMinutes(game, answer), `seed ${seed}`).toBeGreaterThan(1.5 * (exercise.figures?.bestMinutes ?? 0));
    }
  }, 60_000);

  it('should be known where one kind mends both', () => {
    const { game, answer } = readyGame('two-faults');
    const { bestMinutes = 0 } = game.exercise.figures ?? {};
    expect(isMendedByOneKind(game, answer, bestMinutes)).toBe(thoughtlessMinutes(game, answer) <= 1.5 * bestMinutes);
    const isCable = ({ step }: Game['steps'][number]) => step.do === 'act' && step.acts.some((act) => act.do === 'replace-cable');
    const cables = { ...game, steps: game.steps.filter(isCable) };
    const broken = cables.steps.flatMap(({ step }) =>
      step.do === 'act' ? step.acts.flatMap((act) => (act.do === 'replace-cable' ? [act.link] : [])) : [],
    );
    expect(broken.length).toBeGreaterThan(1);
    const faults = broken.slice(0, 2).map((link) => ({ item: 'cable', link, mode: 'cut' }) as const);
    expect(isMendedByOneKind(cables, { faults }, 60)).toBe(true);
    const mixed = [...faults.slice(0, 1), { item: 'board', unit: game.cabinet.chains[0]?.units[0] ?? '', mode: 'up-rx' } as const];
    const alone = { ...cables, possible: [{ faults: mixed, weight: 1, answer: '' }] };
    expect(isMendedByOneKind(alone, { faults: mixed }, 60)).toBe(false);
  });
});
