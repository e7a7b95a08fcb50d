export { listCautions, listUnnoted, positionsAtRisk, type StepCaution, stateNeeded } from './cautions.ts';
export { chooseParting, chooseSteps } from './chooseSteps.ts';
export { stepsFor } from './listSteps.ts';
export { chanceWhile, isWhole, makeSetting, makeSettingAt, predictStep, presences, type Setting } from './predictStep.ts';
export { bulkOf, rankStep, rankSteps } from './rankSteps.ts';
export type { RankedStep, Step, StepOutcome } from './types.ts';
