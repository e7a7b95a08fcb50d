import type { TypeId, UnitId } from '../base/index.ts';
import { documentedBehaviour, mostUnknownTypes, unknownParameters } from '../cabinet/index.ts';
import { type Behaviour, type BehaviourParameter, behaviourValues, type Onset } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { Plan } from './plan.ts';

/** One way in which everything unknown but the faults may be: behaviours of types, onsets of trips. */
export interface Scenario {
  readonly behaviourOf: (unit: UnitId) => Behaviour;
  /** Onset of each trip of the plan. */
  readonly onsets: readonly Onset[];
  /** The share of all ways for which it stands: its prior probability. */
  readonly share: number;
  /** The ways for which it stands, as values by type and parameter; one, unless others were found to predict the same. */
  readonly alike: readonly (readonly Assumed[])[];
}

export interface Assumed {
  readonly type: TypeId;
  readonly parameter: BehaviourParameter;
  readonly value: Behaviour[BehaviourParameter];
}

/** Unknown onsets are averaged over up to this many combinations. */
const mostOnsets = 16;

/** The scenarios to average over, and the types of unknown behaviour that had to be set to their defaults. */
export function listScenarios(
  cabinet: Cabinet,
  plan: Plan,
): { readonly scenarios: readonly Scenario[]; readonly setToDefault: readonly TypeId[] } {
  const unknown = unknownTypes(cabinet);
  const averaged = unknown.slice(0, mostUnknownTypes);
  const setToDefault = unknown.slice(mostUnknownTypes).map(({ type }) => type);
  const isLightLookedAt = plan.observations.some(
    (seen) => seen.kind === 'look' && (seen.look.look === 'light-at-plug' || seen.look.look === 'light-at-port'),
  );
  let assumptions: readonly (readonly Assumed[])[] = [[]];
  for (const { type, parameters, hasFeedback } of averaged) {
    for (const parameter of parameters) {
      // A parameter that nothing observed depends on need not be averaged over: all its values give the same.
      if ((parameter === 'idleLight' && !isLightLookedAt) || (parameter === 'shortEffect' && !hasFeedback)) {
        continue;
      }
      assumptions = assumptions.flatMap((list) => behaviourValues[parameter].map((value) => [...list, { type, parameter, value }]));
    }
  }
  let onsets: readonly (readonly Onset[])[] = [[]];
  for (const { onset } of plan.trips) {
    // Later trips of unknown onset are taken as what a restart is: a power-up. Each averaged one doubles the work.
    const isAveraged = onsets.length < mostOnsets;
    const values: readonly Onset[] = onset !== 'unknown' ? [onset] : isAveraged ? ['while-running', 'at-power-up'] : ['at-power-up'];
    onsets = onsets.flatMap((list) => values.map((value) => [...list, value]));
  }
  const scenarios = assumptions.flatMap((assumed) =>
    onsets.map((list) => ({
      behaviourOf: behaviours(cabinet, assumed),
      onsets: list,
      share: 1 / (assumptions.length * onsets.length),
      alike: [assumed],
    })),
  );
  return { scenarios, setToDefault };
}

interface UnknownType {
  readonly type: TypeId;
  readonly parameters: readonly BehaviourParameter[];
  readonly hasFeedback: boolean;
}

/** Types in use that have unknown parameters, by id. */
function unknownTypes(cabinet: Cabinet): readonly UnknownType[] {
  const found = new Map<TypeId, UnknownType>();
  for (const [unit, record] of cabinet.units) {
    const parameters = unknownParameters(cabinet, unit);
    if (record.type !== undefined && parameters.length > 0 && record.kind !== 'supply') {
      const type = record.type as TypeId;
      const hasFeedback = found.get(type)?.hasFeedback === true || (cabinet.feedbacksOf.get(unit)?.length ?? 0) > 0;
      found.set(type, { type, parameters, hasFeedback });
    }
  }
  return [...found.values()].sort((a, b) => (a.type < b.type ? -1 : 1));
}

/** Behaviours under assumptions; worked out when asked for, since there may be thousands of scenarios. */
function behaviours(cabinet: Cabinet, assumed: readonly Assumed[]): (unit: UnitId) => Behaviour {
  const known = new Map<UnitId, Behaviour>();
  return (unit) => {
    let behaviour = known.get(unit);
    if (behaviour === undefined) {
      const type = cabinet.units.get(unit)?.type;
      const own = assumed.filter((one) => one.type === type);
      behaviour = { ...documentedBehaviour(cabinet, unit), ...Object.fromEntries(own.map(({ parameter, value }) => [parameter, value])) };
      known.set(unit, behaviour);
    }
    return behaviour;
  };
}
