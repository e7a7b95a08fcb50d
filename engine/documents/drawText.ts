import { type Face, lineHeight, placeLine, type Shape, textWidth, wrapText } from '../paper/index.ts';

/** Measures of a drawing, mm. */
export const metrics = {
  /** Room at the left, for the controller or for where a chain comes from. */
  side: 42,
  controllerWidth: 29,
  stubWidth: 20,
  unitWidth: 29,
  unitHeight: 37,
  /** From one unit to the next. */
  pitch: 42,
  rowPitch: 51,
  /** Where the fibres run, below the upper edge of a unit. */
  outbound: 15,
  back: 20,
} as const;

const least = 6.5;

interface FitOptions {
  readonly face?: Face;
  readonly lines?: number;
  readonly align?: 'left' | 'center';
  readonly colour?: string;
}

/**
 * Text in a width, its first baseline at y: smaller where it must be, then over several lines, and last cut off with an ellipsis, so that
 * it never runs into what stands beside it.
 */
export function fitText(text: string, x: number, y: number, width: number, size: number, options: FitOptions = {}): readonly Shape[] {
  const { face = 'regular', lines = 1, align = 'left', colour } = options;
  if (text === '') return [];
  let fitted = size;
  while (fitted > least && textWidth(text, fitted, face) > width) fitted -= 0.25;
  const wrapped = wrapText([{ text, face }], lines > 1 ? Math.max(fitted, Math.min(size, 8)) : fitted, width);
  const used = lines > 1 ? Math.max(fitted, Math.min(size, 8)) : fitted;
  const shown = wrapped.slice(0, lines).map((line, index) => {
    const isCut = index === lines - 1 && wrapped.length > lines;
    return isCut ? { runs: [{ text: cutOff(text, wrapped, lines, used, width, face), face }], width: 0 } : line;
  });
  return shown.flatMap((line, index) => {
    const wide = line.runs.reduce((sum, run) => sum + textWidth(run.text, used, run.face), 0);
    return placeLine(line, align === 'center' ? x + (width - wide) / 2 : x, y + index * lineHeight(used), used, colour);
  });
}

/** The last line that is shown, with what was left out told by an ellipsis. */
function cutOff(
  text: string,
  wrapped: readonly { readonly runs: readonly { readonly text: string }[] }[],
  lines: number,
  size: number,
  width: number,
  face: Face,
): string {
  const before = wrapped.slice(0, lines - 1).reduce((sum, line) => sum + line.runs.reduce((all, run) => all + run.text.length, 0) + 1, 0);
  let rest = lines === 1 ? text : text.slice(before);
  while (rest.length > 1 && textWidth(`${rest}…`, size, face) > width) rest = rest.slice(0, -1);
  return `${rest}…`;
}
