import { machineStates } from '../schema/index.ts';
import type { Rules, Situation } from './decision.ts';

/** Less than this share is not acted on. */
const negligible = 1e-9;

/**
 * A simple plan that can be carried out as it stands: act after act by probability over cost (Kadane and Simon 1977; Heckerman, Breese
 * and Rommelse 1995), in batches where one restart for several is cheaper, until the machine runs or outside help is cheaper. Its cost
 * is an upper bound of the best plan's. Asked thousands of times, so it works in place on arrays of its own.
 */
export class BasePolicy {
  /** Worlds in which each act mends something, and acts that mend something in each world. */
  private readonly touched: readonly Int32Array[];
  private readonly menders: readonly Int32Array[];
  /** Costs and states of the acts; states by their place in `machineStates`, changes by from and to. */
  private readonly costs: Float64Array;
  private readonly states: Int32Array;
  private readonly changes: Float64Array;
  private readonly restarts: Float64Array;
  private readonly broken: Float64Array;
  private readonly bits: Int32Array;
  private readonly gains: Float64Array;
  /** By stage (a batch of acts and its restart): what it costs, how likely it comes to it, what leaving costs where it runs unmended. */
  private readonly stageCosts: Float64Array;
  private readonly stageMasses: Float64Array;
  private readonly stageLeft: Float64Array;

  constructor(private readonly rules: Rules) {
    const { acts } = rules.decision;
    this.touched = acts.map(({ cures }) => Int32Array.from(cures.keys()).filter((world) => cures[world] !== 0));
    this.menders = rules.decision.parts.map((_, world) => Int32Array.from(acts.keys()).filter((act) => acts[act]?.cures[world] !== 0));
    const { change, restart } = rules.decision;
    this.costs = Float64Array.from(acts, ({ cost }) => cost);
    this.states = Int32Array.from(acts, ({ state }) => machineStates.indexOf(state));
    this.changes = Float64Array.from(machineStates.flatMap((from) => machineStates.map((to) => change[from][to])));
    this.restarts = Float64Array.from(machineStates, (state) => restart[state]);
    this.broken = new Float64Array(rules.worlds);
    this.bits = new Int32Array(rules.worlds);
    this.gains = new Float64Array(acts.length);
    // Each stage but the first does at least one act.
    const most = acts.length + 2;
    this.stageCosts = new Float64Array(most);
    this.stageMasses = new Float64Array(most);
    this.stageLeft = new Float64Array(most);
  }

  /** Expected cost of the policy from a situation, and the acts that it would do together next; null: not looked at. */
  wayOn(at: Situation): { readonly cost: number; readonly acts: readonly number[] | null } {
    const { rules, stageCosts, stageMasses, stageLeft } = this;
    if (at.running && at.pending === 0) {
      return { cost: rules.leave(at), acts: null };
    }
    this.load(at);
    const { outsideHelp } = rules.decision;
    let { state, done } = at;
    let tried = at.done & ~at.pending;
    let mended = sumOf(at.mended);
    let mass = 1;
    let stages = 0;
    let acts: readonly number[] = [];
    let { pending } = at;
    while (mass > negligible) {
      const batch = this.pick(state, done, mended, pending);
      if (batch === null) {
        break;
      }
      if (stages === 0) {
        acts = batch.acts;
      }
      pending = 0;
      done = batch.done;
      state = 'closed';
      const left = this.restart(tried, done);
      tried = done;
      stageCosts[stages] = mass * batch.cost;
      stageMasses[stages] = mass;
      stageLeft[stages] = left;
      stages += 1;
      mended = 0;
      mass = sumOf(this.broken);
    }
    let cost = mass * outsideHelp;
    for (let stage = stages - 1; stage >= 0; stage -= 1) {
      const onward = (stageCosts[stage] ?? 0) + (stageLeft[stage] ?? 0) + cost;
      cost = stage === 0 && at.pending !== 0 ? onward : Math.min((stageMasses[stage] ?? 0) * outsideHelp, onward);
    }
    return { cost, acts };
  }

  /** The acts that the policy would do together next; the ones given are among them. Empty where nothing is left that mends. */
  batch(at: Situation, first?: number): readonly number[] {
    this.load(at);
    const picked = this.pick(at.state, at.done, sumOf(at.mended), at.pending, first);
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

  /** Picks acts that go together as long as they raise what is mended over what it costs, the restart included. */
  private pick(
    from: Situation['state'],
    already: number,
    mended: number,
    pending: number,
    first?: number,
  ): { readonly acts: readonly number[]; readonly cost: number; readonly done: number } | null {
    const { gains, costs, states, changes, restarts } = this;
    const acts: number[] = [];
    let state = machineStates.indexOf(from);
    let done = already;
    let cost = 0;
    let gain = mended;
    const hasBegun = pending !== 0;
    let together = pending;
    let joining = this.rules.joining(together);
    let ratio = hasBegun || mended > negligible ? gain / (restarts[state] ?? 0) : 0;
    this.findGains(done);
    for (;;) {
      let next = -1;
      const isForced = acts.length === 0 && first !== undefined;
      for (let index = isForced ? first : 0; index < (isForced ? first + 1 : gains.length); index += 1) {
        const more = gains[index] ?? 0;
        if (!isForced && (more <= negligible || !((joining >> index) & 1))) {
          continue;
        }
        const to = states[index] ?? 0;
        const worth =
          (gain + more) / (cost + (changes[state * machineStates.length + to] ?? 0) + (costs[index] ?? 0) + (restarts[to] ?? 0));
        if (worth > ratio || isForced) {
          ratio = worth;
          next = index;
        }
      }
      if (next < 0) {
        break;
      }
      const to = states[next] ?? 0;
      cost += (changes[state * machineStates.length + to] ?? 0) + (costs[next] ?? 0);
      gain += gains[next] ?? 0;
      state = to;
      done |= 1 << next;
      together |= 1 << next;
      joining = this.rules.joining(together);
      acts.push(next);
      this.applyCounting(next);
    }
    return acts.length === 0 && !hasBegun && mended <= negligible ? null : { acts, cost: cost + (restarts[state] ?? 0), done };
  }

  /** For each act not yet done: expected share of what is broken that it mends. */
  private findGains(done: number): void {
    const { acts } = this.rules.decision;
    for (let index = 0; index < acts.length; index += 1) {
      let sum = 0;
      if (!((done >> index) & 1)) {
        for (const world of this.touched[index] ?? []) {
          sum += this.gainIn(world, index);
        }
      }
      this.gains[index] = sum;
    }
  }

  private gainIn(world: number, index: number): number {
    const act = this.rules.decision.acts[index];
    const cured = (act?.cures[world] ?? 0) & ~(this.bits[world] ?? 0);
    const share = cured === 0 ? 0 : ((this.broken[world] ?? 0) * bitCount(cured)) / (this.rules.decision.parts[world] ?? 1);
    return share * (1 - (act?.fails ?? 0));
  }

  /** Applies an act, and takes from the gains of all what it leaves them less to mend. */
  private applyCounting(index: number): void {
    const cures = this.rules.decision.acts[index]?.cures;
    for (const world of this.touched[index] ?? []) {
      const before = this.bits[world] ?? 0;
      const after = before | (cures?.[world] ?? 0);
      if (after !== before && (this.broken[world] ?? 0) > 0) {
        for (const act of this.menders[world] ?? []) {
          const was = this.gainIn(world, act);
          this.bits[world] = after;
          this.gains[act] = (this.gains[act] ?? 0) - was + this.gainIn(world, act);
          this.bits[world] = before;
        }
      }
      this.bits[world] = after;
    }
    this.gains[index] = 0;
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
