import type { ChainId, LinkId, TypeId, UnitId } from '../base/index.ts';
import type { Behaviour, BehaviourParameter, DisplayMeaning, LinkEnd, LookObservation, Onset } from '../schema/index.ts';

/** How a plug is pulled on a healthy machine, and when the displays are read. */
export interface StagedAct {
  readonly link: LinkId;
  readonly end: LinkEnd;
  /** `while-running`: pulled while the chain was up. `at-power-up`: pulled with everything off, then switched on. */
  readonly onset: Onset;
  /** Read after the plug was put back, without a reset. */
  readonly pluggedAgain: boolean;
}

/** One staged break with all that was read. What nobody read is left out. */
export interface StagedBreak extends StagedAct {
  readonly displays: readonly { readonly unit: UnitId; readonly meanings: readonly DisplayMeaning[] }[];
  readonly reports: readonly { readonly chain: ChainId; readonly gaps: readonly (number | 'none')[] }[];
  readonly looks: readonly LookObservation[];
}

/** A parameter of a type that is asked for. */
export interface AskedParameter {
  readonly type: TypeId;
  readonly parameter: BehaviourParameter;
}

/** A value of a parameter, with its share of the probability (all combinations alike before). */
export interface ValueBelief {
  readonly value: Behaviour[BehaviourParameter];
  readonly probability: number;
  /** Some combination with this value predicts every display and every look as it was read. */
  readonly fits: boolean;
}

/**
 * What the breaks say of one parameter. `settled`: only one value fits. `untouched`: nothing that was read depends on it.
 * Values are in the order of the vocabulary.
 */
export interface ParameterFinding extends AskedParameter {
  readonly values: readonly ValueBelief[];
  readonly state: 'settled' | 'open' | 'untouched';
}

/** The answer to staged breaks. */
export interface StagedFinding {
  readonly parameters: readonly ParameterFinding[];
  /** Combinations of values that were compared, and those that predict every display and look as read. */
  readonly combinations: number;
  readonly fitting: number;
  /** No combination predicts everything: something was misread, or the machine was not whole. Then nothing is excluded. */
  readonly contradicted: boolean;
  /** Units whose display no combination predicts, where that alone is the trouble. */
  readonly unexplained: readonly UnitId[];
  /** Chains whose report names another gap than the unplugged link, whatever the behaviour. */
  readonly reportsElsewhere: readonly ChainId[];
  /** Types of unknown behaviour that had to be set to their defaults, because two at once are the most. */
  readonly setToDefault: readonly TypeId[];
}

/** A further break that would tell something of an open parameter. */
export interface NextBreak extends AskedParameter {
  readonly act: StagedAct;
  /** The light at the port beside the pulled plug has to be looked at as well. */
  readonly withLight: boolean;
  /** Expected information on the parameter, bits. */
  readonly bits: number;
}
