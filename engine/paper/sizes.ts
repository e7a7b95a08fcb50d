/** Sizes of paper, in mm, upright. */
export const paperSizes = {
  a4: { width: 210, height: 297 },
  a3: { width: 297, height: 420 },
  letter: { width: 215.9, height: 279.4 },
} as const;
export type PaperSize = keyof typeof paperSizes;
export const paperNames = Object.keys(paperSizes) as readonly PaperSize[]; // the keys are exactly the names

/** A point of type in mm: 1/72 inch. */
export const mmPerPoint = 25.4 / 72;

/** A size in mm. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The page of a paper as it is held. */
export function pageSize(paper: PaperSize, isLandscape: boolean): Size {
  const { width, height } = paperSizes[paper];
  return isLandscape ? { width: height, height: width } : { width, height };
}
