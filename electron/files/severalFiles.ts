import { basename, join } from 'node:path';
import { compareNatural, fail, makeProblem, ok, type Problem, type Result } from '../../engine/base/index.ts';
import type { ChosenFile, SeveralFiles } from '../ipc/bridge.ts';
import type { ChosenFiles } from './chosenFiles.ts';
import type { Disk } from './disk.ts';
import { findErrorCode } from './errorCode.ts';
import { mostFileBytes } from './limits.ts';

/** More than any course has results or any design machines, and more than they weigh; a folder by mistake must not fill the memory. */
const mostFiles = 2_000;
const mostBytes = 10 * mostFileBytes;

/** Reads the chosen files, or every JSON file of the chosen folder (not of the folders in it). One that cannot be read stops none. */
export async function takeSeveral(
  disk: Disk,
  chosen: ChosenFiles,
  [first, ...others]: readonly string[],
  from: 'files' | 'folder',
): Promise<Result<SeveralFiles | null>> {
  if (first === undefined) return ok(null);
  const listed = from === 'folder' ? await listFolder(disk, first) : ok([first, ...others]);
  if (!listed.ok) return listed;
  const files: ChosenFile[] = [];
  const problems: Problem[] = [];
  let looked = 0;
  let bytes = 0;
  for (const path of listed.value.slice(0, mostFiles)) {
    if (bytes >= mostBytes) break;
    const taken = await chosen.take(path);
    looked += 1;
    bytes += taken.ok ? taken.value.content.byteLength : 0;
    if (taken.ok) files.push(taken.value);
    else problems.push(...taken.problems);
  }
  return ok({ files, problems, leftOut: listed.value.length - looked });
}

async function listFolder(disk: Disk, folder: string): Promise<Result<readonly string[]>> {
  try {
    const names = (await disk.list(folder)).filter((name) => name.toLowerCase().endsWith('.json'));
    return ok([...names].sort(compareNatural).map((name) => join(folder, name)));
  } catch (error) {
    return fail(makeProblem('file-unreadable', 'refused', { facts: { file: basename(folder), reason: findErrorCode(error) } }));
  }
}
