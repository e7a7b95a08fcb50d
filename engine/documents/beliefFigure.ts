import type { Debrief, DebriefStep, PlanStep, Share } from '../exercise/index.ts';
import { exercisePaperWords as words } from '../messages/index.ts';
import { type Figure, inks, type Shape } from '../paper/index.ts';
import { fitText } from './drawText.ts';

/** So many answers have a pattern of their own; the rest is white. */
export const patternCount = 5;

const mm = { block: 5.5, belief: 14, label: 5.2, gap: 3.5, swatch: 4.2, tail: 0.05 } as const;

interface Asked {
  readonly width: number;
  readonly nameOf: (answer: string) => string;
}

/**
 * Both ways above one another on the same scale of minutes: steps as blocks as wide as they take, and below them as a stack what was
 * likely while they were done. Patterns instead of colours, so that a copy in black and white tells the same.
 */
export function drawBeliefs({ start, steps, plan, minutes, planMinutes }: Debrief, { width, nameOf }: Asked): Figure {
  const top = start.slice(0, patternCount).map(({ answer }) => answer);
  const end = Math.max(1, minutes, planMinutes) * (1 + mm.tail);
  const scale = width / end;
  const key = drawKey(top, start.length > patternCount, { width, nameOf });
  const second = key.height + wayHeight + mm.gap;
  return {
    width,
    height: second + wayHeight,
    shapes: [
      ...key.shapes,
      ...drawWay(words.yourWay, steps, start, top, key.height, scale, end),
      ...drawWay(words.bestPlan, plan, start, top, second, scale, end),
    ],
    words: [words.beliefWords(words.yourWay, steps.length), words.beliefWords(words.bestPlan, plan.length)].join('; '),
  };
}

const wayHeight = mm.label + mm.block + mm.belief;

function drawKey(
  top: readonly string[],
  hasOthers: boolean,
  { width, nameOf }: Asked,
): { readonly height: number; readonly shapes: readonly Shape[] } {
  const items = [
    ...top.map((answer, index) => ({ text: nameOf(answer), index })),
    ...(hasOthers ? [{ text: words.others, index: -1 }] : []),
  ];
  const perRow = 2;
  const room = width / perRow;
  const shapes = items.flatMap(({ text, index }, at): readonly Shape[] => {
    const x = (at % perRow) * room;
    const y = Math.floor(at / perRow) * 5.4;
    return [
      ...fillPattern(index, x, y, mm.swatch * 1.6, mm.swatch),
      ...fitText(text, x + mm.swatch * 1.6 + 1.6, y + 3.2, room - mm.swatch * 1.6 - 4, 8),
    ];
  });
  return { height: Math.ceil(items.length / perRow) * 5.4 + 2, shapes };
}

function drawWay(
  label: string,
  steps: readonly (DebriefStep | PlanStep)[],
  start: readonly Share[],
  top: readonly string[],
  y: number,
  scale: number,
  end: number,
): readonly Shape[] {
  const last = steps.at(-1);
  const until = last?.until ?? 0;
  // Between two steps a hint may have been bought: time went by, and the evidence stayed.
  const spans = steps.flatMap((one, index) => {
    const shares = steps[index - 1]?.after ?? start;
    const before = steps[index - 1]?.until ?? 0;
    const hint = one.from > before + 0.01 ? [{ label: words.hintMark, from: before, until: one.from, shares }] : [];
    return [...hint, { label: String(index + 1), from: one.from, until: one.until, shares }];
  });
  const columns = [
    ...spans,
    // What was known at the end.
    { from: until, until: Math.min(end, until + end * mm.tail), shares: last?.after ?? start },
  ];
  const blocks = y + mm.label;
  const stack = blocks + mm.block;
  return [
    ...fitText(`${label}, ${words.minutes(until)}`, 0, y + 3.4, end * scale, 9, { face: 'bold' }),
    ...spans.flatMap(({ label: mark, from, until: to }): readonly Shape[] => [
      { kind: 'box', x: from * scale, y: blocks, width: (to - from) * scale, height: mm.block, line: { width: 0.35 } },
      ...fitText(mark, from * scale, blocks + 4, (to - from) * scale, 8.5, { align: 'center', face: 'bold' }),
    ]),
    ...columns.flatMap(({ from, until: to, shares }) => drawStack(shares, top, from * scale, stack, (to - from) * scale)),
  ];
}

/** Shares above one another, in the order of the key, so that an answer keeps its place. */
function drawStack(shares: readonly Share[], top: readonly string[], x: number, y: number, width: number): readonly Shape[] {
  const shown = top.map((answer) => shares.find((one) => one.answer === answer)?.share ?? 0);
  const rest = Math.max(0, 1 - shown.reduce((sum, share) => sum + share, 0));
  let at = y;
  return [...shown, rest].flatMap((share, index) => {
    const height = share * mm.belief;
    const from = at;
    at += height;
    return height < 0.05 ? [] : fillPattern(index === shown.length ? -1 : index, x, from, width, height);
  });
}

/** A framed box filled with the pattern of that number; -1: white. */
function fillPattern(index: number, x: number, y: number, width: number, height: number): readonly Shape[] {
  const frame: Shape = { kind: 'box', x, y, width, height, line: { width: 0.25 } };
  const thin = (points: readonly number[]): Shape => ({ kind: 'line', points, width: 0.22 });
  switch (index) {
    case 0:
      return [{ ...frame, fill: inks.soft }];
    case 1:
      return [frame, ...slanted(x, y, width, height, 1.3).map(thin)];
    case 2:
      return [{ ...frame, fill: inks.faint }];
    case 3:
      return [frame, ...between(y, height, 1.1).map((at) => thin([x, at, x + width, at]))];
    case 4:
      return [frame, ...between(x, width, 1.1).map((at) => thin([at, y, at, y + height]))];
    default:
      return [frame];
  }
}

const between = (from: number, length: number, step: number): readonly number[] =>
  Array.from({ length: Math.max(0, Math.ceil(length / step) - 1) }, (_, index) => from + (index + 1) * step);

/** Lines that rise to the right, cut at the edges of the box. */
function slanted(x: number, y: number, width: number, height: number, step: number): readonly (readonly number[])[] {
  return between(0, width + height, step).map((sum) => {
    const [left, low] = sum <= height ? [0, sum] : [sum - height, height];
    const [right, high] = sum <= width ? [sum, 0] : [width, sum - width];
    return [x + left, y + low, x + right, y + high];
  });
}
