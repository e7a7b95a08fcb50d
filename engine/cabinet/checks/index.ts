export { checkBehaviours, mostUnknownTypes } from './behaviours.ts';
export { checkChains } from './chainLimits.ts';
export { checkFigures } from './figures.ts';
export { checkIds } from './ids.ts';
export { checkNames } from './names.ts';
export { checkParts } from './parts.ts';
export { checkPlaces } from './places.ts';
export { checkReferences } from './references.ts';
