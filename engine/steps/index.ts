export { type CurrentState, currentState } from './currentState.ts';
export { rankSteps } from './rankSteps.ts';
export type { RankedStep, Step, StepOutcome } from './types.ts';
