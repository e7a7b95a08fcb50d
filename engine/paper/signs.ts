import { inks, type PathShape, type Shape } from './shapes.ts';

/** A drawn sign on a grid: filled pieces, and lines of a width in units of that grid. */
export interface Sign {
  readonly grid: number;
  readonly pieces: readonly { readonly path: string; readonly stroke?: number }[];
}

const dot = { path: circle(8, 8, 2.25) };
const wedge = { path: 'M1 1H9.9L1 9.9Z' };
const corner = { path: 'M12.8 2H15V15H2V12.8H12.8Z' };

/*
 * The same marks as in the window. Centre dot: lit and speaking. Upper left: towards the controller. Lower right: away from it.
 */
export const displaySigns = {
  dark: { grid: 16, pieces: [{ path: 'M1.9 1.9H14.1V14.1H1.9Z', stroke: 1.8 }] },
  quiet: { grid: 16, pieces: [{ path: circle(8, 8, 6), stroke: 1.7 }, dot] },
  'upstream-loss': { grid: 16, pieces: [wedge, dot] },
  'downstream-loss': { grid: 16, pieces: [dot, corner] },
  'both-losses': { grid: 16, pieces: [wedge, dot, corner] },
  other: { grid: 16, pieces: [{ path: 'M8 1.6V14.4M2.46 4.8L13.54 11.2M13.54 4.8L2.46 11.2', stroke: 2.3 }] },
  'not-looked-at': { grid: 16, pieces: [{ path: 'M2 7H4.4V9.4H2ZM6.8 7H9.2V9.4H6.8ZM11.6 7H14V9.4H11.6Z' }] },
} as const satisfies Readonly<Record<string, Sign>>;

/** The sign of the house: two modules and the duplex line between them. */
export const houseSign: Sign = {
  grid: 22,
  pieces: [
    { path: 'M1 3.5H7V18.5H1ZM15 3.5H21V18.5H15Z', stroke: 2 },
    { path: 'M7 8.3H15', stroke: 2.6 },
    { path: 'M7 13.2H15M7 15.2H15', stroke: 1 },
  ],
};

export const warningSign: Sign = {
  grid: 16,
  pieces: [{ path: 'M8 1.6L15 14H1Z', stroke: 1.6 }, { path: 'M7.1 5.6H8.9L8.6 10H7.4ZM7.1 11H8.9V12.6H7.1Z' }],
};

/** The shapes of a sign, `size` mm wide, with its upper left corner at (x, y). */
export function placeSign(sign: Sign, x: number, y: number, size: number, colour: string = inks.black): readonly Shape[] {
  return sign.pieces.map(
    ({ path, stroke }): PathShape => ({
      kind: 'path',
      path,
      x,
      y,
      scale: size / sign.grid,
      ...(stroke === undefined ? { fill: colour } : { stroke: { width: stroke, colour } }),
    }),
  );
}

/** A circle as a path: two half arcs. */
export function circle(x: number, y: number, radius: number): string {
  return `M${x - radius} ${y}A${radius} ${radius} 0 1 0 ${x + radius} ${y}A${radius} ${radius} 0 1 0 ${x - radius} ${y}Z`;
}
