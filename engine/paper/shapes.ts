import type { Size } from './sizes.ts';

/**
 * What stands on a page. All lengths in mm from the upper left corner, x to the right, y downwards; sizes of type in points. Colours
 * are `#rrggbb`. Everything is drawn in the order of the list.
 */
export type Shape = TextShape | LineShape | BoxShape | PathShape | PictureShape | JumpShape;

/** One line of text. `y` is the baseline. Regular and bold have equal widths; mono is for raw codes. */
export interface TextShape {
  readonly kind: 'text';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  /** Points. */
  readonly size: number;
  readonly face?: Face;
  readonly align?: 'left' | 'center' | 'right';
  /** Turned a quarter to the left around (x, y), so that it reads from below. */
  readonly turned?: boolean;
  readonly colour?: string;
}

export type Face = 'regular' | 'bold' | 'mono';

export interface LineShape {
  readonly kind: 'line';
  /** x, y, x, y, …: at least two points. */
  readonly points: readonly number[];
  readonly width: number;
  readonly colour?: string;
  /** Lengths of dash and gap. */
  readonly dash?: readonly [number, number];
}

export interface BoxShape {
  readonly kind: 'box';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly corner?: number;
  readonly fill?: string;
  readonly line?: { readonly width: number; readonly colour?: string; readonly dash?: readonly [number, number] };
}

/** A drawn sign: an SVG path (commands M L H V A Z and their like), scaled and moved to its place. */
export interface PathShape {
  readonly kind: 'path';
  readonly path: string;
  readonly x: number;
  readonly y: number;
  /** mm for each unit of the path. */
  readonly scale: number;
  readonly fill?: string;
  /** Width in units of the path. */
  readonly stroke?: { readonly width: number; readonly colour: string };
}

/** A photo; `data` is base64. It keeps its proportions and is centred in the box. */
export interface PictureShape {
  readonly kind: 'picture';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly mediaType: string;
  readonly data: string;
  /** Stands in its place when it cannot be drawn, and is read out. */
  readonly words: string;
  readonly instead: string;
}

/** A place that leads to a page of the same document (counted from 1), where a writer can do that. */
export interface JumpShape {
  readonly kind: 'jump';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly page: number;
}

/** A page: its size and what stands on it. */
export interface Page extends Size {
  readonly shapes: readonly Shape[];
}

/** A drawing that is placed as a whole: in a table's cell, between paragraphs, or alone on its page. `words` tell what it shows. */
export interface Figure extends Size {
  readonly shapes: readonly Shape[];
  readonly words: string;
}

/** The inks of paper. Grey is enough: yellow only fills behind black. */
export const inks = {
  black: '#000000',
  /** Text of second rank; 7:1 on white. */
  soft: '#505050',
  line: '#8a8a8a',
  faint: '#d8d8d8',
  /** Behind what complains; prints as a light grey. */
  loss: '#fff1bf',
  caution: '#f4b90a',
  /** What is assumed. */
  plum: '#78245f',
  white: '#ffffff',
} as const;

/** Moves and scales a shape. Type and line widths are scaled with it. */
export function moveShape(shape: Shape, dx: number, dy: number, scale = 1): Shape {
  switch (shape.kind) {
    case 'text':
      return { ...shape, x: dx + shape.x * scale, y: dy + shape.y * scale, size: shape.size * scale };
    case 'line':
      return {
        ...shape,
        points: shape.points.map((value, index) => (index % 2 === 0 ? dx : dy) + value * scale),
        width: shape.width * scale,
      };
    case 'path':
      return { ...shape, x: dx + shape.x * scale, y: dy + shape.y * scale, scale: shape.scale * scale };
    case 'box':
    case 'picture':
    case 'jump':
      return { ...shape, x: dx + shape.x * scale, y: dy + shape.y * scale, width: shape.width * scale, height: shape.height * scale };
  }
}
