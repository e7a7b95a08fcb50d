export { type BehaviourScenario, likelyBehaviours } from './behaviourScenarios.ts';
export { hangingAxes, listCautions, listUnnoted, positionsAtRisk, type StepCaution, stateNeeded } from './cautions.ts';
export { chooseParting } from './chooseParting.ts';
export { chanceWhile, isWhole, type LookStep, makeSetting, makeSettingAt, predictStep, presences, type Setting } from './predictStep.ts';
export { bulkOf, rankStep } from './rankStep.ts';
export { stepsFor } from './stepsFor.ts';
export type { RankedStep, Step, StepOutcome } from './types.ts';
