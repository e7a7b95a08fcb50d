import type { ChainId } from '../../engine/base/index.ts';
import { unknownParameters } from '../../engine/cabinet/index.ts';
import type { Fault } from '../../engine/schema/index.ts';
import { type MomentState, type Simulation, simulate } from '../../engine/simulation/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import type { AppState } from '../state/appState.ts';
import { chainOf, keepPossible } from './faultChoices.ts';
import type { InjectState } from './injectState.ts';
import { type Hop, type LightColumn, listHops, listLight } from './lightWay.ts';

/** Everything that Inject shows. Derived; worked out once for each change. */
export interface InjectModel {
  readonly cabinet: Cabinet;
  readonly faults: readonly Fault[];
  /** Displays and reports at the moment that is shown. */
  readonly simulation: Simulation;
  /** What the displays show now, whichever moment the picture shows: the pattern that can be taken. */
  readonly pattern: Simulation;
  /** The same cabinet with nothing injected. */
  readonly whole: Simulation;
  readonly moment: MomentState;
  /** Nothing is gone since the trip: both moments are alike. */
  readonly momentsAlike: boolean;
  /** The chain along which the light is followed; null where there is none. */
  readonly chain: ChainId | null;
  readonly hops: readonly Hop[];
  /** The hop that is looked at; null: everything at once. */
  readonly hop: number | null;
  readonly light: readonly LightColumn[];
  /** Types of equipment whose behaviour is not known in full: for them the usual one is taken. */
  readonly assumedTypes: readonly string[];
}

interface Inputs {
  readonly cabinet: Cabinet | null;
  readonly faults: readonly Fault[];
  readonly onset: InjectState['onset'];
  readonly moment: InjectState['moment'];
  readonly chain: string | null;
  readonly hop: number | null;
}

function computeInjectModel({ cabinet, faults: asked, onset, moment, chain: wanted, hop }: Inputs): InjectModel | null {
  if (!cabinet) return null;
  const faults = keepPossible(cabinet, asked);
  const pattern = simulate({ cabinet, faults, onset });
  const momentsAlike = !faults.some(({ absentNow }) => absentNow === true);
  // What the displays said at the trip is what they say while everything is still there.
  const simulation = moment === 'now' || momentsAlike ? pattern : simulate({ cabinet, faults, faultsNow: faults, onset });
  const shown = moment === 'now' ? simulation.now : simulation.trip;
  const filled = cabinet.chains.filter(({ units }) => units.length > 0);
  const ofFaults = [...faults].reverse().map((fault) => chainOf(cabinet, fault));
  const chain =
    filled.find(({ id }) => id === wanted) ?? filled.find(({ id }) => id === ofFaults.find((one) => one !== null)) ?? filled[0] ?? null;
  const hops = chain ? listHops(shown, chain.id, simulation.reports.get(chain.id)) : [];
  return {
    cabinet,
    faults,
    simulation,
    pattern,
    whole: simulate({ cabinet, faults: [], onset }),
    moment: shown,
    momentsAlike,
    chain: chain?.id ?? null,
    hops,
    hop: hop === null || hops.length === 0 ? null : Math.min(hop, hops.length - 1),
    light: chain ? listLight(shown, chain.id) : [],
    assumedTypes: [...cabinet.types.values()]
      .filter(({ id }) =>
        [...cabinet.units.values()].some((unit) => unit.type === id && unknownParameters(cabinet, unit.id as never).length > 0),
      ) // the unit comes from the cabinet itself
      .map(({ name }) => name),
  };
}

let last: { readonly inputs: Inputs; readonly model: InjectModel | null } | null = null;

/** The simulation of a state; null while it is off, or where the cabinet cannot be simulated. The same object for equal inputs. */
export function selectInjectModel(state: AppState): InjectModel | null {
  if (!state.inject.on) return null;
  const { faults, onset, moment, chain, hop } = state.inject;
  const inputs: Inputs = { cabinet: state.checked.cabinet, faults, onset, moment, chain, hop };
  const keys = Object.keys(inputs) as (keyof Inputs)[]; // Object.keys is typed as string[]; these are the keys of the literal above
  if (last && keys.every((key) => last?.inputs[key] === inputs[key])) return last.model;
  last = { inputs, model: computeInjectModel(inputs) };
  return last.model;
}

/** How many hops the way of the light has in a state. */
export function countHops(state: AppState): number {
  return selectInjectModel(state)?.hops.length ?? 0;
}
