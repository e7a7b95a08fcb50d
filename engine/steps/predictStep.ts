import type { UnitId } from '../base/index.ts';
import {
  type CurrentState,
  currentState,
  displayLogFactors,
  isProvoked,
  lookOutcomes,
  misreading,
  presentChance,
  provokedChance,
} from '../diagnosis/index.ts';
import { displayMeanings, type Evidence, type Fault, type Snapshot, supplyMeanings } from '../schema/index.ts';
import {
  arrangeBoth,
  isNoLightNormal,
  layOut,
  type MomentState,
  type Moments,
  meaningAt,
  outcomeAt,
  type Simulation,
  simulateMoments,
  stateOf,
} from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { type BehaviourScenario, documentedOnly } from './behaviourScenarios.ts';
import type { Step } from './types.ts';

/** A step that only looks. */
export type LookStep = Exclude<Step, { do: 'act' | 'provoke' }>;

/**
 * The outcomes of a look if these faults are there, with their probabilities. A fault that comes and goes may be there now or not, and a
 * behaviour that nobody knows may be this or that: what the last snapshot's displays show speaks for one or the other. Looks are misread
 * now and then. Equal certain predictions are the same object.
 */
export function predictStep(step: LookStep, setting: Setting, faults: readonly Fault[]): ReadonlyMap<string, number> {
  const views = setting.viewsOf(faults);
  const outcomes = outcomesOf(step, setting.cabinet);
  const [view] = views;
  const predict = (one: View) => predictOutcome(step, one, setting.state);
  const first = view === undefined ? 'none' : predict(view);
  const others = views.slice(1).map(predict);
  if (others.every((outcome) => outcome === first)) {
    return certainly(first, outcomes);
  }
  const spread = new Map<string, number>();
  [first, ...others].forEach((outcome, index) => {
    spread.set(outcome, (spread.get(outcome) ?? 0) + (views[index]?.share ?? 0));
  });
  return withMisreadings(spread, outcomes);
}

const certain = new Map<readonly string[], Map<string, ReadonlyMap<string, number>>>();

/** One outcome for sure, misreadings left aside. */
function certainly(outcome: string, outcomes: readonly string[]): ReadonlyMap<string, number> {
  let known = certain.get(outcomes);
  if (known === undefined) {
    known = new Map();
    certain.set(outcomes, known);
  }
  let spread = known.get(outcome);
  if (spread === undefined) {
    spread = withMisreadings(new Map([[outcome, 1]]), outcomes);
    known.set(outcome, spread);
  }
  return spread;
}

function withMisreadings(spread: ReadonlyMap<string, number>, outcomes: readonly string[]): ReadonlyMap<string, number> {
  if (outcomes.length < 2) {
    return spread;
  }
  return new Map(
    outcomes.map((outcome) => {
      const right = spread.get(outcome) ?? 0;
      return [outcome, right * (1 - misreading) + ((1 - right) * misreading) / (outcomes.length - 1)];
    }),
  );
}

const nothingMisread: readonly string[] = [];

/** What can be read by mistake; nothing for a report, which the control writes out. */
function outcomesOf(step: LookStep, cabinet: Cabinet): readonly string[] {
  switch (step.do) {
    case 'read-display':
      return cabinet.units.get(step.unit)?.kind === 'supply' ? supplyMeanings : displayMeanings;
    case 'read-report':
      return nothingMisread;
    case 'look':
      return lookOutcomes(step.look);
  }
}

/** Chance that a fault that comes and goes is there at a restart: moving or warming what it sits on brings it out. */
export function chanceWhile({ how, subjects }: Extract<Step, { do: 'provoke' }>, fault: Fault): number {
  return isProvoked({ how, subjects: [...subjects] }, fault) ? provokedChance : presentChance;
}

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

/** The machine as it may be now, if some faults are in it: which of them are there, how the equipment behaves. */
export interface View {
  /** Probability of this view, given the faults; those of all views sum to 1. */
  readonly share: number;
  readonly moments: Moments;
  /** What it shows, with the reasons; worked out when it is first asked for. */
  readonly simulation: () => Simulation;
}

/** What all predictions of one ranking share. */
export interface Setting {
  readonly cabinet: Cabinet;
  readonly state: CurrentState;
  /** The views of a world; kept by the list of faults itself. */
  readonly viewsOf: (faults: readonly Fault[]) => readonly View[];
}

/** The moment after the last snapshot. `scenarios`: how equipment of unknown behaviour may behave; default: as documented. */
export function makeSetting(cabinet: Cabinet, evidence: Evidence, scenarios: readonly BehaviourScenario[] = documentedOnly): Setting {
  return makeSettingAt(cabinet, currentState(evidence), evidence.snapshots[evidence.snapshots.length - 1]?.displays ?? [], scenarios);
}

/** The same at a moment to come, when nothing more is known of it than that the machine is halted, or runs. */
export function makeSettingAt(
  cabinet: Cabinet,
  state: CurrentState,
  seen: NonNullable<Snapshot['displays']>,
  scenarios: readonly BehaviourScenario[] = documentedOnly,
): Setting {
  const { onset, halted, beforeTrip, sinceTrip } = state;
  const arranged = arrangeBoth({ cabinet, onset, beforeTrip, sinceTrip });
  const factors = seen.flatMap(({ unit, meanings }) => {
    const kind = cabinet.units.get(unit as UnitId)?.kind;
    return kind === undefined ? [] : [{ unit: unit as UnitId, logs: displayLogFactors(meanings, kind === 'supply') }];
  });
  /** Likelihood of the displays that were seen, and that the machine runs if it does: then nothing that breaks a chain is there. */
  const fitOf = (view: View): number => {
    const { moments } = view;
    if (!halted && !isWhole(stateOf(moments.now))) {
      return 0;
    }
    let log = 0;
    for (const { unit, logs } of factors) {
      log += logs[displayMeanings.indexOf(meaningAt(unit, moments))] ?? 0;
    }
    return Math.exp(log);
  };
  const known = new Map<readonly Fault[], readonly View[]>();
  const viewsOf = (faults: readonly Fault[]): readonly View[] => {
    let views = known.get(faults);
    if (views === undefined) {
      const drawn = presences(faults);
      const all = scenarios.flatMap(({ behaviourOf, share: likely }) =>
        drawn.map(({ present, share }): View => {
          const moments = layOut(
            { cabinet, faults, faultsNow: present, onset, halted, ...(behaviourOf === null ? {} : { behaviourOf }) },
            arranged,
          );
          let simulation: Simulation | undefined;
          return {
            share: share * likely,
            moments,
            simulation: () => {
              simulation ??= simulateMoments(moments);
              return simulation;
            },
          };
        }),
      );
      views = all.length === 1 ? all : weighed(all, fitOf);
      known.set(faults, views);
    }
    return views;
  };
  return { cabinet, state, viewsOf };
}

/** Views with their shares after what was seen; where nothing fits, before. */
function weighed(views: readonly View[], fitOf: (view: View) => number): readonly View[] {
  const weights = views.map((view) => view.share * fitOf(view));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return total === 0 ? views : views.map((view, index) => ({ ...view, share: (weights[index] ?? 0) / total }));
}

function predictOutcome(step: LookStep, view: View, { ownCodes }: CurrentState): string {
  switch (step.do) {
    case 'read-display': {
      const meaning = meaningAt(step.unit, view.moments);
      // A lit unit goes with any code of its own (domain section 6): what showed one shows it again, whatever is wrong.
      return meaning !== 'dark' && ownCodes.has(step.unit) ? 'other' : meaning;
    }
    case 'read-report':
      return String(view.simulation().reports.get(step.chain)?.gap ?? 'none');
    case 'look':
      return outcomeAt(step.look, view.moments.now) ?? 'none';
  }
}

/** Whether every chain is up, so that the machine runs. */
export function isWhole({ links }: MomentState): boolean {
  for (const { outbound, return: back } of links.values()) {
    if (!(outbound.hears && back.hears)) {
      return false;
    }
  }
  return true;
}

/** Whether "no light" is also what a healthy cabinet would show at this look, so that it proves nothing. */
export function isDarkNormal(step: Step, { cabinet, state }: Setting): boolean {
  const { onset, halted, beforeTrip, sinceTrip } = state;
  return step.do === 'look' && isNoLightNormal(step.look, { cabinet, faults: [], onset, halted, beforeTrip, sinceTrip });
}
