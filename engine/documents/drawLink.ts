import { drawingWords as words } from '../messages/index.ts';
import { inks, type Shape } from '../paper/index.ts';
import { fitText, metrics } from './drawText.ts';

const thick = 0.9;
const thin = 0.25;
const arrow = 1.5;

/** A cable from x to x: the outbound fibre thick, the return fibre two thin lines, each with its direction; name above, length below. */
export function drawLink(name: string, length: string, from: number, to: number, top: number, isMarked: boolean): readonly Shape[] {
  const middle = (from + to) / 2;
  const out = top + metrics.outbound;
  const back = top + metrics.back;
  const label = metrics.gap - 1.4;
  return [
    ...(isMarked ? [markFrame(from + 0.6, out - 2.2, to - from - 1.2, back - out + 4.4)] : []),
    { kind: 'line', points: [from, out, to, out], width: thick },
    { kind: 'line', points: [from, back - 0.35, to, back - 0.35], width: thin },
    { kind: 'line', points: [from, back + 0.35, to, back + 0.35], width: thin },
    {
      kind: 'path',
      path: `M0 0L${arrow * 1.4} ${arrow}L0 ${2 * arrow}Z`,
      x: middle - arrow * 0.7,
      y: out - arrow,
      scale: 1,
      fill: inks.black,
    },
    {
      kind: 'path',
      path: `M${arrow * 1.4} 0L0 ${arrow}L${arrow * 1.4} ${2 * arrow}Z`,
      x: middle - arrow * 0.7,
      y: back - arrow,
      scale: 1,
      fill: inks.white,
      stroke: { width: thin, colour: inks.black },
    },
    ...fitText(name, middle - label / 2, out - 3, label, 8.5, { face: 'bold', align: 'center', lines: 2, isUpwards: true }),
    ...fitText(length, middle - label / 2, back + 5, label, 8, { align: 'center' }),
  ];
}

/** Where something is marked: a heavy dashed frame, legible without colour. */
export function markFrame(x: number, y: number, width: number, height: number): Shape {
  return { kind: 'box', x, y, width, height, corner: 1, line: { width: 0.8, colour: inks.plum, dash: [2, 1.2] } };
}

/** Where a chain goes on elsewhere, or comes from: an open end with the unit and sheet beside it, `inset` mm away from what stands there. */
export function drawStub(
  way: 'from' | 'to',
  reference: readonly string[],
  x: number,
  top: number,
  jump: number | null,
  inset = 0.8,
): readonly Shape[] {
  const width = way === 'from' ? metrics.stubWidth : metrics.gap - 1;
  const out = top + metrics.outbound;
  const back = top + metrics.back;
  const lines: readonly Shape[] =
    way === 'from'
      ? []
      : [
          { kind: 'line', points: [x, out, x + 4, out], width: thick },
          { kind: 'line', points: [x, back - 0.35, x + 4, back - 0.35], width: thin },
          { kind: 'line', points: [x, back + 0.35, x + 4, back + 0.35], width: thin },
        ];
  const text = [words[way], ...reference];
  const left = way === 'from' ? x : x + inset;
  return [
    ...lines,
    ...text.flatMap((line, index) =>
      fitText(line, left, (way === 'from' ? out + 0.6 : back + 5) + index * 3.6, width - inset, 8, index === 1 ? { face: 'bold' } : {}),
    ),
    ...(jump === null ? [] : [{ kind: 'jump', x, y: out - 2, width, height: 20, page: jump } as const]),
  ];
}
