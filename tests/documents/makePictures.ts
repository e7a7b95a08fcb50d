import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/*
 * `npm run shots:paper -- FILE.pdf …`: every page of PDF files as a picture, into `.shots/paper`, to be looked at. The reader is pdf.js.
 */

const folder = '.shots/paper';
const dotsPerInch = 110;

/** What is used of the reader's own canvas, which it brings along for Node. */
interface Drawing {
  readonly canvas: { toBuffer(type: 'image/png'): Uint8Array };
  readonly context: never;
}

mkdirSync(folder, { recursive: true });
for (const file of process.argv.slice(2)) {
  const document = await getDocument({ data: new Uint8Array(readFileSync(file)), verbosity: 0 }).promise;
  // The types of the reader do not tell of its canvas factory.
  const factory = document.canvasFactory as { create(width: number, height: number): Drawing };
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const viewport = page.getViewport({ scale: dotsPerInch / 72 });
    const { canvas, context } = factory.create(Math.ceil(viewport.width), Math.ceil(viewport.height));
    await page.render({ canvas: null, canvasContext: context, viewport }).promise;
    const picture = join(folder, `${basename(file, '.pdf')}-${number}.png`);
    writeFileSync(picture, canvas.toBuffer('image/png'));
    process.stdout.write(`${picture}\n`);
  }
  await document.destroy();
}
