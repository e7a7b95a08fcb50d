export { editTable, isOwnChange, type TableEdit } from './editTable.ts';
export { listExchangePartners, type PartSource, partFor } from './parts.ts';
export { actsOfThing, repairTable, rowOf, subjectsOf } from './repairTable.ts';
export { listReplaced, type NewPart, type PartOwner, type ReplacedPart, writeReplaced } from './replaced.ts';
export { type ChangeEffect, changeCost, type StateChange, stateChange } from './stateChanges.ts';
export type {
  ActRow,
  ChanceName,
  ChangePart,
  Figure,
  LookName,
  LookRow,
  RepairTable,
  WeightName,
} from './types.ts';
export { chanceNames, changeParts, weightNames } from './types.ts';
