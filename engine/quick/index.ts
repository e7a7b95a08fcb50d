export { kindLetters, nearestKindWord, readKind } from './kindWords.ts';
export { makeQuickCabinet, type QuickParts } from './makeQuickCabinet.ts';
export { parseQuickLine, quickLimits } from './parseQuickLine.ts';
export type { QuickPlan, QuickRow, QuickUnit } from './types.ts';
