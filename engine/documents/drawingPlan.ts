import type { UnitId } from '../base/index.ts';
import { type ChainTopology, inMountingOrder, type Topology } from '../topology/index.ts';

/** One row of a drawing: units of one chain in its order, or units that stand apart. */
export interface DrawingRow {
  readonly chain: ChainTopology | null;
  /** Why they stand apart. */
  readonly apart: 'supplies' | 'off-chain' | 'orphans' | null;
  readonly units: readonly UnitId[];
  /** Position of the first unit, less one: 0 where the controller stands before it. */
  readonly start: number;
}

/** Rows of one sheet. */
export type DrawingSheet = readonly DrawingRow[];

/** Spreads a cabinet over rows: chains in their order, then what is on none. */
export function planDrawing(topology: Topology, perRow: number): readonly DrawingRow[] {
  const rows: DrawingRow[] = [];
  for (const chain of topology.chains) {
    const count = Math.max(1, Math.ceil(chain.units.length / perRow));
    for (let row = 0; row < count; row++) {
      rows.push({ chain, apart: null, units: chain.units.slice(row * perRow, (row + 1) * perRow), start: row * perRow });
    }
  }
  const order = inMountingOrder(topology);
  const apart = (why: NonNullable<DrawingRow['apart']>, ids: readonly UnitId[]) => {
    const units = order.filter((unit) => ids.includes(unit));
    for (let start = 0; start < units.length; start += perRow) {
      rows.push({ chain: null, apart: why, units: units.slice(start, start + perRow), start });
    }
  };
  apart('supplies', topology.supplies);
  apart('off-chain', topology.offChain);
  apart('orphans', topology.orphans);
  return rows;
}

/** Spreads rows over sheets. */
export function spreadRows(rows: readonly DrawingRow[], rowsPerSheet: number): readonly DrawingSheet[] {
  return Array.from({ length: Math.ceil(rows.length / rowsPerSheet) }, (_, sheet) =>
    rows.slice(sheet * rowsPerSheet, (sheet + 1) * rowsPerSheet),
  );
}

/** On which sheet (from 1) a unit is drawn. */
export function sheetsOf(sheets: readonly DrawingSheet[]): ReadonlyMap<UnitId, number> {
  return new Map(sheets.flatMap((rows, index) => rows.flatMap(({ units }) => units.map((unit) => [unit, index + 1] as const))));
}
