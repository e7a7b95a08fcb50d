import type { UnitId } from '../base/index.ts';
import { documentedBehaviour } from '../cabinet/index.ts';
import type { Diagnosis } from '../diagnosis/index.ts';
import type { Behaviour } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';

/** One way in which equipment of unknown behaviour may behave. */
export interface BehaviourScenario {
  /** Null: as documented. */
  readonly behaviourOf: ((unit: UnitId) => Behaviour) | null;
  readonly share: number;
}

export const documentedOnly: readonly BehaviourScenario[] = [{ behaviourOf: null, share: 1 }];

/** So many of the likeliest ways are predicted with. */
const mostScenarios = 8;
/** A value less probable than this is left out. */
const negligible = 0.02;

/**
 * The likeliest ways in which equipment of unknown behaviour may behave, by what the evidence says of each parameter (domain section 3);
 * their shares sum to 1. Parameters count as independent; the diagnosis weighs them jointly.
 */
export function likelyBehaviours(cabinet: Cabinet, { behaviours }: Pick<Diagnosis, 'behaviours'>): readonly BehaviourScenario[] {
  type Assumed = readonly { readonly type: string; readonly parameter: string; readonly value: string }[];
  let ways: readonly { readonly assumed: Assumed; readonly share: number }[] = [{ assumed: [], share: 1 }];
  for (const { type, parameter, values } of behaviours) {
    const likely = values.filter(({ probability }) => probability > negligible);
    ways = ways
      .flatMap(({ assumed, share }) =>
        likely.map(({ value, probability }) => ({ assumed: [...assumed, { type, parameter, value }], share: share * probability })),
      )
      .sort((a, b) => b.share - a.share)
      .slice(0, mostScenarios);
  }
  const total = ways.reduce((sum, { share }) => sum + share, 0);
  if (behaviours.length === 0 || total === 0) {
    return documentedOnly;
  }
  return ways.map(({ assumed, share }) => ({ behaviourOf: behaviourUnder(cabinet, assumed), share: share / total }));

  function behaviourUnder(of: Cabinet, assumed: Assumed): (unit: UnitId) => Behaviour {
    const known = new Map<UnitId, Behaviour>();
    return (unit) => {
      const before = known.get(unit);
      if (before !== undefined) {
        return before;
      }
      const type = of.units.get(unit)?.type;
      const own = assumed.filter((one) => one.type === type).map(({ parameter, value }) => [parameter, value]);
      const behaviour: Behaviour = { ...documentedBehaviour(of, unit), ...Object.fromEntries(own) };
      known.set(unit, behaviour);
      return behaviour;
    };
  }
}
