export { parseCabinetFile, parseCaseFile, parseTruthFile, serializeCabinet, serializeCase, serializeTruth } from './formats.ts';
export { maximumDepth, maximumFileBytes, maximumValues } from './limits.ts';
export { shapeProblems } from './shapeProblems.ts';
