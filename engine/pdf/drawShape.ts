/// <reference path="./libraries.d.ts" />
import type PDFDocument from 'pdfkit';
import { assertNever } from '../base/index.ts';
import {
  type BoxShape,
  inks,
  lineHeight,
  mmPerPoint,
  type PathShape,
  type PictureShape,
  plainText,
  type Shape,
  type TextShape,
  textWidth,
  wrapText,
} from '../paper/index.ts';
import { decodeBase64 } from './base64.ts';
import { readPictureSize } from './pictureSize.ts';
import { splitByFont } from './splitByFont.ts';
import { substituteHas, substituteWidth } from './substitute.ts';

/** What draws, and what it notes on the way. Its document is scaled, so that lengths are mm. */
export interface Pen {
  readonly document: PDFDocument;
  /** How many pages stand before the section of this page. */
  readonly firstPage: number;
  readonly missingSigns: Set<string>;
  readonly missingPictures: string[];
}

/** Draws one shape onto the page that is open. */
export function drawShape(pen: Pen, shape: Shape): void {
  const { document } = pen;
  switch (shape.kind) {
    case 'text':
      drawText(pen, shape);
      return;
    case 'line': {
      setLine(document, shape);
      const [x = 0, y = 0, ...rest] = shape.points;
      document.moveTo(x, y);
      for (let index = 0; index < rest.length; index += 2) document.lineTo(rest[index] ?? 0, rest[index + 1] ?? 0);
      document.stroke();
      if (shape.dash !== undefined) document.undash();
      return;
    }
    case 'box':
      drawBox(document, shape);
      return;
    case 'path':
      drawPath(document, shape);
      return;
    case 'picture':
      drawPicture(pen, shape);
      return;
    case 'jump':
      document.goTo(shape.x, shape.y, shape.width, shape.height, `page-${pen.firstPage + shape.page}`);
      return;
    default:
      assertNever(shape);
  }
}

interface Line {
  readonly width: number;
  readonly colour?: string;
  readonly dash?: readonly [number, number];
}

function setLine(document: PDFDocument, { width, colour, dash }: Line): void {
  document.lineWidth(width).strokeColor(colour ?? inks.black);
  if (dash !== undefined) document.dash(dash[0], { space: dash[1] });
}

function drawBox(document: PDFDocument, { x, y, width, height, corner, fill, line }: BoxShape): void {
  if (corner === undefined) document.rect(x, y, width, height);
  else document.roundedRect(x, y, width, height, corner);
  if (line !== undefined) setLine(document, line);
  if (fill !== undefined) document.fillColor(fill);
  if (fill !== undefined && line !== undefined) document.fillAndStroke();
  else if (fill !== undefined) document.fill();
  else if (line !== undefined) document.stroke();
  if (line?.dash !== undefined) document.undash();
}

function drawPath(document: PDFDocument, { path, x, y, scale, fill, stroke }: PathShape): void {
  document.save().translate(x, y).scale(scale).path(path);
  if (stroke !== undefined) document.lineWidth(stroke.width).strokeColor(stroke.colour);
  if (fill !== undefined) document.fillColor(fill);
  if (fill !== undefined && stroke !== undefined) document.fillAndStroke();
  else if (fill !== undefined) document.fill();
  else document.stroke();
  document.restore();
}

function drawText(pen: Pen, shape: TextShape): void {
  const { document } = pen;
  const { text, size, x, y, face = 'regular', align = 'left', turned = false } = shape;
  const mm = size * mmPerPoint;
  const pieces = splitByFont(text).map((piece) => {
    if (!piece.isSubstitute) return { text: piece.text, font: face, width: textWidth(piece.text, size, face) };
    const shown = [...piece.text].map((sign) => substituteFor(pen, sign)).join('');
    return { text: shown, font: 'substitute', width: substituteWidth(shown) * mm };
  });
  const whole = pieces.reduce((sum, { width }) => sum + width, 0);
  const shift = align === 'left' ? 0 : align === 'right' ? -whole : -whole / 2;
  document.fillColor(shape.colour ?? inks.black).fontSize(mm);
  if (turned) document.save().translate(x, y).rotate(-90);
  let at = (turned ? 0 : x) + shift;
  for (const piece of pieces) {
    document.font(piece.font).text(piece.text, at, turned ? 0 : y, {
      lineBreak: false,
      baseline: 'alphabetic',
      features: { kern: false },
      textWidth: piece.width,
      wordCount: 1,
    });
    at += piece.width;
  }
  if (turned) document.restore();
}

function substituteFor({ missingSigns }: Pen, sign: string): string {
  if (substituteHas(sign)) return sign;
  missingSigns.add(sign);
  return '\u25a1';
}

function drawPicture(pen: Pen, { x, y, width, height, data, words, instead }: PictureShape): void {
  const { document } = pen;
  const bytes = decodeBase64(data);
  const pixels = readPictureSize(bytes);
  if (pixels !== null) {
    const scale = Math.min(width / pixels.width, height / pixels.height);
    const shown = { width: pixels.width * scale, height: pixels.height * scale };
    try {
      document.image(bytes, x + (width - shown.width) / 2, y + (height - shown.height) / 2, shown);
      return;
    } catch {
      // A damaged picture is no reason to print nothing: its words stand in its place.
    }
  }
  pen.missingPictures.push(words);
  drawBox(document, { kind: 'box', x, y, width, height, line: { width: 0.3, colour: inks.line, dash: [1.5, 1.5] } });
  for (const [index, line] of wrapText(instead, 9, width - 6).entries()) {
    drawText(pen, { kind: 'text', x: x + 3, y: y + 3 + (index + 0.8) * lineHeight(9), text: plainText(line.runs), size: 9 });
  }
}
