import { presentChance } from '../diagnosis/index.ts';
import type { AnswerContent, ExerciseMove, Fault, UnsafeKind } from '../schema/index.ts';
import {
  afterStep,
  allPresent,
  answerKey,
  type Belief,
  type Game,
  type GameStep,
  isIntermittent,
  restarts,
  type Stand,
  startBelief,
  startStand,
  stepMinutes,
  whyNot,
} from './game.ts';
import { isMended, Predictions, seenOutcome } from './outcomes.ts';
import { draw } from './random.ts';
import { type CautionCode, findForgotten, findUnsafe } from './safety.ts';
import { partsOf, suspectsOf } from './suspects.ts';
import { thinkableOutcomes } from './thinkable.ts';

/** One step taken: what it showed, what it cost, what was said beforehand. Nothing in it tells more than was paid for. */
export interface PlayedStep {
  /** Its place among the moves. */
  readonly move: number;
  readonly step: string;
  readonly outcome: string;
  readonly minutes: number;
  /** Minutes from the beginning to its end. */
  readonly until: number;
  readonly suspects: readonly string[];
  readonly predicted: string | null;
  readonly predictedRight: boolean | null;
  readonly unsafe: readonly UnsafeKind[];
  /** Cautions that were asked for and not said. */
  readonly forgotten: readonly CautionCode[];
}

/** How a play ended. */
export type PlayEnd = 'solved' | 'wrong' | 'given-up' | 'out-of-time' | 'out-of-steps';

/** A move that was not taken: it changes nothing. */
export interface RefusedMove {
  readonly move: number;
  readonly why: 'unknown-step' | 'seen' | 'used-up' | 'no-spare' | 'no-hint' | 'ended' | 'unknown-answer' | 'not-asked';
}

/** Where a play stands, as the trainee may see it. */
export interface Play {
  readonly steps: readonly PlayedStep[];
  readonly minutes: number;
  /** Texts of the hints that were paid for. */
  readonly hints: readonly string[];
  readonly end: PlayEnd | null;
  /** What was named at the end. */
  readonly named: string | null;
  readonly stand: Stand;
  readonly refused: readonly RefusedMove[];
}

/** Where a play stands before any move. */
export function startPlay(game: Game): Play {
  return { steps: [], minutes: 0, hints: [], end: null, named: null, stand: startStand(game.exercise), refused: [] };
}

/** All moves of a trainee against the true answer. Pure: equal input gives an equal play. */
export function play(game: Game, answer: AnswerContent, moves: readonly ExerciseMove[]): Play {
  return moves.reduce((state, move, index) => makeMove(game, answer, state, move, index), startPlay(game));
}

function makeMove(game: Game, answer: AnswerContent, state: Play, move: ExerciseMove, index: number): Play {
  const refuse = (why: RefusedMove['why']): Play => ({ ...state, refused: [...state.refused, { move: index, why }] });
  if (state.end !== null) return refuse('ended');
  switch (move.do) {
    case 'step': {
      const step = game.steps.find(({ id }) => id === move.step);
      if (step === undefined) return refuse('unknown-step');
      const reason = whyNot(game, state.stand, step);
      return reason === null ? withLimits(game, takeStep(game, answer, state, step, move, index)) : refuse(reason);
    }
    case 'hint': {
      const hint = game.exercise.hints?.[state.hints.length];
      if (hint === undefined) return refuse('no-hint');
      return withLimits(game, { ...state, hints: [...state.hints, hint.text], minutes: state.minutes + hint.minutes });
    }
    case 'name':
      if (game.exercise.solved === 'mended') return refuse('not-asked');
      if (!partsOf(move.answer).every((part) => suspectsOf(game).includes(part))) return refuse('unknown-answer');
      return { ...state, named: move.answer, end: move.answer === answerKey(answer.faults, game.exercise.solved) ? 'solved' : 'wrong' };
    case 'hand-over':
      if (game.exercise.solved !== 'mended') return refuse('not-asked');
      return { ...state, end: isMended(game.cabinet, state.stand, answer.faults) ? 'solved' : 'wrong' };
    case 'give-up':
      return { ...state, end: 'given-up' };
  }
}

function withLimits({ exercise: { limits } }: Game, state: Play): Play {
  if (limits?.minutes !== undefined && state.minutes > limits.minutes) return { ...state, end: 'out-of-time' };
  // The last step may still be followed by an answer: only a step beyond the limit ends it.
  return limits?.steps !== undefined && state.steps.length > limits.steps ? { ...state, end: 'out-of-steps' } : state;
}

function takeStep(
  game: Game,
  answer: AnswerContent,
  state: Play,
  step: GameStep,
  move: Extract<ExerciseMove, { do: 'step' }>,
  index: number,
): Play {
  const { faults, seed } = answer;
  const trip = presentAtTrip(faults, seed, state.stand.trip);
  const now = restarts(step)
    ? presentAtTrip(faults, seed, state.stand.trip + 1)
    : state.stand.halted
      ? presentAt(faults, seed, lookDraw, state.steps.length)
      : trip;
  const outcome = seenOutcome(game.cabinet, step, state.stand, faults, trip, now);
  const minutes = stepMinutes(game, state.stand, step);
  const until = state.minutes + minutes;
  // A file may say anything: what the step can never show was no prediction of it.
  const predicted = thinkableOutcomes(game, step).find((one) => one === move.predicted) ?? null;
  const played: PlayedStep = {
    move: index,
    step: step.id,
    outcome,
    minutes,
    until,
    suspects: move.suspects.filter((suspect) => partsOf(suspect).every((part) => suspectsOf(game).includes(part))),
    predicted,
    predictedRight: predicted === null ? null : predicted === outcome,
    unsafe: findUnsafe(game, state.stand, step, move.heeded),
    forgotten: findForgotten(game, state.stand, step, move.heeded),
  };
  return { ...state, steps: [...state.steps, played], minutes: until, stand: afterStep(state.stand, step, outcome) };
}

const tripDraw = 1;
const lookDraw = 2;

/** Which faults are there at a trip, as bits: at the first one all of them; later those that come and go by the seeded rule. */
function presentAtTrip(faults: readonly Fault[], seed: number, trip: number): number {
  return trip === 0 ? allPresent(faults) : presentAt(faults, seed, tripDraw, trip);
}

function presentAt(faults: readonly Fault[], seed: number, kind: number, count: number): number {
  return faults.reduce(
    (bits, fault, bit) => bits + (!isIntermittent(fault) || draw(seed, kind, count, bit) < presentChance ? 2 ** bit : 0),
    0,
  );
}

/** What may still be wrong after the steps taken, from what they showed alone: the belief before the first step and after each. */
export function beliefsAlong(game: Game, steps: readonly Pick<PlayedStep, 'step' | 'outcome'>[], predictions = new Predictions(game)) {
  const along: { readonly belief: Belief; readonly stand: Stand }[] = [{ belief: startBelief(game), stand: startStand(game.exercise) }];
  for (const { step: id, outcome } of steps) {
    const last = along[along.length - 1];
    const step = game.steps.find((one) => one.id === id);
    if (last === undefined || step === undefined) break;
    const after = predictions.branchesOf(step, last.stand, last.belief).find((branch) => branch.outcome === outcome)?.belief;
    // What nothing possible explains teaches nothing: the true answer is always among what is possible, so this is damage.
    along.push({ belief: after ?? last.belief, stand: afterStep(last.stand, step, outcome) });
  }
  return along;
}
