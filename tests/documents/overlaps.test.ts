import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { type DocumentSource, makeDocument } from '../../engine/documents/index.ts';
import { makeNames, type PaperKind, paperKinds } from '../../engine/messages/index.ts';
import { type PaperSize, paperNames, writeSvg } from '../../engine/paper/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { readContent } from '../support/sampleCabinets.ts';
import { findOverlaps, readInk } from './svgBoxes.ts';

function sourceOf(content: CabinetContent): DocumentSource {
  const { topology, cabinet } = checkCabinet(content);
  return { topology, cabinet, names: makeNames(topology), date: '2026-11-26' };
}

/** Overlaps on every page of a document, as they lie in its SVG files. */
function overlapsOf(source: DocumentSource, kind: PaperKind, size: PaperSize): readonly string[] {
  return makeDocument(source, kind, size, 'a4-63x16').flatMap(({ pages, title }) =>
    pages.flatMap((page, index) => findOverlaps(readInk(writeSvg(page, title))).map((pair) => `page ${index + 1}: ${pair}`)),
  );
}

const samples = ['three-units', 'two-chains', 'drives-off-chain', 'forty-units', 'unfinished', 'with-problems'];

describe('no text lies on another or is crossed, by the outlines in the font files', () => {
  it.each(samples.flatMap((name) => paperKinds.map((kind) => [name, kind] as const)))('%s, %s', (name, kind) => {
    const source = sourceOf(readContent(name));
    for (const size of paperNames) expect(overlapsOf(source, kind, size), size).toEqual([]);
  });

  const words = fc.oneof(
    { weight: 3, arbitrary: fc.constantFrom('-TB1', '-WH12', '+QG7=KR2-TB14', 'n7', '') },
    {
      weight: 2,
      arbitrary: fc.constantFrom(
        'Vorschubantriebsverstärker der Werkstückspindelschlitten-Verfahrachse',
        'Lichtwellenleiter-Verbindungskabel Steuerung – Achsantrieb X1, verlegt im Kabelkanal hinten links',
        '=ANLAGE12.BEREICH3+SCHALTSCHRANK7-ANTRIEBSVERSTÄRKER14',
        'Überspannungsschutzgerätefreischaltung',
      ),
    },
    { weight: 1, arbitrary: fc.string({ unit: fc.constantFrom('W', 'g', 'Å', 'j', '|', ' ', '-', '/', '中', 'Ж'), maxLength: 90 }) },
  );

  it('should hold for drawings of any cabinet, with long names and texts', () => {
    const cabinet = fc
      .record({
        seed: fc.nat(),
        units: fc.integer({ min: 3, max: 60 }),
        chains: fc.integer({ min: 1, max: 5 }),
        texts: fc.array(words, { minLength: 7, maxLength: 7 }),
        size: fc.constantFrom(...paperNames),
      })
      .map(({ texts, size, ...given }) => ({ content: rename(makeCabinet(given.seed, given), texts), size }));
    fc.assert(
      fc.property(cabinet, ({ content, size }) => {
        expect(overlapsOf(sourceOf(content), 'drawing', size)).toEqual([]);
      }),
      { seed: 11, numRuns: 40 },
    );
  });

  it('should hold for every document of smaller cabinets, with long names and texts', () => {
    const given = fc.record({
      seed: fc.nat(),
      units: fc.integer({ min: 3, max: 16 }),
      texts: fc.array(words, { minLength: 7, maxLength: 7 }),
      kind: fc.constantFrom(...paperKinds.filter((kind) => kind !== 'drawing')),
      size: fc.constantFrom(...paperNames),
    });
    fc.assert(
      fc.property(given, ({ seed, units, texts, kind, size }) => {
        expect(overlapsOf(sourceOf(rename(makeCabinet(seed, { units }), texts)), kind, size)).toEqual([]);
      }),
      { seed: 12, numRuns: 40 },
    );
  });
});

/** The same cabinet with other texts, in turn, wherever a drawing shows one. */
function rename(content: CabinetContent, texts: readonly string[]): CabinetContent {
  let at = 0;
  const next = () => texts[at++ % texts.length] ?? '';
  const filled = () => next() || '-X';
  return {
    ...content,
    name: filled(),
    site: next(),
    machineNumber: next(),
    controller: { id: 'nc', ...content.controller, designation: filled(), model: next() },
    chains: (content.chains ?? []).map((chain) => ({ ...chain, name: next(), marking: next() })),
    units: (content.units ?? []).map((unit) => ({ ...unit, designation: filled(), model: next(), partNumber: next() })),
    links: (content.links ?? []).map((link) => ({ ...link, designation: next(), lengthM: 1234.567 })),
    leads: (content.leads ?? []).map((lead) => ({ ...lead, designation: filled() })),
  };
}
