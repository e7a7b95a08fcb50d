export { addChain, addFeedback } from './addThings.ts';
export { copyThings, maximumClipSigns, readClip } from './clip.ts';
export { type Insertion, insertUnits, whyNotInsert } from './insertUnits.ts';
export { feedUnits, joinPorts, reconnectLead, replugEnd, whyNotFeed, whyNotJoin, whyNotReplug } from './join.ts';
export { moveInChain, moveToPlace } from './moveUnits.ts';
export { duplicateThings, type PasteTarget, pasteClip } from './pasteClip.ts';
export { removeThings } from './removeThings.ts';
export { chainOf, downstreamOf, type Picked, upstreamOf } from './select.ts';
export type { ChainSpot, Edited, EditResult, FeedSource, NewFeedback, NewUnit, Place, Port, Refusal } from './types.ts';
