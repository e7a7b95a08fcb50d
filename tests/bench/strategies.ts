import type { Decision, Option, Rules, Situation } from '../../engine/plan/decision.ts';
import { LookAhead } from '../../engine/plan/lookAhead.ts';
import type { Random } from '../generators/random.ts';

/** What somebody would do in a situation; null: leave it at that. */
export type Strategy = (at: Situation) => Option | null;

/** The planner where it only looks ahead, asked anew in every situation. */
export function planned(rules: Rules): Strategy {
  const ahead = new LookAhead(rules);
  const known = new Map<string, Option | null>();
  return (at) => {
    const key = nameOf(at);
    let option = known.get(key);
    if (option === undefined) {
      option = ahead.best(at, 2, 8).option;
      known.set(key, option);
    }
    return option;
  };
}

/** The act on what is most probably broken, then a restart, and so on. */
export function mostProbableFirst(rules: Rules): Strategy {
  return (at) => pickAct(rules, at, (index) => gainOf(rules.decision, at, index));
}

/** The cheapest act that may help, then a restart, and so on. */
export function cheapestFirst(rules: Rules): Strategy {
  return (at) => pickAct(rules, at, (index) => 1 / (rules.decision.acts[index]?.cost ?? 1));
}

/** Looks that part what is possible most evenly, until one act almost surely helps or no look tells more. */
export function halfSplit(rules: Rules): Strategy {
  return (at) => {
    const best = Math.max(0, ...rules.decision.acts.map((_, index) => gainOf(rules.decision, at, index)));
    const looks = best > 0.9 || at.running ? [] : rules.options(at).filter(({ kind }) => kind === 'look');
    const uneven = ({ outcomes }: Option) => outcomes.reduce((sum, { probability }) => sum + probability * probability, 0);
    const look = looks.reduce<Option | null>((found, one) => (found === null || uneven(one) < uneven(found) ? one : found), null);
    return look ?? mostProbableFirst(rules)(at);
  };
}

function pickAct(rules: Rules, at: Situation, worth: (index: number) => number): Option | null {
  if (at.running) return null;
  const open = rules.decision.acts.flatMap((_, index) => (rules.act(at, index) === null ? [] : [index]));
  const best = open.reduce<number | null>((found, index) => (found === null || worth(index) > worth(found) ? index : found), null);
  return best === null ? null : rules.actTogether(at, [best]);
}

function gainOf({ acts }: Decision, { broken, done }: Situation, index: number): number {
  const act = acts[index];
  return act === undefined || (done >> index) % 2 === 1
    ? 0
    : broken.reduce((sum, weight, world) => sum + (act.cures[world] === 0 ? 0 : weight), 0);
}

/** Less likely branches are put at the cost of leaving. */
const rare = 1e-7;

/** Expected cost of carrying a strategy out, by the rules. */
export function costOf(
  rules: Rules,
  strategy: Strategy,
  at: Situation = rules.begin(),
  reach = 1,
  known = new Map<string, number>(),
): number {
  const key = nameOf(at);
  const before = known.get(key);
  if (before !== undefined) return before;
  const option = reach < rare ? null : strategy(at);
  let cost = rules.leave(at);
  if (option !== null) {
    cost = option.cost;
    for (const { probability, after } of option.outcomes) cost += probability * costOf(rules, strategy, after, reach * probability, known);
  }
  known.set(key, cost);
  return cost;
}

function nameOf({ broken, mended, state, running, done, seen, epoch }: Situation): string {
  const weights = [...broken, ...mended].map((weight) => Math.round(weight * 1e9)).join();
  return `${state} ${running} ${done} ${seen.join()} ${epoch} ${weights}`;
}

/** The world as it really is, where it is not what the planner reckons with. */
export interface WrongWorld {
  /** Weights are off by this factor, up or down. */
  readonly ratesOff: number;
  /** Chance that a look is read wrongly, on top of what is reckoned with. */
  readonly misreading: number;
  /** Chance that a look shows something else than it should, always. */
  readonly wrongBehaviour: number;
  /** Chance that a fault taken for steady comes and goes. */
  readonly intermittent: number;
}

/** What one repair really costs: the strategy reckons with its own world, the outcomes come from another one. */
export function payIn(rules: Rules, strategy: Strategy, random: Random, wrong: WrongWorld): number {
  const { decision } = rules;
  const off = decision.weights.map((weight) => weight * (random.chance(0.5) ? wrong.ratesOff : 1 / wrong.ratesOff));
  const real = drawn(off, random);
  const isWrong = random.chance(wrong.wrongBehaviour);
  const absent = Math.max(decision.absent[real] ?? 0, random.chance(wrong.intermittent) ? 0.5 : 0);
  const works = decision.acts.map(({ fails }) => !random.chance(fails));
  let mended = 0;
  let at = rules.begin();
  let paid = 0;
  for (let steps = 0; steps < 60; steps += 1) {
    const option = strategy(at);
    if (option === null) break;
    paid += option.cost;
    for (const index of option.acts ?? []) if (works[index] === true) mended |= decision.acts[index]?.cures[real] ?? 0;
    const isMended = mended === (1 << (decision.parts[real] ?? 0)) - 1;
    const found =
      option.kind === 'look'
        ? lookOf(decision, option, at, real, random, wrong.misreading, isWrong)
        : isMended || random.chance(absent)
          ? 'runs'
          : 'halts';
    const next = option.outcomes.find(({ name }) => name === found);
    // What the planner holds impossible: it has nothing left to reckon with.
    if (next === undefined) return paid + decision.outsideHelp;
    at = next.after;
  }
  const isMended = mended === (1 << (decision.parts[real] ?? 0)) - 1;
  return paid + (isMended && at.running ? 0 : at.running ? (rules.comebacks[real] ?? 0) : decision.outsideHelp);
}

function lookOf(
  decision: Decision,
  option: Option,
  at: Situation,
  real: number,
  random: Random,
  misreading: number,
  isWrong: boolean,
): string {
  const spread = decision.looks[option.index]?.spread(at.epoch);
  const rows = spread?.rows ?? [];
  if (isWrong || random.chance(misreading)) return `o${random.whole(0, rows.length - 1)}`;
  const outcome = drawn(
    rows.map((row) => row[real] ?? 0),
    random,
  );
  return spread?.outcomes[outcome] ?? '';
}

/** An index, drawn by weights. */
function drawn(weights: readonly number[], random: Random): number {
  let rest = (random.whole(0, 999_999) / 1_000_000) * weights.reduce((sum, weight) => sum + weight, 0);
  for (const [index, weight] of weights.entries()) {
    rest -= weight;
    if (rest < 0) return index;
  }
  return 0;
}
