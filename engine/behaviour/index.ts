export { type Example, isSameShown, showParameter } from './exampleChain.ts';
export { proposeBreaks } from './nextBreak.ts';
export { findBehaviour } from './stagedBreak.ts';
export type { NextBreak, ParameterFinding, StagedAct, StagedBreak, StagedFinding } from './types.ts';
