import type { LinkId, UnitId } from '../base/index.ts';
import { type Names, paperKindWords, startSentence, drawingWords as words } from '../messages/index.ts';
import { type Block, bodySize, type Figure, inks, type Paper, type PaperSize, type Shape } from '../paper/index.ts';
import type { ChainTopology, Topology } from '../topology/index.ts';
import { type DrawingRow, type DrawingSheet, planDrawing, sheetsOf, spreadRows } from './drawingPlan.ts';
import { drawLink, drawStub } from './drawLink.ts';
import { fitText, metrics } from './drawText.ts';
import { drawControllerEnd, drawUnit } from './drawUnit.ts';
import { inFull, shortNames } from './shortNames.ts';
import { type DocumentSource, makePaper } from './source.ts';

export interface DrawingOptions {
  /** Ids of the units, links, leads and chains (their end at the controller) that are marked. */
  readonly marked?: ReadonlySet<string>;
  /** Only the rows in which something is marked; what stands on none of them is referred to by name alone. */
  readonly isExtract?: boolean;
}

/** The drawing of a whole cabinet: one figure for each sheet, with references from sheet to sheet. */
export function cabinetDrawing(source: DocumentSource, size: PaperSize): Paper {
  const empty = makePaper(source, {
    id: 'cabinet-drawing',
    title: startSentence(paperKindWords.drawing.label),
    isLandscape: true,
    blocks: [],
  });
  const body = bodySize({ ...empty, foot: { ...empty.foot, left: words.legend } }, size);
  // There is little room on a unit: what all designations begin with is said once.
  const short = shortNames(source.topology, source.names);
  const figures = drawCabinet(short.topology, short.names, body, {});
  return makePaper(source, {
    id: 'cabinet-drawing',
    title: startSentence(paperKindWords.drawing.label),
    isLandscape: true,
    foot: words.legend,
    blocks: [
      ...figures.flatMap((figure, index): readonly Block[] => [
        ...(index === 0 ? [] : [{ kind: 'page-break' } as const]),
        { kind: 'figure', figure },
      ]),
      ...inFull(short).map((text): Block => ({ kind: 'paragraph', text, size: 9 })),
    ],
  });
}

/** The sheets of a drawing, each no larger than `room` (mm), with the same scale. */
export function drawCabinet(
  topology: Topology,
  names: Names,
  room: { readonly width: number; readonly height: number },
  { marked = new Set(), isExtract = false }: DrawingOptions,
): readonly Figure[] {
  const perRow = Math.max(1, Math.floor((room.width - metrics.side) / (metrics.leastUnit + metrics.gap)));
  const unitWidth = Math.max(metrics.leastUnit, Math.min(metrics.widestUnit, (room.width - metrics.side) / perRow - metrics.gap));
  const rowsPerSheet = Math.max(1, Math.floor(room.height / metrics.rowPitch));
  const all = planDrawing(topology, perRow);
  const sheets = spreadRows(isExtract ? all.filter((row) => isMarked(topology, row, marked)) : all, rowsPerSheet);
  // An extract stands among other things: the numbers of its sheets are no numbers of pages.
  const sheetOf: ReadonlyMap<UnitId, number> = isExtract ? new Map() : sheetsOf(sheets);
  return sheets.map((rows, index): Figure => {
    const shapes = rows.flatMap((row, at) =>
      new RowPen(topology, names, sheets, sheetOf, index + 1, marked, unitWidth).draw(row, at * metrics.rowPitch),
    );
    const units = rows.reduce((sum, row) => sum + row.units.length, 0);
    return {
      width: metrics.side + perRow * (unitWidth + metrics.gap),
      height: rows.length * metrics.rowPitch,
      shapes,
      words: words.words(topology.content.name, units),
    };
  });
}

/** Whether anything of a row is marked: its units, the links and leads to them, or the controller's end before them. */
function isMarked(topology: Topology, { chain, start, units }: DrawingRow, marked: ReadonlySet<string>): boolean {
  const ids: readonly (string | undefined)[] = [
    ...units,
    ...units.map((_, index) => chain?.links[start + index]),
    ...topology.feeds.filter(({ to }) => units.some((unit) => unit === to)).map(({ lead }) => lead),
    start === 0 ? chain?.id : undefined,
  ];
  return ids.some((id) => id !== undefined && marked.has(id));
}

/** Draws one row of a sheet. */
class RowPen {
  constructor(
    private readonly topology: Topology,
    private readonly names: Names,
    private readonly sheets: readonly DrawingSheet[],
    private readonly sheetOf: ReadonlyMap<UnitId, number>,
    private readonly sheet: number,
    private readonly marked: ReadonlySet<string>,
    private readonly unitWidth: number,
  ) {}

  private left(index: number): number {
    return metrics.side + index * (this.unitWidth + metrics.gap);
  }

  draw(row: DrawingRow, top: number): readonly Shape[] {
    const { chain, units } = row;
    const shapes = units.flatMap((unit, index) =>
      drawUnit(this.topology, this.names, unit, this.left(index), top, {
        width: this.unitWidth,
        marked: this.marked,
        onChain: chain !== null,
      }),
    );
    if (chain === null) return [...this.title(row, top), ...shapes];
    return [...this.beginning(chain, row, top), ...shapes, ...this.links(chain, row, top)];
  }

  /** What stands before the first unit of a row: the controller, or where the chain comes from. */
  private beginning(chain: ChainTopology, { start }: DrawingRow, top: number): readonly Shape[] {
    if (start === 0) return drawControllerEnd(this.topology, this.names, chain, top, this.marked.has(chain.id));
    const before = chain.units[start - 1];
    return before === undefined ? [] : drawStub('from', this.reference(before), 0, top, this.jump(before));
  }

  private links(chain: ChainTopology, { units, start }: DrawingRow, top: number): readonly Shape[] {
    const shapes: Shape[] = units.flatMap((_, index) => {
      const link = chain.links[start + index];
      if (link === undefined) return [];
      const to = this.left(index);
      const from = index === 0 ? (start === 0 ? metrics.controllerWidth : metrics.stubWidth) : to - metrics.gap;
      return this.link(link, from, to, top);
    });
    const next = chain.units[start + units.length];
    if (next !== undefined && units.length > 0) {
      const x = this.left(units.length - 1) + this.unitWidth;
      const last = units[units.length - 1];
      // Beside a frame the words stand farther off.
      const inset = last !== undefined && this.marked.has(last) ? 2.2 : undefined;
      shapes.push(...drawStub('to', this.reference(next), x, top, this.jump(next), inset));
    }
    return shapes;
  }

  private link(link: LinkId, from: number, to: number, top: number): readonly Shape[] {
    const record = this.topology.links.get(link);
    const name = record?.designation?.trim() ?? '';
    const length = record?.lengthM === undefined ? '' : words.length(record.lengthM);
    return drawLink(name, length, from, to, top, this.marked.has(link));
  }

  /** "-TB7", and its sheet where that is another one. */
  private reference(unit: UnitId): readonly string[] {
    const sheet = this.sheetOf.get(unit) ?? this.sheet;
    return sheet === this.sheet ? [this.names.unit(unit)] : [this.names.unit(unit), words.sheet(sheet)];
  }

  private jump(unit: UnitId): number | null {
    const sheet = this.sheetOf.get(unit) ?? this.sheet;
    return sheet === this.sheet || sheet > this.sheets.length ? null : sheet;
  }

  private title({ apart, start }: DrawingRow, top: number): readonly Shape[] {
    if (apart === null || start > 0) return [];
    return fitText(words.apart[apart], 0, top + 6, metrics.side - 3, 9, { face: 'bold', lines: 3, colour: inks.black });
  }
}
