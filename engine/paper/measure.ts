import { glyphWidths, monoWidth, unknownWidth } from './glyphWidths.ts';
import type { Face } from './shapes.ts';
import { mmPerPoint } from './sizes.ts';

/** Width of a text in mm, set in points, without kerning; writers set it the same way. A sign that the typeface lacks counts as a wide one. */
export function textWidth(text: string, size: number, face: Face = 'regular'): number {
  let width = 0;
  for (const sign of text) {
    width += face === 'mono' ? monoWidth : (glyphWidths.get(sign) ?? unknownWidth);
  }
  return (width / 1000) * size * mmPerPoint;
}

/** Height of a capital, as a share of the size of type. */
export const capitalShare = 0.75;
/** From baseline to baseline, as a share of the size of type. */
export const lineShare = 1.3;

/** From baseline to baseline, in mm. */
export const lineHeight = (size: number): number => size * mmPerPoint * lineShare;

/** The baseline on which a line of that size stands in the middle of a height that begins at `top`. */
export const middleBaseline = (top: number, height: number, size: number): number =>
  top + height / 2 + (size * mmPerPoint * capitalShare) / 2;
