import { type Face, lineHeight, placeLine, type Shape, textWidth, wrapText } from '../paper/index.ts';

/** Measures of a drawing, mm. */
export const metrics = {
  /** Room at the left, for the controller or for where a chain comes from. */
  side: 42,
  controllerWidth: 29,
  stubWidth: 20,
  /** Units are at least so wide, and at most, where a sheet leaves more room. */
  leastUnit: 29,
  widestUnit: 38,
  unitHeight: 37,
  /** Between one unit and the next. */
  gap: 13,
  rowPitch: 51,
  /** Where the fibres run, below the upper edge of a unit. */
  outbound: 15,
  back: 20,
} as const;

/** Points: smaller than this nobody reads it at a cabinet. */
const least = 6.5;
/** Rather than smaller than this a text takes another line, where it may. */
const wanted = 7;

interface FitOptions {
  readonly face?: Face;
  /** How many lines it may take. Default 1. */
  readonly lines?: number;
  readonly align?: 'left' | 'center';
  readonly colour?: string;
  /** From line to line, mm. Default by the size. */
  readonly step?: number;
  /** The last of the lines stands at y, not the first. */
  readonly isUpwards?: boolean;
}

/** Whether a text keeps to a width on one line; a single word may be somewhat smaller for that, rather than be torn. */
export const fitsOneLine = (text: string, width: number, size: number, face: Face = 'regular'): boolean =>
  textWidth(text, Math.min(size, /[\s/-]/.test(text.slice(1)) ? wanted : least), face) <= width;

/**
 * Text in a width, its first baseline at y: smaller where it must be, then over several lines, and last cut off with an ellipsis, so that
 * it never runs into what stands beside it.
 */
export function fitText(text: string, x: number, y: number, width: number, size: number, options: FitOptions = {}): readonly Shape[] {
  const { face = 'regular', lines = 1, align = 'left', colour, isUpwards = false } = options;
  if (text === '') return [];
  const isOver = lines > 1 && !fitsOneLine(text, width, size, face);
  let used = isOver ? Math.min(size, wanted) : size;
  while (!isOver && used > least && textWidth(text, used, face) > width) used -= 0.25;
  const wrapped = wrapText([{ text, face }], used, width);
  const shown = wrapped.slice(0, lines).map((line, index) => {
    const isCut = index === lines - 1 && wrapped.length > lines;
    return isCut ? { runs: [{ text: cutOff(text, wrapped, lines, used, width, face), face }], width: 0 } : line;
  });
  const { step = lineHeight(used) } = options;
  const first = isUpwards ? y - (shown.length - 1) * step : y;
  return shown.flatMap((line, index) => {
    const wide = line.runs.reduce((sum, run) => sum + textWidth(run.text, used, run.face), 0);
    return placeLine(line, align === 'center' ? x + (width - wide) / 2 : x, first + index * step, used, colour);
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
