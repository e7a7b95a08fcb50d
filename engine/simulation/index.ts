export { type Arrangement, arrange, arrangedChains, endKey, otherEnd } from './arrangement.ts';
export { type Effect, effectsOf } from './effects.ts';
export { itemKey, modeKey } from './itemKey.ts';
export { isNoLightNormal, type Look, type LookOutcome, outcomeAt, predictLook } from './looks.ts';
export { type Moment, type PlacedEffect, stateOf } from './moment.ts';
export { findPowered, findReached } from './power.ts';
export { type Arrangements, arrangeBoth, layOut, type Moments, meaningAt, simulate, simulateMoments, tripOf } from './simulate.ts';
export type {
  DisplayPrediction,
  DisplayTerm,
  FibreCause,
  FibreState,
  LinkState,
  MomentName,
  MomentState,
  ReportPrediction,
  Simulation,
  SimulationInput,
  UnitCause,
  UnitState,
} from './types.ts';
