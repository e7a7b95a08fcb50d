export { listExchangePartners, type PartSource, partFor } from './parts.ts';
export { repairTable, rowOf } from './repairTable.ts';
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
