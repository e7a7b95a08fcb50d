import type { Game, GameStep } from '../../engine/exercise/index.ts';
import type { Fault, Intervention, Onset } from '../../engine/schema/index.ts';
import { predictLook, type SimulationInput, simulate } from '../../engine/simulation/index.ts';

/*
 * The best plan the slow way: every order of every step, straight from the rules of the exercise and the simulation, without bounds,
 * without merging, without anything of the planner. For steady faults only.
 */

interface Here {
  readonly left: readonly number[];
  readonly acts: readonly Intervention[];
  readonly onset: Onset;
  readonly halted: boolean;
  readonly isOpen: boolean;
  readonly seen: readonly string[];
  readonly acted: readonly string[];
}

/** Least expected minutes to a certain end, over all plans there are. */
export function enumerateBest(game: Game): number {
  const { possible, exercise, cabinet } = game;
  const total = possible.reduce((sum, { weight }) => sum + weight, 0);
  const memo = new Map<string, string>();

  const shows = (step: GameStep, here: Here, index: number): string => {
    const key = JSON.stringify([step.id, here.acts, here.onset, here.halted, index]);
    let shown = memo.get(key);
    if (shown === undefined) {
      shown = look(step, here, possible[index]?.faults ?? []);
      memo.set(key, shown);
    }
    return shown;
  };

  const look = ({ step }: GameStep, here: Here, faults: readonly Fault[]): string => {
    const input: SimulationInput = { cabinet, faults, onset: here.onset, halted: here.halted, beforeTrip: here.acts };
    if (step.do === 'act') return runs(faults, [...here.acts, ...step.acts]) ? 'runs' : 'halts';
    if (step.do === 'read-display') return simulate(input).displays.get(step.unit)?.meaning ?? '';
    if (step.do === 'read-report') return String(simulate(input).reports.get(step.chain)?.gap);
    return step.do === 'look' ? String(predictLook(step.look, input)) : '';
  };

  const runs = (faults: readonly Fault[], acts: readonly Intervention[]): boolean => {
    const { reports } = simulate({ cabinet, faults, onset: 'at-power-up', beforeTrip: acts });
    return [...reports.values()].every(({ gap }) => gap === 'none');
  };

  const isOver = ({ left, acts }: Here): boolean =>
    exercise.solved === 'mended'
      ? left.every((index) => runs(possible[index]?.faults ?? [], acts))
      : new Set(left.map((index) => possible[index]?.answer)).size === 1;

  const best = (here: Here): number => {
    if (isOver(here)) return 0;
    let least = Number.POSITIVE_INFINITY;
    for (const step of game.steps) {
      if (here.acted.includes(step.id) || here.seen.includes(step.id)) continue;
      least = Math.min(least, withStep(step, here));
    }
    return least;
  };

  const withStep = (step: GameStep, here: Here): number => {
    const isOff = step.step.do === 'act' || (step.step.do === 'look' && step.step.look.look === 'lamp');
    const needsDoor = isOff || step.step.do !== 'read-report';
    const { openMinutes, isolateMinutes, bootMinutes } = exercise.times;
    let minutes = step.minutes + (needsDoor && !here.isOpen ? openMinutes : 0) + (isOff ? isolateMinutes + bootMinutes : 0);
    const groups = new Map<string, number[]>();
    for (const index of here.left) {
      const shown = shows(step, here, index);
      groups.set(shown, [...(groups.get(shown) ?? []), index]);
    }
    const weightOf = (list: readonly number[]) => list.reduce((sum, index) => sum + (possible[index]?.weight ?? 0) / total, 0);
    for (const [shown, left] of groups) {
      const isAct = step.step.do === 'act';
      const acts = step.step.do === 'act' ? [...here.acts, ...step.step.acts] : here.acts;
      minutes +=
        (weightOf(left) / weightOf(here.left)) *
        best({
          left,
          acts,
          onset: isOff ? 'at-power-up' : here.onset,
          halted: isAct ? shown === 'halts' : here.halted,
          isOpen: isOff ? false : here.isOpen || needsDoor,
          seen: isOff ? [] : [...here.seen, step.id],
          // Looking through a cable with a lamp again and again tells nothing new; without this the orders would not end.
          acted: isOff ? [...here.acted, step.id] : here.acted,
        });
    }
    return minutes;
  };

  return best({
    left: possible.map((_, index) => index),
    acts: [],
    onset: exercise.onset,
    halted: true,
    isOpen: false,
    seen: [],
    acted: [],
  });
}
