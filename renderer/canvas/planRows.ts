import { compareNatural, type UnitId } from '../../engine/base/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { apartRow, type PlacementOptions } from './placementOptions.ts';

/** One row before anything is measured. */
export interface RowPlan {
  readonly chain: string | null;
  /** First row of its chain. */
  readonly first: boolean;
  readonly folded: boolean;
  readonly units: UnitId[];
  /** Columns of `units`; grows as things that stand apart are put in. */
  readonly columns: number[];
  used: number;
}

/** Sorts the units into rows and columns, by the way the light runs or by where they stand in the cabinet. */
export function planRows(topology: Topology, options: PlacementOptions): RowPlan[] {
  const rows = options.arrangement === 'mounting' ? planMounting(topology, options) : planChains(topology, options);
  if (options.opening) openSlot(rows, options.opening);
  return rows;
}

function planChains(topology: Topology, options: PlacementOptions): RowPlan[] {
  const rows = topology.chains.flatMap(({ id, units }): RowPlan[] =>
    cut(units, options.unitsPerRow).map((own, index) => ({
      chain: id,
      first: index === 0,
      folded: options.folded.has(id),
      units: own,
      columns: own.map((_unit, at) => at),
      used: own.length,
    })),
  );
  placeApart(topology, rows, options);
  return rows;
}

function cut(units: readonly UnitId[], unitsPerRow: number | null): UnitId[][] {
  const size = unitsPerRow ?? Math.max(1, units.length);
  return Array.from({ length: Math.max(1, Math.ceil(units.length / size)) }, (_, index) => units.slice(index * size, (index + 1) * size));
}

/** Puts what is on no chain into free slots: columns beyond the longest chain, then ends of short rows, then rows of its own. */
function placeApart(topology: Topology, rows: RowPlan[], { columns, folded }: PlacementOptions): void {
  const apart = [...topology.orphans, ...topology.offChain, ...topology.supplies];
  const longest = Math.max(0, ...rows.map(({ used }) => used));
  const free: { readonly row: RowPlan; readonly column: number }[] = [];
  for (let column = longest; column < columns; column += 1) for (const row of rows) free.push({ row, column });
  for (const row of [...rows].reverse()) for (let column = row.used; column < longest; column += 1) free.push({ row, column });
  // In a folded or continued row nothing else should stand: it would read as a part of the chain.
  const slots = free.filter(({ row }) => row.first || row.chain === null);
  const perRow = Math.max(1, columns, longest);
  let own: RowPlan | null = null;
  for (const unit of apart) {
    const slot = slots.shift();
    if (slot) {
      slot.row.units.push(unit);
      slot.row.columns.push(slot.column);
      continue;
    }
    if (!own || own.units.length >= perRow) {
      own = { chain: null, first: false, folded: folded.has(apartRow), units: [], columns: [], used: 0 };
      rows.push(own);
    }
    own.columns.push(own.units.length);
    own.units.push(unit);
  }
}

/** Mounting rows from the top, each from the left; what has no place stands in a row of its own at the end. */
function planMounting(topology: Topology, { unitsPerRow }: PlacementOptions): RowPlan[] {
  const byRow = new Map<number, UnitId[]>();
  for (const [id, { row, slot }] of topology.units) {
    const key = row === undefined || slot === undefined ? Number.POSITIVE_INFINITY : row;
    const list = byRow.get(key) ?? [];
    list.push(id);
    byRow.set(key, list);
  }
  const slotOf = (id: UnitId) => topology.units.get(id)?.slot ?? 0;
  const named = (id: UnitId) => topology.units.get(id)?.designation ?? '';
  return [...byRow]
    .sort(([a], [b]) => a - b)
    .flatMap(([, units]) => {
      const sorted = [...units].sort((a, b) => slotOf(a) - slotOf(b) || compareNatural(named(a), named(b)) || compareNatural(a, b));
      return cut(sorted, unitsPerRow);
    })
    .map((units) => ({ chain: null, first: false, folded: false, units, columns: units.map((_unit, at) => at), used: units.length }));
}

/** The row parts: from a column on everything stands one further. */
function openSlot(rows: readonly RowPlan[], { row, column }: NonNullable<PlacementOptions['opening']>): void {
  const plan = rows[row];
  if (!plan) return;
  plan.columns.forEach((at, index) => {
    if (at >= column) plan.columns[index] = at + 1;
  });
}
