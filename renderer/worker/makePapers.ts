import { checkCabinet } from '../../engine/cabinet/index.ts';
import { type MadeDocument, makeDocument } from '../../engine/documents/index.ts';
import { makeNames, papersWords } from '../../engine/messages/index.ts';
import { type Page, writeSvg } from '../../engine/paper/index.ts';
import { isolationFigures } from '../../engine/patterns/index.ts';
import type { PdfSection } from '../../engine/pdf/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { makeReport } from './makeReport.ts';
import type { PapersRequest, PreviewPage, ReportRequest } from './papersProtocol.ts';
import { withPrintablePhotos } from './printablePhotos.ts';
import { type Reply, replyHtml, replyPdf, replyZip } from './replyFile.ts';

/** Smaller steps nobody sees. */
const worthTelling = 0.02;

/** Makes documents, or the report of a repair, for the window and says on the way how far it is. */
export function makePapers(request: PapersRequest | ReportRequest, reply: Reply): Promise<void> {
  return 'report' in request ? makeReport(request, reply) : makeDocuments(request, reply);
}

async function makeDocuments(request: PapersRequest, reply: Reply): Promise<void> {
  const { content, others, kinds, form, madeAt } = request;
  const isForPdf = form === 'pdf' || form === 'zip';
  const machines = isForPdf ? [content, ...others] : [content];
  const made: { readonly machine: CabinetContent; readonly documents: readonly MadeDocument[] }[] = [];
  for (const [index, machine] of machines.entries()) {
    const { topology, cabinet } = checkCabinet(isForPdf && kinds.includes('photos') ? await withPrintablePhotos(machine) : machine);
    const names = makeNames(topology);
    let told = -1;
    const documents = kinds.flatMap((kind, at): readonly MadeDocument[] => {
      const onShare = (part: number) => {
        const share = (index + (at + part) / kinds.length) / machines.length;
        if (part > 0 && share - told < worthTelling) return;
        told = share;
        reply({ kind: 'progress', document: kind, share });
      };
      onShare(0);
      return makeDocument({ topology, cabinet, names, date: request.date, onShare }, kind, request.size, request.labels);
    });
    if (form === 'preview') {
      const isolation = cabinet !== null && kinds.includes('door-sheet') ? isolationFigures(cabinet) : null;
      const shown = documents.map(({ id, title, pages }) => ({ id, title, pages: pages.map((page) => previewOf(page, title)) }));
      reply({ kind: 'preview', documents: shown, isolation });
      return;
    }
    if (form === 'html') {
      return replyHtml(documents.find(({ paper }) => paper !== null)?.paper ?? null, reply);
    }
    made.push({ machine, documents });
  }
  if (form === 'zip') return replyZip(made.map(packed), madeAt, reply);
  const sections = made.flatMap(({ machine, documents }) =>
    documents.map(
      ({ title, pages }): PdfSection => ({
        title: machines.length === 1 ? title : papersWords.ofMachine(machineName(machine), title),
        pages,
      }),
    ),
  );
  await replyPdf(sections, content.name, madeAt, reply);
}

const packed = ({ machine, documents }: { readonly machine: CabinetContent; readonly documents: readonly MadeDocument[] }) => ({
  name: `${machineName(machine)}.documents`,
  title: machine.name,
  sections: documents,
});

const machineName = ({ machineNumber, name }: CabinetContent): string => machineNumber?.trim() || name;

function previewOf(page: Page, title: string): PreviewPage {
  const pictures = page.shapes.filter((shape) => shape.kind === 'picture');
  const { width, height } = page;
  return { svg: writeSvg({ ...page, shapes: page.shapes.filter((shape) => shape.kind !== 'picture') }, title), width, height, pictures };
}
