/** Sizes of the drawing, in flow units: pixels at 100 %. */
export interface Metrics {
  readonly module: number;
  readonly gap: number;
  readonly controller: number;
  /** Height of a module, and from its top the middle of its ports. */
  readonly height: number;
  readonly port: number;
}

/** Wide windows have the wider modules. */
export const wideMetrics: Metrics = { module: 124, gap: 56, controller: 104, height: 187, port: 148 };
export const narrowMetrics: Metrics = { module: 112, gap: 48, controller: 96, height: 187, port: 148 };

/** How much of a module can be read at a zoom. */
export type Detail = 'full' | 'middle' | 'strip';

/** Least zoom of the full and of the middle detail; below lies the strip. */
export const detailFrom = { full: 0.7, middle: 0.4 } as const;

export function detailAt(zoom: number): Detail {
  // Zoom comes out of divisions: a hair under the limit still counts as on it.
  const rounded = zoom + 1e-6;
  if (rounded >= detailFrom.full) return 'full';
  return rounded >= detailFrom.middle ? 'middle' : 'strip';
}

/** Heights in flow units. A folded row shows one line of windows. */
export const heights = { folded: 60, rowGap: 34, railStep: 12, reportTag: 29, foldedReportTag: 19 } as const;

/** Middle of the ports of a folded row, from its top. */
export const foldedPort = 30;
export const port = { width: 15, height: 38 } as const;

/** Distance of the two fibres from the port's centre. */
export const fibreOffset = 8;

/**
 * The strip in screen pixels: a mark is 24 wide, a module with number and prediction 64 high, callouts need 46 above, the words at the
 * last gap 24 at the right edge; links run at 13.
 */
export const strip = { width: 24, height: 64, callout: 46, leastCallout: 24, edge: 24, port: 13, controller: 100 } as const;

/** How far one can zoom by hand. */
export const zoomLimits = { least: 0.08, most: 3 } as const;
