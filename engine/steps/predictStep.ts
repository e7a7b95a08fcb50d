import type { UnitId } from '../base/index.ts';
import { type CurrentState, currentState, displayLogFactors, lookOutcomes, misreading, presentChance } from '../diagnosis/index.ts';
import { displayMeanings, type Evidence, type Fault, type Intervention, type Snapshot, supplyMeanings } from '../schema/index.ts';
import {
  isNoLightNormal,
  layOut,
  type Moment,
  type MomentState,
  modeKey,
  outcomeAt,
  type Simulation,
  type SimulationInput,
  simulate,
} from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { Step } from './types.ts';

/**
 * The outcomes of a step if these faults are there, with their probabilities. A fault that comes and goes may be there now or
 * not: what the last snapshot's displays show speaks for one or the other. Looks are misread now and then.
 */
export function predictStep(step: Step, setting: Setting, faults: readonly Fault[]): ReadonlyMap<string, number> {
  const spread = new Map<string, number>();
  const drawn = presences(faults, (fault) => chanceWhile(step, fault));
  // After a restart every such fault is there or not anew.
  const isRestart = step.do === 'act' || step.do === 'provoke';
  const weights = drawn.map(({ present, share }) => share * (isRestart || drawn.length === 1 ? 1 : setting.fitOf(faults, present)));
  const total = weights.reduce((sum, weight) => sum + weight, 0) || 1;
  drawn.forEach(({ present }, index) => {
    const outcome = predictOutcome(step, setting, faults, present);
    spread.set(outcome, (spread.get(outcome) ?? 0) + (weights[index] ?? 0) / total);
  });
  return withMisreadings(step, setting.cabinet, spread);
}

function withMisreadings(step: Step, cabinet: Cabinet, spread: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  const outcomes = outcomesOf(step, cabinet);
  if (outcomes.length < 2) {
    return spread;
  }
  const misread = () =>
    new Map(
      outcomes.map((outcome) => {
        const right = spread.get(outcome) ?? 0;
        return [outcome, right * (1 - misreading) + ((1 - right) * misreading) / (outcomes.length - 1)];
      }),
    );
  const [only] = spread.keys();
  if (spread.size !== 1 || only === undefined) {
    return misread();
  }
  // Thousands of steps have a certain outcome: those spreads are made once, so that equal ones are one object.
  const made = certain.get(outcomes) ?? new Map<string, ReadonlyMap<string, number>>();
  certain.set(outcomes, made);
  const known = made.get(only) ?? misread();
  made.set(only, known);
  return known;
}

const certain = new WeakMap<readonly string[], Map<string, ReadonlyMap<string, number>>>();

/** What can be read by mistake; nothing for a report, which the control writes out, and for a restart, which shows itself. */
function outcomesOf(step: Step, cabinet: Cabinet): readonly string[] {
  switch (step.do) {
    case 'read-display':
      return cabinet.units.get(step.unit)?.kind === 'supply' ? supplyMeanings : displayMeanings;
    case 'look':
      return lookOutcomes(step.look);
    default:
      return [];
  }
}

/** Chance that a fault that comes and goes is there: moving or warming what it sits on brings it out. */
export function chanceWhile(step: Step, fault: Fault): number {
  const isBroughtOut =
    step.do === 'provoke' && step.how !== 'wait' && Object.values(fault).some((part) => step.subjects.includes(String(part)));
  return isBroughtOut ? provokedChance : presentChance;
}

/** q while a part is moved or warmed (domain section 7; assumed). */
const provokedChance = 0.9;

/** Every way in which the faults that come and go may be there or not. */
export function presences(
  faults: readonly Fault[],
  chance: (fault: Fault) => number = () => presentChance,
): readonly { readonly present: readonly Fault[]; readonly share: number }[] {
  if (faults.every(({ presence }) => presence !== 'intermittent')) {
    return [{ present: faults, share: 1 }];
  }
  let list: { present: readonly Fault[]; share: number }[] = [{ present: [], share: 1 }];
  for (const fault of faults) {
    list =
      fault.presence === 'intermittent'
        ? list.flatMap(({ present, share }) => [
            { present: [...present, fault], share: share * chance(fault) },
            { present, share: share * (1 - chance(fault)) },
          ])
        : list.map(({ present, share }) => ({ present: [...present, fault], share }));
  }
  return list;
}

/** What all predictions of one ranking share. */
export interface Setting {
  readonly cabinet: Cabinet;
  readonly state: CurrentState;
  /** What the cabinet shows now, if of these faults just the present ones are there; worked out once for all steps. */
  readonly simulationOf: (faults: readonly Fault[], present: readonly Fault[]) => Simulation;
  /** The same laid out for looks. */
  readonly nowOf: (faults: readonly Fault[], present: readonly Fault[]) => Moment;
  /** Whether the machine runs after these acts and a restart, with the faults that are there then; asked twice for each, worked out once. */
  readonly runsAfter: (acts: readonly Intervention[], present: readonly Fault[]) => boolean;
  /** Likelihood of the last snapshot's displays, if of these faults just the present ones are there now. */
  readonly fitOf: (faults: readonly Fault[], present: readonly Fault[]) => number;
}

export function makeSetting(cabinet: Cabinet, evidence: Evidence): Setting {
  return makeSettingAt(cabinet, currentState(evidence), evidence.snapshots[evidence.snapshots.length - 1]?.displays ?? []);
}

/** The same at a moment to come, when nothing more is known of it than that the machine is halted, or runs. */
export function makeSettingAt(cabinet: Cabinet, state: CurrentState, seen: NonNullable<Snapshot['displays']>): Setting {
  const simulationOf = remember((faults, present) => simulate(inputOf(cabinet, state, faults, present)));
  const nowOf = remember((faults, present) => layOut(inputOf(cabinet, state, faults, present)).now);
  const factors = seen.flatMap(({ unit, meanings }) => {
    const kind = cabinet.units.get(unit as UnitId)?.kind;
    return kind === undefined ? [] : [{ unit: unit as UnitId, logs: displayLogFactors(meanings, kind === 'supply') }];
  });
  const fitOf = remember((faults, present) => {
    const { displays, now } = simulationOf(faults, present);
    // While the machine runs, nothing that breaks a chain is there.
    if (!state.halted && !isWhole(now)) {
      return 0;
    }
    let log = 0;
    for (const { unit, logs } of factors) {
      const predicted = displays.get(unit)?.meaning;
      log += predicted === undefined ? 0 : (logs[displayMeanings.indexOf(predicted)] ?? 0);
    }
    return Math.exp(log);
  });
  const ran = new Map<string, boolean>();
  const runsAfter = (acts: readonly Intervention[], present: readonly Fault[]) => {
    const key = `${JSON.stringify(acts)}|${present.map(modeKey).join()}`;
    let runs = ran.get(key);
    if (runs === undefined) {
      // A restart makes a new trip, of a machine as it is after the acts. Nothing is asked of a later moment, so there need be none.
      const beforeTrip = [...state.beforeTrip, ...state.sinceTrip, ...acts];
      runs = isWhole(simulate({ cabinet, faults: present, onset: 'at-power-up', beforeTrip, halted: false }).trip);
      ran.set(key, runs);
    }
    return runs;
  };
  return { cabinet, state, simulationOf, nowOf, runsAfter, fitOf };
}

/** Remembers answers by what is at fault and what of it is there. */
function remember<T>(
  ask: (faults: readonly Fault[], present: readonly Fault[]) => T,
): (faults: readonly Fault[], present: readonly Fault[]) => T {
  const known = new Map<string, T>();
  const allPresent = new WeakMap<readonly Fault[], T>();
  return (faults, present) => {
    const quick = faults === present ? allPresent.get(faults) : undefined;
    if (quick !== undefined) {
      return quick;
    }
    const key = `${faults.map(nameOf).join()}|${present.map(nameOf).join()}`;
    let answer = known.get(key);
    if (answer === undefined) {
      answer = ask(faults, present);
      known.set(key, answer);
    }
    if (faults === present) {
      allPresent.set(faults, answer);
    }
    return answer;
  };
}

function nameOf(fault: Fault): string {
  return `${modeKey(fault)}/${fault.presence}`;
}

function inputOf(
  cabinet: Cabinet,
  { onset, halted, beforeTrip, sinceTrip }: CurrentState,
  faults: readonly Fault[],
  present: readonly Fault[],
): SimulationInput {
  return { cabinet, faults, faultsNow: present, onset, halted, beforeTrip, sinceTrip };
}

function predictOutcome(step: Step, setting: Setting, faults: readonly Fault[], present: readonly Fault[]): string {
  switch (step.do) {
    case 'read-display':
      return setting.simulationOf(faults, present).displays.get(step.unit)?.meaning ?? 'quiet';
    case 'read-report':
      return String(setting.simulationOf(faults, present).reports.get(step.chain)?.gap ?? 'none');
    case 'look':
      return outcomeAt(step.look, setting.nowOf(faults, present)) ?? 'none';
    case 'act':
    case 'provoke':
      return setting.runsAfter(step.do === 'act' ? step.acts : [], present) ? 'runs' : 'halts';
  }
}

/** Whether every chain is up, so that the machine runs. */
export function isWhole({ links }: MomentState): boolean {
  return [...links.values()].every((link) => link.outbound.hears && link.return.hears);
}

/** Whether "no light" is also what a healthy cabinet would show at this look, so that it proves nothing. */
export function isDarkNormal(step: Step, { cabinet, state }: Setting): boolean {
  return step.do === 'look' && isNoLightNormal(step.look, inputOf(cabinet, state, [], []));
}
