import { paperWords } from '../../engine/messages/index.ts';
import { type Paper, writeHtml } from '../../engine/paper/index.ts';
import type { PdfSection } from '../../engine/pdf/index.ts';
import type { PapersReply } from './papersProtocol.ts';

export type Reply = (reply: PapersReply) => void;

const { language } = paperWords;

/** Gives out a document as a web page; null: an empty one. */
export function replyHtml(paper: Paper | null, reply: Reply): void {
  const page = paper === null ? '' : writeHtml(paper, { language });
  reply({ kind: 'file', bytes: new TextEncoder().encode(page), missingSigns: [], missingPictures: [] });
}

/** Gives out documents as one PDF. */
export async function replyPdf(sections: readonly PdfSection[], title: string, madeAt: number, reply: Reply): Promise<void> {
  // Large, and not needed before somebody saves.
  const { writePdf } = await import('../../engine/pdf/index.ts');
  const pdf = await writePdf(sections, { title, language, madeAt: new Date(madeAt) });
  if (pdf !== null) reply({ kind: 'file', ...pdf });
}
