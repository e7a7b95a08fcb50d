/// <reference path="../../engine/pdf/libraries.d.ts" />
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { XMLParser } from 'fast-xml-parser';
import { create } from 'fontkit';
import { mmPerPoint, textWidth } from '../../engine/paper/index.ts';
import { programFolder } from '../support/folders.ts';

/*
 * Where the ink of an SVG page lies, worked out from the file alone: texts by the outlines in the font files (a general font library
 * reads them), lines and boxes by their strokes. Sizes in mm.
 */

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Ink {
  readonly texts: readonly (Box & { readonly text: string })[];
  /** Strokes of lines and of the edges of boxes, and signs. */
  readonly strokes: readonly (Box & { readonly what: string })[];
}

interface Outline {
  readonly advance: number;
  readonly low: number;
  readonly high: number;
}

const files = {
  regular: 'b612/files/b612-latin-400-normal.woff',
  bold: 'b612/files/b612-latin-700-normal.woff',
  mono: 'b612-mono/files/b612-mono-latin-400-normal.woff',
} as const;
const fonts = new Map<string, ReturnType<typeof create>>();
const outlines = new Map<string, Outline>();

function outlineOf(sign: string, face: keyof typeof files): Outline {
  const key = `${face}${sign}`;
  const known = outlines.get(key);
  if (known !== undefined) return known;
  const font = fonts.get(face) ?? create(readFileSync(join(programFolder, 'node_modules', '@fontsource', files[face])));
  fonts.set(face, font);
  const code = sign.codePointAt(0) ?? 0;
  const em = font.unitsPerEm;
  // A sign that the typeface lacks comes from another one: as wide as the layout reckons, as high as letters are.
  const outline = font.hasGlyphForCodePoint(code)
    ? boxOf(font.glyphForCodePoint(code), em)
    : { advance: textWidth(sign, 1 / mmPerPoint, face), low: -0.2, high: 0.8 };
  outlines.set(key, outline);
  return outline;
}

function boxOf({ advanceWidth, bbox }: ReturnType<ReturnType<typeof create>['glyphForCodePoint']>, em: number): Outline {
  const isBlank = !Number.isFinite(bbox.minY);
  return { advance: advanceWidth / em, low: isBlank ? 0 : bbox.minY / em, high: isBlank ? 0 : bbox.maxY / em };
}

type Attributes = Readonly<Record<string, string>>;

/** The ink of a page that our SVG writer made. */
export function readInk(svg: string): Ink {
  const parsed: unknown = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: '',
    preserveOrder: false,
    trimValues: false,
    parseTagValue: false,
    parseAttributeValue: false,
    htmlEntities: true,
    textNodeName: 'content',
    isArray: (name) => ['text', 'polyline', 'rect', 'path'].includes(name),
  }).parse(svg);
  const root = (parsed as { readonly svg: Readonly<Record<string, readonly Attributes[] | undefined>> }).svg;
  return {
    texts: (root['text'] ?? []).map(textBox).filter(({ text }) => text.trim() !== ''),
    strokes: [
      ...(root['polyline'] ?? []).flatMap(polylineBoxes),
      // The ground of the page is no ink.
      ...(root['rect'] ?? []).slice(1).flatMap(rectBoxes),
      ...(root['path'] ?? []).map(pathBox),
    ],
  };
}

function textBox(attributes: Attributes): Ink['texts'][number] {
  const text = attributes['content'] ?? '';
  const size = Number(attributes['font-size']);
  const isMono = attributes['font-family']?.includes('Mono') === true && attributes['font-family'].startsWith("'");
  const face = isMono ? 'mono' : attributes['font-weight'] === '700' ? 'bold' : 'regular';
  const signs = [...text].map((sign) => outlineOf(sign, face));
  const width = signs.reduce((sum, { advance }) => sum + advance, 0) * size;
  const low = Math.min(0, ...signs.map((one) => one.low)) * size;
  const high = Math.max(0, ...signs.map((one) => one.high)) * size;
  const x = Number(attributes['x']);
  const y = Number(attributes['y']);
  const shift = attributes['text-anchor'] === 'middle' ? width / 2 : attributes['text-anchor'] === 'end' ? width : 0;
  if (attributes['transform'] !== undefined) {
    // Turned a quarter to the left: it runs upwards.
    return { text, left: x - high, right: x - low, bottom: y + shift, top: y + shift - width };
  }
  return { text, left: x - shift, right: x - shift + width, top: y - high, bottom: y - low };
}

const around = (x1: number, y1: number, x2: number, y2: number, width: number): Box => ({
  left: Math.min(x1, x2) - width / 2,
  right: Math.max(x1, x2) + width / 2,
  top: Math.min(y1, y2) - width / 2,
  bottom: Math.max(y1, y2) + width / 2,
});

function polylineBoxes(attributes: Attributes): Ink['strokes'] {
  const points = (attributes['points'] ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const width = Number(attributes['stroke-width'] ?? 0);
  return points.slice(4).length >= 0 && points.length >= 4
    ? Array.from({ length: points.length / 2 - 1 }, (_, index) => ({
        what: `line ${points.join(' ')}`,
        ...around(points[2 * index] ?? 0, points[2 * index + 1] ?? 0, points[2 * index + 2] ?? 0, points[2 * index + 3] ?? 0, width),
      }))
    : [];
}

function rectBoxes(attributes: Attributes): Ink['strokes'] {
  const width = Number(attributes['stroke-width'] ?? 0);
  if (attributes['stroke'] === undefined) return [];
  const x = Number(attributes['x']);
  const y = Number(attributes['y']);
  const right = x + Number(attributes['width']);
  const bottom = y + Number(attributes['height']);
  const what = `edge of a box at ${x} ${y}`;
  return [
    { what, ...around(x, y, right, y, width) },
    { what, ...around(x, bottom, right, bottom, width) },
    { what, ...around(x, y, x, bottom, width) },
    { what, ...around(right, y, right, bottom, width) },
  ];
}

/** A sign, by all its points. */
function pathBox(attributes: Attributes): Ink['strokes'][number] {
  const [, dx = 0, dy = 0, scale = 1] = (
    /translate\(([-\d.]+) ([-\d.]+)\) scale\(([-\d.]+)\)/.exec(attributes['transform'] ?? '') ?? []
  ).map(Number);
  const points = pathPoints(attributes['d'] ?? '');
  const xs = points.map(([x]) => dx + x * scale);
  const ys = points.map(([, y]) => dy + y * scale);
  return { what: 'sign', left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** The points of a path of straight and curved pieces, control points among them. */
function pathPoints(path: string): readonly (readonly [number, number])[] {
  const points: [number, number][] = [];
  let x = 0;
  let y = 0;
  for (const [, command = '', rest = ''] of path.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const numbers = (rest.match(/-?(?:\d+\.?\d*|\.\d+)/g) ?? []).map(Number);
    const isRelative = command === command.toLowerCase();
    const kind = command.toUpperCase();
    const step = kind === 'H' || kind === 'V' ? 1 : kind === 'A' ? 7 : 2;
    for (let at = 0; at + step <= numbers.length; at += step) {
      const pair = numbers.slice(at + (kind === 'A' ? 5 : 0), at + step);
      const fromX = isRelative ? x : 0;
      const fromY = isRelative ? y : 0;
      if (kind === 'H') x = fromX + (pair[0] ?? 0);
      else if (kind === 'V') y = fromY + (pair[0] ?? 0);
      else {
        const beforeX = x;
        const beforeY = y;
        x = fromX + (pair[0] ?? 0);
        y = fromY + (pair[1] ?? 0);
        // Arcs are half circles here.
        const radius = kind === 'A' ? (numbers[at] ?? 0) : 0;
        points.push([(beforeX + x) / 2, (beforeY + y) / 2 - radius], [(beforeX + x) / 2, (beforeY + y) / 2 + radius]);
      }
      points.push([x, y]);
    }
  }
  return points;
}

const overlap = (a: Box, b: Box, slack: number): boolean =>
  a.left < b.right - slack && b.left < a.right - slack && a.top < b.bottom - slack && b.top < a.bottom - slack;

/** A number stands in its ring. */
const holds = (sign: Box, one: Box): boolean =>
  sign.left < one.left && one.right < sign.right && sign.top < one.top && one.bottom < sign.bottom;

/** The box of a line is as deep as its deepest letter and as high as its highest: those of two lines seldom meet. mm. */
const between = 0.12;
const rounding = 0.02;

/** Pairs of texts that lie on one another, and texts that something crosses. */
export function findOverlaps({ texts, strokes }: Ink): readonly string[] {
  const found: string[] = [];
  texts.forEach((one, index) => {
    for (const other of texts.slice(index + 1)) {
      if (overlap(one, other, between)) found.push(`"${one.text}" at ${one.left.toFixed(1)} ${one.bottom.toFixed(1)} and "${other.text}"`);
    }
    for (const stroke of strokes) {
      if (overlap(one, stroke, rounding) && !(stroke.what === 'sign' && holds(stroke, one)))
        found.push(`"${one.text}" at ${one.left.toFixed(1)} ${one.bottom.toFixed(1)} and ${stroke.what}`);
    }
  });
  return found;
}
