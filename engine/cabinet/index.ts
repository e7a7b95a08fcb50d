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
} from './file/formats.ts';
export { maximumDepth, maximumFileBytes, maximumValues } from './file/limits.ts';
export { shapeProblems } from './file/shapeProblems.ts';
export { installedNumbers } from './installedNumbers.ts';
export { type References, type UnknownName, unknownInActs, unknownInEvidence, unknownReferences } from './unknownNames.ts';
