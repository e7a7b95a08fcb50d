import type { AnswerContent, ExerciseFigures, Fault } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { Planner } from './bestPlan.ts';
import type { Game } from './game.ts';
import { seenAtStart } from './outcomes.ts';

/** How hard an exercise is, in things that can be measured. Null where no plan leads to a certain end. */
export function measure(game: Game, answer: Pick<AnswerContent, 'faults'>, planner = new Planner(game)): ExerciseFigures | null {
  const bestMinutes = planner.startMinutes();
  if (!Number.isFinite(bestMinutes)) return null;
  const rest = {
    firstGroup: new Set(game.possible.map((one) => one.answer)).size,
    bestMinutes: Math.round(bestMinutes * 100) / 100,
    exact: planner.isExact,
    faults: answer.faults.length,
    intermittent: answer.faults.some(({ presence }) => presence === 'intermittent'),
    misleading: countMisleading(game.cabinet, game.exercise.onset, answer.faults),
  };
  return { ...rest, level: levelOf(rest) };
}

/**
 * The level of an exercise, 1 (first lesson) to 4 (hard), from what was measured. Points: 1 for more than four answers that cannot be
 * told apart at the start, 2 for more than eight; 1 for a best plan over 15 minutes, 2 over 30, 3 over 45; 1 for each misleading
 * display, at most 2; 2 for what comes and goes; 2 for each further fault. Level 1 up to one point, 2 with two, 3 up to four. Chosen so
 * that levels order as the minutes do of somebody who always takes the cheapest step that can tell anything (tests/exercise/level).
 */
export function levelOf(figures: Omit<ExerciseFigures, 'level'>): number {
  const { firstGroup, bestMinutes, misleading, intermittent, faults } = figures;
  const points =
    (firstGroup > 8 ? 2 : firstGroup > 4 ? 1 : 0) +
    [15, 30, 45].filter((minutes) => bestMinutes > minutes).length +
    Math.min(2, misleading) +
    (intermittent ? 2 : 0) +
    2 * (faults - 1);
  return points <= 1 ? 1 : points <= 2 ? 2 : points <= 4 ? 3 : 4;
}

/** Displays that complain though neither their unit nor a link at it is at fault, and those of faulty units that say nothing. */
export function countMisleading(cabinet: Cabinet, onset: 'while-running' | 'at-power-up', faults: readonly Fault[]): number {
  const atFault = new Set<string>();
  const near = new Set<string>();
  for (const fault of faults) {
    if ('unit' in fault) atFault.add(fault.unit);
    if ('link' in fault) for (const unit of unitsAt(cabinet, fault.link)) near.add(unit);
  }
  for (const unit of atFault) {
    for (const chain of cabinet.chains) {
      const at = (chain.units as readonly string[]).indexOf(unit);
      for (const beside of at < 0 ? [] : [chain.units[at - 1], chain.units[at + 1]]) if (beside !== undefined) near.add(beside);
    }
  }
  let count = 0;
  for (const [unit, { meaning }] of seenAtStart(cabinet, onset, faults).displays) {
    const complains = meaning !== 'quiet';
    if (atFault.has(unit) ? !complains : complains && !near.has(unit)) count += 1;
  }
  return count;
}

function unitsAt(cabinet: Cabinet, link: string): readonly string[] {
  return cabinet.chains.flatMap(({ links, units }) => {
    const at = (links as readonly string[]).indexOf(link);
    return at < 0 ? [] : [units[at - 1], units[at]].filter((unit) => unit !== undefined);
  });
}
