import type { UnitId } from '../../engine/base/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { type Detail, heights, type Metrics, portCentre, strip } from './geometry.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PlacedUnit extends Box {
  readonly folded: boolean;
  readonly row: number;
  readonly column: number;
}

/** One row of modules. */
export interface PlacedRow {
  readonly y: number;
  readonly height: number;
  readonly folded: boolean;
  /** The chain whose units stand in it; null for what stands apart. */
  readonly chain: string | null;
  /** First row of its chain: the controller's port stands at it. */
  readonly first: boolean;
  /** Columns taken by chain units. */
  readonly used: number;
}

/** A 24 V rail under a row: one for each source that feeds something in it. */
export interface Rail {
  readonly row: number;
  /** Unit and output that feed it. */
  readonly source: string;
  readonly y: number;
}

export interface Placement {
  readonly controller: Box | null;
  readonly rows: readonly PlacedRow[];
  readonly units: ReadonlyMap<UnitId, PlacedUnit>;
  readonly rails: ReadonlyMap<string, Rail>;
  readonly width: number;
  readonly height: number;
  readonly stripZoom: number;
}

export interface PlacementOptions {
  readonly metrics: Metrics;
  readonly detail: Detail;
  /** Columns for which there is room at 100 %. */
  readonly columns: number;
  /** A chain longer than this goes on in the next row; null: one row per chain. */
  readonly unitsPerRow: number | null;
  /** Chains drawn as one line of windows; `apartRow` for the rows of what stands apart. */
  readonly folded: ReadonlySet<string>;
  /** Zoom at which the strip will be seen: it keeps its size in screen pixels. */
  readonly stripZoom: number;
  /** Room above each row of a strip for the words of what complains, screen pixels. */
  readonly stripGap: number;
}

/** Stands in `folded` for the rows of what is on no chain; no id has a space. */
export const apartRow = 'stands apart';

interface RowPlan {
  readonly chain: string | null;
  readonly first: boolean;
  readonly folded: boolean;
  readonly units: UnitId[];
  /** Columns of `units`; grows as things that stand apart are put in. */
  readonly columns: number[];
  used: number;
}

/**
 * Works out where everything stands: rows and slots, nothing by hand. Chains run from the controller to the right, one row each;
 * supplies, drives off the chain and what no chain reaches stand apart, in free slots at the right or in a row of their own.
 */
export function placeCabinet(topology: Topology, options: PlacementOptions): Placement {
  const rows = planChains(topology, options);
  placeApart(topology, rows, options);
  return measure(topology, rows, options);
}

function planChains(topology: Topology, { unitsPerRow, folded }: PlacementOptions): RowPlan[] {
  return topology.chains.flatMap(({ id, units }): RowPlan[] => {
    const size = unitsPerRow ?? Math.max(1, units.length);
    const count = Math.max(1, Math.ceil(units.length / size));
    return Array.from({ length: count }, (_, index) => {
      const own = units.slice(index * size, (index + 1) * size);
      return { chain: id, first: index === 0, folded: folded.has(id), units: own, columns: own.map((_unit, at) => at), used: own.length };
    });
  });
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

function measure(topology: Topology, plans: readonly RowPlan[], options: PlacementOptions): Placement {
  const { metrics, detail, stripZoom, stripGap } = options;
  const pitch = metrics.module + metrics.gap;
  const sources = railSources(topology, plans);
  const rows: PlacedRow[] = [];
  const units = new Map<UnitId, PlacedUnit>();
  const rails = new Map<string, Rail>();
  let y = detail === 'strip' ? stripGap / stripZoom : 0;
  const controllerWidth = widthOfController(options);
  let width = controllerWidth;
  plans.forEach((plan, index) => {
    const folded = plan.folded && detail === 'full';
    const height = detail === 'strip' ? strip.height / stripZoom : folded ? heights.folded : heights.module;
    rows.push({ y, height, folded, chain: plan.chain, first: plan.first, used: plan.used });
    plan.units.forEach((unit, at) => {
      const column = plan.columns[at] ?? at;
      const x = controllerWidth + metrics.gap + column * pitch;
      units.set(unit, { x, y, width: metrics.module, height, folded, row: index, column });
      width = Math.max(width, x + metrics.module);
    });
    const fed = sources[index] ?? [];
    fed.forEach((source, rank) => {
      rails.set(`${index} ${source}`, { row: index, source, y: y + height + 12 + rank * heights.railStep });
    });
    const gap = detail === 'strip' ? stripGap / stripZoom : heights.rowGap + Math.max(0, fed.length - 1) * heights.railStep;
    y += height + gap;
  });
  const chainRows = rows.filter(({ chain }) => chain !== null);
  const [first] = chainRows;
  const last = chainRows[chainRows.length - 1];
  const controller = first && last ? { x: 0, y: first.y, width: controllerWidth, height: last.y + last.height - first.y } : null;
  const bottom = rows[rows.length - 1];
  // Rails, and the words of a report under a gap, reach below the last row.
  const lowest = Math.max(
    0,
    ...[...rails.values()].map((rail) => rail.y + 4),
    (last?.y ?? 0) + (last?.height ?? 0) + (last?.folded ? heights.foldedReportTag : heights.reportTag),
  );
  const height = bottom ? Math.max(bottom.y + bottom.height, detail === 'strip' ? 0 : lowest) : 0;
  return { controller, rows, units, rails, width, height, stripZoom };
}

/** The controller's words need a width on the screen, whatever the zoom. */
function widthOfController({ metrics, detail, stripZoom }: PlacementOptions): number {
  if (detail === 'full') return metrics.controller;
  return detail === 'middle' ? 1.9 * metrics.controller : strip.controller / stripZoom;
}

/** For each row the sources of 24 V that feed something in it, by their key, in order. */
function railSources(topology: Topology, plans: readonly RowPlan[]): readonly (readonly string[])[] {
  return plans.map(({ units }) => {
    const found = new Set<string>();
    for (const unit of units) for (const source of feedRootsOf(topology, unit)) found.add(source);
    return [...found].sort();
  });
}

/** Where the 24 V of a unit come from in the end: supplies with their outputs, followed back through pass-throughs. */
export function feedRootsOf(topology: Topology, unit: UnitId): readonly string[] {
  const roots = new Set<string>();
  const seen = new Set<UnitId>();
  const follow = (to: UnitId) => {
    if (seen.has(to)) return;
    seen.add(to);
    for (const feed of topology.feeds) {
      if (feed.to !== to) continue;
      if (topology.units.get(feed.from)?.kind === 'supply') roots.add(feedSource(topology, feed));
      else follow(feed.from);
    }
  };
  follow(unit);
  return [...roots].sort();
}

/** Key of the supply output that a lead hangs on. */
export function feedSource(topology: Topology, feed: Topology['feeds'][number]): string {
  const output = topology.leads.get(feed.lead)?.from?.output;
  return output === undefined ? feed.from : `${feed.from} ${output}`;
}

/** Where the port of a unit stands, from the top of its module. */
export function portOffset(placed: { readonly folded: boolean; readonly height: number }, detail: Detail): number {
  if (detail === 'strip') return (placed.height * strip.port) / strip.height;
  return placed.folded ? portCentre.folded : portCentre.module;
}
