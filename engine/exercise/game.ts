import { assertNever } from '../base/index.ts';
import type { AllowedStep, ExerciseContent, Fault, Intervention, Onset, SolvedBy } from '../schema/index.ts';
import { itemKey } from '../simulation/index.ts';
import { type Step, stateNeeded } from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { joinParts } from './suspects.ts';

/** An allowed step, with its step as the engine names it. */
export interface GameStep extends Omit<AllowedStep, 'step'> {
  readonly step: Step;
}

/** Something that may be wrong, with the answer that would name it. */
export interface Possible {
  readonly faults: readonly Fault[];
  readonly weight: number;
  /** What must be named, as a key: `cable/WH3`, `link/WH3`, two of them joined by ` + `. */
  readonly answer: string;
}

/** An exercise as a closed game: what may be wrong, what may be done, what it costs. The true answer is no part of it. */
export interface Game {
  readonly exercise: ExerciseContent;
  readonly cabinet: Cabinet;
  readonly possible: readonly Possible[];
  readonly steps: readonly GameStep[];
  /** Whether anything that may be wrong comes and goes. */
  readonly changes: boolean;
}

/** Where a play stands, apart from what is known: all of it is open to the trainee. */
export interface Stand {
  /** Counts how often the machine was switched on: 0 at the beginning. */
  readonly trip: number;
  readonly halted: boolean;
  readonly onset: Onset;
  /** Done so far, in order; all of it with the machine off. */
  readonly acts: readonly Intervention[];
  readonly door: 'closed' | 'open';
  /** Ids of the looks taken since the machine was last switched on. */
  readonly seen: readonly string[];
  /** Ids of all steps taken, in order. */
  readonly taken: readonly string[];
}

/** A possibility, with those of its faults (as bits) that are there at the present trip, and how much speaks for it. */
export interface Particle {
  readonly index: number;
  readonly present: number;
  readonly weight: number;
}

export type Belief = readonly Particle[];

export function makeGame(exercise: ExerciseContent, cabinet: Cabinet): Game {
  return {
    exercise,
    cabinet,
    possible: exercise.possible.map(({ faults, weight }) => ({ faults, weight, answer: answerKey(faults, exercise.solved) })),
    // Ids in a file are plain texts; `checkExercise` has looked at what they name.
    steps: exercise.steps as readonly GameStep[],
    changes: exercise.possible.some(({ faults }) => faults.some(isIntermittent)),
  };
}

export function startStand(exercise: ExerciseContent): Stand {
  return { trip: 0, halted: true, onset: exercise.onset, acts: [], door: 'closed', seen: [], taken: [] };
}

/** At the first trip every fault is there (domain section 4). */
export function startBelief({ possible }: Game): Belief {
  const total = possible.reduce((sum, { weight }) => sum + weight, 0);
  return possible.map(({ faults, weight }, index) => ({ index, present: allPresent(faults), weight: weight / total }));
}

export function allPresent(faults: readonly Fault[]): number {
  return 2 ** faults.length - 1;
}

export function isIntermittent({ presence }: Fault): boolean {
  return presence === 'intermittent';
}

/** What must be named for a set of faults. */
export function answerKey(faults: readonly Fault[], solved: SolvedBy): string {
  const keys = faults.map((fault) => (solved === 'place' ? placeKey(fault) : itemKey(fault)));
  return joinParts(keys);
}

/** The place where a person would work: a cable with its plugs and route, a unit with all that is in it. */
function placeKey(fault: Fault): string {
  switch (fault.item) {
    case 'cable':
    case 'plug':
    case 'route':
      return `link/${fault.link}`;
    case 'board':
    case 'fuse':
    case 'place':
    case 'wiring':
    case 'supply':
      return `unit/${fault.unit}`;
    case 'controller-port':
    case 'controller':
    case 'lead':
    case 'feedback':
      return itemKey(fault);
    default:
      return assertNever(fault);
  }
}

/** Whether a step may be taken now, and if not, why. */
export function whyNot({ exercise }: Game, stand: Stand, step: GameStep): 'seen' | 'used-up' | 'no-spare' | null {
  const times = stand.taken.filter((id) => id === step.id).length;
  const isAct = step.step.do === 'act';
  if (!isAct && stand.seen.includes(step.id)) {
    return 'seen';
  }
  if (times >= (step.most ?? (isAct ? 1 : Number.POSITIVE_INFINITY))) {
    return 'used-up';
  }
  return step.spare !== undefined && sparesLeft(exercise, stand, step.spare) === 0 ? 'no-spare' : null;
}

/** How many of a spare are left. */
export function sparesLeft(exercise: ExerciseContent, stand: Stand, spare: string): number {
  const users = new Set(exercise.steps.filter((step) => step.spare === spare).map(({ id }) => id));
  const count = exercise.spares?.find(({ id }) => id === spare)?.count ?? 0;
  return Math.max(0, count - stand.taken.filter((id) => users.has(id)).length);
}

/** Minutes of a step as things stand: its own, and those of the changes of state that it needs. */
export function stepMinutes({ exercise }: Pick<Game, 'exercise'>, stand: Stand, { step, minutes }: GameStep): number {
  const { openMinutes, isolateMinutes, bootMinutes } = exercise.times;
  switch (stateNeeded(step)) {
    case 'closed':
      return minutes;
    case 'open':
      return minutes + (stand.door === 'open' ? 0 : openMinutes);
    case 'isolated':
      return minutes + (stand.door === 'open' ? 0 : openMinutes) + isolateMinutes + bootMinutes;
  }
}

/** Whether the machine is switched off for a step, and on again after it. */
export function restarts({ step }: Pick<GameStep, 'step'>): boolean {
  return stateNeeded(step) === 'isolated';
}

/** Where things stand after a step. What needs the machine off ends with the cabinet closed and the machine on again. */
export function afterStep(stand: Stand, { id, step }: GameStep, outcome: string): Stand {
  const taken = [...stand.taken, id];
  if (stateNeeded(step) === 'isolated') {
    return {
      trip: stand.trip + 1,
      // A lamp mends nothing, and is not allowed where something comes and goes: the machine halts as before.
      halted: step.do === 'act' ? outcome === 'halts' : stand.halted,
      onset: 'at-power-up',
      acts: step.do === 'act' ? [...stand.acts, ...step.acts] : stand.acts,
      door: 'closed',
      seen: [],
      taken,
    };
  }
  return { ...stand, door: step.do === 'read-report' ? stand.door : 'open', seen: [...stand.seen, id], taken };
}
