import { describe, expect, it } from 'vitest';
import { checkCabinet, parseCabinetFile, serializeCabinet } from '../../engine/cabinet/index.ts';
import { planDrawing, spreadRows } from '../../engine/documents/drawingPlan.ts';
import { type DocumentSource, makeDocument } from '../../engine/documents/index.ts';
import { listLabels } from '../../engine/documents/labels.ts';
import { commonPrefix, shortTails } from '../../engine/documents/shortNames.ts';
import { makeNames, type PaperKind, paperKinds } from '../../engine/messages/index.ts';
import type { Page, PaperSize } from '../../engine/paper/index.ts';
import { mmPerPoint, textWidth } from '../../engine/paper/index.ts';
import { writePdf } from '../../engine/pdf/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import { plainContent } from '../bench/cabinets.ts';
import { readContent } from '../support/sampleCabinets.ts';
import { readPdf } from './pdfReader.ts';

function sourceOf(content: CabinetContent): DocumentSource {
  const { topology, cabinet } = checkCabinet(content);
  return { topology, cabinet, names: makeNames(topology), date: '2026-11-26' };
}

const make = (content: CabinetContent, kind: PaperKind, size: PaperSize = 'a4') => makeDocument(sourceOf(content), kind, size, 'a4-63x16');
const textsOf = (pages: readonly Page[]) =>
  pages.flatMap(({ shapes }) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])));

describe('every document of every sample', () => {
  const names = ['two-chains', 'three-units', 'drives-off-chain', 'unfinished', 'with-problems'];
  it.each(names.flatMap((name) => paperKinds.map((kind) => [name, kind] as const)))('should keep the paper: %s, %s', (name, kind) => {
    for (const size of ['a4', 'a3', 'letter'] as const) {
      for (const { pages } of make(readContent(name), kind, size)) {
        for (const page of pages) {
          for (const shape of page.shapes) {
            if (shape.kind !== 'text') continue;
            const wide = textWidth(shape.text, shape.size, shape.face);
            const left = shape.turned || shape.align === undefined ? shape.x : shape.x - (shape.align === 'right' ? wide : wide / 2);
            expect(left, shape.text).toBeGreaterThanOrEqual(7);
            expect(shape.turned ? left : left + wide, shape.text).toBeLessThanOrEqual(page.width - 7);
            expect(shape.y, shape.text).toBeLessThanOrEqual(page.height - 7);
            expect(shape.y - (shape.turned ? wide : shape.size * mmPerPoint), shape.text).toBeGreaterThanOrEqual(7);
          }
        }
      }
    }
  });
});

describe('the lists', () => {
  it('should hold every unit, cable and lead with its ends, labels, part numbers and serials', () => {
    const content = readContent('two-chains');
    const units = textsOf(make(content, 'units').flatMap(({ pages }) => pages)).join(' ');
    for (const { designation, serial, partNumber } of content.units ?? []) {
      for (const wanted of [designation, serial ?? '', partNumber ?? '']) expect(units).toContain(wanted);
    }
    const cables = textsOf(make(content, 'cables').flatMap(({ pages }) => pages)).join(' ');
    for (const { designation, labelUpper, labelLower } of content.links ?? []) {
      for (const wanted of [designation ?? '', labelUpper ?? '', labelLower ?? '']) expect(cables).toContain(wanted);
    }
    const leads = textsOf(make(content, 'leads').flatMap(({ pages }) => pages)).join(' ');
    for (const { designation } of content.leads ?? []) expect(leads).toContain(designation);
    for (const { serial } of content.spares ?? []) expect(units).toContain(serial ?? '');
  });

  it('should label both ends of every cable', () => {
    const content = readContent('two-chains');
    const labels = textsOf(make(content, 'labels').flatMap(({ pages }) => pages));
    for (const { labelUpper, labelLower } of content.links ?? []) {
      expect(labels).toContain(labelUpper);
      expect(labels).toContain(labelLower);
    }
  });
});

describe('the door sheet', () => {
  const twelve: CabinetContent = {
    ...plainContent(1, 12),
    units: plainContent(1, 12).units?.map((unit, index) => ({ ...unit, designation: index === 0 ? '-TB20' : `-TB${index}` })),
    links: plainContent(1, 12).links?.map((link, index) => ({ ...link, designation: `-WH${index + 1}` })),
    leads: plainContent(1, 12).leads?.map((lead, index) => ({ ...lead, designation: `-WD${index + 1}` })),
  };

  it('should say that no feed is written down, and take the units as fed', () => {
    const said = textsOf(make({ ...plainContent(1, 3), leads: [] }, 'door-sheet').flatMap(({ pages }) => pages)).join(' ');
    expect(said).toContain('No 24 V lead of this cabinet is written down');
    expect(said).not.toContain('so stand in no row: cable');
  });

  it('should be one or two pages of A4 for twelve units', () => {
    const sheets = make(twelve, 'door-sheet');
    expect(sheets).toHaveLength(1);
    expect(sheets[0]?.pages.length).toBeLessThanOrEqual(2);
  });

  it('should say once what all designations begin with, and stay at two pages', () => {
    const prefix = '=GRINDER1.TABLE+CABINET2.BAY3';
    const longer = <R extends { readonly designation?: string | undefined }>(record: R): R => ({
      ...record,
      designation: `${prefix}${record.designation ?? ''}`,
    });
    const long: CabinetContent = {
      ...twelve,
      controller: longer({ id: 'nc', designation: '-KE1' }),
      units: twelve.units?.map(longer),
      links: twelve.links?.map(longer),
      leads: twelve.leads?.map(longer),
    };
    const [sheet] = make(long, 'door-sheet');
    expect(sheet?.pages.length).toBeLessThanOrEqual(2);
    const texts = textsOf(sheet?.pages ?? []);
    expect(texts.filter((text) => text.includes('GRINDER1'))).toHaveLength(1);
    expect(texts.join(' ')).toContain('-TB5');
    // Where one thing is called otherwise, the sheet says for which units the beginning was left out.
    const [mixed] = make({ ...long, controller: twelve.controller }, 'door-sheet');
    const opening = textsOf(mixed?.pages ?? []).join(' ');
    expect(mixed?.pages.length).toBeLessThanOrEqual(2);
    expect(opening).toContain('Designations are shortened here. In full they begin with');
    expect(opening.split(prefix)).toHaveLength(2);
  });

  it('should have no text below 9 pt, and column heads of at least 12 pt', () => {
    for (const content of [twelve, readContent('two-chains'), readContent('forty-units'), readContent('drives-off-chain')]) {
      for (const { pages, paper } of make(content, 'door-sheet')) {
        const sizes = pages.flatMap(({ shapes }) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.size] : [])));
        expect(Math.min(...sizes)).toBeGreaterThanOrEqual(9);
        const table = paper?.blocks.find((block) => block.kind === 'table' && block.headSize !== undefined);
        expect(table?.kind === 'table' ? table.headSize : 0).toBeGreaterThanOrEqual(12);
      }
    }
  });

  it('should say what makes each row differ without colour: marks of black, words in the file', async () => {
    const sheets = make(readContent('two-chains'), 'door-sheet');
    const pdf = await writePdf(
      sheets.map(({ title, pages }) => ({ title, pages })),
      { title: 'Door sheets', language: 'en', madeAt: new Date(0) },
    );
    const read = await readPdf(pdf?.bytes ?? new Uint8Array());
    expect(read.outline).toEqual(['Door sheet, chain 1', 'Door sheet, chain 2']);
    expect(read.pages).toHaveLength(sheets.reduce((sum, { pages }) => sum + pages.length, 0));
    const text = read.pages.map((page) => page.text).join('\n');
    for (const wanted of ['downstream loss', 'n7', 's7', '-WH3', 'verified', 'assumed', 'revision C', 'First:', 'lock out']) {
      expect(text, wanted).toContain(wanted);
    }
    expect([...read.fonts.values()]).not.toContain(false);
  });

  it('should say how far it is while the first steps are looked for', () => {
    const shares: number[] = [];
    makeDocument({ ...sourceOf(readContent('two-chains')), onShare: (share) => shares.push(share) }, 'door-sheet', 'a4', 'a4-63x16');
    expect(shares.length).toBeGreaterThan(10);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  it('should not be made of a cabinet that cannot be simulated', () => {
    expect(make(readContent('with-problems'), 'door-sheet')).toEqual([]);
  });
});

describe('photos and labels', () => {
  // A black square of 2 × 2 pixels; then the same spoiled, and one of a kind that a PDF cannot hold.
  const png = 'iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAIAAAD91JpzAAAAEElEQVR4nGNgYGBggBAQDAAADgABm6cYOgAAAABJRU5ErkJggg==';
  const content: CabinetContent = {
    ...readContent('three-units'),
    cabinetPhotos: ['good', 'spoiled', 'webp'],
    photos: [
      { id: 'good', caption: 'whole', takenOn: '2026-03-02', mediaType: 'image/png', data: png },
      { id: 'spoiled', caption: 'cut off', mediaType: 'image/png', data: png.slice(0, 40) },
      { id: 'webp', caption: 'other kind', mediaType: 'image/webp', data: 'UklGRhoAAABXRUJQ' },
    ],
  };

  it('should print the photos that can be printed, and say of each other one why not; the file opens all the same', async () => {
    const reopened = parseCabinetFile(serializeCabinet(content));
    if (!reopened.ok) throw new Error(JSON.stringify(reopened.problems));
    const made = make(reopened.value, 'photos');
    const pdf = await writePdf(made, { title: 'Photos', language: 'en', madeAt: new Date(0) });
    const read = await readPdf(pdf?.bytes ?? new Uint8Array());
    expect(read.pages.reduce((sum, { images }) => sum + images, 0)).toBe(1);
    const text = read.pages
      .map((page) => page.text)
      .join(' ')
      .replace(/\s+/g, ' ');
    expect(text).toContain('whole, taken on 2026-03-02');
    expect(text).toContain('“cut off” cannot be printed: it is damaged');
    expect(text).toContain('“other kind” cannot be printed from here: it is WebP');
    expect(pdf?.missingPictures).toHaveLength(2);
  });

  it('should say by an ellipsis that a label has no room for all of its text', () => {
    const long = 'Verbindungskabel zwischen Steuerung und erstem Antrieb der Kette '.repeat(8).trim();
    const [link, ...others] = content.links ?? [];
    if (link === undefined) throw new Error('no cable');
    const texts = textsOf(make({ ...content, links: [{ ...link, labelUpper: long }, ...others] }, 'labels').flatMap(({ pages }) => pages));
    expect(texts.some((text) => text.endsWith('…'))).toBe(true);
    expect(textsOf(make(content, 'labels').flatMap(({ pages }) => pages)).some((text) => text.endsWith('…'))).toBe(false);
  });
});

describe('labels of cables without designation', () => {
  it('should name what is at both ends, so that no two are alike', () => {
    const labels = listLabels(buildTopology(plainContent(2, 3)).topology).slice(0, 12);
    expect(labels.slice(0, 3)).toEqual(['-KE1 chain 1 / -TB1.1', '-TB1.1 / -KE1 chain 1', '-TB1.1 / -TB1.2']);
    expect(new Set(labels).size).toBe(12);
  });
});

describe('shortTails', () => {
  it.each([
    [
      ['=G1.STATION1+HALL2-TB1', '=G1.STATION2+HALL2-TB2', '-KE1'],
      ['-TB1', '-TB2', '-KE1'],
    ],
    [
      ['feed_drive_left_TB1', 'feed_drive_right_TB2'],
      ['TB1', 'TB2'],
    ],
    // One part more where one does not tell them apart; in full where none does, or where they are short.
    [
      ['=PLANT.LINE.CELL+A1-TB1', '=PLANT.LINE.CELL+A2-TB1'],
      ['+A1-TB1', '+A2-TB1'],
    ],
    [['averyveryverylongname1', 'averyveryverylongname2'], []],
    [['=A+B-TB1', '=C+D-TB2'], []],
  ])('of %j are %j', (designations, tails) => expect([...shortTails(designations).values()]).toEqual(tails));
});

describe('commonPrefix', () => {
  it.each([
    [['=G1+C2-TB1', '=G1+C2-WH12', '=G1+C2-KE1'], '=G1+C2'],
    [['=G1+C2-TB1', '=G1+C3-TB1'], '=G1'],
    [['=G1+C2-TB1', '=G12+C2-TB1'], ''],
    [['-TB1', '-TB2'], ''],
    [['+C1-TB1', '+C1-TB1-F1'], '+C1'],
    [['+C1-TB1', '+C1'], ''],
    [['+C1-TB1', '+C1TB2'], ''],
    [['cabinet 1', 'cabinet 2'], ''],
    [[], ''],
  ])('%j begin with "%s"', (designations, prefix) => expect(commonPrefix(designations)).toBe(prefix));
});

describe('the drawing', () => {
  it('should give the rows of a chain equal length, and keep a chain on one sheet where that takes none more', () => {
    const { topology } = sourceOf(plainContent(2, 6));
    const rows = planDrawing(topology, 5);
    expect(rows.map(({ units }) => units.length)).toEqual([3, 3, 3, 3, 1]);
    expect(spreadRows(rows, 3).map((sheet) => sheet.map(({ chain }) => chain?.record.number ?? null))).toEqual([
      [1, 1],
      [2, 2, null],
    ]);
    // Where it would take a sheet more the rows fill the sheets.
    const four = planDrawing(sourceOf(plainContent(4, 6)).topology, 5);
    expect(spreadRows(four, 3).map((sheet) => sheet.length)).toEqual([3, 3, 3]);
    expect(spreadRows(planDrawing(sourceOf(plainContent(1, 40)).topology, 5), 3).map((sheet) => sheet.length)).toEqual([3, 3, 3]);
  });
});
