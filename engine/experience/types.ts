import type { ObservationRef } from '../diagnosis/index.ts';
import type { EndReason } from '../plan/index.ts';
import type { Behaviour, BehaviourParameter, CaseContent, CaseEnd, ItemKind, UnitKind } from '../schema/index.ts';

/** A kind of cause: an item or place, and what is wrong with it. */
export interface CauseKind {
  readonly item: ItemKind;
  readonly mode: string;
}

/** A kind of cause with a share of a case: one case is shared out where it does not tell causes apart. Shares add up to 1. */
export interface CauseShare extends CauseKind {
  readonly share: number;
}

/** Why a case is not counted. */
export type NotCounted =
  | { readonly why: 'no-result' }
  | { readonly why: 'other-end'; readonly end: CaseEnd }
  /** By what was seen and done the machine does not run as it should, or too much of what it may have been is not mended. */
  | { readonly why: 'not-proved-by-acts'; readonly because: readonly EndReason[] }
  /** Nothing that was mended explains what was seen, or not what the result names. */
  | { readonly why: 'cause-unclear' }
  /** What is entered was taken over from a simulation. */
  | { readonly why: 'simulated' }
  | { readonly why: 'cabinet-not-sound' }
  /** The same case again, by its id; the one handed back last is counted. */
  | { readonly why: 'counted-already' };

/** Something seen that the documented behaviour predicts otherwise, given the confirmed cause: a display, a report, or a look. */
export interface Difference {
  readonly observation: ObservationRef;
  /** What was seen, and what is predicted: meanings of a display, gaps of a report, outcomes of a look. */
  readonly seen: readonly (string | number)[];
  readonly predicted: string | number;
}

/** Equipment that is alike: kind, model and revision of the unit; the name of its type where it has no model text. */
export interface Equipment {
  readonly kind: UnitKind;
  readonly model: string;
  readonly revision: string;
}

/** One behaviour that, were it so, would explain more of what was seen otherwise than predicted. */
export interface BehaviourClue {
  readonly equipment: Equipment;
  readonly parameter: BehaviourParameter;
  readonly assumed: Behaviour[BehaviourParameter];
  readonly instead: Behaviour[BehaviourParameter];
}

/** A finished repair that counts (`countsAs`). */
export interface ConfirmedCase {
  readonly content: CaseContent;
  readonly causes: readonly CauseShare[];
  /** What could have been the cause, by kind, in proportion to the assumed rates and the number of such parts: exposure. */
  readonly exposures: readonly (CauseKind & { readonly weight: number })[];
  /** The same of everything whose rate somebody wrote into the cabinet; it is not sharpened. */
  readonly fixedWeight: number;
  readonly differences: readonly Difference[];
  readonly clues: readonly BehaviourClue[];
}

/** A case that is not counted. */
export interface UncountedCase {
  readonly content: CaseContent;
  readonly reason: NotCounted;
}

/** A figure with the interval in which it lies with 90 % probability. */
export interface Estimate {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** What the cases make of one rate. */
export interface SharpenedRate extends CauseKind {
  /** Occurrences per year; for wiring mistakes the probability per new or reworked cabinet. */
  readonly assumed: Estimate;
  readonly sharpened: Estimate;
  /** Multiple of what is assumed: sharpened.value / assumed.value. */
  readonly factor: number;
  /** Confirmed cases of this kind, shared cases in parts. */
  readonly cases: number;
  /** How many there should have been at the assumed rate. */
  readonly expected: number;
}

/** A clue with the cases that have it. */
export interface SharedClue extends BehaviourClue {
  readonly cases: readonly CaseContent[];
}

/** What a collection of cases says. */
export interface Experience {
  readonly strength: number;
  readonly confirmed: readonly ConfirmedCase[];
  readonly uncounted: readonly UncountedCase[];
  readonly rates: readonly SharpenedRate[];
  readonly clues: readonly SharedClue[];
}
