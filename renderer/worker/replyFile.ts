import { makeFileName } from '../../engine/base/index.ts';
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

/** One PDF of several that are packed together. */
export interface PackedPdf {
  /** Of its file, without the ending. */
  readonly name: string;
  readonly title: string;
  readonly sections: readonly PdfSection[];
}

/** Gives out several PDFs, packed into one file. */
export async function replyZip(files: readonly PackedPdf[], madeAt: number, reply: Reply): Promise<void> {
  const [{ writePdf }, { zipSync }] = await Promise.all([import('../../engine/pdf/index.ts'), import('fflate')]);
  const packed: Record<string, Uint8Array> = {};
  const missing = { signs: new Set<string>(), pictures: new Set<string>() };
  for (const { name, title, sections } of files) {
    const pdf = await writePdf(sections, { title, language, madeAt: new Date(madeAt) });
    if (pdf === null) continue;
    packed[freeName(packed, name)] = pdf.bytes;
    for (const sign of pdf.missingSigns) missing.signs.add(sign);
    for (const picture of pdf.missingPictures) missing.pictures.add(picture);
  }
  if (Object.keys(packed).length === 0) return;
  // PDFs are packed already; the time is the one that stands in them, so that equal input gives equal bytes.
  const bytes = zipSync(packed, { level: 0, mtime: Math.max(madeAt, earliestInZip) });
  reply({ kind: 'file', bytes, missingSigns: [...missing.signs], missingPictures: [...missing.pictures] });
}

/** A ZIP knows no time before 1980. */
const earliestInZip = Date.UTC(1980, 0, 2);

/** Two machines may bear one number: the second one gets a number behind it. */
function freeName(taken: Readonly<Record<string, unknown>>, name: string): string {
  for (let number = 1; ; number += 1) {
    const free = makeFileName(number === 1 ? name : `${name}-${number}`, '.pdf', 'documents');
    if (!Object.hasOwn(taken, free)) return free;
  }
}
