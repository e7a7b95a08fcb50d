/// <reference path="../../engine/pdf/libraries.d.ts" />
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { create } from 'fontkit';
import { describe, expect, it } from 'vitest';
import {
  layOut,
  lineHeight,
  mmPerPoint,
  type Paper,
  paperNames,
  paperSizes,
  plainText,
  type Shape,
  textWidth,
  wrapText,
  writeHtml,
  writeSvg,
} from '../../engine/paper/index.ts';
import { programFolder } from '../support/folders.ts';

const paperOf = (blocks: Paper['blocks'], more: Partial<Paper> = {}): Paper => ({
  id: 'trial',
  head: { title: 'Trial', subtitle: 'of blocks', right: ['revision 3', '2026-11-26'] },
  foot: { left: 'Left of the foot', right: 'trial' },
  pageOf: (page, pages) => `sheet ${page} of ${pages}`,
  blocks,
  ...more,
});

const texts = (shapes: readonly Shape[]) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));

describe('widths of text', () => {
  it.each([
    ['b612/files/b612-latin-400-normal.woff', 'regular'],
    ['b612/files/b612-latin-700-normal.woff', 'bold'],
    ['b612-mono/files/b612-mono-latin-400-normal.woff', 'mono'],
  ] as const)('should be those of the font file %s, read by a general font library', (file, face) => {
    const font = create(readFileSync(join(programFolder, 'node_modules', '@fontsource', file)));
    const signs = font.characterSet.filter((code) => code >= 32 && code !== 0xad && code < 0xfffd);
    expect(signs.length).toBeGreaterThan(200);
    for (const code of signs) {
      const sign = String.fromCodePoint(code);
      const width = (font.glyphForCodePoint(code).advanceWidth / font.unitsPerEm) * 10 * mmPerPoint;
      expect(textWidth(sign, 10, face), sign).toBeCloseTo(width, 9);
    }
  });
});

describe('breaking text into lines', () => {
  it('should lose and add nothing but spaces, and keep every line within its width, for any text', () => {
    const text = fc.string({ unit: fc.constantFrom('a', 'W', 'i', ' ', '-', '/', '\n', 'é', '5'), maxLength: 120 });
    fc.assert(
      fc.property(text, fc.double({ min: 6, max: 80, noNaN: true }), (words, width) => {
        const lines = wrapText(words, 9, width);
        const letters = (some: string) => some.replace(/\s/g, '');
        expect(letters(lines.map((line) => plainText(line.runs)).join(''))).toBe(letters(words));
        for (const line of lines) expect(line.width).toBeLessThanOrEqual(width + 1e-6);
      }),
      { seed: 7, numRuns: 400 },
    );
  });

  it('should not tear a designation from its sign, and break long words only where nothing else helps', () => {
    const width = textWidth('between -TA12', 9) - 0.1;
    expect(wrapText('between -TA12', 9, width).map((line) => plainText(line.runs))).toEqual(['between', '-TA12']);
    expect(wrapText('abcdefgh', 9, textWidth('abcd', 9) + 0.1).map((line) => plainText(line.runs))).toEqual(['abcd', 'efgh']);
  });
});

describe('laying out', () => {
  const rows = Array.from({ length: 120 }, (_, index) => [`-TA${index + 1}`, `text of row ${index + 1} `.repeat(1 + (index % 4)), '12.5']);
  const table = {
    kind: 'table',
    words: 'rows',
    columns: [{ head: 'Unit' }, { head: 'Text', grow: 1 }, { head: 'm', align: 'right' }],
    rows,
  } as const;

  it.each(paperNames)(
    'should carry a table over pages of %s with its head on each, every row once and whole, nothing beyond the margins',
    (name) => {
      const pages = layOut(paperOf([table]), name);
      expect(pages.length).toBeGreaterThan(1);
      const { width, height } = paperSizes[name];
      pages.forEach((page, index) => {
        expect(page).toMatchObject({ width, height });
        expect(texts(page.shapes)).toContain('Unit');
        expect(texts(page.shapes)).toContain(`sheet ${index + 1} of ${pages.length}`);
        for (const shape of page.shapes) {
          if (shape.kind !== 'text') continue;
          const wide = textWidth(shape.text, shape.size, shape.face);
          const left = shape.align === 'right' ? shape.x - wide : shape.align === 'center' ? shape.x - wide / 2 : shape.x;
          expect(left, shape.text).toBeGreaterThanOrEqual(9.99);
          expect(left + wide, shape.text).toBeLessThanOrEqual(width - 9.99);
          expect(shape.y, shape.text).toBeLessThanOrEqual(height - 9.99);
          expect(shape.y - shape.size * mmPerPoint, shape.text).toBeGreaterThanOrEqual(8);
        }
      });
      const units = pages.flatMap((page) => texts(page.shapes).filter((text) => /^-TA\d+$/.test(text)));
      expect(units).toEqual(rows.map(([unit]) => unit));
    },
  );

  it('should not let lines of text run into each other', () => {
    const [page] = layOut(
      paperOf([{ kind: 'heading', level: 1, text: 'Head' }, { kind: 'paragraph', text: 'word '.repeat(200) }, table]),
      'a4',
    );
    const placed = (page?.shapes ?? []).flatMap((shape) => (shape.kind === 'text' && shape.align === undefined ? [shape] : []));
    for (const [index, one] of placed.entries()) {
      for (const other of placed.slice(index + 1)) {
        const apart =
          Math.abs(one.y - other.y) >= 0.6 * lineHeight(Math.min(one.size, other.size)) ||
          one.x + textWidth(one.text, one.size, one.face) <= other.x + 1e-6 ||
          other.x + textWidth(other.text, other.size, other.face) <= one.x + 1e-6;
        expect(apart, `${one.text} / ${other.text}`).toBe(true);
      }
    }
  });

  it('should keep together what fits on one page, and not leave a heading alone at its foot', () => {
    const filler = { kind: 'space', mm: 225 } as const;
    const together = {
      kind: 'together',
      blocks: [
        { kind: 'space', mm: 30 },
        { kind: 'paragraph', text: 'kept' },
      ],
    } as const;
    expect(layOut(paperOf([filler, together]), 'a4').map((page) => texts(page.shapes).includes('kept'))).toEqual([false, true]);
    const heading = { kind: 'heading', level: 2, text: 'Below' } as const;
    const pages = layOut(paperOf([{ kind: 'space', mm: 238 }, heading, { kind: 'paragraph', text: 'kept' }]), 'a4');
    expect(pages.map((page) => texts(page.shapes).includes('Below'))).toEqual([false, true]);
  });

  it('should take a heading to the next page with the head and the first row of its table', () => {
    const tall = { ...table, rows: [[`-TA1\n${'line\n'.repeat(5)}`, 'x', '1'], ...rows.slice(1)] } as const;
    for (let mm = 150; mm < 260; mm += 3) {
      const pages = layOut(paperOf([{ kind: 'space', mm }, { kind: 'heading', level: 2, text: 'Feeds' }, tall]), 'a4');
      const page = pages.find(({ shapes }) => texts(shapes).includes('Feeds'));
      expect(texts(page?.shapes ?? []).some((text) => text.startsWith('-TA1'))).toBe(true);
    }
  });

  it('should cut back the widest columns where there is too little room, and keep the words of narrow ones whole', () => {
    const long = '=PLANT.STATION+HALL.BAY.CABINET.'.repeat(3);
    const [page] = layOut(
      paperOf([
        {
          kind: 'table',
          words: 'cables',
          columns: [{ head: 'Designation' }, { head: 'From' }, { head: 'Part number' }],
          rows: [[long, long, 'POF-1']],
        },
      ]),
      'a4',
    );
    expect(texts(page?.shapes ?? []).join(' ')).toMatch(/Part number/);
    expect(texts(page?.shapes ?? [])).toContain('POF-1');
  });

  it('should make a figure smaller that is larger than the page', () => {
    const figure = {
      width: 500,
      height: 100,
      words: 'wide',
      shapes: [{ kind: 'box', x: 0, y: 0, width: 500, height: 100, fill: '#000000' }],
    } as const;
    const [page] = layOut(paperOf([{ kind: 'figure', figure }]), 'a4');
    expect(page?.shapes).toContainEqual(expect.objectContaining({ kind: 'box', width: 190, height: 38 }));
  });
});

describe('SVG and HTML', () => {
  const nasty = paperOf([{ kind: 'paragraph', text: '<script>alert(1)</script> & "quoted" \u0007' }], {
    head: { title: '</title><script>', subtitle: '"', right: ['<b>'] },
  });

  it('should hold text as text, whatever it is', () => {
    const [page] = layOut(nasty, 'a4');
    for (const file of [writeSvg(page ?? { width: 1, height: 1, shapes: [] }, '"<x>'), writeHtml(nasty, { language: 'en' })]) {
      expect(file).not.toContain('<script');
      expect(file).not.toContain('\u0007');
      expect(file).toContain('&lt;script&gt;');
    }
  });
});
