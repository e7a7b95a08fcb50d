import { meaningWords } from '../messages/index.ts';
import {
  displaySigns,
  type FigureCell,
  inks,
  lineHeight,
  mmPerPoint,
  placeSign,
  plainText,
  type Shape,
  textWidth,
  wrapText,
} from '../paper/index.ts';
import type { DisplayMeaning } from '../schema/index.ts';

const textSize = 9;
const signSize = { loud: 4.6, quiet: 3.6 } as const;

/**
 * A display's mark for a cell of this width (mm), with the code that the equipment shows below it, else with its word where that fits.
 * What is quiet is drawn smaller and in grey, so that the eye finds the rest.
 */
export function markCell(meaning: DisplayMeaning, code: string | null, width: number): FigureCell {
  const isQuiet = meaning === 'quiet';
  const size = isQuiet ? signSize.quiet : signSize.loud;
  const colour = isQuiet ? inks.soft : inks.black;
  const { lines, face } = captionOf(meaning, code, width);
  const step = lineHeight(textSize) * 0.94;
  const height = signSize.loud + lines.length * step;
  const shapes: Shape[] = [
    ...placeSign(displaySigns[meaning], (width - size) / 2, (signSize.loud - size) / 2, size, colour),
    ...lines.map(
      (text, index): Shape => ({
        kind: 'text',
        x: width / 2,
        y: signSize.loud + index * step + textSize * mmPerPoint * 0.98,
        text,
        size: textSize,
        align: 'center',
        face: face === 'mono' ? 'mono' : isQuiet ? 'regular' : 'bold',
        colour,
      }),
    ),
  ];
  const isLoss = meaning === 'upstream-loss' || meaning === 'downstream-loss' || meaning === 'both-losses';
  const words = code === null ? meaningWords[meaning].label : `${meaningWords[meaning].label} (${code})`;
  return { figure: { width, height, shapes, words }, ...(isLoss ? { fill: inks.loss } : {}) };
}

function captionOf(
  meaning: DisplayMeaning,
  code: string | null,
  width: number,
): { readonly lines: readonly string[]; readonly face?: 'mono' } {
  if (code !== null) return textWidth(code, textSize, 'mono') <= width ? { lines: [code], face: 'mono' } : { lines: [] };
  // Words stand under all marks or under none, so that none seems to lack its own.
  return { lines: wordsFit(width) ? wrapText(meaningWords[meaning].label, textSize, width).map(({ runs }) => plainText(runs)) : [] };
}

const wordsFit = (width: number): boolean =>
  Object.values(meaningWords).every(({ label }) => label.split(' ').every((word) => textWidth(word, textSize, 'bold') <= width));
