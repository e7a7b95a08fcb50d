import { BasePolicy } from './basePolicy.ts';
import type { Named, Option, Rules, Situation } from './decision.ts';
import type { Best } from './exact.ts';

/** Up to so many looks and acts, each times the worlds, four steps ahead are looked at in an instant; else two. */
const smallDecision = 100;

/**
 * Planning where an exact plan would take too long: looks and acts are weighed some steps ahead, and the rest of the plan is put at the
 * cost of a simple one that could be carried out as it stands (see `BasePolicy`). So no figure promises less than what can be had.
 */
export class LookAhead {
  private readonly base: BasePolicy;
  private readonly acting = new WeakMap<Situation, ReturnType<BasePolicy['wayOn']>>();

  constructor(private readonly rules: Rules) {
    this.base = new BasePolicy(rules);
  }

  /** How many steps ahead are worth looking at in all. */
  get depth(): number {
    const { looks, acts } = this.rules.decision;
    return this.rules.worlds * (looks.length + acts.length) <= smallDecision ? 4 : 2;
  }

  /** Expected cost of the best way on, looking at most `depth` steps ahead; of looks at the `width` most promising ones only. */
  cost(at: Situation, depth: number, width: number): number {
    return depth === 0 || this.rules.isSettled(at) ? this.leaveOrAct(at) : this.best(at, depth, width).cost;
  }

  /** Expected cost of a step and what follows, `depth` steps in all. */
  costOf(step: Option, depth: number, width: number): number {
    let cost = step.cost;
    for (const { probability, after } of step.outcomes) {
      cost += probability * this.cost(after, depth - 1, width);
    }
    return cost;
  }

  /** What to do in a situation, and what it is then expected to cost; no option: leave it at that. */
  best(at: Situation, depth: number, width: number): Best {
    const leave = this.rules.leave(at);
    let best: Best = { cost: leave, option: null };
    const weigh = (option: Option, cost: number) => {
      if (cost < best.cost) {
        best = { cost, option };
      }
    };
    if (depth === 1) {
      const acting = this.act(at);
      for (const option of acting === null ? this.rules.looks(at) : [acting, ...this.rules.looks(at)]) {
        weigh(option, this.costOf(option, 1, width));
      }
      return best;
    }
    const promising = this.steps(at)
      .map((option) => ({ option, shallow: this.costOf(option, 1, width) }))
      .sort((a, b) => a.shallow - b.shallow);
    for (const { option, shallow } of promising.slice(0, width)) {
      weigh(option, Math.min(shallow, this.costOf(option, depth, width)));
    }
    return best;
  }

  /** Acting by probability over cost alone, without any look. */
  leaveOrAct(at: Situation): number {
    return this.actingFrom(at).cost;
  }

  /** What the simple plan would do next; null: nothing is left that mends. */
  act(at: Situation): Option | null {
    const next = this.nextAct(at);
    return next?.acts === undefined ? next && this.rules.restart(at) : this.rules.actTogether(at, next.acts);
  }

  /** The same without what follows. */
  nextAct(at: Situation): Named | null {
    const acts = this.actingFrom(at).acts ?? this.base.batch(at);
    const [first] = acts;
    return first !== undefined ? { kind: 'act', index: first, acts } : this.rules.isMendedUnseen(at) ? { kind: 'restart', index: 0 } : null;
  }

  private actingFrom(at: Situation): ReturnType<BasePolicy['wayOn']> {
    let way = this.acting.get(at);
    if (way === undefined) {
      const { cost, acts } = this.base.wayOn(at);
      way = { cost: Math.min(this.rules.leave(at), cost), acts };
      this.acting.set(at, way);
    }
    return way;
  }

  /** Everything that can be done first: every look, every act alone and in the batch that suits it. */
  steps(at: Situation): readonly Option[] {
    const found = new Map<string, Option>();
    this.rules.decision.acts.forEach((_, index) => {
      if (this.rules.act(at, index) === null) {
        return;
      }
      for (const acts of [[index], this.base.batch(at, index)]) {
        const key = batchKey(acts);
        if (!found.has(key)) {
          found.set(key, this.rules.actTogether(at, acts));
        }
      }
    });
    return [...this.rules.looks(at), ...found.values()];
  }
}

/** Equal for the same acts in any order: done together they are one step. */
export function batchKey(acts: readonly number[]): string {
  return [...acts].sort((a, b) => a - b).join();
}
