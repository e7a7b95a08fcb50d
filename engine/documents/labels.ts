import { paperWords } from '../messages/index.ts';
import {
  inks,
  lineHeight,
  type Page,
  pageSize,
  placeLine,
  plainText,
  type RichLine,
  type Shape,
  textWidth,
  wrapText,
} from '../paper/index.ts';
import type { Topology } from '../topology/index.ts';
import type { LabelSheet } from './labelSheets.ts';

/**
 * Pages of labels: for each optical cable one at the upper and one at the lower plug, for each lead and feedback cable one at both ends,
 * for each unit one. What stands on a cable's label is its own text, or its designation and the unit at that end; without a designation
 * the units at this end and at the other one.
 */
export function labelPages(topology: Topology, sheet: LabelSheet): readonly Page[] {
  const texts = listLabels(topology);
  const page = pageSize(sheet.paper, false);
  const perPage = sheet.columns * sheet.rows;
  const left = (page.width - sheet.columns * sheet.width - (sheet.columns - 1) * sheet.gapX) / 2;
  const top = (page.height - sheet.rows * sheet.height - (sheet.rows - 1) * sheet.gapY) / 2;
  return Array.from({ length: Math.ceil(texts.length / perPage) }, (_, number) => ({
    ...page,
    shapes: texts.slice(number * perPage, (number + 1) * perPage).flatMap((text, index) => {
      const column = index % sheet.columns;
      const row = Math.floor(index / sheet.columns);
      return drawLabel(text, left + column * (sheet.width + sheet.gapX), top + row * (sheet.height + sheet.gapY), sheet);
    }),
  }));
}

/** What stands on every label, in the order in which they are put on. */
export function listLabels(topology: Topology): readonly string[] {
  const { content } = topology;
  const unitName = (id: string) => content.units?.find((unit) => unit.id === id)?.designation.trim() || id;
  const chainEnd = (id: string) => {
    const chain = content.chains?.find((one) => one.id === id);
    return [content.controller?.designation.trim(), chain?.marking?.trim() ?? (chain === undefined ? '' : paperWords.chain(chain.number))]
      .filter(Boolean)
      .join(' ');
  };
  const joined = (name: string | undefined, end: string) => [name?.trim(), end].filter(Boolean).join(' / ');
  const inOrder = topology.chains.flatMap(({ links }) => links);
  const links = [...(content.links ?? [])].sort((a, b) => rankOf(inOrder, a.id) - rankOf(inOrder, b.id));
  return [
    ...links.flatMap(({ designation, upper, lower, labelUpper, labelLower }) => {
      const above = upper === undefined ? '' : 'chain' in upper ? chainEnd(upper.chain) : unitName(upper.unit);
      const below = lower === undefined ? '' : unitName(lower.unit);
      // A cable without a name is told from the next one by what hangs at its other end.
      const isNamed = Boolean(designation?.trim());
      return [
        labelUpper?.trim() || (isNamed ? joined(designation, above) : joined(above, below)),
        labelLower?.trim() || (isNamed ? joined(designation, below) : joined(below, above)),
      ];
    }),
    ...(content.leads ?? []).flatMap(({ designation, from, to }) =>
      designation?.trim()
        ? [
            joined(designation, from === undefined ? '' : unitName(from.unit)),
            joined(designation, to === undefined ? '' : unitName(to.unit)),
          ]
        : [],
    ),
    ...(content.feedbacks ?? []).flatMap(({ designation, unit, axis }) =>
      designation?.trim() ? [joined(designation, unitName(unit)), joined(designation, axis?.trim() ?? '')] : [],
    ),
    ...(content.units ?? []).map(({ designation, model }) => [designation.trim(), model?.trim()].filter(Boolean).join('\n')),
  ].filter((text) => text !== '');
}

const rankOf = (order: readonly string[], id: string): number => {
  const index = order.indexOf(id);
  return index < 0 ? order.length : index;
};

const sizes = [14, 12, 11, 10, 9, 8, 7, 6] as const;
const pad = 1.6;

/** The text as large as it fits, at least 6 pt; what does not fit even so is cut off at the last line that does, and an ellipsis says so. */
function drawLabel(text: string, x: number, y: number, { width, height }: LabelSheet): readonly Shape[] {
  const frame: Shape = { kind: 'box', x, y, width, height, line: { width: 0.1, colour: inks.faint } };
  const room = { width: width - 2 * pad, height: height - 2 * pad };
  const [first = '', ...rest] = text.split('\n');
  const set = (size: number): readonly RichLine[] =>
    wrapText([{ text: first, face: 'bold' }, ...rest.map((line) => ({ text: `\n${line}` }))], size, room.width);
  const size =
    sizes.find((one) => set(one).length * lineHeight(one) <= room.height && set(one).every((line) => line.width <= room.width)) ?? 6;
  const step = lineHeight(size);
  const all = set(size);
  const lines = all.slice(0, Math.max(1, Math.floor(room.height / step)));
  const last = lines.at(-1);
  if (all.length > lines.length && last !== undefined) lines[lines.length - 1] = cutOff(last, size, room.width);
  const top = y + (height - lines.length * step) / 2;
  return [frame, ...lines.flatMap((line, index) => placeLine(line, x + (width - line.width) / 2, top + (index + 0.77) * step, size))];
}

/** A line with an ellipsis at its end, no wider than it may be. */
function cutOff({ runs }: RichLine, size: number, width: number): RichLine {
  const face = runs.at(-1)?.face ?? 'regular';
  let text = plainText(runs);
  while (text.length > 1 && textWidth(`${text}…`, size, face) > width) text = text.slice(0, -1);
  return { runs: [{ text: `${text}…`, face }], width: textWidth(`${text}…`, size, face) };
}
