export {
  defaultBehaviour,
  documentedBehaviour,
  documentedPortBehaviour,
  type PortBehaviour,
  unknownParameters,
} from './behaviour.ts';
export { type CheckedCabinet, checkCabinet } from './checkCabinet.ts';
export { mostUnknownTypes } from './checks/index.ts';
export {
  isOwnFile,
  maximumDepth,
  maximumFileBytes,
  maximumValues,
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
  shapeProblems,
} from './file/index.ts';
