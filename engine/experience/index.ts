export { equipmentKey, equipmentOf } from './behaved.ts';
export { confirmCase, countsAs } from './confirm.ts';
export { type CaseEffect, effectOf, gatherExperience, ratesFor, withoutCase, withStrength } from './gather.ts';
export { leastStrength, mostStrength, usualStrength } from './sharpen.ts';
export type {
  BehaviourClue,
  CauseShare,
  ConfirmedCase,
  Difference,
  Equipment,
  Estimate,
  Experience,
  NotCounted,
  SharedClue,
  SharpenedRate,
  UncountedCase,
} from './types.ts';
