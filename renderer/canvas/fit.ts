import type { Topology } from '../../engine/topology/index.ts';
import { type Detail, detailFrom, type Metrics, strip } from './geometry.ts';
import { type Placement, placeCabinet } from './placement.ts';
import { apartRow, type PlacementOptions } from './placementOptions.ts';

/** The room for the drawing, in screen pixels, after what lies over its edges is taken off. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

export interface FitRequest {
  readonly topology: Topology;
  readonly room: Room;
  readonly metrics: Metrics;
  /** Chains that may be drawn as one line of windows when the room is low. */
  readonly foldable: ReadonlySet<string>;
  /** Long chains go on in the next row. */
  readonly wrap: boolean;
  readonly arrangement?: 'chain' | 'mounting';
  readonly above?: number;
  /** Room at the lower edge that nothing is enlarged into: messages come up there. */
  readonly spare?: number;
  /** What is too large is not made a strip, but goes on downwards, readable, below what one sees. */
  readonly goDown?: boolean;
}

/** How the cabinet is drawn so that all of it can be seen. */
export interface Fit {
  readonly zoom: number;
  readonly detail: Detail;
  readonly options: Omit<PlacementOptions, 'detail'>;
}

/** No larger than this when it fits of itself: here a designation is as large as the answer, and nothing on a module should be larger. */
const largest = 1.6;

/** A zoom close to 100 % is made 100 %: only there is every line as sharp as it can be. */
function sharp(zoom: number): number {
  return zoom >= 1 && zoom < 1.1 ? 1 : zoom;
}

/** Zoom at which a designation fits into a module of the middle detail. */
const readable = 0.5;

/** From this zoom on nothing is given up for a larger picture. */
const easy = 0.92;

/** So much larger a picture must become before what stands apart leaves its usual place. */
const worthMoving = 1.08;

/**
 * Finds the greatest detail at which the whole cabinet can be seen: first everything in full, then with unsuspected chains folded,
 * then in the middle detail, last as a strip, whose rows may be wider than the room where that is low.
 */
export function fitCabinet(request: FitRequest): Fit {
  const { topology, room, metrics, foldable, wrap, arrangement = 'chain', above = 0, spare = 0 } = request;
  const pitch = metrics.module + metrics.gap;
  const columns = Math.max(1, Math.floor((room.width - metrics.controller) / pitch));
  const base = {
    arrangement,
    above,
    metrics,
    columns,
    unitsPerRow: null,
    folded: new Set<string>(),
    stripZoom: detailFrom.middle,
    stripGap: strip.callout,
  };
  const tries: readonly Omit<PlacementOptions, 'detail'>[] = [
    base,
    { ...base, folded: foldable },
    { ...base, folded: new Set([...foldable, apartRow]) },
    ...(wrap ? wrapped(topology, base, foldable) : []),
  ];
  const fitted = (detail: 'full' | 'middle') => tries.map((options) => roomiest(topology, options, detail, { ...room, spare }));
  const whole = fitted('full');
  const inFull = whole.find(({ zoom }) => zoom >= easy) ?? best(whole.filter(({ zoom }) => zoom >= detailFrom.full));
  if (inFull) return { zoom: sharp(inFull.zoom), detail: 'full', options: inFull.options };
  const inMiddle = best(fitted('middle').filter(({ zoom }) => zoom >= detailFrom.middle));
  if (inMiddle) return { zoom: Math.min(inMiddle.zoom, detailFrom.full - 0.01), detail: 'middle', options: inMiddle.options };
  if (request.goDown) return fitDownwards(base, room, metrics);
  return fitStrip(topology, base, room);
}

/** Marks side by side; a chain for which the room is not wide enough goes on in the next row, if there is room for that below. */
function fitStrip(topology: Topology, base: Omit<PlacementOptions, 'detail'>, room: Room): Fit {
  const { metrics } = base;
  const pitch = metrics.module + metrics.gap;
  const least = (strip.width + 1) / pitch;
  const forMarks = room.width - strip.controller - strip.edge;
  const longest = Math.max(1, ...topology.chains.map(({ units }) => units.length));
  const perRow = Math.max(1, Math.floor(forMarks / (strip.width + 1)));
  const continued = { ...base, unitsPerRow: longest > perRow ? Math.ceil(longest / Math.ceil(longest / perRow)) : null };
  const rowsOf = (options: typeof base) => placeCabinet(topology, { ...options, detail: 'strip' }).rows.length;
  const options = rowsOf(continued) * (strip.height + strip.leastCallout) <= room.height ? continued : base;
  const wide = placeCabinet(topology, { ...options, detail: 'full' }).width - metrics.controller;
  const zoom = Math.min(detailFrom.middle - 0.01, Math.max(least, forMarks / wide));
  const stripGap = Math.min(strip.callout, Math.max(strip.leastCallout, room.height / Math.max(1, rowsOf(options)) - strip.height));
  return { zoom, detail: 'strip', options: { ...options, stripZoom: zoom, stripGap } };
}

/** Rows as long as the room is wide, in the middle detail. */
function fitDownwards(base: Omit<PlacementOptions, 'detail'>, room: Room, metrics: Metrics): Fit {
  const pitch = metrics.module + metrics.gap;
  const unitsPerRow = Math.max(1, Math.floor((room.width / readable - 1.9 * metrics.controller) / pitch));
  return { zoom: readable, detail: 'middle', options: { ...base, unitsPerRow } };
}

/** Rows of equal length, from two per chain to five. */
function wrapped(topology: Topology, base: Omit<PlacementOptions, 'detail'>, foldable: ReadonlySet<string>) {
  const longest = Math.max(0, ...topology.chains.map(({ units }) => units.length));
  return [2, 3, 4, 5]
    .map((rows) => Math.ceil(longest / rows))
    .filter((size) => size >= 4)
    .flatMap((unitsPerRow) => [
      { ...base, unitsPerRow },
      { ...base, unitsPerRow, folded: foldable },
    ]);
}

/** What stands apart keeps its usual place unless all becomes clearly larger with it below the chains, or beside the longest row. */
function roomiest(
  topology: Topology,
  usual: Omit<PlacementOptions, 'detail'>,
  detail: 'full' | 'middle',
  room: Room & { readonly spare: number },
) {
  const longest = Math.max(1, ...topology.chains.map(({ units }) => units.length));
  const row = Math.min(longest, usual.unitsPerRow ?? longest);
  const fitOf = (options: typeof usual) => ({ options, zoom: zoomFor(placeCabinet(topology, { ...options, detail }), room) });
  const here = fitOf(usual);
  const elsewhere = best([row, row + 1].map((columns) => fitOf({ ...usual, columns })));
  return elsewhere && elsewhere.zoom > worthMoving * here.zoom ? elsewhere : here;
}

function zoomFor(placement: Placement, { width, height, spare }: Room & { readonly spare: number }): number {
  const wide = width / Math.max(1, placement.width);
  const fits = Math.min(1, wide, height / Math.max(1, placement.height));
  return Math.max(fits, Math.min(largest, wide, (height - spare) / Math.max(1, placement.height)));
}

function best<T extends { readonly zoom: number }>(list: readonly T[]): T | undefined {
  return list.reduce<T | undefined>((found, one) => (found && found.zoom >= one.zoom ? found : one), undefined);
}
