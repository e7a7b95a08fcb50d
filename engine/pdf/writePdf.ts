/// <reference path="./libraries.d.ts" />
import PDFDocument from 'pdfkit';
import { appVersion } from '../base/index.ts';
import type { Page } from '../paper/index.ts';
import { drawShape, type Pen } from './drawShape.ts';
import { fontFiles } from './fonts.ts';
import { splitByFont } from './splitByFont.ts';
import { fetchSubstitute } from './substitute.ts';

/** Pages that belong together, with the name under which a reader of the file finds them. */
export interface PdfSection {
  readonly title: string;
  readonly pages: readonly Page[];
}

/** What the file says of itself, and how one follows its making. */
export interface PdfOptions {
  readonly title: string;
  /** Language of the words, as in BCP 47. */
  readonly language: string;
  /** When it was made: a `Date` of whoever has a clock. Equal input with an equal moment gives equal bytes. */
  readonly madeAt: { getTime(): number };
  /** Called before each page with how many are done; waits for what it answers; `false` gives up. */
  readonly onPage?: (done: number, pages: number) => Promise<boolean> | boolean;
}

/** A PDF, and what could not be shown in it. */
export interface Pdf {
  readonly bytes: Uint8Array;
  /** Signs that no typeface at hand has; a box stands for each. */
  readonly missingSigns: readonly string[];
  /** Words of the pictures that could not be drawn. */
  readonly missingPictures: readonly string[];
}

const pointsPerMm = 72 / 25.4;

/**
 * Writes pages as a PDF 1.7: vector drawings, text that can be selected and searched, every typeface embedded with the glyphs that are
 * used. A picture that is damaged is replaced by its words. Answers null only when `onPage` gave up.
 */
export async function writePdf(sections: readonly PdfSection[], options: PdfOptions): Promise<Pdf | null> {
  const pages = sections.flatMap((section) => section.pages);
  const document = new PDFDocument({
    autoFirstPage: false,
    font: null,
    pdfVersion: '1.7',
    lang: options.language,
    displayTitle: true,
    info: { Title: options.title, Producer: 'PDFKit', Creator: `Linkwright ${appVersion}`, CreationDate: options.madeAt },
  });
  const bytes = collect(document);
  await registerFonts(document, pages);
  const missingSigns = new Set<string>();
  const missingPictures: string[] = [];
  let done = 0;
  for (const section of sections) {
    const first = done;
    for (const page of section.pages) {
      if (options.onPage !== undefined && !(await options.onPage(done, pages.length))) return null;
      document.addPage({ size: [page.width * pointsPerMm, page.height * pointsPerMm], margin: 0 });
      document.addNamedDestination(`page-${done + 1}`);
      if (done === first && sections.length > 1) document.outline.addItem(section.title);
      const pen: Pen = { document, firstPage: first, missingSigns, missingPictures };
      document.save().scale(pointsPerMm);
      for (const shape of page.shapes) drawShape(pen, shape);
      document.restore();
      done += 1;
    }
  }
  document.end();
  return { bytes: await bytes, missingSigns: [...missingSigns], missingPictures };
}

async function registerFonts(document: PDFDocument, pages: readonly Page[]): Promise<void> {
  document.registerFont('regular', fontFiles.regular()).registerFont('bold', fontFiles.bold()).registerFont('mono', fontFiles.mono());
  const needsSubstitute = pages.some(({ shapes }) =>
    shapes.some((shape) => shape.kind === 'text' && splitByFont(shape.text).some(({ isSubstitute }) => isSubstitute)),
  );
  if (needsSubstitute) document.registerFont('substitute', await fetchSubstitute());
}

function collect(document: PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on('data', (chunk) => chunks.push(chunk));
    document.on('error', reject);
    document.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
      let at = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, at);
        at += chunk.length;
      }
      resolve(bytes);
    });
  });
}
