import type { AnswerContent, ExerciseMove, UnsafeKind } from '../schema/index.ts';
import { Planner } from './bestPlan.ts';
import { answerKey, type Belief, type Game, type GameStep, type Stand, startBelief, startStand, stepMinutes } from './game.ts';
import type { Branch } from './outcomes.ts';
import { beliefsAlong, type Play, type PlayEnd, play } from './play.ts';
import type { CautionCode } from './safety.ts';

/** How much speaks for one answer (named by its key): a probability, 0 to 1. */
export interface Share {
  readonly answer: string;
  readonly share: number;
}

/** An outcome that a step could have, how likely that was, and which answers it leaves. */
export interface Told {
  readonly outcome: string;
  readonly probability: number;
  readonly leaves: readonly string[];
}

/** How a choice compares with the best one. */
export type Judgement = 'best' | 'as-good' | 'worse';

/** One step beside what would have been best at that point. */
export interface DebriefStep {
  /** Id of the step, and of what it showed. */
  readonly step: string;
  readonly outcome: string;
  readonly minutes: number;
  /** Minutes of the play at its beginning and at its end. */
  readonly from: number;
  readonly until: number;
  readonly suspects: readonly string[];
  readonly predicted: string | null;
  readonly predictedRight: boolean | null;
  /** What was known before, answer by answer, most likely first. */
  readonly before: readonly Share[];
  readonly after: readonly Share[];
  /** Outcomes that the step could have had, with their probabilities from what was known. */
  readonly couldTell: readonly Told[];
  /** Whether it mended anything, or any outcome of it could have changed what was believed. */
  readonly taught: boolean;
  /** Expected minutes to the end with this step, and with the best one; null where there is no certain end. */
  readonly expectedMinutes: number | null;
  readonly bestMinutes: number | null;
  /** The step that would have been best; null where nothing was left to find out. */
  readonly better: string | null;
  /** What that one could have told. */
  readonly betterTells: readonly Told[];
  readonly judgement: Judgement;
  readonly unsafe: readonly UnsafeKind[];
  /** Cautions that were asked for and not said. */
  readonly forgotten: readonly CautionCode[];
}

/** A step of the best plan against the same answer. */
export interface PlanStep {
  readonly step: string;
  readonly outcome: string;
  readonly minutes: number;
  readonly from: number;
  readonly until: number;
  readonly after: readonly Share[];
}

/** What there is to say of a play that has ended. Answers are named by their keys; costs are minutes. */
export interface Debrief {
  readonly end: PlayEnd;
  /** The answer that was given, if one was. */
  readonly named: string | null;
  /** How much spoke for it when it was named: 1 is proved, little is a guess, be it right or wrong. Null where nothing was named. */
  readonly namedShare: number | null;
  readonly trueAnswer: string;
  readonly faults: AnswerContent['faults'];
  readonly story: string | null;
  readonly lesson: string | null;
  /** What was known before the first step, the likeliest first. */
  readonly start: readonly Share[];
  readonly steps: readonly DebriefStep[];
  /** All that was spent, hints included. */
  readonly minutes: number;
  readonly hintMinutes: number;
  /** The best plan against the same answer. */
  readonly plan: readonly PlanStep[];
  readonly planMinutes: number;
  /** Whether the figures of the best plan are proved to be best. */
  readonly exact: boolean;
  /** How many outcomes were foretold, and how many of these came. */
  readonly predictions: number;
  readonly predictionsRight: number;
  readonly unsafe: readonly UnsafeKind[];
}

/** A choice counts as good as the best one within a tenth or within two minutes. */
const nearShare = 1.1;
const nearMinutes = 2;
const tiny = 1e-9;

/** Looks back on a play that has ended, step by step. Null while it goes on: nobody is told the answer before. */
export function debrief(game: Game, answer: AnswerContent, moves: readonly ExerciseMove[], planner = new Planner(game)): Debrief | null {
  const played = play(game, answer, moves);
  if (played.end === null) return null;
  const steps = lookBack(game, played, planner);
  const plan = bestPath(game, answer, planner);
  const start = sharesOf(game, startBelief(game));
  const told = steps.filter(({ predicted }) => predicted !== null);
  const inSteps = steps.reduce((sum, { minutes }) => sum + minutes, 0);
  return {
    end: played.end,
    named: played.named,
    namedShare: played.named === null ? null : shareOf(played.named, steps[steps.length - 1]?.after ?? start),
    trueAnswer: answerKey(answer.faults, game.exercise.solved),
    faults: answer.faults,
    story: answer.story ?? null,
    lesson: answer.lesson ?? null,
    start,
    steps,
    minutes: played.minutes,
    hintMinutes: played.minutes - inSteps,
    plan,
    planMinutes: plan.reduce((sum, { minutes }) => sum + minutes, 0),
    exact: planner.isExact,
    predictions: told.length,
    predictionsRight: told.filter(({ predictedRight }) => predictedRight === true).length,
    unsafe: played.steps.flatMap(({ unsafe }) => unsafe),
  };
}

function shareOf(named: string, shares: readonly Share[]): number {
  return shares.find(({ answer }) => answer === named)?.share ?? 0;
}

function lookBack(game: Game, played: Play, planner: Planner): readonly DebriefStep[] {
  const along = beliefsAlong(game, played.steps, planner.predictions);
  return played.steps.map((one, index): DebriefStep => {
    const here = along[index] ?? { belief: startBelief(game), stand: startStand(game.exercise) };
    const step = stepOf(game, one.step);
    const branches = planner.predictions.branchesOf(step, here.stand, here.belief);
    const before = sharesOf(game, here.belief);
    const [best] = planner.isSettled(here.belief, here.stand) ? [] : planner.rank(here.belief, here.stand);
    const expected = planner.worthOf(step, here.belief, here.stand);
    const told = (taken: GameStep) => toldBy(game, planner.predictions.branchesOf(taken, here.stand, here.belief));
    return {
      step: one.step,
      outcome: one.outcome,
      minutes: one.minutes,
      from: one.until - one.minutes,
      until: one.until,
      suspects: one.suspects,
      predicted: one.predicted,
      predictedRight: one.predictedRight,
      before,
      after: sharesOf(game, along[index + 1]?.belief ?? here.belief),
      couldTell: told(step),
      taught:
        branches.some(({ belief }) => differs(before, sharesOf(game, belief))) ||
        mends(planner, here.belief, here.stand, along[index + 1]?.stand ?? here.stand),
      expectedMinutes: finite(expected),
      bestMinutes: best === undefined ? null : finite(best.minutes),
      better: best?.step ?? null,
      betterTells: best === undefined ? [] : told(stepOf(game, best.step)),
      judgement: judge(expected, best?.minutes ?? null, one.step === best?.step),
      unsafe: one.unsafe,
      forgotten: one.forgotten,
    };
  });
}

/** Outcomes, most likely first. */
function toldBy(game: Game, branches: readonly Branch[]): readonly Told[] {
  return branches
    .map(({ outcome, probability, belief }) => ({ outcome, probability, leaves: sharesOf(game, belief).map(({ answer }) => answer) }))
    .sort((a, b) => b.probability - a.probability || (a.outcome < b.outcome ? -1 : 1));
}

function mends({ predictions, game }: Planner, belief: Belief, before: Stand, after: Stand): boolean {
  const { solved } = game.exercise;
  return solved === 'mended' && belief.some(({ index }) => predictions.isMended(after, index) && !predictions.isMended(before, index));
}

function judge(expected: number, best: number | null, isBest: boolean): Judgement {
  // Nothing was left to find out: any further step was one too many.
  if (best === null) return 'worse';
  if (isBest || expected <= best + tiny) return 'best';
  return Number.isFinite(expected) && (expected <= best * nearShare + tiny || expected <= best + nearMinutes + tiny) ? 'as-good' : 'worse';
}

/** The way that the best plan takes against the true answer, with what comes and goes as in the play. */
export function bestPath(game: Game, answer: AnswerContent, planner = new Planner(game)): readonly PlanStep[] {
  const moves: ExerciseMove[] = [];
  const path: PlanStep[] = [];
  let belief: Belief = startBelief(game);
  let stand: Stand = startStand(game.exercise);
  while (path.length < mostPlanSteps && !planner.isSettled(belief, stand)) {
    const [best] = planner.rank(belief, stand);
    if (best === undefined || !Number.isFinite(best.minutes)) break;
    const step = stepOf(game, best.step);
    moves.push({ do: 'step', step: step.id, suspects: [], heeded: [] });
    const shown = play({ ...game, exercise: withoutLimits(game) }, answer, moves).steps[path.length];
    if (shown === undefined) break;
    const minutes = stepMinutes(game, stand, step);
    const along = beliefsAlong(game, [...path, shown], planner.predictions);
    const last = along[along.length - 1];
    if (last === undefined) break;
    const from = path[path.length - 1]?.until ?? 0;
    belief = last.belief;
    stand = last.stand;
    path.push({ step: step.id, outcome: shown.outcome, minutes, from, until: from + minutes, after: sharesOf(game, belief) });
  }
  return path;
}

/** More than any plan needs; so that a damaged exercise does not hang. */
const mostPlanSteps = 200;

function withoutLimits({ exercise }: Game): Game['exercise'] {
  const { limits: _limits, ...rest } = exercise;
  return rest;
}

function stepOf({ steps }: Game, id: string): GameStep {
  const step = steps.find((one) => one.id === id);
  if (step === undefined) throw new Error(`no step ${id}`);
  return step;
}

/** A belief by answers, most likely first. */
export function sharesOf({ possible }: Game, belief: Belief): readonly Share[] {
  const shares = new Map<string, number>();
  for (const { index, weight } of belief) {
    const answer = possible[index]?.answer ?? '';
    shares.set(answer, (shares.get(answer) ?? 0) + weight);
  }
  return [...shares].map(([answer, share]) => ({ answer, share })).sort((a, b) => b.share - a.share || (a.answer < b.answer ? -1 : 1));
}

function differs(one: readonly Share[], other: readonly Share[]): boolean {
  const shares = new Map(one.map(({ answer, share }) => [answer, share]));
  return one.length !== other.length || other.some(({ answer, share }) => Math.abs((shares.get(answer) ?? 0) - share) > 0.005);
}

function finite(minutes: number): number | null {
  return Number.isFinite(minutes) ? minutes : null;
}
