export { listCautions, listUnnoted, type MachineState, type StepCaution, stateNeeded } from './cautions.ts';
export { chooseParting, chooseSteps } from './chooseSteps.ts';
export { type CurrentState, currentState } from './currentState.ts';
export { rankSteps, stepRanking } from './rankSteps.ts';
export type { RankedStep, Step, StepOutcome } from './types.ts';
