import { checkCabinet } from '../../engine/cabinet/index.ts';
import { makeRepairReport } from '../../engine/documents/index.ts';
import { makeNames } from '../../engine/messages/index.ts';
import { endOf } from '../../engine/plan/index.ts';
import type { ReportRequest } from './papersProtocol.ts';
import { withPrintablePhotos } from './printablePhotos.ts';
import { type Reply, replyHtml, replyPdf } from './replyFile.ts';

/** Makes the repair report of a case for the window. */
export async function makeReport({ report, content, date, form, madeAt }: ReportRequest, reply: Reply): Promise<void> {
  const isPrinted = form === 'pdf' && report.withPhotos;
  const { topology, cabinet } = checkCabinet(isPrinted ? await withPrintablePhotos(content) : content);
  if (cabinet === null) throw new Error('a case stands on a sound cabinet');
  const end = endOf(cabinet, report.record.evidence, report.diagnosis);
  const made = makeRepairReport({ topology, cabinet, names: makeNames(topology), date, ...report, end }, 'a4');
  if (form === 'html') replyHtml(made.paper, reply);
  else await replyPdf([made], made.title, madeAt, reply);
}
