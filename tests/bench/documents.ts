import { makeDocument } from '../../engine/documents/index.ts';
import { makeNames, paperKinds } from '../../engine/messages/index.ts';
import { writePdf } from '../../engine/pdf/index.ts';
import { plainCabinet } from './cabinets.ts';

/** How long every document of a cabinet takes, from the cabinet to the bytes of one PDF, in milliseconds of processor time; and how many pages that is. */
export async function timeDocuments(chains: number, perChain: number): Promise<{ readonly milliseconds: number; readonly pages: number }> {
  // Made anew, so that nothing is kept from a run before.
  const cabinet = plainCabinet(chains, perChain);
  const start = process.cpuUsage();
  const source = { topology: cabinet, cabinet, names: makeNames(cabinet), date: '2026-11-26' };
  const documents = paperKinds.flatMap((kind) => makeDocument(source, kind, 'a4', 'a4-63x16'));
  await writePdf(documents, { title: 'Bench', language: 'en', madeAt: new Date(0) });
  const { user, system } = process.cpuUsage(start);
  return { milliseconds: (user + system) / 1000, pages: documents.reduce((sum, { pages }) => sum + pages.length, 0) };
}
