export { confirmCase } from './confirm.ts';
export { gatherExperience, ratesFor } from './gather.ts';
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
