export { jsonCases } from './cases.ts';
export {
  interfaceVersion,
  type JsonHead,
  type JsonProblem,
  jsonCabinet,
  jsonProblem,
  jsonUsageProblem,
  makeHead,
  programVersion,
} from './common.ts';
export { type JsonDiagnosis, jsonDiagnosis } from './diagnosis.ts';
export { type JsonPlan, jsonPlan } from './plan.ts';
export { type JsonReplay, jsonReplay } from './replay.ts';
export { type JsonDisplay, type JsonLook, type JsonSimulation, jsonLook, jsonMoments, jsonSimulation, looksAtLink } from './simulation.ts';
export { jsonSums } from './sums.ts';
export { placeCells, unitsInOrder } from './units.ts';
