import type { ChainId, TypeId, UnitId } from '../base/index.ts';
import type { Behaviour, BehaviourParameter, Fault, ItemKind, Presence } from '../schema/index.ts';

/** An item or place at fault without its mode: what a person exchanges, cleans or mends. `key` is its stable id, e.g. `cable/w3`, `plug/w3/upper`. */
export interface SuspectItem {
  readonly key: string;
  readonly kind: ItemKind;
  /** Reference fields as in `Fault` (`link`, `end`, `unit`, `chain`, `lead`, `feedback`). */
  readonly fault: Fault;
}

/** A fault as a hypothesis holds it: settled mode and presence. */
export interface HypothesisFault {
  readonly item: string;
  readonly fault: Fault & { readonly presence: Presence };
}

/** A visited hypothesis with its share of the whole probability. An empty list of faults means that nothing is broken. */
export interface RankedHypothesis {
  readonly faults: readonly HypothesisFault[];
  readonly probability: number;
  /** Prior odds of the hypothesis against "nothing is broken". */
  readonly priorOdds: number;
  readonly likelihood: number;
  readonly group: number;
}

/** A suspect item with the summed probability of all hypotheses that contain it. */
export interface RankedItem {
  readonly item: SuspectItem;
  readonly probability: number;
  /** The same, mode by mode, most probable first; presences added up. */
  readonly modes: readonly { readonly mode: string; readonly probability: number; readonly intermittent: number }[];
}

/** Hypotheses that what was observed cannot tell apart. Inside it only the prior ranks. */
export interface AmbiguityGroup {
  readonly id: number;
  readonly probability: number;
  /** Items that stand alone as the fault in this group, most probable first, with their share of the whole probability. */
  readonly items: readonly { readonly item: string; readonly probability: number }[];
  /** How many hypotheses belong to it, those too improbable to be grouped left out. */
  readonly hypotheses: number;
}

/** Names one observation: snapshot by its index, and what was looked at. */
export type ObservationRef =
  | { readonly kind: 'display'; readonly snapshot: number; readonly unit: UnitId }
  | { readonly kind: 'report'; readonly snapshot: number; readonly chain: ChainId }
  | { readonly kind: 'look'; readonly snapshot: number; readonly index: number };

/** The most probable hypothesis does not explain all that was seen: either something was misread, or something rarer is the matter. */
export interface Contradiction {
  /** What the most probable hypothesis mispredicts. */
  readonly mispredicted: readonly ObservationRef[];
  /** Observations without which some visited hypothesis predicts all the rest, each with the best such hypothesis. */
  readonly withoutWhich: readonly { readonly observation: ObservationRef; readonly instead: readonly HypothesisFault[] }[];
}

/** Something about how the answer was reached that a reader must know. */
export type DiagnosisNote =
  | { readonly code: 'rates-assumed' }
  /** Assumed rates, sharpened by so many confirmed cases. */
  | { readonly code: 'rates-sharpened'; readonly cases: number }
  | { readonly code: 'type-set-to-default'; readonly type: TypeId }
  /** So many moments that the presence of intermittent faults was averaged over a sample of its patterns. */
  | { readonly code: 'presence-sampled' }
  /** Unknown in so many ways that only the likeliest were weighed with pairs of faults. */
  | { readonly code: 'behaviour-narrowed' }
  /** No 24 V lead is documented: every unit is taken to be fed, and faults of the feeds are not among the suspects. */
  | { readonly code: 'feeds-not-documented' }
  | { readonly code: 'nothing-observed' };

/** For an equipment type of unknown behaviour: how the evidence spreads over one of its parameters. */
export interface BehaviourBelief {
  readonly type: TypeId;
  readonly parameter: BehaviourParameter;
  readonly values: readonly { readonly value: Behaviour[BehaviourParameter]; readonly probability: number }[];
}

/** The answer of the diagnosis. All lists are ordered by probability, ties by id. */
export interface Diagnosis {
  readonly items: readonly RankedItem[];
  /** The most probable hypotheses; `hypothesesVisited` tells how many there were. */
  readonly hypotheses: readonly RankedHypothesis[];
  readonly groups: readonly AmbiguityGroup[];
  /** Probability that nothing is broken at all (zero when the machine is halted). */
  readonly nothingBroken: number;
  /** Upper bound of the probability of everything not visited (three faults and more), 0 to 1. */
  readonly unvisitedShare: number;
  readonly contradiction: Contradiction | null;
  /** The evidence excludes everything visited: no probability can be given, lists are empty. */
  readonly impossible: boolean;
  readonly behaviours: readonly BehaviourBelief[];
  readonly notes: readonly DiagnosisNote[];
  readonly hypothesesVisited: number;
}
