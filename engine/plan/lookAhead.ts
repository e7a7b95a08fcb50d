import type { Option, Rules, Situation } from './decision.ts';

/*
 * Planning where an exact plan would take too long. The rest of a plan is put at the cost of a simple one that could be carried out
 * as it stands: act after act by probability over cost (Kadane and Simon 1977; Heckerman, Breese and Rommelse 1995), in batches where
 * one restart for several is cheaper. Looks and acts are weighed against it some steps ahead, so the figure is never too low by more
 * than what the plan really costs.
 */

/** Acts done together before one restart. */
interface Batch {
  readonly acts: readonly number[];
  readonly cost: number;
  readonly after: Situation;
}

/** Less than this share is not acted on. */
const negligible = 1e-9;

export class LookAhead {
  constructor(private readonly rules: Rules) {}

  /** Expected cost of acting by probability over cost until the machine runs, or of leaving it where that is cheaper. */
  baseCost(at: Situation): number {
    const batch = this.nextBatch(at);
    const leave = at.pending === 0 ? this.rules.leave(at) : Number.POSITIVE_INFINITY;
    if (batch === null) {
      return leave;
    }
    let cost = batch.cost;
    for (const { name, probability, after } of this.rules.restart(batch.after).outcomes) {
      cost += probability * (name === 'runs' ? this.rules.leave(after) : this.baseCost(after));
      if (cost >= leave) {
        return leave;
      }
    }
    return cost;
  }

  /** Expected cost of the best way on, looking at most `depth` steps ahead and only at the `width` most promising ones of each. */
  cost(at: Situation, depth: number, width: number): number {
    const base = this.baseCost(at);
    if (depth === 0) {
      return base;
    }
    const steps = this.steps(at);
    if (depth === 1) {
      return steps.reduce((least, step) => Math.min(least, this.costOf(step, 1, width)), base);
    }
    const promising = steps.map((step) => ({ step, cost: this.costOf(step, 1, width) })).sort((a, b) => a.cost - b.cost);
    return promising
      .slice(0, width)
      .reduce((least, { step }) => Math.min(least, this.costOf(step, depth, width)), Math.min(base, promising[0]?.cost ?? base));
  }

  /** What to do in a situation by one step's look ahead, and what it is then expected to cost; null: leave it at that. */
  best(at: Situation): { readonly cost: number; readonly option: Option | null } {
    let best: { cost: number; option: Option | null } = { cost: this.rules.leave(at), option: null };
    for (const option of this.steps(at)) {
      const cost = this.costOf(option, 1, 0);
      if (cost < best.cost) {
        best = { cost, option };
      }
    }
    return best;
  }

  /** Acts by probability over cost alone: the first of them, and their expected cost. */
  base(at: Situation): { readonly cost: number; readonly option: Option | null } {
    const [first] = this.nextBatch(at)?.acts ?? [];
    const option = first === undefined ? null : this.rules.act(at, first);
    return { cost: this.baseCost(at), option: option && (this.actSteps(at, option).at(-1) ?? null) };
  }

  /** Expected cost of a step and what follows, `depth` steps in all. */
  costOf(step: Option, depth: number, width: number): number {
    return step.outcomes.reduce((sum, { probability, after }) => sum + probability * this.cost(after, depth - 1, width), step.cost);
  }

  /** What can be done next, every act with its restart, alone and in the batch that suits it. */
  steps(at: Situation): readonly Option[] {
    const list: Option[] = [];
    for (const option of this.rules.options(at)) {
      if (option.kind === 'act') {
        list.push(...this.actSteps(at, option));
      } else {
        list.push(option);
      }
    }
    return list;
  }

  private actSteps(at: Situation, option: Option): readonly Option[] {
    const [outcome] = option.outcomes;
    if (outcome === undefined) {
      return [];
    }
    const single = { acts: [option.index], cost: option.cost, after: outcome.after };
    const batch = this.extend(at, single);
    return batch.acts.length === 1 ? [this.withRestart(single)] : [this.withRestart(single), this.withRestart(batch)];
  }

  /** Acts and their restart as one step. */
  private withRestart({ acts, cost, after }: Batch): Option {
    const restart = this.rules.restart(after);
    return { kind: 'act', index: acts[0] ?? 0, acts, cost: cost + restart.cost, outcomes: restart.outcomes };
  }

  /** The batch with the best probability over cost; null where no act is left that mends something. */
  private nextBatch(at: Situation): Batch | null {
    if (at.pending !== 0) {
      const batch = this.extend(at, { acts: [], cost: 0, after: at });
      return { ...batch, cost: batch.cost + this.rules.decision.restart[batch.after.state] };
    }
    const gains = this.gains(at);
    let first = -1;
    let best = 0;
    this.rules.decision.acts.forEach((act, index) => {
      const gain = gains[index] ?? 0;
      const cost = this.rules.decision.change[at.state][act.state] + act.cost + this.rules.decision.restart[act.state];
      if (gain > negligible && gain / cost > best) {
        best = gain / cost;
        first = index;
      }
    });
    if (this.rules.isMendedUnseen(at) && total(at.mended) / this.rules.decision.restart[at.state] > best) {
      return { acts: [], cost: this.rules.decision.restart[at.state], after: at };
    }
    const act = this.rules.decision.acts[first];
    const option = act && this.rules.doAct(at, first, act);
    const [outcome] = option?.outcomes ?? [];
    if (option === undefined || outcome === undefined) {
      return null;
    }
    const batch = this.extend(at, { acts: [first], cost: option.cost, after: outcome.after });
    return { ...batch, cost: batch.cost + this.rules.decision.restart[batch.after.state] };
  }

  /** Adds acts as long as they raise what the batch mends over what it costs, its restart included. */
  private extend(at: Situation, begun: Batch): Batch {
    const { decision } = this.rules;
    let batch = begun;
    const initial = this.gains(at);
    let gain = begun.acts.reduce((sum, index) => sum + (initial[index] ?? 0), 0);
    for (;;) {
      const gains = this.gains(batch.after);
      const restart = decision.restart[batch.after.state];
      let next = -1;
      let best = gain / (batch.cost + restart);
      decision.acts.forEach((act, index) => {
        const cost = decision.change[batch.after.state][act.state] + act.cost;
        const ratio = (gain + (gains[index] ?? 0)) / (batch.cost + cost + restart);
        if ((gains[index] ?? 0) > negligible && ratio > best) {
          best = ratio;
          next = index;
        }
      });
      const act = decision.acts[next];
      if (act === undefined) {
        return batch;
      }
      const option = this.rules.doAct(batch.after, next, act);
      const after = option.outcomes[0]?.after ?? batch.after;
      gain += gains[next] ?? 0;
      batch = { acts: [...batch.acts, next], cost: batch.cost + option.cost, after };
    }
  }

  /** For each act not yet done: expected share of what is broken that it mends. */
  private gains(at: Situation): Float64Array {
    const { acts, parts } = this.rules.decision;
    const gains = new Float64Array(acts.length);
    const mended = at.broken.map((_, world) => {
      let bits = 0;
      acts.forEach(({ cures }, index) => {
        bits |= (at.done >> index) & 1 ? (cures[world] ?? 0) : 0;
      });
      return bits;
    });
    acts.forEach(({ cures, fails }, index) => {
      if ((at.done >> index) & 1) {
        return;
      }
      let sum = 0;
      at.broken.forEach((weight, world) => {
        const cured = (cures[world] ?? 0) & ~(mended[world] ?? 0);
        sum += cured === 0 ? 0 : (weight * bitCount(cured)) / (parts[world] ?? 1);
      });
      gains[index] = sum * (1 - fails);
    });
    return gains;
  }
}

function total(weights: Float64Array): number {
  return weights.reduce((sum, weight) => sum + weight, 0);
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) {
    count += 1;
  }
  return count;
}
