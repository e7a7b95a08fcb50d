import type { Decision, Option, Rules, Situation } from '../../engine/plan/decision.ts';
import { LookAhead } from '../../engine/plan/lookAhead.ts';

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
      option = ahead.best(at, ahead.depth, 8).option;
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
