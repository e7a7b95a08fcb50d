import type { JsonProblem } from './answer/index.ts';
import { jsonUsageProblem } from './answer/index.ts';
import type { Io } from './io.ts';
import { makeUsageProblem } from './read/index.ts';

/** A file written, or why not. */
export async function writeOut(io: Io, path: string, bytes: Uint8Array, replace: boolean): Promise<JsonProblem | null> {
  const reason = await io.writeFile(path, bytes, { replace });
  return reason === null ? null : { ...jsonUsageProblem(makeUsageProblem('file-not-writable', { file: path, reason })), file: path };
}

/** The name of a cabinet, case or exercise file without its folder and endings: "qg7" of "shop/qg7.cabinet.json". */
export function baseOf(file: string): string {
  const name = file.split(/[/\\]/).at(-1) ?? file;
  return name.replace(/\.json$/i, '').replace(/\.(cabinet|case|exercise)$/i, '') || 'cabinet';
}

/** The folder of a file, with its last slash; empty where it has none. */
export const folderOf = (file: string): string => /^.*[/\\]/.exec(file)?.[0] ?? '';
