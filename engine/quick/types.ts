import type { UnitKind } from '../schema/index.ts';

/** One unit as the line names it. A supply is never on a chain. */
export interface QuickUnit {
  readonly kind: UnitKind;
  readonly onChain: boolean;
}

/** One row of the cabinet, in the order in which the line names its units: a chain from the controller outwards, or what is on none. */
export interface QuickRow {
  /** Number of the chain; null where nothing of the row is on a chain. */
  readonly chain: number | null;
  readonly units: readonly QuickUnit[];
}

/** What a line says: at least one row with a chain. */
export interface QuickPlan {
  readonly rows: readonly QuickRow[];
}
