import type { ChainId, UnitId } from '../../engine/base/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { type Detail, foldedPort, heights, strip } from './geometry.ts';
import type { PlacementOptions } from './placementOptions.ts';
import { planRows, type RowPlan } from './planRows.ts';

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
  /** Middle of its optical ports, from its top. */
  readonly port: number;
  /** The unit next to it at the left in its row. */
  readonly left: UnitId | null;
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

/** Where a chain begins at the controller. */
export interface PlacedChain {
  /** Top of the row at which it begins, and its height. */
  readonly y: number;
  readonly height: number;
  readonly folded: boolean;
  /** Middle of the chain port. */
  readonly portY: number;
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
  readonly chains: ReadonlyMap<ChainId, PlacedChain>;
  readonly rails: ReadonlyMap<string, Rail>;
  /** The slot that was asked to be open. */
  readonly opening: Box | null;
  readonly width: number;
  readonly height: number;
  readonly stripZoom: number;
}

/** Height of one line of a cable that runs between two rows. */
export const laneStep = 10;

/**
 * Works out where everything stands: rows and slots, nothing by hand. Chains run from the controller to the right, one row each;
 * supplies, drives off the chain and what no chain reaches stand apart, in free slots at the right or in a row of their own.
 * In mounting order each row of the cabinet is a row, and cables run between the rows.
 */
export function placeCabinet(topology: Topology, options: PlacementOptions): Placement {
  return measure(topology, planRows(topology, options), options);
}

function measure(topology: Topology, plans: readonly RowPlan[], options: PlacementOptions): Placement {
  const { metrics, detail, stripZoom, stripGap, above = 0 } = options;
  const pitch = metrics.module + metrics.gap;
  const sources = railSources(topology, plans);
  const lefts = leftNeighbours(plans);
  const lanes = options.arrangement === 'mounting' ? lanesAbove(topology, plans, lefts) : [];
  const rows: PlacedRow[] = [];
  const units = new Map<UnitId, PlacedUnit>();
  const rails = new Map<string, Rail>();
  let y = (detail === 'strip' ? stripGap / stripZoom : above) + (lanes[0] ?? 0) * laneStep;
  let opening: Box | null = null;
  const controllerWidth = widthOfController(options);
  let width = controllerWidth;
  plans.forEach((plan, index) => {
    const folded = plan.folded && detail === 'full';
    const height = detail === 'strip' ? strip.height / stripZoom : folded ? heights.folded : metrics.height;
    const port = detail === 'strip' ? (height * strip.port) / strip.height : folded ? foldedPort : metrics.port;
    rows.push({ y, height, folded, chain: plan.chain, first: plan.first, used: plan.used });
    const boxAt = (column: number): Box => ({ x: controllerWidth + metrics.gap + column * pitch, y, width: metrics.module, height });
    plan.units.forEach((unit, at) => {
      const column = plan.columns[at] ?? at;
      const box = boxAt(column);
      units.set(unit, { ...box, folded, row: index, column, port, left: lefts.get(unit) ?? null });
      width = Math.max(width, box.x + metrics.module);
    });
    if (options.opening?.row === index) {
      opening = boxAt(options.opening.column);
      width = Math.max(width, opening.x + opening.width);
    }
    const fed = sources[index] ?? [];
    fed.forEach((source, rank) => {
      rails.set(`${index} ${source}`, { row: index, source, y: y + height + 12 + rank * heights.railStep });
    });
    const between = above + heights.rowGap + Math.max(0, fed.length - 1) * heights.railStep + (lanes[index + 1] ?? 0) * laneStep;
    y += height + (detail === 'strip' ? stripGap / stripZoom : between);
  });
  const drawn = { rows, units, rails };
  const chains = placeChains(topology, drawn, options);
  return {
    ...drawn,
    chains,
    opening,
    width,
    stripZoom,
    controller: placeController(topology, drawn, chains, controllerWidth),
    height: wholeHeight(drawn, detail),
  };
}

type Drawn = Pick<Placement, 'rows' | 'units' | 'rails'>;

function wholeHeight({ rows, rails }: Drawn, detail: Detail): number {
  const chainRows = rows.filter(({ chain }) => chain !== null);
  const last = chainRows[chainRows.length - 1];
  const bottom = rows[rows.length - 1];
  // Rails, and the words of a report under a gap, reach below the last row.
  const lowest = Math.max(
    0,
    ...[...rails.values()].map((rail) => rail.y + 4),
    (last?.y ?? 0) + (last?.height ?? 0) + (last?.folded ? heights.foldedReportTag : heights.reportTag),
  );
  return bottom ? Math.max(bottom.y + bottom.height, detail === 'strip' ? 0 : lowest) : 0;
}

/** Chains begin at their first row; in mounting order at the row of their first unit, several one under another. */
function placeChains(topology: Topology, { rows, units }: Drawn, { detail, metrics, arrangement }: PlacementOptions) {
  const placed = new Map<ChainId, PlacedChain>();
  const portOf = (row: PlacedRow) =>
    detail === 'strip' ? (row.height * strip.port) / strip.height : row.folded ? foldedPort : metrics.port;
  if (arrangement !== 'mounting') {
    for (const { id } of topology.chains) {
      const row = rows.find(({ chain, first }) => first && chain === id);
      if (row) placed.set(id, { y: row.y, height: row.height, folded: row.folded, portY: row.y + portOf(row) });
    }
    return placed;
  }
  const begun = new Map<PlacedRow, number>();
  for (const { id, units: own } of topology.chains) {
    const row = rows[units.get(own[0] as UnitId)?.row ?? 0]; // an empty chain begins at the first row
    if (!row) continue;
    const before = begun.get(row) ?? 0;
    begun.set(row, before + 1);
    const step = Math.min(44, (row.height - 60) / Math.max(1, topology.chains.length));
    placed.set(id, { y: row.y, height: row.height, folded: false, portY: row.y + portOf(row) - before * step });
  }
  return placed;
}

function placeController(
  topology: Topology,
  { rows }: Drawn,
  chains: ReadonlyMap<ChainId, PlacedChain>,
  width: number,
): Placement['controller'] {
  const chainRows = rows.filter(({ chain }) => chain !== null);
  const span = chainRows.length > 0 ? chainRows : chains.size > 0 || topology.content.controller ? rows : [];
  const first = span[0];
  const last = span[span.length - 1];
  return first && last ? { x: 0, y: first.y, width, height: last.y + last.height - first.y } : null;
}

function leftNeighbours(plans: readonly RowPlan[]): ReadonlyMap<UnitId, UnitId> {
  const found = new Map<UnitId, UnitId>();
  for (const { units, columns } of plans) {
    const sorted = units.map((unit, index) => ({ unit, column: columns[index] ?? index })).sort((a, b) => a.column - b.column);
    sorted.forEach(({ unit }, index) => {
      const before = sorted[index - 1];
      if (before) found.set(unit, before.unit);
    });
  }
  return found;
}

/** How many cables run above each row: those that do not come straight from the left neighbour. */
function lanesAbove(topology: Topology, plans: readonly RowPlan[], lefts: ReadonlyMap<UnitId, UnitId>): readonly number[] {
  const lanes = plans.map(() => 0);
  const rowOf = new Map(plans.flatMap((plan, row) => plan.units.map((unit) => [unit, row])));
  for (const { units } of topology.chains) {
    units.forEach((unit, index) => {
      const row = rowOf.get(unit);
      if (row !== undefined && lefts.get(unit) !== units[index - 1]) lanes[row] = (lanes[row] ?? 0) + 1;
    });
  }
  return lanes;
}

/** The controller's words need a width on the screen, whatever the zoom. */
function widthOfController({ metrics, detail, stripZoom }: PlacementOptions): number {
  if (detail === 'full') return metrics.controller;
  return detail === 'middle' ? 1.9 * metrics.controller : strip.controller / stripZoom;
}

/** For each row the sources of 24 V that feed something in it, by their key, in order. */
function railSources(topology: Topology, plans: readonly RowPlan[]): readonly (readonly string[])[] {
  const roots = feedRoots(topology);
  return plans.map(({ units }) => [...new Set(units.flatMap((unit) => roots.get(unit) ?? []))].sort());
}

/** Where the 24 V of each unit come from in the end: supplies with their outputs, followed back through pass-throughs. */
export function feedRoots(topology: Topology): ReadonlyMap<UnitId, readonly string[]> {
  const known = rootsByTopology.get(topology);
  if (known) return known;
  const into = new Map<UnitId, Topology['feeds'][number][]>();
  for (const feed of topology.feeds) into.set(feed.to, [...(into.get(feed.to) ?? []), feed]);
  const roots = new Map([...topology.units.keys()].map((unit) => [unit, rootsOf(topology, into, unit)]));
  rootsByTopology.set(topology, roots);
  return roots;
}

const rootsByTopology = new WeakMap<Topology, ReadonlyMap<UnitId, readonly string[]>>();

function rootsOf(topology: Topology, into: ReadonlyMap<UnitId, readonly Topology['feeds'][number][]>, unit: UnitId): readonly string[] {
  const roots = new Set<string>();
  const seen = new Set<UnitId>();
  const follow = (to: UnitId) => {
    if (seen.has(to)) return;
    seen.add(to);
    for (const feed of into.get(to) ?? []) {
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
