import { presentChance } from '../diagnosis/index.ts';
import type { Fault } from '../schema/index.ts';
import { layOut, outcomeAt, type Simulation, type SimulationInput, simulate, tripOf } from '../simulation/index.ts';
import { isWhole } from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { allPresent, type Belief, type Game, type GameStep, isIntermittent, type Particle, restarts, type Stand } from './game.ts';

/** One way in which a step may turn out: what is seen, how likely, and which faults are there at the trip afterwards. */
export interface Turn {
  readonly outcome: string;
  readonly probability: number;
  readonly present: number;
}

/** What is believed after one outcome of a step, and how likely that is. */
export interface Branch {
  readonly outcome: string;
  readonly probability: number;
  readonly belief: Belief;
}

/** What each step shows for each possibility, remembered: a plan asks the same again and again. */
export class Predictions {
  private readonly tables = new Map<string, Map<number, readonly Turn[]>>();
  private readonly mendedKnown = new Map<string, boolean>();
  /** How often a possibility was asked what it shows; a measure of the work done. */
  asked = 0;
  /** How often that had to be worked out. */
  simulated = 0;

  constructor(private readonly game: Game) {}

  /** How a step turns out if this possibility holds. Certain, unless something comes and goes. */
  turnsOf(step: GameStep, stand: Stand, particle: Pick<Particle, 'index' | 'present'>): readonly Turn[] {
    return this.lookUp(this.tableOf(step, stand), step, stand, particle);
  }

  private tableOf(step: GameStep, stand: Stand): Map<number, readonly Turn[]> {
    const key = `${step.id}|${stand.halted}|${stand.onset}|${actsKey(stand)}`;
    let table = this.tables.get(key);
    if (table === undefined) {
      table = new Map();
      this.tables.set(key, table);
    }
    return table;
  }

  private lookUp(
    table: Map<number, readonly Turn[]>,
    step: GameStep,
    stand: Stand,
    { index, present }: Pick<Particle, 'index' | 'present'>,
  ): readonly Turn[] {
    this.asked += 1;
    const slot = index * mostPatterns + present;
    let turns = table.get(slot);
    if (turns === undefined) {
      this.simulated += 1;
      turns = predictTurns(this.game.cabinet, step, stand, this.game.possible[index]?.faults ?? [], present);
      table.set(slot, turns);
    }
    return turns;
  }

  /** Whether what was done mends a possibility for good, also what comes and goes. */
  isMended(stand: Stand, index: number): boolean {
    const key = `${index}|${actsKey(stand)}`;
    let mended = this.mendedKnown.get(key);
    if (mended === undefined) {
      mended = isMended(this.game.cabinet, stand, this.game.possible[index]?.faults ?? []);
      this.mendedKnown.set(key, mended);
    }
    return mended;
  }

  /** What would be believed after each outcome of a step; weights of a belief sum to 1. */
  branchesOf(step: GameStep, stand: Stand, belief: Belief): readonly Branch[] {
    const table = this.tableOf(step, stand);
    const branches = new Map<string, Particle[]>();
    for (const particle of belief) {
      for (const { outcome, probability, present } of this.lookUp(table, step, stand, particle)) {
        const after = { index: particle.index, present, weight: particle.weight * probability };
        const branch = branches.get(outcome);
        if (branch === undefined) branches.set(outcome, [after]);
        else branch.push(after);
      }
    }
    return [...branches].map(([outcome, list]) => {
      const merged = this.game.changes ? merge(list) : list;
      const probability = merged.reduce((sum, { weight }) => sum + weight, 0);
      return { outcome, probability, belief: merged.map((one) => ({ ...one, weight: one.weight / probability })) };
    });
  }
}

/** Room for every pattern of four faults. */
const mostPatterns = 16;

/** What comes and goes may lead to the same in two ways. */
function merge(list: readonly Particle[]): readonly Particle[] {
  const merged = new Map<number, Particle>();
  for (const { index, present, weight } of list) {
    const slot = index * mostPatterns + present;
    merged.set(slot, { index, present, weight: (merged.get(slot)?.weight ?? 0) + weight });
  }
  return [...merged.values()];
}

const actsOf = new WeakMap<readonly unknown[], string>();

/** The acts of a stand as a text; remembered, since a plan asks for it at every prediction. */
export function actsKey({ acts }: Stand): string {
  let key = actsOf.get(acts);
  if (key === undefined) {
    key = JSON.stringify(acts);
    actsOf.set(acts, key);
  }
  return key;
}

/** Whether nothing of these faults halts the machine any more after what was done, be they there at the moment or not. */
export function isMended(cabinet: Cabinet, { acts }: Pick<Stand, 'acts'>, faults: readonly Fault[]): boolean {
  return isWhole(tripOf({ cabinet, faults: plain(faults), onset: 'at-power-up', beforeTrip: acts }));
}

function predictTurns(cabinet: Cabinet, step: GameStep, stand: Stand, faults: readonly Fault[], present: number): readonly Turn[] {
  const turns = new Map<string, Turn>();
  const isRestart = restarts(step);
  // What is there is drawn anew at every look and start; while the machine runs, nothing may be there that would halt it.
  const drawn = isRestart || stand.halted ? presences(faults) : [{ present, probability: 1 }];
  for (const draw of drawn) {
    const outcome = seenOutcome(cabinet, step, stand, faults, present, draw.present);
    const after = isRestart ? draw.present : present;
    const key = `${outcome}|${after}`;
    turns.set(key, { outcome, probability: (turns.get(key)?.probability ?? 0) + draw.probability, present: after });
  }
  return [...turns.values()];
}

/** Every set of faults that may be there, as bits: steady ones always, each other one with its chance. */
function presences(faults: readonly Fault[]): readonly { readonly present: number; readonly probability: number }[] {
  let list = [{ present: 0, probability: 1 }];
  faults.forEach((fault, bit) => {
    list = isIntermittent(fault)
      ? list.flatMap(({ present, probability }) => [
          { present: present + 2 ** bit, probability: probability * presentChance },
          { present, probability: probability * (1 - presentChance) },
        ])
      : list.map(({ present, probability }) => ({ present: present + 2 ** bit, probability }));
  });
  return list;
}

/**
 * What a step shows: `trip` are the faults that were there when the machine was last switched on (or halted), `now` those that are
 * there at the look, or at the restart of an act; both as bits.
 */
export function seenOutcome(
  cabinet: Cabinet,
  { step }: GameStep,
  stand: Stand,
  faults: readonly Fault[],
  trip: number,
  now: number,
): string {
  if (step.do === 'act') {
    const beforeTrip = [...stand.acts, ...step.acts];
    return isWhole(tripOf({ cabinet, faults: chosen(faults, now), onset: 'at-power-up', beforeTrip })) ? 'runs' : 'halts';
  }
  const input: SimulationInput = {
    cabinet,
    faults: chosen(faults, trip),
    faultsNow: chosen(faults, now),
    onset: stand.onset,
    halted: stand.halted,
    beforeTrip: stand.acts,
  };
  switch (step.do) {
    case 'read-display':
      return simulateOnce(input).displays.get(step.unit)?.meaning ?? 'quiet';
    case 'read-report':
      return String(simulateOnce(input).reports.get(step.chain)?.gap ?? 'none');
    case 'look':
      return outcomeAt(step.look, layOut(input).now) ?? 'none';
    default:
      return '';
  }
}

let lastInput = '';
let lastSimulation: Simulation | null = null;
let lastCabinet: Cabinet | null = null;

/** Displays of one state are read one after another; the last simulation answers them all. */
function simulateOnce(input: SimulationInput): Simulation {
  const { cabinet, ...rest } = input;
  const key = JSON.stringify(rest);
  if (lastSimulation === null || lastCabinet !== cabinet || lastInput !== key) {
    lastSimulation = simulate(input);
    lastCabinet = cabinet;
    lastInput = key;
  }
  return lastSimulation;
}

/** What is seen at the start, before anything was done. */
export function seenAtStart(cabinet: Cabinet, onset: Stand['onset'], faults: readonly Fault[]): Simulation {
  return simulateOnce({ cabinet, faults: chosen(faults, allPresent(faults)), onset });
}

function chosen(faults: readonly Fault[], bits: number): readonly Fault[] {
  return plain(faults.filter((_, bit) => Math.floor(bits / 2 ** bit) % 2 === 1));
}

/** Faults as there, whether they come and go or not. */
function plain(faults: readonly Fault[]): readonly Fault[] {
  return faults.map((fault) => {
    const { absentNow: _absent, ...rest } = fault;
    return rest as Fault; // the same fault without what says when it is there
  });
}
