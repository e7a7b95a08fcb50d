import { parseCaseFile } from '../../cabinet/index.ts';
import { formatName } from '../../messages/index.ts';
import type { CaseContent } from '../../schema/index.ts';
import { type JsonProblem, jsonProblem, jsonUsageProblem } from '../answer/index.ts';
import type { Io } from '../io.ts';
import { makeUsageProblem } from './asked.ts';

/** Cases that were read, what is of another kind, and what could not be read. */
export interface ReadCases {
  readonly cases: readonly { readonly file: string; readonly content: CaseContent }[];
  readonly others: readonly { readonly file: string; readonly kind: string }[];
  readonly unreadable: readonly JsonProblem[];
}

/** Reads case files, and all of folders that end in .json, in the order of their names. */
export async function readCases(io: Io, paths: readonly string[]): Promise<ReadCases> {
  const cases: { file: string; content: CaseContent }[] = [];
  const others: { file: string; kind: string }[] = [];
  const unreadable: JsonProblem[] = [];
  for (const path of paths) {
    const inside = await io.listFolder(path);
    const folder = path.replace(/[/\\]$/, '');
    const files = inside === null ? [path] : inside.filter((name) => /\.json$/i.test(name)).map((name) => `${folder}/${name}`);
    for (const file of [...files].sort()) {
      const read = await io.readFile(file);
      if ('reason' in read) {
        unreadable.push({ ...jsonUsageProblem(makeUsageProblem('file-not-readable', { file, reason: read.reason })), file });
        continue;
      }
      const parsed = parseCaseFile(read.bytes);
      if (parsed.ok) {
        cases.push({ file, content: parsed.value });
        continue;
      }
      const other = parsed.problems.find(({ code }) => code === 'format-other-kind')?.facts['format'];
      if (typeof other === 'string') others.push({ file, kind: formatName(other) });
      else unreadable.push(...parsed.problems.map((problem) => jsonProblem(problem, file)));
    }
  }
  return { cases, others, unreadable };
}
