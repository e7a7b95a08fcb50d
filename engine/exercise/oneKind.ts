import type { AnswerContent, Fault } from '../schema/index.ts';
import { afterStep, type Game, type GameStep, startStand, stepMinutes, whyNot } from './game.ts';
import { isMended } from './outcomes.ts';

/** Mends at least this share of what may be wrong: nearly certain for somebody who does not think. */
const nearlyAll = 0.75;
/** And costs at most so many times the minutes of the best plan. */
const asCheap = 1.5;

/**
 * Whether a machine with several faults is mended about as cheaply by somebody who takes no look, but does everything of one kind (all
 * cables exchanged, all plugs cleaned), one after another, until it runs: such an exercise teaches the wrong thing. Asked of the faults that
 * are hidden, and of all that may be wrong. With a single fault the evidence names its place, and the acts offered there are no brute way.
 */
export function isMendedByOneKind(game: Game, { faults }: Pick<AnswerContent, 'faults'>, bestMinutes: number): boolean {
  if (game.exercise.solved !== 'mended' || faults.length < 2) return false;
  const most = asCheap * bestMinutes;
  const total = game.possible.reduce((sum, { weight }) => sum + weight, 0);
  return actsByKind(game).some((acts) => {
    if (minutesUntilMended(game, acts, faults) <= most) return true;
    const mended = game.possible
      .map((one) => ({ share: one.weight / total, minutes: minutesUntilMended(game, acts, one.faults) }))
      .filter(({ minutes }) => Number.isFinite(minutes));
    const share = mended.reduce((sum, one) => sum + one.share, 0);
    return share >= nearlyAll && mended.reduce((sum, one) => sum + one.share * one.minutes, 0) / share <= most;
  });
}

/** The acts that an exercise allows, those that do the same to different things together. */
function actsByKind({ steps }: Game): readonly (readonly GameStep[])[] {
  const kinds = new Map<string, GameStep[]>();
  for (const step of steps) {
    if (step.step.do !== 'act') continue;
    const kind = step.step.acts.map((act) => act.do).join();
    kinds.set(kind, [...(kinds.get(kind) ?? []), step]);
  }
  return [...kinds.values()];
}

/** Minutes until acts, in their order, have mended faults for good; infinite: they never do. */
function minutesUntilMended(game: Game, acts: readonly GameStep[], faults: readonly Fault[]): number {
  let stand = startStand(game.exercise);
  let minutes = 0;
  for (const act of acts) {
    if (whyNot(game, stand, act) !== null) continue;
    minutes += stepMinutes(game, stand, act);
    stand = afterStep(stand, act, 'halts');
    if (isMended(game.cabinet, stand, faults)) return minutes;
  }
  return Number.POSITIVE_INFINITY;
}
