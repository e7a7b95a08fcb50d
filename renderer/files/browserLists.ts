import { ok, type Problem, type Result } from '../../engine/base/index.ts';
import type { ExportKind, SeveralFiles } from '../state/sitting.ts';
import type { ListFile, TakenFile } from './access.ts';
import { pickToSave } from './browserHandles.ts';
import { writeContent } from './browserKnown.ts';
import { attempt, bytesOf, describe, mostFileBytes, tooLarge } from './browserResults.ts';
import { chooseByInput, chooseSeveral, download } from './downloads.ts';

/*
 * What is read once, or made of the document, and never saved to again.
 */

const mostFiles = 2_000;
const mostBytes = 10 * mostFileBytes;
const exportMediaTypes = {
  pdf: 'application/pdf',
  zip: 'application/zip',
  html: 'text/html',
  csv: 'text/csv',
  graphml: 'application/xml',
} as const;

export async function exportInPlace(proposedName: string, content: Uint8Array, kind: ExportKind): Promise<Result<string | null>> {
  return attempt('file-not-saved', proposedName, async () => {
    const picked = await pickToSave(proposedName, { [exportMediaTypes[kind]]: [`.${kind}`] });
    if (!picked) return ok(null);
    await writeContent(picked, content);
    return ok(picked.name);
  });
}

export async function exportAsDownload(proposedName: string, content: Uint8Array, kind: ExportKind): Promise<Result<string>> {
  download(proposedName, content, exportMediaTypes[kind]);
  return ok(proposedName);
}

export async function chooseList(): Promise<Result<ListFile | null>> {
  const file = await chooseByInput('.csv,.txt,.tsv,.graphml,.xml');
  if (!file) return ok(null);
  if (file.size > mostFileBytes) return tooLarge(file.size);
  return ok({ name: file.name, content: await bytesOf(file) });
}

/** As many as a window can hold; what was not looked at is counted. */
export async function chooseJsonFiles(from: 'files' | 'folder'): Promise<Result<SeveralFiles | null>> {
  const chosen = (await chooseSeveral(from)).filter(({ name }) => name.toLowerCase().endsWith('.json'));
  if (chosen.length === 0) return ok(null);
  const files: TakenFile[] = [];
  const problems: Problem[] = [];
  let looked = 0;
  let bytes = 0;
  for (const file of chosen.slice(0, mostFiles)) {
    if (bytes >= mostBytes) break;
    looked += 1;
    const read = await attempt('file-unreadable', file.name, async () =>
      file.size > mostFileBytes ? tooLarge(file.size) : ok({ ...describe(crypto.randomUUID(), '', file), content: await bytesOf(file) }),
    );
    bytes += read.ok ? file.size : 0;
    if (read.ok) files.push(read.value);
    else problems.push(...read.problems);
  }
  return ok({ files, problems, leftOut: chosen.length - looked });
}
