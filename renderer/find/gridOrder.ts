import type { Candidate } from './candidates.ts';
import { spotKey } from './candidates.ts';
import type { Row } from './findModel.ts';
import type { GridColumn } from './gridColumns.ts';

/** How the rows of the grid can be ordered. */
export const gridOrders = ['probability', 'agreement', 'chain'] as const;
export type GridOrder = (typeof gridOrders)[number];

/** The rows in an order; what is equal stays as it stands, most probable first. */
export function orderRows(rows: readonly Row[], order: GridOrder, columns: readonly GridColumn[]): readonly Row[] {
  if (order === 'probability') return rows;
  const against = ({ prediction }: Row) => prediction?.against ?? Number.POSITIVE_INFINITY;
  const fitting = ({ prediction }: Row) => prediction?.fitting ?? 0;
  const places = new Map(rows.map((row) => [row, placeOf(row.candidate, columns)]));
  const place = (row: Row) => places.get(row) ?? 0;
  return [...rows].sort(
    order === 'agreement' ? (a, b) => against(a) - against(b) || fitting(b) - fitting(a) : (a, b) => place(a) - place(b),
  );
}

/** The first column at which a candidate's fault lies; what has none stands last. */
function placeOf({ spots }: Candidate, columns: readonly GridColumn[]): number {
  const keys = spots.map(spotKey);
  const index = columns.findIndex((column) => {
    if (column.kind === 'link') return keys.includes(`link/${column.link}`);
    if (column.kind === 'unit') return keys.includes(`unit/${column.unit}`) || keys.includes(`supply/${column.unit}`);
    return column.kind === 'report' && (keys.includes(`chain-port/${column.chain}`) || keys.includes('controller'));
  });
  return index < 0 ? columns.length : index;
}

/** How many rows from this one on belong to one ambiguity group; 0 where the row goes on with the group of the row above. */
export function groupRun(rows: readonly Row[], index: number): number {
  const row = rows[index];
  if (!row || row.letter === null) return 1;
  if (rows[index - 1]?.candidate.group === row.candidate.group) return 0;
  let run = 1;
  while (rows[index + run]?.candidate.group === row.candidate.group) run += 1;
  return run;
}
