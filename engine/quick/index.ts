export { kindLetters, nearestKindWord, readKind } from './kindWords.ts';
export { makeQuickCabinet, type QuickParts } from './makeQuickCabinet.ts';
export { parseQuickLine, quickLimits } from './parseQuickLine.ts';
export { areKinds, headWords, plainWord, readChainNumber, typeHeadMeans } from './rowWords.ts';
export { askSharedFeed, feedApart, feedTogether } from './sharedFeed.ts';
export type { QuickPlan, QuickRow, QuickUnit } from './types.ts';
