import type { Detail, Metrics } from './geometry.ts';

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
  /** Room kept above every row for what stands on the upper edge of its modules. */
  readonly above?: number;
  /** How the light runs (left out), or where the units stand. */
  readonly arrangement?: 'chain' | 'mounting';
  /** A place that is held open for something that is about to be dropped there. */
  readonly opening?: { readonly row: number; readonly column: number } | null;
}

/** Stands in `folded` for the rows of what is on no chain; no id has a space. */
export const apartRow = 'stands apart';
