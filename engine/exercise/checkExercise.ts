import { makeProblem, nameList, type Problem } from '../base/index.ts';
import { checkCabinet } from '../cabinet/index.ts';
import type { AnswerContent, ExerciseContent } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { Planner } from './bestPlan.ts';
import { fitsGiven, keyOf } from './candidates.ts';
import { afterStep, type Belief, type Game, isIntermittent, makeGame, type Stand, startBelief, startStand } from './game.ts';
import { plainChecksum } from './seal.ts';

/** An exercise that can be played, or the problems that stand in its way. */
export interface CheckedExercise {
  readonly game: Game | null;
  readonly problems: readonly Problem[];
}

/** Whether what stands in the open of an exercise can be played: a sound cabinet, and nothing that names what is not there. */
export function openExercise(exercise: ExerciseContent): CheckedExercise {
  const { cabinet, problems } = checkCabinet(exercise.cabinet);
  if (cabinet === null) {
    return { game: null, problems: [makeProblem('exercise-cabinet-unsound', 'error', { where: '/cabinet' }), ...problems] };
  }
  const found = [...unknownThings(exercise, cabinet), ...doubledSteps(exercise), ...uncertainLamps(exercise)];
  return { game: found.length === 0 ? makeGame(exercise, cabinet) : null, problems: found };
}

function doubledSteps({ steps }: ExerciseContent): readonly Problem[] {
  return steps
    .filter(({ id }, index) => steps.findIndex((step) => step.id === id) < index)
    .map(({ id }) => makeProblem('exercise-step-doubled', 'error', { where: '/steps', facts: { step: id } }));
}

/** A lamp needs the machine off: what comes and goes may be away when it is on again, which a lamp's outcome does not tell. */
function uncertainLamps({ possible, steps }: ExerciseContent): readonly Problem[] {
  if (!possible.some(({ faults }) => faults.some(isIntermittent))) return [];
  return steps.flatMap(({ step }, i) =>
    step.do === 'look' && step.look.look === 'lamp' ? [makeProblem('exercise-lamp-uncertain', 'error', { where: `/steps/${i}` })] : [],
  );
}

function unknownThings(exercise: ExerciseContent, cabinet: Cabinet): readonly Problem[] {
  // Ids in a file are plain texts; each field names things of its own kind.
  const units: ReadonlySet<string> = new Set(cabinet.units.keys());
  const links: ReadonlySet<string> = new Set(cabinet.links.keys());
  const known: Readonly<Record<string, ReadonlySet<string>>> = {
    unit: units,
    link: links,
    cable: links,
    other: new Set([...units, ...links]),
    chain: new Set(cabinet.chainById.keys()),
    lead: new Set(cabinet.leads.keys()),
    feedback: new Set(cabinet.feedbacks.keys()),
    spare: new Set((exercise.spares ?? []).map(({ id }) => id)),
  };
  const missing = (where: string, thing: object): Problem[] =>
    Object.entries(thing).flatMap(([field, value]) =>
      typeof value === 'string' && known[field]?.has(value) === false
        ? [makeProblem('exercise-thing-unknown', 'error', { where, facts: { field, id: value } })]
        : [],
    );
  return [
    ...(exercise.given.displays ?? []).flatMap((one, i) => missing(`/given/displays/${i}`, one)),
    ...(exercise.given.reports ?? []).flatMap((one, i) => missing(`/given/reports/${i}`, one)),
    ...(exercise.given.circumstances ?? []).flatMap(({ subjects }, i) =>
      (subjects ?? [])
        .filter((id) => !Object.values(known).some((ids) => ids.has(id)))
        .map((id) => makeProblem('exercise-thing-unknown', 'error', { where: `/given/circumstances/${i}`, facts: { field: 'thing', id } })),
    ),
    ...exercise.possible.flatMap(({ faults }, i) => faults.flatMap((one) => missing(`/possible/${i}`, one))),
    ...exercise.steps.flatMap(({ step, spare }, i) => {
      const things = step.do === 'act' ? step.acts : step.do === 'look' ? [step.look] : [step];
      return [...things, spare === undefined ? {} : { spare }].flatMap((one) => missing(`/steps/${i}`, one));
    }),
  ];
}

/** Whether the sealed answer belongs to the exercise, shows what is given, and can be found out by what is allowed. */
export function checkAnswer(game: Game, answer: AnswerContent, planner = new Planner(game)): readonly Problem[] {
  const { exercise, cabinet } = game;
  if (answer.exercise !== exercise.id || answer.check !== plainChecksum(exercise)) return [makeProblem('exercise-seal-foreign', 'error')];
  const possible = exercise.possible.some(({ faults }) => keyOf(faults) === keyOf(answer.faults));
  const unfit = exercise.possible.flatMap(({ faults }, i) => (fitsGiven(cabinet, exercise.onset, exercise.given, faults) ? [] : [i]));
  return [
    ...(possible ? [] : [makeProblem('exercise-answer-not-possible', 'error')]),
    ...unfit
      .slice(0, 20)
      .map((i) => makeProblem('exercise-possible-unfit', 'error', { where: `/possible/${i}`, facts: { number: i + 1 } })),
    ...(possible && unfit.length === 0 ? findUndecided(game, planner) : []),
  ];
}

/** What no allowed step can decide, with the answers that would be left. */
export function findUndecided(game: Game, planner = new Planner(game)): readonly Problem[] {
  if (Number.isFinite(planner.startMinutes())) return [];
  const left = leftOver(planner, startBelief(game), startStand(game.exercise));
  const answers = [...new Set(left.map(({ index }) => planner.answerOf(index)))].sort();
  const facts = { answers: nameList(answers), count: answers.length };
  return [
    makeProblem(game.exercise.solved === 'mended' ? 'exercise-not-mendable' : 'exercise-undecided', 'error', { facts, subjects: answers }),
  ];
}

/**
 * Something that is left when all that tells is done: looks first, then acts, along the outcome that leaves most of the answers. For
 * named answers two of them that stay together; for a machine to be mended what nothing mends.
 */
function leftOver(planner: Planner, belief: Belief, stand: Stand): Belief {
  let here = { belief, stand };
  const order = [...planner.game.steps].sort((a, b) => Number(a.step.do === 'act') - Number(b.step.do === 'act'));
  for (const step of order) {
    if (planner.isSettled(here.belief, here.stand)) break;
    if (!planner.available(here.stand).includes(step)) continue;
    const branches = planner.predictions.branchesOf(step, here.stand, here.belief).map(({ outcome, belief: after }) => ({
      belief: after,
      stand: afterStep(here.stand, step, outcome),
    }));
    const stuck = branches.filter((branch) => !planner.isSettled(branch.belief, branch.stand));
    const next = stuck.sort((a, b) => b.belief.length - a.belief.length)[0] ?? branches[0];
    if (next !== undefined) here = next;
  }
  const { solved } = planner.game.exercise;
  return solved === 'mended' ? here.belief.filter(({ index }) => !planner.predictions.isMended(here.stand, index)) : here.belief;
}
