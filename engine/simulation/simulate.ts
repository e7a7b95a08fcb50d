import type { ChainId, UnitId } from '../base/index.ts';
import { documentedBehaviour } from '../cabinet/index.ts';
import type { Behaviour, DisplayMeaning, Fault } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { type Arrangement, arrange } from './arrangement.ts';
import { predictDisplay, predictMeaning } from './displays.ts';
import { type Moment, placeFaults, stateOf } from './moment.ts';
import type { DisplayPrediction, MomentState, ReportPrediction, Simulation, SimulationInput } from './types.ts';

/** Arrangement, faults and behaviour of the two moments of a simulation; also what a look at the light starts from. */
export interface Moments {
  readonly trip: Moment;
  readonly now: Moment;
}

/** How the parts lie at the two moments: `arrange` of what was done before the trip, and of all that was done. */
export interface Arrangements {
  readonly trip: Arrangement;
  readonly now: Arrangement;
}

/** The arrangements of an input, for `layOut`; who lays out many faults over the same acts works them out once. */
export function arrangeBoth({ cabinet, beforeTrip = [], sinceTrip = [] }: Omit<SimulationInput, 'faults'>): Arrangements {
  const trip = arrange(cabinet, beforeTrip);
  return { trip, now: sinceTrip.length === 0 ? trip : arrange(cabinet, [...beforeTrip, ...sinceTrip]) };
}

/** Lays out the two moments. An intermittent fault marked `absentNow` is there at the trip only; without a trip it is not there at all. */
export function layOut(input: SimulationInput, arranged: Arrangements = arrangeBoth(input)): Moments {
  const { cabinet } = input;
  const behaviourOf = input.behaviourOf ?? ((unit: UnitId) => documentedBehaviour(cabinet, unit));
  const presentNow = input.faultsNow ?? input.faults.filter((fault) => !(fault.presence === 'intermittent' && fault.absentNow === true));
  const moment = (arrangement: Arrangement, faults: readonly Fault[]): Moment => ({
    cabinet,
    arrangement,
    behaviourOf,
    placed: placeFaults(faults, cabinet, arrangement, behaviourOf),
    hasBeenUp: input.onset === 'while-running',
  });
  const now = moment(arranged.now, presentNow);
  // Nothing was done since, and everything is still there: one moment serves for both, which halves the work.
  const isSame = arranged.now === arranged.trip && sameFaults(presentNow, input.faults);
  return { now, trip: input.halted === false || isSame ? now : moment(arranged.trip, input.faults) };
}

const sameFaults = (some: readonly Fault[], others: readonly Fault[]): boolean =>
  some.length === others.length && some.every((fault, index) => fault === others[index]);

/**
 * What every display shows now and what the controller reports of every chain, for given faults (domain section 5). Pure: equal
 * input gives an equal answer. Every display and report carries the terms that decided it.
 */
export function simulate(input: SimulationInput): Simulation {
  return simulateMoments(layOut(input));
}

/** The cabinet at the trip, without what is shown then: for those who only ask whether the machine runs. */
export function tripOf(input: SimulationInput): MomentState {
  return stateOf(layOut(input).trip);
}

/** What one display shows, from moments that are laid out; as `simulateMoments` says it, without the reasons. */
export function meaningAt(unit: UnitId, { trip, now }: Moments): DisplayMeaning {
  return predictMeaning(now.cabinet, unit, now.behaviourOf(unit), stateOf(trip), stateOf(now));
}

/** As `simulate`, from moments that are already laid out. */
export function simulateMoments(moments: Moments): Simulation {
  const { cabinet } = moments.now;
  const trip = stateOf(moments.trip);
  const now = stateOf(moments.now);
  const displays = new Map<UnitId, DisplayPrediction>();
  for (const unit of cabinet.units.keys()) {
    const behaviour: Behaviour = moments.now.behaviourOf(unit);
    displays.set(unit, predictDisplay(cabinet, unit, behaviour, trip, now));
  }
  return { displays, reports: predictReports(cabinet, trip), trip, now };
}

/** The controller's report of every chain: the first unit not reached (domain section 5, step 7). */
function predictReports(cabinet: Cabinet, trip: MomentState): ReadonlyMap<ChainId, ReportPrediction> {
  const reports = new Map<ChainId, ReportPrediction>();
  for (const chain of trip.chains) {
    const documented = cabinet.chainById.get(chain.id);
    const isShort = documented !== undefined && chain.units.length < documented.units.length;
    const states = chain.links.map((link) => trip.links.get(link));
    const broken = states.findIndex((state) => state !== undefined && !(state.outbound.hears && state.return.hears));
    const state = states[broken];
    // With a unit bridged the report says nothing, unless the controller tolerates fewer units (domain section 7).
    const speaks = !isShort || documented.record.toleratesFewerUnits === true;
    reports.set(chain.id, {
      chain: chain.id,
      gap: state === undefined ? 'none' : broken + 1,
      speaks,
      length: chain.units.length,
      because:
        state === undefined
          ? []
          : [state.outbound, state.return]
              .filter((fibre) => !fibre.hears)
              .map(({ direction, causes }) => ({ link: state.link, direction, causes })),
    });
  }
  return reports;
}
