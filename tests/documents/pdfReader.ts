import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What a general PDF reader finds in a file. */
export interface ReadPdf {
  readonly pages: readonly { readonly widthPt: number; readonly heightPt: number; readonly text: string; readonly images: number }[];
  /** Names of the fonts used, and whether each is embedded. */
  readonly fonts: ReadonlyMap<string, boolean>;
  readonly title: string;
  readonly outline: readonly string[];
}

/** Reads a PDF back with pdf.js (a library of a browser maker, Apache licence): an outside judge of the file. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const fonts = new Map<string, boolean>();
  const pages: { widthPt: number; heightPt: number; text: string; images: number }[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const content = await page.getTextContent();
    const operators = await page.getOperatorList();
    for (const item of content.items) {
      if (!('fontName' in item) || fonts.has(item.fontName)) continue;
      // Fonts of a page are known once its operators were read.
      const font = page.commonObjs.get(item.fontName) as { readonly name: string; readonly missingFile?: boolean; readonly data?: unknown };
      fonts.set(font.name, font.missingFile !== true && font.data !== undefined);
    }
    pages.push({
      widthPt: width,
      heightPt: height,
      text: content.items.map((item) => ('str' in item ? item.str : '')).join('\n'),
      images: operators.fnArray.filter((operator) => operator === OPS.paintImageXObject).length,
    });
  }
  const { info } = await document.getMetadata();
  const outline = (await document.getOutline()) ?? [];
  await document.destroy();
  return { pages, fonts, title: (info as { readonly Title?: string }).Title ?? '', outline: outline.map(({ title }) => title) };
}
