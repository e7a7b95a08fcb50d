import type { PaperSize } from '../paper/index.ts';

/** A sheet of labels: sizes and places in mm. The labels stand in the middle of the paper. */
export interface LabelSheet {
  readonly paper: PaperSize;
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
  /** Between one label and the next. */
  readonly gapX: number;
  readonly gapY: number;
}

/**
 * The label sizes that can be chosen, as data: common practice for cable flags and unit labels, no published source. On plain
 * paper the thin frames are cut along.
 */
export const labelSheets = {
  'a4-63x16': { paper: 'a4', width: 63, height: 16, columns: 3, rows: 16, gapX: 2, gapY: 1 },
  'a4-48x25': { paper: 'a4', width: 48, height: 25, columns: 4, rows: 11, gapX: 0, gapY: 0 },
  'a4-38x21': { paper: 'a4', width: 38, height: 21, columns: 5, rows: 13, gapX: 0, gapY: 0 },
  'letter-66x25': { paper: 'letter', width: 66, height: 25, columns: 3, rows: 10, gapX: 3, gapY: 0 },
} as const satisfies Readonly<Record<string, LabelSheet>>;
export type LabelSheetName = keyof typeof labelSheets;
