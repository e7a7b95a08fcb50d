import { fail, makeProblem, ok, type Result } from '../base/index.ts';
import { checkCabinet } from '../cabinet/index.ts';
import type { AllowedStep, AnswerContent, CabinetContent, ExerciseContent, ExerciseKind, Fault, SolvedBy } from '../schema/index.ts';
import { chooseAllowed, usualTimes } from './allowedSteps.ts';
import { Planner } from './bestPlan.ts';
import { fitsGiven, givenOf, listPossible } from './candidates.ts';
import { checkAnswer, openExercise } from './checkExercise.ts';
import { measure } from './figures.ts';
import { makeAnswer } from './seal.ts';

/** What an instructor decides about an exercise. What is left out is worked out from the rest. */
export interface ExerciseWish {
  readonly id: string;
  readonly name: string;
  readonly kind: ExerciseKind;
  readonly task: string;
  readonly cabinet: CabinetContent;
  readonly onset: ExerciseContent['onset'];
  readonly faults: readonly Fault[];
  /** Decides when a fault that comes and goes is there. */
  readonly seed: number;
  /** Displays (unit ids) and reports (chain ids) that everybody knows at the start. */
  readonly known: { readonly displays: readonly string[]; readonly reports: readonly string[] };
  readonly solved: SolvedBy;
  /** The seed of the generator, where it was generated. */
  readonly generatedFrom?: number;
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

/** Makes an exercise, measures it, and refuses, with the reason, what cannot be played or what no allowed step can decide. */
export function makeExercise(wish: ExerciseWish): Result<MadeExercise> {
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
    ...(wish.generatedFrom === undefined ? {} : { seed: wish.generatedFrom }),
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
  const steps = wish.steps === undefined ? chooseAllowed(base, cabinet) : [...wish.steps];
  const plain: ExerciseContent = { ...base, steps };
  const opened = openExercise(plain);
  if (opened.game === null) return fail(...opened.problems);
  const answer = makeAnswer(plain, {
    faults: [...faults],
    seed: wish.seed,
    ...(wish.story === undefined ? {} : { story: wish.story }),
    ...(wish.lesson === undefined ? {} : { lesson: wish.lesson }),
  });
  const planner = new Planner(opened.game);
  const found = checkAnswer(opened.game, answer, planner);
  if (found.length > 0) return fail(...found);
  const figures = measure(opened.game, answer, planner);
  return ok({ exercise: figures === null ? plain : { ...plain, figures }, answer });
}
