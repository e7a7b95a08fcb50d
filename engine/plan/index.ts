export { type ActFacts, actFacts, type ItemModes } from './actFacts.ts';
export { listCauses, type PossibleCause } from './causes.ts';
export { endOf } from './end.ts';
export { evidenceAfter } from './evidenceAfter.ts';
export { listHandBackChecks } from './handBack.ts';
export { listDisplaced, listHandlings, putBack } from './history.ts';
export { machineStateOf } from './machineState.ts';
export { mendedBy } from './mended.ts';
export { bestStep, type PlanOptions, planning, planSteps } from './planSteps.ts';
export { type ReplayStep, replayCase } from './replay.ts';
export type {
  Displaced,
  EndReason,
  EndState,
  Handling,
  Plan,
  PlannedOutcome,
  PlannedStep,
  PlanProgress,
  StepCosts,
  StepRisk,
  UselessReason,
} from './types.ts';
