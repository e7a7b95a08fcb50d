import { BasePolicy } from './basePolicy.ts';
import type { Option, Rules, Situation } from './decision.ts';

/** A finished exact plan: expected cost of the best way on from a situation, and what to do there (null: leave it at that). */
export interface Best {
  readonly cost: number;
  readonly option: Option | null;
}

/** So many situations are searched before `costInPieces` lets others do something: some milliseconds. */
const piece = 50;

/** Figures of probability that agree to so many places are the same situation. */
const places = 10;

/**
 * The cheapest plan, by dynamic programming over belief, state of the machine and what was done: every order of every look, act and
 * restart, with branches left out that cannot be cheaper even if one knew what is wrong. Gives up beyond `budget` situations, or outcomes
 * weighed in worlds.
 */
export class ExactPlanner {
  private readonly known = new Map<string, Best>();
  private situations = 0;
  /** Outcomes that were weighed, each times the worlds. */
  private weighed = 0;
  /** Situations until the search stops for breath. */
  private breath = Number.POSITIVE_INFINITY;

  private readonly base: BasePolicy;

  constructor(
    private readonly rules: Rules,
    private readonly budget: number,
    private readonly mostWeighed = Number.POSITIVE_INFINITY,
  ) {
    this.base = new BasePolicy(rules);
  }

  /** Null when there are too many situations. */
  best(at: Situation): Best | null {
    return this.isTooMuch() ? null : this.search(at);
  }

  /** Expected cost of an option and the best plan after it; null when there are too many situations. */
  costOf(option: Option): number | null {
    let cost = option.cost;
    for (const { probability, after } of option.outcomes) {
      const best = this.best(after);
      if (best === null) {
        return null;
      }
      cost += probability * best.cost;
    }
    return cost;
  }

  /** The same as `costOf`, but yields now and then, so that it may be left off. */
  *costInPieces(option: Option): Generator<void, number | null, void> {
    for (let breath = piece; ; yield) {
      const before = this.known.size;
      this.breath = breath;
      const cost = this.costOf(option);
      const isOutOfBreath = this.breath < 0;
      this.breath = Number.POSITIVE_INFINITY;
      if (cost !== null || !isOutOfBreath) {
        return cost;
      }
      // What was finished is known now; the way back to where it stopped is short. Should it use the whole breath, a longer one is taken.
      this.situations = this.known.size;
      breath = this.situations > before ? piece : 2 * breath;
    }
  }

  private search(at: Situation): Best | null {
    const key = keyOf(at, this.rules.openSeen(at));
    const before = this.known.get(key);
    if (before !== undefined) {
      return before;
    }
    this.situations += 1;
    this.breath -= 1;
    if (this.situations > this.budget || this.breath < 0) {
      return null;
    }
    let best: Best = { cost: at.pending === 0 ? this.rules.leave(at) : Number.POSITIVE_INFINITY, option: null };
    // What a simple plan makes of each comes first where it costs least: then most of the others need not be followed.
    const options = this.rules
      .options(at)
      .map((option) => ({
        option,
        least: this.sum(option, (after) => this.rules.least(after)),
        most: this.sum(option, (after) => this.base.wayOn(after).cost),
      }))
      .sort((a, b) => a.most - b.most);
    for (const { option, least } of options) {
      if (least >= best.cost) {
        continue;
      }
      const cost = this.searchOption(option, least, best.cost);
      if (cost === null) {
        return null;
      }
      if (cost < best.cost) {
        best = { cost, option };
      }
    }
    this.known.set(key, best);
    return best;
  }

  private isTooMuch(): boolean {
    return this.situations > this.budget || this.weighed > this.mostWeighed;
  }

  private sum({ cost, outcomes }: Option, onward: (after: Situation) => number): number {
    this.weighed += outcomes.length * this.rules.worlds;
    return outcomes.reduce((total, { probability, after }) => total + probability * onward(after), cost);
  }

  /** Cost of an option, or a bound that is not below `limit` as soon as it cannot be. */
  private searchOption({ outcomes }: Option, least: number, limit: number): number | null {
    let cost = least;
    for (const { probability, after } of outcomes) {
      const best = this.search(after);
      if (best === null) {
        return null;
      }
      cost += probability * (best.cost - this.rules.least(after));
      if (cost >= limit) {
        return cost;
      }
    }
    return cost;
  }
}

/** Equal for situations from which everything goes on alike. */
function keyOf({ broken, mended, state, running, done, pending, epoch, provoked }: Situation, seen: readonly number[]): string {
  let key = `${state[0]}${running ? 'r' : 'h'}${done}/${pending}/${provoked}/${epoch}/${seen.join()}`;
  for (let world = 0; world < broken.length; world += 1) {
    key += `,${round(broken[world])};${round(mended[world])}`;
  }
  return key;
}

function round(weight: number | undefined): number {
  return Math.round((weight ?? 0) * 10 ** places);
}
