export { countAxes } from './axes.ts';
export {
  type CabinetFigure,
  cabinetFigures,
  changeFigures,
  type FigureChange,
  type ThingFigure,
  thingFigures,
} from './changeFigures.ts';
export { computeSums } from './computeSums.ts';
export { findWaitingTime } from './dcLink.ts';
export type { FeedState } from './feedNetwork.ts';
export { countedWhenOpen } from './leftOpen.ts';
export { findLowVoltage, hasMinimumVoltage, type LowVoltage } from './lowVoltage.ts';
export { findToleratedLoss } from './opticalBudget.ts';
export type { FigureCode, MissingFigure, SumTerm, TermBasis, TermCode, TermStatus, TermUnit } from './terms.ts';
export type {
  ChainAxes,
  DcLinkSums,
  FeedSums,
  FibreBudget,
  LeadLoad,
  LengthLimit,
  Loading,
  Sums,
  SupplyLoad,
  UnitVoltage,
} from './types.ts';
