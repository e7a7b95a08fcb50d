import type { TableBlock, TableCell, TableColumn } from './blocks.ts';
import { capitalShare, lineHeight } from './measure.ts';
import { placeLine, plainText, type RichLine, type RichText, richWidth, widestWord, wrapText } from './richText.ts';
import { inks, moveShape, type Shape } from './shapes.ts';
import { circle } from './signs.ts';
import { mmPerPoint } from './sizes.ts';

/** A row or head of a table, laid out: its height, and its shapes with its upper edge at y = 0. */
export interface LaidRow {
  readonly height: number;
  readonly shapes: readonly Shape[];
}

export interface LaidTable {
  readonly head: LaidRow;
  readonly rows: readonly LaidRow[];
  /** Its right edge. */
  readonly right: number;
}

const usualSize = 9;
const padX = 1.2;
const loose = { padY: 1.1, line: 1 } as const;
const tight = { padY: 0.5, line: 0.94 } as const;
type Spacing = typeof loose | typeof tight;
const ringWidth = 7.5;
const rule = 0.25;

/** Lays out a table over a width in mm, with its left edge at x. */
export function layOutTable(table: TableBlock, x: number, width: number): LaidTable {
  const size = table.size ?? usualSize;
  const headSize = table.headSize ?? size;
  const spacing = table.tight === true ? tight : loose;
  const widths = columnWidths(table, width, size, headSize);
  const lefts = widths.map((_, index) => x + widths.slice(0, index).reduce((sum, one) => sum + one, 0));
  const head = layOutHead(table.columns, lefts, widths, headSize);
  const rows = table.rows.map((cells) => {
    const laid = cells.map((cell, index) => layOutCell(cell, widths[index] ?? 0, size, spacing));
    const height = Math.max(table.rowHeight ?? 0, ...laid.map((one) => one.height + 2 * spacing.padY));
    const shapes: Shape[] = [];
    laid.forEach((one, index) => {
      const left = lefts[index] ?? x;
      const columnWidth = widths[index] ?? 0;
      if (one.fill !== undefined) shapes.push({ kind: 'box', x: left, y: 0, width: columnWidth, height, fill: one.fill });
      const align = table.columns[index]?.align ?? 'left';
      shapes.push(...one.draw(left, columnWidth, (height - one.height) / 2, align));
    });
    shapes.push({ kind: 'line', points: [x, 0, x + sumOf(widths), 0], width: rule });
    return { height, shapes };
  });
  return { head, rows, right: x + sumOf(widths) };
}

const sumOf = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0);

interface LaidCell {
  readonly height: number;
  readonly fill?: string;
  readonly draw: (left: number, width: number, top: number, align: 'left' | 'center' | 'right') => readonly Shape[];
}

function layOutCell(cell: TableCell, width: number, size: number, spacing: Spacing): LaidCell {
  if (typeof cell === 'object' && 'figure' in cell) {
    const { figure, fill } = cell;
    return {
      height: figure.height,
      ...(fill === undefined ? {} : { fill }),
      draw: (left, columnWidth, top) => figure.shapes.map((shape) => moveShape(shape, left + (columnWidth - figure.width) / 2, top)),
    };
  }
  const { text, below = [], ring } = typeof cell === 'object' && 'text' in cell ? cell : { text: cell };
  const indent = ring === undefined ? 0 : ringWidth;
  const lines = [text, ...below].flatMap((one) => wrapText(one, size, width - 2 * padX - indent));
  const step = lineHeight(size) * spacing.line;
  const height = Math.max(lines.length * step, ring === undefined ? 0 : 6);
  return {
    height,
    draw: (left, columnWidth, top, align) => {
      const first = top + (height - lines.length * step) / 2;
      const shapes = lines.flatMap((line, index) =>
        placeLine(
          line,
          alignLine(line, left + padX + indent, columnWidth - 2 * padX - indent, align),
          first + baselineIn(step, size) + index * step,
          size,
        ),
      );
      return ring === undefined ? shapes : [...placeRing(ring, left + 3, top + height / 2, size), ...shapes];
    },
  };
}

/** Where in a line of this height the baseline lies. */
const baselineIn = (step: number, size: number): number => step / 2 + (size * mmPerPoint * capitalShare) / 2;

function alignLine(line: RichLine, left: number, width: number, align: 'left' | 'center' | 'right'): number {
  if (align === 'left') return left;
  return align === 'right' ? left + width - line.width : left + (width - line.width) / 2;
}

function placeRing(text: string, x: number, y: number, size: number): readonly Shape[] {
  return [
    { kind: 'path', path: circle(x, y, 2.8), x: 0, y: 0, scale: 1, stroke: { width: 0.35, colour: inks.black } },
    { kind: 'text', x, y: y + (size * mmPerPoint * capitalShare) / 2, text, size, face: 'bold', align: 'center' },
  ];
}

const boldened = (text: RichText): RichText =>
  typeof text === 'string' ? [{ text, face: 'bold' }] : text.map((run) => ({ ...run, face: run.face ?? 'bold' }));

const headPad = 1.1;

function layOutHead(columns: readonly TableColumn[], lefts: readonly number[], widths: readonly number[], size: number): LaidRow {
  // A table without heads has no row for them.
  if (columns.every(({ head, under: second }) => plainText(head) === '' && second === undefined)) return { height: 0, shapes: [] };
  const step = lineHeight(size);
  const under = usualSize;
  const underStep = lineHeight(under);
  const laid = columns.map((column, index) => {
    const room = (widths[index] ?? 0) - 2 * padX;
    const lines = column.turned === true ? [] : wrapText(boldened(column.head), size, room);
    const below = column.under === undefined ? [] : wrapText(column.under, under, column.turned === true ? room + 2 * padX : room);
    const upper = column.turned === true ? richWidth(column.head, size) + 1 : lines.length * step;
    return { column, lines, below, height: upper + below.length * underStep };
  });
  const inner = Math.max(0, ...laid.map(({ height }) => height));
  const shapes = laid.flatMap(({ column, lines, below, height }, index): readonly Shape[] => {
    const left = (lefts[index] ?? 0) + padX;
    const room = (widths[index] ?? 0) - 2 * padX;
    const align = column.align ?? 'left';
    const top = headPad + inner - height;
    const underTop = headPad + inner - below.length * underStep;
    return [
      ...(column.turned === true ? turnedHead(column, left + room / 2, underTop - 1, size) : []),
      ...lines.flatMap((line, row) => placeLine(line, alignLine(line, left, room, align), top + baselineIn(step, size) + row * step, size)),
      ...below.flatMap((line, row) =>
        placeLine(line, alignLine(line, left, room, align), underTop + baselineIn(underStep, under) + row * underStep, under),
      ),
    ];
  });
  return { height: inner + 2 * headPad, shapes };
}

/** A head that reads from below. */
function turnedHead(column: TableColumn, middle: number, bottom: number, size: number): readonly Shape[] {
  const half = (size * mmPerPoint * capitalShare) / 2;
  return [{ kind: 'text', x: middle + half, y: bottom, text: plainText(column.head), size, face: 'bold', turned: true }];
}

interface Wish {
  /** What single words need. */
  readonly least: number;
  /** What the rows need on one line; heads may be broken. */
  readonly rows: number;
  readonly whole: number;
  readonly grow: number;
}

/**
 * Widths of the columns: fixed ones as they are, the others as wide as they need. Where there is too little, heads are broken first,
 * then rows, and last the longest words.
 */
function columnWidths(table: TableBlock, width: number, size: number, headSize: number): readonly number[] {
  const wishes = table.columns.map((column, index) =>
    wishOf(
      column,
      table.rows.map((row) => row[index] ?? ''),
      size,
      headSize,
    ),
  );
  const sum = (tier: 'least' | 'rows' | 'whole') => sumOf(wishes.map((wish) => wish[tier]));
  if (sum('whole') <= width) {
    const grow = sumOf(wishes.map((wish) => wish.grow));
    return wishes.map((wish) => wish.whole + (grow === 0 ? 0 : ((width - sum('whole')) * wish.grow) / grow));
  }
  const between = (low: 'least' | 'rows', high: 'rows' | 'whole') => {
    const share = (width - sum(low)) / Math.max(1e-9, sum(high) - sum(low));
    return wishes.map((wish) => wish[low] + (wish[high] - wish[low]) * share);
  };
  if (sum('rows') <= width) return between('rows', 'whole');
  if (sum('least') <= width) return between('least', 'rows');
  const fixed = sumOf(table.columns.map((column) => column.width ?? 0));
  const free = wishes.flatMap(({ least }, index) => (table.columns[index]?.width === undefined ? [least] : []));
  const most = levelFor(free, Math.max(0, width - fixed));
  return wishes.map(({ least }, index) => (table.columns[index]?.width === undefined ? Math.min(least, most) : least));
}

/** The width to which the widest columns are cut back, so that all have room: narrow ones keep their words whole. */
function levelFor(wanted: readonly number[], room: number): number {
  const rising = [...wanted].sort((a, b) => a - b);
  let left = room;
  for (const [index, one] of rising.entries()) {
    const share = left / (rising.length - index);
    if (one > share) return share;
    left -= one;
  }
  return rising.at(-1) ?? 0;
}

function wishOf(column: TableColumn, cells: readonly TableCell[], size: number, headSize: number): Wish {
  if (column.width !== undefined) return { least: column.width, rows: column.width, whole: column.width, grow: 0 };
  const head = boldened(column.head);
  const headLeast = column.turned === true ? lineHeight(headSize) : widestWord(head, headSize);
  const least = Math.max(headLeast, ...cells.map((cell) => leastWidth(cell, size)));
  const rows = Math.max(least, ...cells.map((cell) => wantedWidth(cell, size)));
  const whole = Math.max(rows, column.turned === true ? 0 : richWidth(head, headSize));
  return { least: least + 2 * padX, rows: rows + 2 * padX, whole: whole + 2 * padX, grow: column.grow ?? 0 };
}

function leastWidth(cell: TableCell, size: number): number {
  if (typeof cell === 'object' && 'figure' in cell) return cell.figure.width;
  if (typeof cell === 'object' && 'text' in cell) {
    return (
      Math.max(...[cell.text, ...(cell.below ?? [])].map((text) => widestWord(text, size))) + (cell.ring === undefined ? 0 : ringWidth)
    );
  }
  return widestWord(cell, size);
}

function wantedWidth(cell: TableCell, size: number): number {
  if (typeof cell === 'object' && 'figure' in cell) return cell.figure.width;
  if (typeof cell === 'object' && 'text' in cell) {
    return Math.max(...[cell.text, ...(cell.below ?? [])].map((text) => richWidth(text, size))) + (cell.ring === undefined ? 0 : ringWidth);
  }
  return Math.max(...(typeof cell === 'string' ? cell.split('\n') : [cell]).map((line) => richWidth(line, size)));
}
