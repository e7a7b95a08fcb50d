import type { Rules, Situation } from './decision.ts';

/** Less than this share is not acted on. */
const negligible = 1e-9;

/**
 * A simple plan that can be carried out as it stands: act after act by probability over cost (Kadane and Simon 1977; Heckerman, Breese
 * and Rommelse 1995), in batches where one restart for several is cheaper, until the machine runs or outside help is cheaper. Its cost
 * is an upper bound of the best plan's. Asked thousands of times, so it works in place on arrays of its own.
 */
export class BasePolicy {
  /** Worlds in which each act mends something. */
  private readonly touched: readonly (readonly number[])[];
  private readonly broken: Float64Array;
  private readonly bits: Int32Array;
  private readonly gains: Float64Array;

  constructor(private readonly rules: Rules) {
    const { acts } = rules.decision;
    this.touched = acts.map(({ cures }) => [...cures.keys()].filter((world) => cures[world] !== 0));
    this.broken = new Float64Array(rules.worlds);
    this.bits = new Int32Array(rules.worlds);
    this.gains = new Float64Array(acts.length);
  }

  /** Expected cost of the policy from a situation. */
  cost(at: Situation): number {
    const { rules } = this;
    if (at.running && at.pending === 0) {
      return rules.leave(at);
    }
    this.load(at);
    const { outsideHelp } = rules.decision;
    let { state, done } = at;
    let tried = at.done & ~at.pending;
    let mended = sumOf(at.mended);
    let mass = 1;
    const stages: { readonly cost: number; readonly mass: number; readonly left: number }[] = [];
    let hasBegun = at.pending !== 0;
    while (mass > negligible) {
      const batch = this.pick(state, done, mended, hasBegun);
      if (batch === null) {
        break;
      }
      hasBegun = false;
      done = batch.done;
      state = 'closed';
      const left = this.restart(tried, done);
      tried = done;
      stages.push({ cost: mass * batch.cost, mass, left });
      mended = 0;
      mass = sumOf(this.broken);
    }
    let cost = mass * outsideHelp;
    for (const stage of stages.reverse()) {
      const onward = stage.cost + stage.left + cost;
      cost = stage === stages[stages.length - 1] && at.pending !== 0 ? onward : Math.min(stage.mass * outsideHelp, onward);
    }
    return cost;
  }

  /** The acts that the policy would do together next; the ones given are among them. Empty where nothing is left that mends. */
  batch(at: Situation, first?: number): readonly number[] {
    this.load(at);
    const picked = this.pick(at.state, at.done, sumOf(at.mended), at.pending !== 0, first);
    return picked?.acts ?? [];
  }

  private load(at: Situation): void {
    this.broken.set(at.broken);
    this.bits.fill(0);
    for (let index = 0; index < this.touched.length; index += 1) {
      if ((at.done >> index) & 1) this.apply(index);
    }
  }

  private apply(index: number): void {
    const cures = this.rules.decision.acts[index]?.cures;
    for (const world of this.touched[index] ?? []) {
      this.bits[world] = (this.bits[world] ?? 0) | (cures?.[world] ?? 0);
    }
  }

  /** Restarts: what stays broken and halted is left in `broken`; answers the cost of leaving what runs unmended. */
  private restart(tried: number, done: number): number {
    const { decision, comebacks } = this.rules;
    const before = this.rules.mendedBy(tried);
    const after = this.rules.mendedBy(done);
    let left = 0;
    for (let world = 0; world < this.broken.length; world += 1) {
      const weight = this.broken[world] ?? 0;
      if (weight === 0) {
        continue;
      }
      const was = before[world] ?? 0;
      const still = weight * (was < 1 ? (1 - (after[world] ?? 0)) / (1 - was) : 0);
      const absent = decision.absent[world] ?? 0;
      left += still * absent * (comebacks[world] ?? 0);
      this.broken[world] = still * (1 - absent);
    }
    return left;
  }

  /** Picks acts as long as they raise what is mended over what it costs, the restart included. */
  private pick(
    from: Situation['state'],
    already: number,
    mended: number,
    hasBegun: boolean,
    first?: number,
  ): { readonly acts: readonly number[]; readonly cost: number; readonly done: number } | null {
    const { decision } = this.rules;
    const acts: number[] = [];
    let state = from;
    let done = already;
    let cost = 0;
    let gain = mended;
    let ratio = hasBegun || mended > negligible ? gain / decision.restart[state] : 0;
    for (;;) {
      this.findGains(done);
      let next = -1;
      const isForced = acts.length === 0 && first !== undefined;
      for (let index = 0; index < decision.acts.length; index += 1) {
        const act = decision.acts[index];
        const more = this.gains[index] ?? 0;
        if (act === undefined || (isForced ? index !== first : more <= negligible)) {
          continue;
        }
        const worth = (gain + more) / (cost + decision.change[state][act.state] + act.cost + decision.restart[act.state]);
        if (worth > ratio || isForced) {
          ratio = worth;
          next = index;
        }
      }
      const act = decision.acts[next];
      if (act === undefined) {
        break;
      }
      cost += decision.change[state][act.state] + act.cost;
      gain += this.gains[next] ?? 0;
      state = act.state;
      done |= 1 << next;
      acts.push(next);
      this.apply(next);
    }
    return acts.length === 0 && !hasBegun && mended <= negligible ? null : { acts, cost: cost + decision.restart[state], done };
  }

  /** For each act not yet done: expected share of what is broken that it mends. */
  private findGains(done: number): void {
    const { acts, parts } = this.rules.decision;
    for (let index = 0; index < acts.length; index += 1) {
      const act = acts[index];
      let sum = 0;
      if (act !== undefined && !((done >> index) & 1)) {
        for (const world of this.touched[index] ?? []) {
          const cured = (act.cures[world] ?? 0) & ~(this.bits[world] ?? 0);
          sum += cured === 0 ? 0 : ((this.broken[world] ?? 0) * bitCount(cured)) / (parts[world] ?? 1);
        }
        sum *= 1 - act.fails;
      }
      this.gains[index] = sum;
    }
  }
}

function sumOf(weights: Float64Array): number {
  let sum = 0;
  for (const weight of weights) {
    sum += weight;
  }
  return sum;
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) {
    count += 1;
  }
  return count;
}
