export { type Agreement, displayAgreement, isUnread, reportAgreement } from './agreement.ts';
export { consistentHypotheses } from './consistent.ts';
export { type CurrentState, currentState } from './currentState.ts';
export { diagnose } from './diagnose.ts';
export { editRate, type RateEdit } from './editRate.ts';
export { listFaultSpace, type SettledFault } from './elements.ts';
export { fittingPrediction, type Prediction } from './fittingPrediction.ts';
export { displayLogFactors, lookLogFactors, misreading, reportLogFactors } from './likelihood.ts';

export { lookOutcomes } from './plan.ts';
export { isProvoked, presentChance, provokedChance } from './presence.ts';
export {
  defaultDaysSinceWhole,
  isAssumed,
  isWiringMistake,
  type ModeKind,
  ownRate,
  type Rate,
  ratedModes,
  rateOf,
  usualRate,
} from './rates.ts';
export type { DiagnosisOptions } from './searched.ts';
export type {
  AmbiguityGroup,
  BehaviourBelief,
  Contradiction,
  Diagnosis,
  DiagnosisNote,
  HypothesisFault,
  ObservationRef,
  RankedHypothesis,
  RankedItem,
  SuspectItem,
} from './types.ts';
