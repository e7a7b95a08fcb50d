import { type MachineState, machineStates } from '../schema/index.ts';

/**
 * A repair as a problem of decision, without cabinets: which of several worlds is the real one, looks that tell them apart, acts that
 * mend what is broken in them, states of the machine that cost to change. Costs are in one unit, here minutes.
 */
export interface Decision {
  /** Prior probability of each world; they sum to 1. */
  readonly weights: readonly number[];
  /** How many things are broken in each world, 0 to 30. */
  readonly parts: readonly number[];
  /** Probability that a restart finds an unmended world running all the same, because what is broken is not there just then. */
  readonly absent: readonly number[];
  readonly start: MachineState;
  /** Whether the machine runs at the start. */
  readonly running: boolean;
  /** Cost of going from one state to another, the restart left aside. */
  readonly change: { readonly [F in MachineState]: { readonly [T in MachineState]: number } };
  /** Cost of a restart from a state; it leaves the machine closed. */
  readonly restart: { readonly [F in MachineState]: number };
  readonly looks: readonly DecisionLook[];
  readonly acts: readonly DecisionAct[];
  readonly provocations: readonly DecisionProvocation[];
  /** Cost of leaving a machine that runs but is not mended. */
  readonly comeback: number;
  /** Cost of giving up. */
  readonly outsideHelp: number;
}

/** How the outcomes of a look spread over the worlds; `id` is equal for looks, or moments, that say the same twice. */
export interface Spread {
  readonly id: number;
  readonly outcomes: readonly string[];
  /** `rows[outcome][world]`: probability of the outcome in that world. */
  readonly rows: readonly Float64Array[];
}

/** Something looked at that changes nothing; `cost` leaves the change of state aside. */
export interface DecisionLook {
  readonly state: MachineState;
  readonly cost: number;
  /** What it would show in an epoch (see `DecisionAct.marks`); null: it cannot be had then. */
  readonly spread: (epoch: string) => Spread | null;
}

/** Something done that may mend; `cost` leaves the change of state and the restart aside. */
export interface DecisionAct {
  readonly state: MachineState;
  readonly cost: number;
  /** Bits of the parts that it mends, for each world. */
  readonly cures: Int32Array;
  /** Probability that it does not do what it should (a bad spare, one that does not fit). */
  readonly fails: number;
  /** Something is moved: afterwards looks show other things. Empty for an act that only mends. */
  readonly marks: string;
  /** Equal for acts that a hand does as one: cleaning both plugs of a cable. */
  readonly handling: string;
  /** It mends nothing for good, but shows where the fault is: done alone, for a restart to tell of it. */
  readonly isTrial: boolean;
}

/** A restart with something to make a fault that comes and goes show itself. */
export interface DecisionProvocation {
  /** Besides the restart. */
  readonly cost: number;
  /** As `Decision.absent`, while provoking. */
  readonly absent: readonly number[];
}

/** Where a repair stands. `done` and `pending` are bits of acts; the pending ones were done since the last restart. */
export interface Situation {
  /** Probability of each world, not mended; and mended. Together they sum to 1. */
  readonly broken: Float64Array;
  readonly mended: Float64Array;
  readonly state: MachineState;
  readonly running: boolean;
  readonly done: number;
  readonly pending: number;
  readonly seen: readonly number[];
  readonly epoch: string;
  readonly provoked: number;
}

/** What can be done in a situation, with what it costs and where it leads. */
export interface Option {
  readonly kind: 'look' | 'act' | 'restart' | 'provoke';
  readonly index: number;
  /** Of an act with its restart: all acts that are done together. */
  readonly acts?: readonly number[];
  readonly cost: number;
  readonly outcomes: readonly { readonly name: string; readonly probability: number; readonly after: Situation }[];
}

/** Which option it is, without what follows. */
export type Named = Pick<Option, 'kind' | 'index' | 'acts'>;

/** More acts than this are not planned with: they are bits of a number. */
export const mostActs = 30;
/** Between two restarts so many things are done at most: who does more does not know what helped, nor what he left worse. Assumed. */
const mostTogether = 2;
/** A fault that comes and goes is provoked so often, and no more. */
const mostProvocations = 2;
/** Of a world with more parts than this only so many are reckoned with in bounds. */
const mostCovered = 4;
/** A share of probability that is nothing but rounding. */
const trace = 1e-12;

/** Probability that acts mend every part of a world, each of them working or not as a whole. */
export function mendedShare(acts: readonly DecisionAct[], world: number, parts: number): number {
  const all = (1 << parts) - 1;
  const share = (index: number, mended: number): number => {
    if ((mended & all) === all) {
      return 1;
    }
    const act = acts[index];
    if (act === undefined) {
      return 0;
    }
    const cures = (act.cures[world] ?? 0) & ~mended;
    const without = act.fails === 0 && cures !== 0 ? 0 : share(index + 1, mended);
    return cures === 0 ? without : (1 - act.fails) * share(index + 1, mended | cures) + act.fails * without;
  };
  return share(0, 0);
}

/** The rules of a decision: what can be done, and what follows. Remembers what depends on the acts alone. */
export class Rules {
  private readonly shares = new Map<number, Float64Array>();
  readonly worlds: number;
  /** For each world and each set of its parts: cost of the cheapest acts that mend them, changes of state not counted. */
  private readonly cheapest: readonly (readonly number[])[];
  /** Cost of leaving each world as it is while it runs: it comes back, and must be mended then. */
  readonly comebacks: readonly number[];
  private readonly leastRestart: number;
  /** For each act the acts that can still be done together with it, by their bits. */
  private readonly partners: Int32Array;
  private readonly joinings = new Map<number, number>();
  private readonly spreads = new Map<string, readonly (Spread | null)[]>();

  constructor(readonly decision: Decision) {
    this.worlds = decision.weights.length;
    this.cheapest = decision.parts.map((_, world) => this.coverCosts(world));
    const { restart, comeback, outsideHelp } = decision;
    this.leastRestart = Math.min(...machineStates.map((state) => restart[state]));
    this.partners = this.findPartners();
    this.comebacks = this.cheapest.map((costs) => {
      const known = this.toActs('closed') + (costs[costs.length - 1] ?? 0) + restart.isolated;
      return costs.length === 1 ? 0 : comeback + Math.min(outsideHelp, known);
    });
  }

  /** Trials are done alone; other acts go together where the machine is in the same state. */
  private findPartners(): Int32Array {
    const { acts } = this.decision;
    return Int32Array.from(acts, (one, index) =>
      acts.reduce((bits, other, at) => {
        const go = at !== index && !one.isTrial && !other.isTrial && one.state === other.state;
        return go ? bits | (1 << at) : bits;
      }, 0),
    );
  }

  /** The acts that may be done besides those that wait for their restart, by their bits. */
  joining(pending: number): number {
    let joining = this.joinings.get(pending);
    if (joining === undefined) {
      joining = this.findJoining(pending);
      this.joinings.set(pending, joining);
    }
    return joining;
  }

  private findJoining(pending: number): number {
    const { acts } = this.decision;
    let joining = -1;
    const handlings = new Set<string>();
    for (let index = 0; pending >> index !== 0; index += 1) {
      if ((pending >> index) & 1) {
        joining &= this.partners[index] ?? 0;
        handlings.add(acts[index]?.handling ?? '');
      }
    }
    return handlings.size < mostTogether
      ? joining
      : acts.reduce((bits, { handling }, index) => (handlings.has(handling) ? bits | (joining & (1 << index)) : bits), 0);
  }

  /** Cost of the cheapest acts that mend each set of parts of a world, by the bits of the set; of many parts only a lower bound. */
  private coverCosts(world: number): readonly number[] {
    const count = this.decision.parts[world] ?? 0;
    const costs = [0];
    for (let set = 1; set < 1 << Math.min(count, mostCovered); set += 1) {
      costs[set] = this.decision.acts.reduce((least, act) => {
        const rest = set & ~(act.cures[world] ?? 0);
        return rest === set ? least : Math.min(least, act.cost + (costs[rest] ?? 0));
      }, Number.POSITIVE_INFINITY);
    }
    return costs;
  }

  begin(): Situation {
    const { weights, parts, start, running } = this.decision;
    return {
      broken: Float64Array.from(weights, (weight, world) => (parts[world] === 0 ? 0 : weight)),
      mended: Float64Array.from(weights, (weight, world) => (parts[world] === 0 ? weight : 0)),
      state: start,
      running,
      done: 0,
      pending: 0,
      seen: [],
      epoch: '',
      provoked: 0,
    };
  }

  /** Probability that each world is mended by a set of acts: each of its parts by one of them that works. */
  mendedBy(acts: number): Float64Array {
    let shares = this.shares.get(acts);
    if (shares === undefined) {
      const list = this.decision.acts.filter((_, index) => (acts >> index) & 1);
      shares = Float64Array.from(this.decision.parts, (count, world) => mendedShare(list, world, count));
      this.shares.set(acts, shares);
    }
    return shares;
  }

  /** Everything worth considering. While acts wait for their restart, nothing else is done. */
  options(at: Situation): readonly Option[] {
    const acts = this.decision.acts.map((_, index) => this.act(at, index));
    return [...this.looks(at), ...acts.filter((option) => option !== null)];
  }

  /** Looks, restarts and provocations worth considering: everything but acts. */
  looks(at: Situation): readonly Option[] {
    const { looks, provocations } = this.decision;
    const isOff = at.state === 'isolated';
    const found: Option[] = [];
    const add = (option: Option | null) => {
      if (option !== null) found.push(option);
    };
    for (let index = 0; at.pending === 0 && index < looks.length; index += 1) {
      if (!isOff || looks[index]?.state === 'isolated') add(this.look(at, index));
    }
    add(at.pending !== 0 || isOff || this.isMendedUnseen(at) ? this.restart(at) : null);
    for (let index = 0; index < provocations.length; index += 1) add(this.provoke(at, index));
    return found;
  }

  /** Something was mended since the trip, and only a restart shows it. */
  isMendedUnseen({ running, mended }: Situation): boolean {
    return !running && total(mended) > trace;
  }

  /** Looks that were had and would tell something still, could they be had anew: only these tell two situations apart. */
  openSeen(at: Situation): readonly number[] {
    if (at.seen.length === 0) {
      return at.seen;
    }
    // In another epoch a look may matter again; there the whole list counts.
    if (at.epoch !== '') {
      return at.seen;
    }
    const spreads = this.spreadsAt(at.epoch);
    return at.seen.filter((id) => spreads.some((one) => one?.id === id && tells(one, at)));
  }

  /** What every look would show in an epoch. */
  private spreadsAt(epoch: string): readonly (Spread | null)[] {
    let spreads = this.spreads.get(epoch);
    if (spreads === undefined) {
      spreads = this.decision.looks.map(({ spread }) => spread(epoch));
      this.spreads.set(epoch, spreads);
    }
    return spreads;
  }

  /** Null where it cannot be had, was had already, or tells nothing. */
  look(at: Situation, index: number): Option | null {
    const look = this.decision.looks[index];
    const spread = this.spreadsAt(at.epoch)[index] ?? null;
    if (look === undefined || spread === null || at.seen.includes(spread.id) || !tells(spread, at)) {
      return null;
    }
    const cost = this.decision.change[at.state][look.state] + look.cost;
    const seen = [...at.seen, spread.id].sort((a, b) => a - b);
    const outcomes: Option['outcomes'][number][] = [];
    spread.rows.forEach((row, outcome) => {
      const broken = new Float64Array(this.worlds);
      const mended = new Float64Array(this.worlds);
      const probability = share(at.broken, row, broken) + share(at.mended, row, mended);
      if (probability > trace) {
        scale(broken, 1 / probability);
        scale(mended, 1 / probability);
        outcomes.push({ name: spread.outcomes[outcome] ?? '', probability, after: { ...at, broken, mended, state: look.state, seen } });
      }
    });
    return { kind: 'look', index, cost, outcomes };
  }

  /** Null where it was done already, does not go with what waits for its restart, or can neither mend anything nor show anything new. */
  act(at: Situation, index: number): Option | null {
    const act = this.decision.acts[index];
    if (act === undefined || (at.done >> index) & 1 || !((this.joining(at.pending) >> index) & 1)) {
      return null;
    }
    const helps = act.marks !== '' || at.broken.some((weight, world) => weight > trace && act.cures[world] !== 0);
    return helps ? this.doAct(at, index, act) : null;
  }

  /** An act whether it helps or not. */
  private doAct(at: Situation, index: number, act: DecisionAct): Option {
    const bit = 1 << index;
    const after: Situation = {
      ...at,
      state: act.state,
      done: at.done | bit,
      pending: at.pending | bit,
      epoch: act.marks === '' ? at.epoch : `${at.epoch}${act.marks}`,
    };
    return {
      kind: 'act',
      index,
      cost: this.decision.change[at.state][act.state] + act.cost,
      outcomes: [{ name: '', probability: 1, after }],
    };
  }

  restart(at: Situation): Option {
    return this.restartWith(at, 'restart', 0, 0, this.decision.absent);
  }

  provoke(at: Situation, index: number): Option | null {
    const provocation = this.decision.provocations[index];
    if (provocation === undefined || at.provoked >= mostProvocations) {
      return null;
    }
    const { absent } = provocation;
    const comesAndGoes = at.broken.some((weight, world) => weight > trace && (absent[world] ?? 0) > 0);
    return comesAndGoes ? this.restartWith(at, 'provoke', index, provocation.cost, absent) : null;
  }

  private restartWith(at: Situation, kind: Option['kind'], index: number, cost: number, absent: readonly number[]): Option {
    const was = this.mendedBy(at.done & ~at.pending);
    const is = this.mendedBy(at.done);
    const runs = { broken: new Float64Array(this.worlds), mended: Float64Array.from(at.mended) };
    const halts = { broken: new Float64Array(this.worlds), mended: new Float64Array(this.worlds) };
    at.broken.forEach((weight, world) => {
      const earlier = was[world] ?? 0;
      const newly = earlier < 1 ? ((is[world] ?? 0) - earlier) / (1 - earlier) : 1;
      const still = weight * (1 - newly);
      runs.mended[world] = (runs.mended[world] ?? 0) + weight * newly;
      runs.broken[world] = still * (absent[world] ?? 0);
      halts.broken[world] = still * (1 - (absent[world] ?? 0));
    });
    const provoked = at.provoked + (kind === 'provoke' ? 1 : 0);
    const halted = unrun(at.epoch);
    const epoch = halted.startsWith('r') ? halted : `r${halted}`;
    const next = { ...at, state: 'closed', pending: 0, provoked } as const;
    const outcomes = [
      { name: 'runs', probability: normalise(runs.broken, runs.mended), after: { ...next, ...runs, running: true, epoch: `+${epoch}` } },
      { name: 'halts', probability: normalise(halts.broken, halts.mended), after: { ...next, ...halts, running: false, epoch } },
    ].filter(({ probability }) => probability > trace);
    return { kind, index, cost: this.decision.restart[at.state] + cost, outcomes };
  }

  /** Leaving it at that: a machine that runs may come back, one that does not needs somebody else. */
  leave(at: Situation): number {
    const { outsideHelp } = this.decision;
    if (!at.running) {
      return outsideHelp;
    }
    return at.broken.reduce((sum, weight, world) => sum + weight * (this.comebacks[world] ?? 0), 0);
  }

  /** Nothing is broken any more, and the machine runs. */
  isSettled({ running, broken }: Situation): boolean {
    return running && total(broken) <= trace;
  }

  /** Acts one after another, then a restart, as one step. */
  actTogether(at: Situation, acts: readonly number[]): Option {
    let cost = 0;
    let after = at;
    for (const index of acts) {
      const act = this.decision.acts[index];
      if (act !== undefined) {
        const option = this.doAct(after, index, act);
        cost += option.cost;
        after = option.outcomes[0]?.after ?? after;
      }
    }
    const restart = this.restart(after);
    return { kind: 'act', index: acts[0] ?? 0, acts, cost: cost + restart.cost, outcomes: restart.outcomes };
  }

  /** What it would cost at least, if one knew the world: no plan can be cheaper. */
  least(at: Situation): number {
    const { outsideHelp, acts } = this.decision;
    const toRestart = this.leastRestart;
    let sum = at.pending !== 0 || at.state === 'isolated' ? toRestart * total(at.mended) : 0;
    at.broken.forEach((weight, world) => {
      if (weight <= trace) {
        return;
      }
      let bits = 0;
      for (let index = 0; index < acts.length; index += 1) {
        bits |= (at.done >> index) & 1 ? (acts[index]?.cures[world] ?? 0) : 0;
      }
      const costs = this.cheapest[world] ?? [0];
      const cost = costs[(costs.length - 1) & ~bits] ?? 0;
      const isPaid = cost === 0 && at.pending === 0;
      const onward = isPaid ? 0 : cost + toRestart + (at.state === 'isolated' || cost === 0 ? 0 : this.toActs(at.state));
      sum += weight * Math.min(at.running ? (this.comebacks[world] ?? 0) : outsideHelp, onward);
    });
    return sum;
  }

  private toActs(state: MachineState): number {
    return Math.min(
      ...machineStates.filter((to) => this.decision.acts.some((act) => act.state === to)).map((to) => this.decision.change[state][to]),
    );
  }
}

function unrun(epoch: string): string {
  return epoch.startsWith('+') ? epoch.slice(1) : epoch;
}

/** Whether the outcomes differ between worlds that are still possible. */
function tells({ rows }: Spread, { broken, mended }: Situation): boolean {
  return rows.some((row) => {
    let first = Number.NaN;
    for (let world = 0; world < row.length; world += 1) {
      if ((broken[world] ?? 0) + (mended[world] ?? 0) > trace) {
        const share = row[world] ?? 0;
        if (Math.abs(share - first) > 1e-12) {
          return true;
        }
        first = share;
      }
    }
    return false;
  });
}

function total(weights: Float64Array): number {
  let sum = 0;
  for (const weight of weights) {
    sum += weight;
  }
  return sum;
}

/** Weights by the chance of an outcome in each world; answers what they sum to. */
function share(weights: Float64Array, row: Float64Array, out: Float64Array): number {
  let sum = 0;
  for (let world = 0; world < out.length; world += 1) {
    const weight = (weights[world] ?? 0) * (row[world] ?? 0);
    out[world] = weight;
    sum += weight;
  }
  return sum;
}

function scale(weights: Float64Array, factor: number): void {
  for (let world = 0; world < weights.length; world += 1) {
    weights[world] = (weights[world] ?? 0) * factor;
  }
}

/** Scales both so that together they sum to 1; answers what they summed to. */
function normalise(broken: Float64Array, mended: Float64Array): number {
  const sum = total(broken) + total(mended);
  if (sum > 0) {
    scale(broken, 1 / sum);
    scale(mended, 1 / sum);
  }
  return sum;
}
