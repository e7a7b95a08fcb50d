import { describe, expect, it } from 'vitest';
import { layOut, type Paper } from '../../engine/paper/index.ts';
import { writePdf } from '../../engine/pdf/index.ts';
import { readPdf } from './pdfReader.ts';

// A black square of 2 × 2 pixels.
const png = 'iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAIAAAD91JpzAAAAEElEQVR4nGNgYGBggBAQDAAADgABm6cYOgAAAABJRU5ErkJggg==';
const madeAt = new Date('2026-11-26T10:00:00Z');

const paper = (blocks: Paper['blocks']): Paper => ({
  id: 'trial',
  head: { title: 'Trial of -TA1', subtitle: 'Gehäuse für Łódź, дверь', right: ['revision 3'] },
  foot: { left: 'foot', right: 'trial' },
  pageOf: (page, pages) => `sheet ${page} of ${pages}`,
  blocks,
});

async function write(blocks: Paper['blocks'], size: 'a4' | 'a3' | 'letter' = 'a4') {
  const pdf = await writePdf([{ title: 'Trial', pages: layOut(paper(blocks), size) }], { title: 'A trial', language: 'en', madeAt });
  if (pdf === null) throw new Error('given up');
  return { ...pdf, read: await readPdf(pdf.bytes) };
}

describe('a PDF', () => {
  it('should give its text back to a general reader, page by page, with every font embedded', async () => {
    const { read, missingSigns } = await write([
      { kind: 'paragraph', text: [{ text: 'raw code ' }, { text: 'E27', face: 'mono' }, { text: ' bold', face: 'bold' }] },
      { kind: 'page-break' },
      { kind: 'paragraph', text: 'second page: 3.5 dB − 2 m' },
    ]);
    expect(read.title).toBe('A trial');
    expect(read.pages.map(({ widthPt, heightPt }) => [Math.round(widthPt), Math.round(heightPt)])).toEqual([
      [595, 842],
      [595, 842],
    ]);
    expect(read.pages[0]?.text).toContain('Trial of -TA1');
    expect(read.pages[0]?.text).toContain('E27');
    expect(read.pages[0]?.text.replace(/\s/g, '')).toContain('GehäusefürŁódź,дверь');
    expect(read.pages[1]?.text).toContain('second page: 3.5 dB − 2 m');
    expect(read.pages[1]?.text).toContain('sheet 2 of 2');
    expect([...read.fonts.keys()].length).toBeGreaterThanOrEqual(4);
    expect([...read.fonts.values()]).not.toContain(false);
    expect(missingSigns).toEqual([]);
  });

  it.each([
    ['a3', 842, 1191],
    ['letter', 612, 792],
  ] as const)('should be of the size of %s', async (size, width, height) => {
    const { read } = await write([{ kind: 'paragraph', text: 'x' }], size);
    expect(read.pages.map(({ widthPt, heightPt }) => [Math.round(widthPt), Math.round(heightPt)])).toEqual([[width, height]]);
  });

  it('should name the signs that it cannot show', async () => {
    const { missingSigns } = await write([{ kind: 'paragraph', text: 'cabinet \u{1F527} and \u4e2d' }]);
    expect(missingSigns).toEqual(['\u{1F527}', '\u4e2d']);
  });

  it('should draw pictures, and go on with words where one is damaged or of another kind', async () => {
    const photo = (data: string, words: string) =>
      ({ kind: 'photo', height: 20, photo: { mediaType: 'image/png', data, words, instead: `cannot draw ${words}` } }) as const;
    const { read, missingPictures } = await write([
      photo(png, 'good'),
      photo(png.slice(0, 40), 'cut off'),
      photo(png.replace('GNgYGBg', 'AAAAAAA'), 'spoiled inside'),
      photo('AAAA', 'nonsense'),
      photo('', 'empty'),
      { kind: 'paragraph', text: 'after all' },
    ]);
    expect(read.pages[0]?.images).toBeGreaterThanOrEqual(1);
    expect(missingPictures).toEqual(expect.arrayContaining(['cut off', 'nonsense', 'empty']));
    expect(missingPictures).not.toContain('good');
    expect(read.pages[0]?.text).toContain('cannot draw nonsense');
    expect(read.pages[0]?.text).toContain('after all');
  });

  it('should be the same bytes for the same pages and moment', async () => {
    const blocks = [{ kind: 'paragraph', text: 'the same' }] as const;
    expect((await write(blocks)).bytes).toEqual((await write(blocks)).bytes);
  });

  it('should say how far it is, and stop when told', async () => {
    const pages = layOut(paper([{ kind: 'paragraph', text: 'a' }, { kind: 'page-break' }, { kind: 'paragraph', text: 'b' }]), 'a4');
    const seen: number[] = [];
    const onPage = (done: number) => {
      seen.push(done);
      return done < 1;
    };
    expect(await writePdf([{ title: 'x', pages }], { title: 'x', language: 'en', madeAt, onPage })).toBeNull();
    expect(seen).toEqual([0, 1]);
  });
});
