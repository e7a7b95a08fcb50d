import {
  afterStep,
  type Belief,
  type Game,
  type GameStep,
  restarts,
  type Stand,
  startBelief,
  startStand,
  stepMinutes,
  whyNot,
} from './game.ts';
import { actsKey, type Branch, Predictions } from './outcomes.ts';

/** What a step costs in all, if the rest is done as well as can be. */
export interface StepWorth {
  readonly step: string;
  /** Expected minutes to the end, this step included; infinite where it leads to no certain end. */
  readonly minutes: number;
}

/** Asks this often at most what a possibility shows, before it settles for a good plan; about two seconds. */
const mostAsked = 2_000_000;
/** And simulates so often at most. */
const mostSimulated = 40_000;
/** Tells how far it is in steps of this size. */
const toldStep = 0.02;

/**
 * The best plan of an exercise: the least expected minutes until the answer is certain (named ones) or the machine surely mended.
 * Exact by dynamic programming over beliefs with branch and bound, after the textbook recursion Q(b, s) = cost(s) + Σ P(o | b, s) ·
 * min Q(b′, s′) (Bellman 1957; for troubleshooting Heckerman, Breese and Rommelse 1995), as long as the states stay countable; beyond
 * that the step with most information for a minute is taken, and the answer says that it is not proved to be best.
 */
export class Planner {
  readonly predictions: Predictions;
  private readonly exactMinutes = new Map<string, number>();
  private readonly atLeast = new Map<string, number>();
  private readonly quickMinutes = new Map<string, number>();
  private gaveUp = false;
  private toldShare = 0;

  /** `onWork` hears how much of the most work that it may do is done, from 0 to 1. */
  constructor(
    readonly game: Game,
    private readonly onWork: (share: number) => void = () => undefined,
  ) {
    this.predictions = new Predictions(game);
  }

  /** Whether every figure so far is proved. */
  get isExact(): boolean {
    return !this.gaveUp;
  }

  /** Expected minutes from the start. Infinite: no plan leads to a certain end. */
  startMinutes(): number {
    return this.minutesFrom(startBelief(this.game), startStand(this.game.exercise));
  }

  /** Expected minutes to the end from here. */
  minutesFrom(belief: Belief, stand: Stand): number {
    if (this.isSettled(belief, stand)) return 0;
    const quick = this.quick(belief, stand);
    if (this.gaveUp) return quick;
    const exact = this.search(belief, stand, quick + tiny);
    if (this.gaveUp) return quick;
    return Math.min(exact, quick);
  }

  /** The worth of every step that may be taken here, best first; ties by their order in the exercise. */
  rank(belief: Belief, stand: Stand): readonly StepWorth[] {
    return this.available(stand)
      .map((step) => ({ step: step.id, minutes: this.worthOf(step, belief, stand) }))
      .sort((a, b) => (a.minutes === b.minutes ? 0 : a.minutes - b.minutes));
  }

  /** Expected minutes if this step is taken next. */
  worthOf(step: GameStep, belief: Belief, stand: Stand): number {
    let minutes = stepMinutes(this.game, stand, step);
    for (const { outcome, probability, belief: after } of this.predictions.branchesOf(step, stand, belief)) {
      minutes += probability * this.minutesFrom(after, afterStep(stand, step, outcome));
    }
    return minutes;
  }

  /** Nothing more to find out or to do. */
  isSettled(belief: Belief, stand: Stand): boolean {
    if (this.game.exercise.solved === 'mended') return belief.every(({ index }) => this.predictions.isMended(stand, index));
    const first = this.answerOf(belief[0]?.index ?? 0);
    return belief.every(({ index }) => this.answerOf(index) === first);
  }

  answerOf(index: number): string {
    return this.game.possible[index]?.answer ?? '';
  }

  available(stand: Stand): readonly GameStep[] {
    return this.game.steps.filter((step) => whyNot(this.game, stand, step) === null);
  }

  /** Exact minutes where they lie below `bound`; else infinite. */
  private search(belief: Belief, stand: Stand, bound: number): number {
    if (this.isSettled(belief, stand)) return 0;
    const key = this.keyOf(belief, stand);
    const known = this.exactMinutes.get(key);
    if (known !== undefined) return known;
    if (bound <= Math.max(this.atLeast.get(key) ?? 0, this.leastStep(stand))) return Number.POSITIVE_INFINITY;
    const share = Math.max(this.predictions.asked / mostAsked, this.predictions.simulated / mostSimulated);
    if (share - this.toldShare >= toldStep) {
      this.toldShare = share;
      this.onWork(Math.min(1, share));
    }
    if (share > 1) {
      this.gaveUp = true;
      return Number.POSITIVE_INFINITY;
    }
    let best = Number.POSITIVE_INFINITY;
    for (const { step, branches, minutes } of this.useful(belief, stand)) {
      let expected = minutes;
      const limit = Math.min(best, bound);
      for (const { outcome, probability, belief: after } of branches) {
        if (expected >= limit) break;
        expected += probability * this.search(after, afterStep(stand, step, outcome), (limit - expected) / probability);
        if (this.gaveUp) return Number.POSITIVE_INFINITY;
      }
      if (expected < best) best = expected;
    }
    if (best < bound) this.exactMinutes.set(key, best);
    else this.atLeast.set(key, Math.max(bound, this.atLeast.get(key) ?? 0));
    return best < bound ? best : Number.POSITIVE_INFINITY;
  }

  /** Whether the quick rule leads to a certain end: much faster than to ask for the best plan, and enough to know that there is one. */
  canFinish(): boolean {
    return Number.isFinite(this.quick(startBelief(this.game), startStand(this.game.exercise)));
  }

  /** Steps that may change anything, those with most information for a minute first, so that good plans are found early. */
  private useful(belief: Belief, stand: Stand): readonly Useful[] {
    const entropy = entropyOf(belief);
    const list: Useful[] = [];
    const alike = new Map<string, number>();
    for (const step of this.available(stand)) {
      const branches = this.predictions.branchesOf(step, stand, belief);
      const isAct = restarts(step);
      const gain = entropy - entropyAfter(branches);
      if (step.step.do !== 'act' && branches.length < 2 && gain <= tiny) continue;
      const minutes = stepMinutes(this.game, stand, step);
      const useful = { step, branches, minutes, yield: Math.max(0, gain) / Math.max(minutes, 0.1) };
      if (isAct || this.game.changes) {
        list.push(useful);
        continue;
      }
      // Of looks that part what is possible alike, and leave the door alike, only the cheapest can be best.
      const key = `${step.step.do === 'read-report'}|${partition(branches)}`;
      const at = alike.get(key);
      if (at === undefined) {
        alike.set(key, list.length);
        list.push(useful);
      } else if ((list[at]?.minutes ?? 0) > minutes) {
        list[at] = useful;
      }
    }
    return list.sort((a, b) => b.yield - a.yield);
  }

  private leastStep(stand: Stand): number {
    return Math.min(...this.available(stand).map((step) => stepMinutes(this.game, stand, step)));
  }

  /** Minutes of the quick rule: most information for a minute; where nothing tells any more, the act that mends most for a minute. */
  private quick(belief: Belief, stand: Stand): number {
    if (this.isSettled(belief, stand)) return 0;
    const key = this.keyOf(belief, stand);
    const known = this.quickMinutes.get(key);
    if (known !== undefined) return known;
    const choice = this.quickStep(belief, stand);
    let minutes = Number.POSITIVE_INFINITY;
    if (choice !== null) {
      minutes = stepMinutes(this.game, stand, choice);
      for (const { outcome, probability, belief: after } of this.predictions.branchesOf(choice, stand, belief)) {
        minutes += probability * this.quick(after, afterStep(stand, choice, outcome));
      }
    }
    this.quickMinutes.set(key, minutes);
    return minutes;
  }

  private quickStep(belief: Belief, stand: Stand): GameStep | null {
    const mends = (step: GameStep, outcome: string) =>
      belief.reduce(
        (sum, { index, weight }) =>
          sum +
          (!this.predictions.isMended(stand, index) && this.predictions.isMended(afterStep(stand, step, outcome), index) ? weight : 0),
        0,
      );
    let best: { step: GameStep; value: number } | null = null;
    for (const { step, branches, minutes, yield: gain } of this.useful(belief, stand)) {
      const mended = this.game.exercise.solved === 'mended' && step.step.do === 'act' ? mends(step, branches[0]?.outcome ?? '') : 0;
      const value = gain + mended / Math.max(minutes, 0.1);
      if (value > tiny && (best === null || value > best.value)) best = { step, value };
    }
    return best?.step ?? null;
  }

  private keyOf(belief: Belief, stand: Stand): string {
    const particles = belief
      .map(({ index, present, weight }) => `${index}/${present}:${this.game.changes ? weight.toPrecision(6) : ''}`)
      .sort()
      .join();
    const rest = this.game.changes
      ? `${stand.seen.slice().sort().join()}|${stand.taken.slice().sort().join()}`
      : limitedTaken(this.game, stand);
    return `${particles}|${actsKey(stand)}|${stand.door}|${stand.halted}|${stand.trip > 0}|${rest}`;
  }
}

const tiny = 1e-9;

/** What was taken, as far as it limits what may still be: acts, and looks that may be taken so often only. */
function limitedTaken({ steps }: Game, { taken }: Stand): string {
  const limited = new Set(steps.filter(({ step, most }) => step.do === 'act' || most !== undefined).map(({ id }) => id));
  return taken
    .filter((id) => limited.has(id))
    .sort()
    .join();
}

interface Useful {
  readonly step: GameStep;
  readonly branches: readonly Branch[];
  readonly minutes: number;
  /** Expected information in bit for a minute: entropy now less that after it (Shannon 1948). */
  readonly yield: number;
}

function entropyAfter(branches: readonly Branch[]): number {
  return branches.reduce((sum, { probability, belief }) => sum + probability * entropyOf(belief), 0);
}

/** How a step parts what is possible, whatever its outcomes are called. */
function partition(branches: readonly Branch[]): string {
  return branches
    .map(({ belief }) => belief.map(({ index }) => index).join())
    .sort()
    .join('|');
}

/** Entropy in bit about which possibility holds. */
export function entropyOf(belief: Belief): number {
  const weights = new Map<number, number>();
  for (const { index, weight } of belief) weights.set(index, (weights.get(index) ?? 0) + weight);
  let sum = 0;
  for (const weight of weights.values()) sum -= weight > 0 ? weight * Math.log2(weight) : 0;
  return sum;
}
