import { Recent } from '../base/index.ts';
import type { FaultChoice, SearchElement } from '../search/index.ts';
import type { Arrangement } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { CompiledCabinet, RegionOps } from './compiled.ts';
import type { FaultSpace } from './elements.ts';
import { isLookConcerned } from './lookConcern.ts';
import { type CompiledMode, ModeBook } from './modeBook.ts';
import type { Plan } from './plan.ts';
import { isProvoked } from './presence.ts';
import type { Scenario } from './scenarios.ts';

/** What one class of faults does, in every arrangement: what one of its modes does, for all do the same. */
export interface EffectOps extends CompiledMode {
  readonly id: number;
  /** Indices of the look observations whose outcome it can change. */
  readonly looks: readonly number[];
  readonly onlyAtPowerUp: boolean;
}

/** A class with a presence: what one mode of the search weighs as. `index` counts them without gaps. */
export interface ClassHandle {
  readonly index: number;
  readonly ops: EffectOps;
  readonly isIntermittent: boolean;
  /** Snapshots whose restart brings it out, ascending. */
  readonly provokedIn: readonly number[];
  /** Σ prior odds of the modes that weigh as this. */
  weight: number;
}

/** All classes of a fault space, and which mode belongs to which. */
export interface ClassBook {
  readonly compiled: CompiledCabinet;
  readonly arrangements: readonly Arrangement[];
  /** The variant of the modes' effects (see `ModeBook`) that holds under a scenario. */
  readonly variantOf: (scenario: Scenario) => number;
  readonly handleOf: (choice: FaultChoice) => ClassHandle;
  readonly handles: readonly ClassHandle[];
  /** The elements with the effect key of every mode filled in. */
  readonly elements: readonly SearchElement[];
  /** See `ModeBook`. */
  readonly interact: (one: EffectOps, other: EffectOps) => boolean;
  readonly jointOps: (one: EffectOps, other: EffectOps, arrangement: number) => ReadonlyMap<number, RegionOps> | null;
}

/** Compiles every mode of a fault space and finds which are predicted alike. */
export function makeClassBook(cabinet: Cabinet, plan: Plan, space: FaultSpace, scenarios: readonly Scenario[]): ClassBook {
  const modes = ModeBook.of(cabinet, plan.arrangements, scenarios);
  const mayHaveRun = scenarios.some(({ onsets }) => onsets.includes('while-running'));
  const make = () => workOut(cabinet, modes, plan, space, mayHaveRun);
  // Looks are few, but make classes of their own; without any, nothing that was seen matters here.
  return plan.observations.some(({ kind }) => kind === 'look')
    ? make()
    : recentBooks.get(modes, `${mayHaveRun} ${JSON.stringify(plan.provoked)} ${space.key}`, make);
}

const recentBooks = new Recent<ModeBook, ClassBook>(2);

function workOut(cabinet: Cabinet, modes: ModeBook, plan: Plan, space: FaultSpace, mayHaveRun: boolean): ClassBook {
  const classes = new Map<string, EffectOps>();
  const handles: ClassHandle[][] = [];
  const known = new Map<string, ClassHandle>();
  const elements = space.elements.map((element, e) => {
    const row: ClassHandle[] = [];
    handles.push(row);
    const filled = element.modes.map((mode, m) => {
      const fault = space.faults[e]?.[m] ?? missing();
      const compiled = modes.modeOf(fault);
      const looks = looksOf(compiled, cabinet, plan);
      // Where the machine never ran in any scenario, a wiring mistake is like any other fault and may share a class.
      const onlyAtPowerUp = mayHaveRun && (fault.item === 'wiring' || fault.mode === 'fibres-crossed');
      const key = `${onlyAtPowerUp ? 'w' : ''}${compiled.key}${looks.key}`;
      let ops = classes.get(key);
      if (ops === undefined) {
        ops = { ...compiled, key, id: classes.size, looks: looks.concerned, onlyAtPowerUp };
        classes.set(key, ops);
      }
      const provokedIn = plan.provoked.flatMap((provoked, snapshot) =>
        fault.presence === 'intermittent' && isProvoked(provoked, fault) ? [snapshot] : [],
      );
      const effect = `${key}|${fault.presence}|${provokedIn.join()}`;
      let handle = known.get(effect);
      if (handle === undefined) {
        handle = { index: known.size, ops, isIntermittent: fault.presence === 'intermittent', provokedIn, weight: 0 };
        known.set(effect, handle);
      }
      handle.weight += mode.odds;
      row.push(handle);
      return { ...mode, effect };
    });
    return { ...element, modes: filled };
  });
  return {
    compiled: modes.compiled,
    arrangements: plan.arrangements,
    variantOf: (scenario) => modes.variantOf(scenario),
    elements,
    handleOf: ({ element, mode }) => handles[element]?.[mode] ?? missing(),
    handles: [...known.values()],
    interact: (one, other) => modes.interact(one, other),
    jointOps: (one, other, arrangement) => modes.jointOps(one, other, arrangement),
  };
}

/** The looks whose outcome a mode can change, and what of it tells classes apart. */
function looksOf({ effects }: CompiledMode, cabinet: Cabinet, plan: Plan): { readonly concerned: readonly number[]; readonly key: string } {
  const concerned = new Set<number>();
  let key = '';
  for (const inVariant of effects) {
    plan.observations.forEach((seen, index) => {
      const at = seen.kind === 'look' ? (plan.snapshots[seen.snapshot]?.nowArrangement ?? -1) : -1;
      const [state, list] = [plan.arrangements[at], inVariant[at]];
      if (seen.kind === 'look' && state !== undefined && list !== undefined && isLookConcerned(seen.look, list, cabinet, state)) {
        concerned.add(index);
        key += `;${index}${JSON.stringify(list)}`;
      }
    });
  }
  // Whether a later look repeats an earlier one depends on what the earlier one was predicted to show.
  plan.observations.forEach((seen, index) => {
    if (seen.kind === 'look' && seen.earlier.some((other) => concerned.has(other))) {
      concerned.add(index);
    }
  });
  return { concerned: [...concerned].sort((a, b) => a - b), key };
}

function missing(): never {
  throw new Error('a choice outside the fault space');
}
