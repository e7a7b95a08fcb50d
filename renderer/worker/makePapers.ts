import { checkCabinet } from '../../engine/cabinet/index.ts';
import { type MadeDocument, makeDocument } from '../../engine/documents/index.ts';
import { makeNames, papersWords, paperWords } from '../../engine/messages/index.ts';
import { type Page, writeHtml, writeSvg } from '../../engine/paper/index.ts';
import { isolationFigures } from '../../engine/patterns/index.ts';
import type { PdfSection } from '../../engine/pdf/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { PapersReply, PapersRequest, PreviewPage } from './papersProtocol.ts';
import { withPrintablePhotos } from './printablePhotos.ts';

/** Makes documents for the window and says on the way how far it is. */
export async function makePapers(request: PapersRequest, reply: (reply: PapersReply) => void): Promise<void> {
  const { content, others, kinds, form, madeAt } = request;
  const machines = form === 'pdf' ? [content, ...others] : [content];
  const sections: PdfSection[] = [];
  for (const [index, machine] of machines.entries()) {
    const isForPdf = form === 'pdf' && kinds.includes('photos');
    const { topology, cabinet } = checkCabinet(isForPdf ? await withPrintablePhotos(machine) : machine);
    const source = { topology, cabinet, names: makeNames(topology), date: request.date };
    const documents = kinds.flatMap((kind, at): readonly MadeDocument[] => {
      reply({ kind: 'progress', document: kind, share: (index + at / kinds.length) / machines.length });
      return makeDocument(source, kind, request.size, request.labels);
    });
    if (form === 'preview') {
      const isolation = cabinet !== null && kinds.includes('door-sheet') ? isolationFigures(cabinet) : null;
      const shown = documents.map(({ id, title, pages }) => ({ id, title, pages: pages.map((page) => previewOf(page, title)) }));
      reply({ kind: 'preview', documents: shown, isolation });
      return;
    }
    if (form === 'html') {
      const pages = documents.flatMap(({ paper }) => (paper === null ? [] : [writeHtml(paper, { language: paperWords.language })]));
      reply({ kind: 'file', bytes: new TextEncoder().encode(pages[0] ?? ''), missingSigns: [], missingPictures: [] });
      return;
    }
    sections.push(
      ...documents.map(({ title, pages }) => ({
        title: machines.length === 1 ? title : papersWords.ofMachine(machineName(machine), title),
        pages,
      })),
    );
  }
  // Large, and not needed before somebody saves.
  const { writePdf } = await import('../../engine/pdf/index.ts');
  const pdf = await writePdf(sections, { title: content.name, language: paperWords.language, madeAt: new Date(madeAt) });
  if (pdf !== null) reply({ kind: 'file', ...pdf });
}

const machineName = ({ machineNumber, name }: CabinetContent): string => machineNumber?.trim() || name;

function previewOf(page: Page, title: string): PreviewPage {
  const pictures = page.shapes.filter((shape) => shape.kind === 'picture');
  const { width, height } = page;
  return { svg: writeSvg({ ...page, shapes: page.shapes.filter((shape) => shape.kind !== 'picture') }, title), width, height, pictures };
}
