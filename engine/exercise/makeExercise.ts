import { fail, makeProblem, ok, type Result } from '../base/index.ts';
import { checkCabinet } from '../cabinet/index.ts';
import type {
  AllowedStep,
  AnswerContent,
  CabinetContent,
  Circumstance,
  ExerciseContent,
  ExerciseKind,
  Fault,
  Possibility,
  SolvedBy,
} from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { chooseAllowed, listOffered, usualTimes } from './allowedSteps.ts';
import { Planner } from './bestPlan.ts';
import { fitsGiven, givenOf, listPossible } from './candidates.ts';
import { checkAnswer, openExercise } from './checkExercise.ts';
import { checksum } from './checksum.ts';
import { measure } from './figures.ts';
import { makeAnswer } from './seal.ts';

/** What an instructor decides about an exercise. What is left out is worked out from the rest. */
export interface ExerciseWish {
  /** One that ends in `#` is completed from what stands in the open: it must not tell from which seed an answer was drawn. */
  readonly id: string;
  readonly name: string;
  readonly kind: ExerciseKind;
  readonly task: string;
  readonly cabinet: CabinetContent;
  readonly onset: ExerciseContent['onset'];
  readonly faults: readonly Fault[];
  /** Decides when a fault that comes and goes is there. */
  readonly seed: number;
  /** Displays (unit ids) and reports (chain ids) that everybody knows at the start, and what makes some faults likelier. */
  readonly known: {
    readonly displays: readonly string[];
    readonly reports: readonly string[];
    readonly circumstances?: readonly Circumstance[];
  };
  readonly solved: SolvedBy;
  readonly possible?: ExerciseContent['possible'];
  readonly steps?: readonly AllowedStep[];
  readonly times?: ExerciseContent['times'];
  readonly spares?: ExerciseContent['spares'];
  readonly limits?: ExerciseContent['limits'];
  readonly hints?: ExerciseContent['hints'];
  readonly story?: string;
  readonly lesson?: string;
}

/** An exercise that holds, still without its seal, with the answer to be sealed in it. */
export interface MadeExercise {
  readonly exercise: ExerciseContent;
  readonly answer: AnswerContent;
}

/** A step that an exercise of this kind could allow. */
export interface ProposedStep {
  /** Names the step, whatever else is decided. */
  readonly key: string;
  readonly step: AllowedStep['step'];
  /** From the repair table of the cabinet. */
  readonly minutes: number;
  /** Allowed unless the instructor decides otherwise. */
  readonly allowed: boolean;
}

/** What follows from what is hidden and given, before the instructor has decided on the steps. */
export interface Proposal {
  readonly given: ExerciseContent['given'];
  readonly possible: readonly Possibility[];
  readonly times: ExerciseContent['times'];
  readonly steps: readonly ProposedStep[];
}

/** What may be wrong as far as the start tells, and all steps that concern it; those that `makeExercise` would allow are marked. */
export function proposeExercise(wish: ExerciseWish): Result<Proposal> {
  const prepared = prepare(wish);
  if (!prepared.ok) return prepared;
  const { cabinet, base } = prepared.value;
  const keyOf = (step: AllowedStep['step']) => JSON.stringify(step);
  const chosen = new Set(chooseAllowed(base, cabinet).map(({ step }) => keyOf(step)));
  const steps = listOffered(cabinet, base.given, base.possible).map(({ step, minutes }) => {
    const key = keyOf(step as AllowedStep['step']); // steps of the engine are steps of the file
    return { key, step: step as AllowedStep['step'], minutes, allowed: chosen.has(key) };
  });
  return ok({ given: base.given, possible: base.possible, times: base.times, steps });
}

/** Makes an exercise, measures it, and refuses, with the reason, what cannot be played or what no allowed step can decide. */
export function makeExercise(wish: ExerciseWish, onWork?: (share: number) => void): Result<MadeExercise> {
  const prepared = prepare(wish);
  if (!prepared.ok) return prepared;
  const { cabinet, base } = prepared.value;
  const steps = wish.steps === undefined ? chooseAllowed(base, cabinet) : [...wish.steps];
  const plain: ExerciseContent = { ...base, steps };
  const opened = openExercise(plain);
  if (opened.game === null) return fail(...opened.problems);
  const answer = makeAnswer(plain, {
    faults: [...wish.faults],
    seed: wish.seed,
    ...(wish.story === undefined ? {} : { story: wish.story }),
    ...(wish.lesson === undefined ? {} : { lesson: wish.lesson }),
  });
  const planner = new Planner(opened.game, onWork);
  const found = checkAnswer(opened.game, answer, planner);
  if (found.length > 0) return fail(...found);
  const figures = measure(opened.game, answer, planner);
  return ok({ exercise: figures === null ? plain : { ...plain, figures }, answer });
}

/** All of an exercise but its steps. */
function prepare(wish: ExerciseWish): Result<{ readonly cabinet: Cabinet; readonly base: Omit<ExerciseContent, 'steps'> }> {
  const { cabinet, problems } = checkCabinet(wish.cabinet);
  if (cabinet === null) return fail(makeProblem('exercise-cabinet-unsound', 'error', { where: '/cabinet' }), ...problems);
  const { id, name, kind, task, onset, solved, faults } = wish;
  const given = givenOf(cabinet, onset, faults, wish.known);
  if (!fitsGiven(cabinet, onset, given, faults)) return fail(makeProblem('exercise-does-not-halt', 'error'));
  const base = {
    id,
    name,
    kind,
    task,
    onset,
    given,
    possible: wish.possible ?? [...listPossible(cabinet, { onset, given, faults })],
    times: wish.times ?? usualTimes(cabinet),
    ...(wish.spares === undefined ? {} : { spares: wish.spares }),
    ...(wish.limits === undefined ? {} : { limits: wish.limits }),
    ...(wish.hints === undefined ? {} : { hints: wish.hints }),
    solved,
    sealed: '',
    cabinet: wish.cabinet,
  };
  return ok({ cabinet, base: id.endsWith('#') ? { ...base, id: `${id.slice(0, -1)}-${checksum(JSON.stringify(base))}` } : base });
}
