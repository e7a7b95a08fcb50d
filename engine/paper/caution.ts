import type { CautionBlock } from './blocks.ts';
import { lineHeight } from './measure.ts';
import { placeLine, runsOf, wrapText } from './richText.ts';
import { inks, type Shape } from './shapes.ts';
import { placeSign, warningSign } from './signs.ts';

const size = 9;
const pad = 2;
const bar = 3.6;
const signSize = 7.4;

/** A framed caution with its upper left corner at (0, 0): a yellow bar, the warning sign, title and text. */
export function layOutCaution(block: CautionBlock, width: number): { readonly height: number; readonly shapes: readonly Shape[] } {
  const left = bar + pad + signSize + 2.6;
  const room = width - left - pad;
  const title = wrapText(
    runsOf(block.title).map((run) => ({ ...run, face: 'bold' as const })),
    size,
    room,
  );
  const lines = [...title, ...wrapText(block.text, size, room)];
  const step = lineHeight(size);
  const height = Math.max(signSize + 2, lines.length * step) + 2 * pad;
  const top = (height - lines.length * step) / 2;
  const shapes: Shape[] = [
    { kind: 'box', x: 0, y: 0, width: bar, height, fill: inks.caution },
    { kind: 'box', x: 0.25, y: 0.25, width: width - 0.5, height: height - 0.5, line: { width: 0.5 } },
    ...placeSign(warningSign, bar + pad, (height - signSize) / 2, signSize),
    ...lines.flatMap((line, index) => placeLine(line, left, top + (index + 0.78) * step, size)),
  ];
  return { height, shapes };
}
