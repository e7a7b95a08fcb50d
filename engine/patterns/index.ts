export { firstStep } from './firstStep.ts';
export { groupPatterns } from './groupPatterns.ts';
export { type Isolation, type IsolationFigures, isolationFigures, isolationOf } from './isolation.ts';
export { simulateSingles } from './simulateSingles.ts';
export type { PatternGroup, Patterns, SingleFault } from './types.ts';
