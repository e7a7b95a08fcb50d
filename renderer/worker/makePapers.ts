import { checkCabinet } from '../../engine/cabinet/index.ts';
import { type MadeDocument, makeDocument } from '../../engine/documents/index.ts';
import { makeNames, paperWords } from '../../engine/messages/index.ts';
import { type Page, writeHtml, writeSvg } from '../../engine/paper/index.ts';
import { isolationFigures } from '../../engine/patterns/index.ts';
import type { PapersReply, PapersRequest } from './papersProtocol.ts';

/** Makes documents for the window and says on the way how far it is. */
export async function makePapers(request: PapersRequest, reply: (reply: PapersReply) => void): Promise<void> {
  const { content, kinds, size, labels, date, form, madeAt } = request;
  const { topology, cabinet } = checkCabinet(content);
  const source = { topology, cabinet, names: makeNames(topology), date };
  const documents = kinds.flatMap((kind, index): readonly MadeDocument[] => {
    reply({ kind: 'progress', document: kind, share: index / kinds.length });
    return makeDocument(source, kind, size, labels);
  });
  if (form === 'preview') {
    reply({
      kind: 'preview',
      documents: documents.map(({ id, title, pages }) => ({
        id,
        title,
        pages: pages.map((page) => writeSvg(withoutPictures(page), title)),
      })),
      isolation: cabinet !== null && kinds.includes('door-sheet') ? isolationFigures(cabinet) : null,
    });
    return;
  }
  if (form === 'html') {
    const pages = documents.flatMap(({ paper }) => (paper === null ? [] : [writeHtml(paper, { language: paperWords.language })]));
    reply({ kind: 'file', bytes: new TextEncoder().encode(pages[0] ?? ''), missingSigns: [], missingPictures: [] });
    return;
  }
  // Large, and not needed before somebody saves.
  const { writePdf } = await import('../../engine/pdf/index.ts');
  const pdf = await writePdf(documents, { title: content.name, language: paperWords.language, madeAt: new Date(madeAt) });
  if (pdf !== null) reply({ kind: 'file', ...pdf });
}

/** The content policy of the page lets no picture in by its data; in the preview its words stand for it. */
function withoutPictures(page: Page): Page {
  const shapes = page.shapes.flatMap((shape): Page['shapes'] => {
    if (shape.kind !== 'picture') return [shape];
    const { x, y, width, height, words } = shape;
    return [
      { kind: 'box', x, y, width, height, line: { width: 0.3 } },
      { kind: 'text', x: x + width / 2, y: y + height / 2, text: words, size: 10, align: 'center' },
    ];
  });
  return { ...page, shapes };
}
