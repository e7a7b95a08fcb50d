import type { LinkId, TypeId, UnitId } from '../base/index.ts';
import { documentedBehaviour, mostUnknownTypes, unknownParameters } from '../cabinet/index.ts';
import { type Behaviour, type BehaviourParameter, behaviourParameters, behaviourValues } from '../schema/index.ts';
import type { SimulationInput } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { AskedParameter, StagedAct } from './types.ts';

/** One value for every asked parameter, in their order. */
export type Combination = readonly Behaviour[BehaviourParameter][];

/** What is asked, and the types that are more than can be asked at once. */
export interface Asked {
  readonly asked: readonly AskedParameter[];
  readonly setToDefault: readonly TypeId[];
}

/**
 * The parameters that breaks of these links can be asked for: the unknown ones of the types on their chains. Of `thoroughly`, if
 * given, every parameter is asked, also those that are documented.
 */
export function askParameters(cabinet: Cabinet, links: readonly LinkId[], thoroughly?: TypeId): Asked {
  const found = new Map<TypeId, readonly BehaviourParameter[]>();
  for (const chain of cabinet.chains) {
    if (!chain.links.some((link) => links.includes(link))) {
      continue;
    }
    for (const unit of chain.units) {
      // A unit's type is the id of a type; the schema has it as plain text.
      const type = cabinet.units.get(unit)?.type as TypeId | undefined;
      const parameters = type === thoroughly ? behaviourParameters : unknownParameters(cabinet, unit);
      if (type !== undefined && cabinet.types.has(type) && parameters.length > 0) {
        found.set(type, parameters);
      }
    }
  }
  const types = [...found.keys()].sort((a, b) => Number(b === thoroughly) - Number(a === thoroughly) || (a < b ? -1 : 1));
  return {
    asked: types.slice(0, mostUnknownTypes).flatMap((type) => (found.get(type) ?? []).map((parameter) => ({ type, parameter }))),
    setToDefault: types.slice(mostUnknownTypes),
  };
}

/** Every combination of values of some parameters. */
export function listCombinations(asked: readonly AskedParameter[]): readonly Combination[] {
  return asked.reduce<readonly Combination[]>(
    (list, { parameter }) => list.flatMap((combination) => behaviourValues[parameter].map((value) => [...combination, value])),
    [[]],
  );
}

/** The behaviour of every unit when the asked parameters have these values. */
export function behaviourBy(cabinet: Cabinet, asked: readonly AskedParameter[], values: Combination): (unit: UnitId) => Behaviour {
  const known = new Map<UnitId, Behaviour>();
  return (unit) => {
    const before = known.get(unit);
    if (before !== undefined) {
      return before;
    }
    const type = cabinet.units.get(unit)?.type;
    const own = asked.flatMap((one, index) => (one.type === type ? [[one.parameter, values[index]]] : []));
    // Each value is one of its own parameter: `listCombinations` took it from there.
    const behaviour = { ...documentedBehaviour(cabinet, unit), ...(Object.fromEntries(own) as Partial<Behaviour>) };
    known.set(unit, behaviour);
    return behaviour;
  };
}

/** A staged break as the simulation takes it: nothing is broken, and one plug is out at the trip. */
export function inputFor(cabinet: Cabinet, act: StagedAct, behaviourOf: (unit: UnitId) => Behaviour): SimulationInput {
  const { link, end, onset, pluggedAgain } = act;
  return {
    cabinet,
    faults: [],
    onset,
    beforeTrip: [{ do: 'unplug', link, end }],
    sinceTrip: pluggedAgain ? [{ do: 'plug-in', link, end }] : [],
    behaviourOf,
  };
}

/**
 * Whether anything that such a break shows can depend on a parameter (domain section 5): nothing is short-circuited, light matters
 * only where somebody looks at it, and displays hold or begin to complain only in the cases named.
 */
export function canMatter(parameter: BehaviourParameter, acts: readonly StagedAct[], withLight: boolean): boolean {
  switch (parameter) {
    case 'shortEffect':
      return false;
    case 'idleLight':
      return withLight;
    case 'complainsFrom':
      return acts.some(({ onset }) => onset === 'at-power-up');
    case 'holds':
      return acts.some(({ pluggedAgain }) => pluggedAgain);
    default:
      return true;
  }
}
