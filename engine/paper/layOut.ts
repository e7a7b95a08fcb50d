import { assertNever } from '../base/index.ts';
import type { Block, HeadingBlock, Paper, PhotoBlock } from './blocks.ts';
import { layOutCaution } from './caution.ts';
import { type Body, bodyOf, drawFrame } from './frame.ts';
import { lineHeight, textWidth } from './measure.ts';
import { placeLine, type RichText, runsOf, wrapText } from './richText.ts';
import { type Figure, inks, moveShape, type Page, type Shape } from './shapes.ts';
import { type PaperSize, pageSize } from './sizes.ts';
import { layOutTable } from './tableLayout.ts';

const textSize = 9.5;
const headingSizes = { 1: 13, 2: 11 } as const;
const blockGap = 2.6;
const bulletWidth = 5.5;

/**
 * Lays a document out on pages of one paper: text is broken into lines, tables go on over the page with their heads repeated, a figure
 * that is larger than the page is made smaller. Equal input gives equal pages.
 */
export function layOut(paper: Paper, size: PaperSize): readonly Page[] {
  const page = pageSize(size, paper.isLandscape === true);
  const flow = new Flow(bodyOf(paper, page));
  for (const [index, block] of paper.blocks.entries()) flow.add(block, paper.blocks[index + 1]);
  return flow.pages.map((shapes, index) => ({ ...page, shapes: [...drawFrame(paper, page, index + 1, flow.pages.length), ...shapes] }));
}

/** A piece that stands or falls together: its height, and its shapes with its upper edge at y = 0. */
interface Piece {
  readonly height: number;
  readonly shapes: readonly Shape[];
  /** Drawn again at the top when the piece begins a page. */
  readonly head?: { readonly height: number; readonly shapes: readonly Shape[] };
  /** mm of white before it, unless it begins a page. */
  readonly gap: number;
  /** How much must fit below it on the same page. */
  readonly needsBelow?: number;
}

class Flow {
  readonly pages: Shape[][] = [[]];
  private y: number;
  private readonly made = new Map<Block, readonly Piece[]>();

  constructor(private readonly body: Body) {
    this.y = body.top;
  }

  /** `next` is what follows: a heading goes to the next page with it. */
  add(block: Block, next: Block | undefined): void {
    if (block.kind === 'page-break') {
      if (this.isBegun()) this.turn();
      return;
    }
    if (block.kind === 'together') {
      const pieces = this.piecesOf(block);
      const height = pieces.reduce((sum, piece) => sum + piece.gap + piece.height, 0);
      if (this.isBegun() && this.y + height > this.body.bottom && height <= this.body.bottom - this.body.top) this.turn();
      for (const piece of pieces) this.put(piece);
      return;
    }
    const [follows] = block.kind === 'heading' && next !== undefined && next.kind !== 'page-break' ? this.piecesOf(next) : [];
    const needed = follows === undefined ? 0 : follows.gap + follows.height + (follows.needsBelow ?? 0);
    for (const piece of this.piecesOf(block)) this.put({ ...piece, needsBelow: Math.max(piece.needsBelow ?? 0, needed) });
  }

  private isBegun(): boolean {
    return this.y > this.body.top;
  }

  private turn(): void {
    this.pages.push([]);
    this.y = this.body.top;
  }

  private put({ height, shapes, head, gap, needsBelow = 0 }: Piece): void {
    const space = this.isBegun() ? gap : 0;
    if (this.isBegun() && this.y + space + height + needsBelow > this.body.bottom) {
      this.turn();
      if (head !== undefined) this.draw(head.shapes, head.height);
    } else {
      this.y += space;
    }
    this.draw(shapes, height);
  }

  private draw(shapes: readonly Shape[], height: number): void {
    this.pages.at(-1)?.push(...shapes.map((shape) => moveShape(shape, 0, this.y)));
    this.y += height;
  }

  /** The pieces of a block, in order. */
  private piecesOf(block: Exclude<Block, { kind: 'page-break' }>): readonly Piece[] {
    const known = this.made.get(block) ?? this.makePieces(block);
    this.made.set(block, known);
    return known;
  }

  private makePieces(block: Exclude<Block, { kind: 'page-break' }>): readonly Piece[] {
    const { left, width } = this.body;
    switch (block.kind) {
      case 'heading':
        return [this.heading(block)];
      case 'paragraph':
        return this.paragraph(block.text, block.size ?? textSize, left, width);
      case 'list':
        return block.items.flatMap((item, index) => {
          const size = block.size ?? textSize;
          const mark = block.isNumbered === true ? `${index + 1}.` : '–';
          const [first, ...rest] = this.paragraph(item, size, left + bulletWidth, width - bulletWidth);
          if (first === undefined) return [];
          const bullet: Shape = { kind: 'text', x: left, y: lineHeight(size) * 0.78, text: mark, size };
          return [{ ...first, gap: index === 0 ? first.gap : size * 0.06, shapes: [bullet, ...first.shapes] }, ...rest];
        });
      case 'table': {
        const { head, rows, right } = layOutTable(block, left, width);
        const [first] = rows;
        const pieces: Piece[] = [{ ...head, gap: blockGap, needsBelow: first?.height ?? 0 }];
        for (const row of rows) pieces.push({ ...row, gap: 0, head });
        return [...pieces, { height: 0.3, gap: 0, shapes: [{ kind: 'line', points: [left, 0, right, 0], width: 0.25 }] }];
      }
      case 'figure':
        return this.figure(block.figure, block.caption);
      case 'photo':
        return [this.photo(block)];
      case 'caution': {
        const { height, shapes } = layOutCaution(block, width);
        return [{ height, gap: blockGap, shapes: shapes.map((shape) => moveShape(shape, left, 0)) }];
      }
      case 'fields':
        return this.fields(block.fields, block.columns ?? 2);
      case 'lines':
        return Array.from({ length: block.count }, () => ({
          height: 8,
          gap: 0,
          shapes: [{ kind: 'line', points: [left, 7.6, left + width, 7.6], width: 0.2, colour: inks.line }] as const,
        }));
      case 'space':
        return [{ height: block.mm, gap: 0, shapes: [] }];
      case 'together':
        return block.blocks.flatMap((one) => (one.kind === 'page-break' ? [] : this.piecesOf(one)));
      default:
        return assertNever(block);
    }
  }

  private heading({ text, level }: HeadingBlock): Piece {
    const size = headingSizes[level];
    const lines = wrapText(
      runsOf(text).map((run) => ({ ...run, face: 'bold' as const })),
      size,
      this.body.width,
    );
    const step = lineHeight(size);
    return {
      height: lines.length * step,
      gap: level === 1 ? 6 : 4,
      // A heading does not stand alone at the foot of a page.
      needsBelow: 14,
      shapes: lines.flatMap((line, index) => placeLine(line, this.body.left, (index + 0.78) * step, size)),
    };
  }

  /** Lines; the first two stay together, and the last two. */
  private paragraph(text: RichText, size: number, left: number, width: number): readonly Piece[] {
    const lines = wrapText(text, size, width);
    const step = lineHeight(size);
    return lines.map((line, index) => ({
      height: step,
      gap: index === 0 ? blockGap : 0,
      needsBelow: (index === 0 && lines.length > 1) || index === lines.length - 2 ? step : 0,
      shapes: placeLine(line, left, step * 0.78, size),
    }));
  }

  private figure(figure: Figure, caption: RichText | undefined): readonly Piece[] {
    const { left, width, top, bottom } = this.body;
    const captionLines = caption === undefined ? [] : this.paragraph(caption, 9, left, width);
    const room = bottom - top - captionLines.reduce((sum, line) => sum + line.height + line.gap, 0);
    const scale = Math.min(1, width / figure.width, room / figure.height);
    const shift = left + (width - figure.width * scale) / 2;
    const shapes = figure.shapes.map((shape) => moveShape(shape, shift, 0, scale));
    return [{ height: figure.height * scale, gap: blockGap, shapes, needsBelow: captionLines[0]?.height ?? 0 }, ...captionLines];
  }

  private photo({ photo, caption, height }: PhotoBlock): Piece {
    const { left, width } = this.body;
    const lines = caption === undefined ? [] : wrapText(caption, 9, width);
    const step = lineHeight(9);
    return {
      height: height + 1 + lines.length * step,
      gap: blockGap,
      shapes: [
        { kind: 'picture', x: left, y: 0, width, height, ...photo },
        ...lines.flatMap((line, index) => placeLine(line, left, height + 1 + (index + 0.78) * step, 9)),
      ],
    };
  }

  private fields(fields: readonly { readonly label: string; readonly value?: string }[], columns: number): readonly Piece[] {
    const { left, width } = this.body;
    const gap = 6;
    const each = (width - gap * (columns - 1)) / columns;
    const rows = Array.from({ length: Math.ceil(fields.length / columns) }, (_, row) => fields.slice(row * columns, (row + 1) * columns));
    return rows.map((row, index) => {
      const laid = row.map(({ label, value }, column) => {
        const labelWidth = textWidth(label, 9) + 2;
        const lines = value === undefined ? [] : wrapText([{ text: value, face: 'bold' }], textSize, Math.max(10, each - labelWidth));
        return { label, lines, labelWidth, x: left + column * (each + gap) };
      });
      const step = lineHeight(textSize);
      const height = Math.max(...laid.map(({ lines }) => (lines.length === 0 ? 8 : lines.length * step + 1.2)));
      const shapes = laid.flatMap(({ label, lines, labelWidth, x }): readonly Shape[] => {
        const first = height - 1 - Math.max(0, lines.length - 1) * step;
        return [
          { kind: 'text', x, y: first, text: label, size: 9, colour: inks.soft },
          ...lines.flatMap((line, at) => placeLine(line, x + labelWidth, first + at * step, textSize)),
          ...(lines.length === 0
            ? [{ kind: 'line', points: [x + labelWidth, height - 0.4, x + each, height - 0.4], width: 0.25, colour: inks.line } as const]
            : []),
        ];
      });
      return { height, gap: index === 0 ? blockGap : 0.6, shapes };
    });
  }
}
