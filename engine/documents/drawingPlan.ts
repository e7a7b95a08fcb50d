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
    // Rows of equal length: no single unit is left for the last one.
    const inRow = Math.ceil(chain.units.length / count);
    for (let row = 0; row < count; row++) {
      rows.push({ chain, apart: null, units: chain.units.slice(row * inRow, (row + 1) * inRow), start: row * inRow });
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

/** Spreads rows over sheets. A chain stays on one sheet where that takes no sheet more. */
export function spreadRows(rows: readonly DrawingRow[], rowsPerSheet: number): readonly DrawingSheet[] {
  const full = Array.from({ length: Math.ceil(rows.length / rowsPerSheet) }, (_, sheet) =>
    rows.slice(sheet * rowsPerSheet, (sheet + 1) * rowsPerSheet),
  );
  const whole: DrawingRow[][] = [];
  for (const [index, row] of rows.entries()) {
    const isFirst = row.chain === null || rows[index - 1]?.chain !== row.chain;
    const group = isFirst && row.chain !== null ? rows.filter(({ chain }) => chain === row.chain).length : 1;
    const sheet = whole[whole.length - 1];
    const room = sheet === undefined ? 0 : rowsPerSheet - sheet.length;
    if (sheet === undefined || room === 0 || (group > room && group <= rowsPerSheet)) whole.push([row]);
    else sheet.push(row);
  }
  return whole.length <= full.length ? whole : full;
}

/** On which sheet (from 1) a unit is drawn. */
export function sheetsOf(sheets: readonly DrawingSheet[]): ReadonlyMap<UnitId, number> {
  return new Map(sheets.flatMap((rows, index) => rows.flatMap(({ units }) => units.map((unit) => [unit, index + 1] as const))));
}
