export {
  isOwnFile,
  parseCabinetFile,
  parseCaseFile,
  parseExerciseFile,
  parseResultFile,
  parseTruthFile,
  serializeCabinet,
  serializeCase,
  serializeExercise,
  serializeResult,
  serializeTruth,
} from './formats.ts';
export { maximumDepth, maximumFileBytes, maximumValues } from './limits.ts';
export { shapeProblems } from './shapeProblems.ts';
