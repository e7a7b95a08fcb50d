import type { Paper } from './blocks.ts';
import { layOutCaution } from './caution.ts';
import { lineHeight, textWidth } from './measure.ts';
import { plainText, wrapText } from './richText.ts';
import { inks, moveShape, type Shape } from './shapes.ts';
import { houseSign, placeSign } from './signs.ts';
import { type PaperSize, pageSize, type Size } from './sizes.ts';

/** White around everything, mm: what printers cannot reach. */
export const margin = 10;
const titleSize = 17;
const subtitleSize = 10;
const smallSize = 9;
const signSize = 5.4;
const houseName = 'Linkwright';

/** Where the text of a page stands, mm. */
export interface Body {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly bottom: number;
}

/** The body of every page of a paper. */
export function bodyOf(paper: Paper, page: Size): Body {
  const width = page.width - 2 * margin;
  const caution = paper.foot.caution === undefined ? 0 : layOutCaution(paper.foot.caution, width).height + 2;
  return {
    left: margin,
    top: margin + headHeight(paper, page) + 5.2,
    width,
    bottom: page.height - margin - lineHeight(smallSize) * footLines(paper, page).length - 2.5 - caution,
  };
}

/** The room that a page leaves for a figure drawn to fill it, mm. */
export function bodySize(paper: Paper, size: PaperSize): Size {
  const { width, top, bottom } = bodyOf(paper, pageSize(size, paper.isLandscape === true));
  return { width, height: bottom - top };
}

/** The lines at the right take half of the page at most; the title has the rest. */
const rightLines = (paper: Paper, page: Size): readonly string[] =>
  paper.head.right.flatMap((line) => wrapText(line, smallSize, (page.width - 2 * margin) / 2).map(({ runs }) => plainText(runs)));

const rightWidth = (paper: Paper, page: Size): number =>
  Math.max(textWidth(houseName, subtitleSize) + signSize + 2, ...rightLines(paper, page).map((line) => textWidth(line, smallSize)));

const titleRoom = (paper: Paper, page: Size): number => page.width - 2 * margin - rightWidth(paper, page) - 6;

const titleLines = (paper: Paper, page: Size) => wrapText([{ text: paper.head.title, face: 'bold' }], titleSize, titleRoom(paper, page));
const subtitleLines = (paper: Paper, page: Size) => wrapText(paper.head.subtitle, subtitleSize, titleRoom(paper, page));
const footLines = (paper: Paper, page: Size) => wrapText(paper.foot.left, smallSize, (page.width - 2 * margin) * 0.72);

function headHeight(paper: Paper, page: Size): number {
  const left = titleLines(paper, page).length * lineHeight(titleSize) + subtitleLines(paper, page).length * lineHeight(subtitleSize);
  const right = signSize + 0.8 + (rightLines(paper, page).length + 1) * lineHeight(smallSize);
  return Math.max(left, right);
}

/** Head and foot of one page: title block, duplex rule, caution, number of the page. */
export function drawFrame(paper: Paper, page: Size, number: number, count: number): readonly Shape[] {
  const right = page.width - margin;
  const bottom = margin + headHeight(paper, page);
  const shapes: Shape[] = [
    ...drawTitle(paper, page, bottom),
    ...drawRight([...rightLines(paper, page), paper.pageOf(number, count)], right, bottom),
    { kind: 'line', points: [margin, bottom + 1.6, right, bottom + 1.6], width: 0.66 },
    { kind: 'line', points: [margin, bottom + 2.7, right, bottom + 2.7], width: 0.26 },
  ];
  const foot = footLines(paper, page);
  const footTop = page.height - margin - foot.length * lineHeight(smallSize);
  foot.forEach((line, index) => {
    const y = footTop + (index + 0.8) * lineHeight(smallSize);
    shapes.push({ kind: 'text', x: margin, y, text: line.runs.map((run) => run.text).join(''), size: smallSize });
  });
  shapes.push({
    kind: 'text',
    x: right,
    y: page.height - margin - 0.2 * lineHeight(smallSize),
    text: paper.foot.right,
    size: smallSize,
    align: 'right',
  });
  if (paper.foot.caution !== undefined) {
    const { height, shapes: caution } = layOutCaution(paper.foot.caution, page.width - 2 * margin);
    shapes.push(...caution.map((shape) => moveShape(shape, margin, footTop - 1.6 - height)));
  }
  return shapes;
}

/** Title and subtitle stand on the rule. */
function drawTitle(paper: Paper, page: Size, bottom: number): readonly Shape[] {
  const subtitle = subtitleLines(paper, page);
  const title = titleLines(paper, page);
  const subtitleTop = bottom - subtitle.length * lineHeight(subtitleSize);
  const titleTop = subtitleTop - title.length * lineHeight(titleSize);
  const text = (line: (typeof title)[number]) => line.runs.map((run) => run.text).join('');
  return [
    ...title.map(
      (line, index): Shape => ({
        kind: 'text',
        x: margin,
        y: titleTop + (index + 0.8) * lineHeight(titleSize),
        text: text(line),
        size: titleSize,
        face: 'bold',
      }),
    ),
    ...subtitle.map(
      (line, index): Shape => ({
        kind: 'text',
        x: margin,
        y: subtitleTop + (index + 0.8) * lineHeight(subtitleSize),
        text: text(line),
        size: subtitleSize,
      }),
    ),
  ];
}

function drawRight(lines: readonly string[], right: number, bottom: number): readonly Shape[] {
  const step = lineHeight(smallSize);
  const nameY = bottom - lines.length * step - 1.6;
  const nameWidth = textWidth(houseName, subtitleSize);
  return [
    ...placeSign(houseSign, right - nameWidth - signSize - 1.4, nameY - signSize * 0.78, signSize),
    { kind: 'text', x: right, y: nameY, text: houseName, size: subtitleSize, face: 'bold', align: 'right' },
    ...lines.map(
      (text, index): Shape => ({
        kind: 'text',
        x: right,
        y: bottom - (lines.length - index - 0.8) * step,
        text,
        size: smallSize,
        align: 'right',
        colour: inks.black,
      }),
    ),
  ];
}
