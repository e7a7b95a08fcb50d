import type { ChainId, TypeId, UnitId } from '../base/index.ts';
import { type Behaviour, type BehaviourParameter, behaviourParameters, behaviourValues, type TypeRecord } from '../schema/index.ts';
import type { Topology } from '../topology/index.ts';

/** The behaviour of a unit of which nothing is documented: the first value of each parameter. */
export const defaultBehaviour: Behaviour = {
  lossScope: behaviourValues.lossScope[0],
  onReceiveLoss: behaviourValues.onReceiveLoss[0],
  idleLight: behaviourValues.idleLight[0],
  complainsFrom: behaviourValues.complainsFrom[0],
  whenBoth: behaviourValues.whenBoth[0],
  holds: behaviourValues.holds[0],
  shortEffect: behaviourValues.shortEffect[0],
};

/** How the controller's end of a chain behaves. */
export type PortBehaviour = Pick<Behaviour, 'onReceiveLoss' | 'idleLight'>;

/** The behaviour that the unit's type documents; a parameter that is left out or unknown has its default. */
export function documentedBehaviour(topology: Topology, unit: UnitId): Behaviour {
  const written = typeOf(topology, unit)?.behaviour;
  return written === undefined ? defaultBehaviour : known(written);
}

/** The behaviour documented for the controller's port of a chain; what is left out or unknown has its default. */
export function documentedPortBehaviour(topology: Topology, chain: ChainId): PortBehaviour {
  const written = topology.chainById.get(chain)?.record.behaviour;
  const { onReceiveLoss, idleLight } = written === undefined ? defaultBehaviour : known(written);
  return { onReceiveLoss, idleLight };
}

/** The parameters of a unit's behaviour that its type says are unknown, in the order in which parameters are listed. */
export function unknownParameters(topology: Topology, unit: UnitId): readonly BehaviourParameter[] {
  return unknownOfType(typeOf(topology, unit));
}

/** The parameters that an equipment type says are unknown. */
export function unknownOfType(type: TypeRecord | undefined): readonly BehaviourParameter[] {
  const written = type?.behaviour;
  return written === undefined ? [] : behaviourParameters.filter((parameter) => written[parameter] === 'unknown');
}

function typeOf(topology: Topology, unit: UnitId): TypeRecord | undefined {
  const type = topology.units.get(unit)?.type;
  return type === undefined ? undefined : topology.types.get(type as TypeId); // this is the look-up
}

type Written = NonNullable<TypeRecord['behaviour']>;

const settledOf = new WeakMap<Written, Behaviour>();

/** A written behaviour with what is left out or unknown at its default. Kept, because the simulation asks often and a record never changes. */
function known(written: Written): Behaviour {
  const kept = settledOf.get(written);
  if (kept !== undefined) return kept;
  const settled = behaviourParameters.map((parameter) => [parameter, written[parameter]] as const);
  // Each entry's value is one of its own parameter: the schema gave it, `unknown` and absent ones are taken out here.
  const found = Object.fromEntries(settled.filter(([, value]) => value !== undefined && value !== 'unknown')) as Partial<Behaviour>;
  const whole: Behaviour = { ...defaultBehaviour, ...found };
  settledOf.set(written, whole);
  return whole;
}
