export { buildTopology } from './buildTopology.ts';
export { isFeedDocumented } from './feeds.ts';
export {
  findByOrdinal,
  findByPosition,
  findChainByName,
  findFeedbackByName,
  findLeadByName,
  findLinkByName,
  findUnitByName,
  inMountingOrder,
} from './find.ts';
export { cableName, chainName, unitName } from './names.ts';
export type { Cabinet, ChainPlace, ChainTopology, Feed, Topology } from './types.ts';
