import { randomUUID } from 'node:crypto';
import { access, constants, type FileHandle, mkdir, open, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { reasonOf } from './read/index.ts';

/**
 * Writes `bytes` to the file at `path`, with the folders on the way to it. Whatever fails, the file that stood there stays whole, and
 * nothing half written is left. Without `replace` a file that is there already fails with `EEXIST`. Fails with the system's error.
 */
export async function writeWhole(path: string, bytes: Uint8Array, { replace }: { readonly replace: boolean }): Promise<void> {
  await makeFolders(dirname(path));
  if (!replace) return writeNew(path, bytes, null);
  const target = await realpath(path).catch(() => path);
  const old = await findInfo(target);
  // A device or a pipe is written to, never put aside for a file.
  if (old !== null && !old.isFile() && !old.isDirectory()) return writeFile(target, bytes);
  // A rename would replace a protected file without asking.
  if (old !== null) await access(target, constants.W_OK);
  const aside = join(dirname(target), `.~${randomUUID().slice(0, 12)}.tmp`);
  await writeNew(aside, bytes, old === null ? null : old.mode & 0o777);
  try {
    await rename(aside, target);
  } catch (error) {
    await rm(aside, { force: true });
    throw error;
  }
}

/**
 * Makes a file that is not there yet, and comes back when it lies on the disk; takes it away again when it cannot be completed.
 * `mode` is its permission bits, null the usual ones of the user.
 */
async function writeNew(path: string, bytes: Uint8Array, mode: number | null): Promise<void> {
  const file = await open(path, 'wx', mode ?? undefined);
  try {
    await complete(file, bytes, mode);
  } catch (error) {
    await rm(path, { force: true });
    throw error;
  }
}

async function complete(file: FileHandle, bytes: Uint8Array, mode: number | null): Promise<void> {
  try {
    await file.writeFile(bytes);
    if (mode !== null && process.platform !== 'win32') await file.chmod(mode);
    // Some network drives flush when they like, and say so.
    await file.sync().catch((error: unknown) => {
      if (!['EINVAL', 'ENOTSUP', 'ENOSYS', 'EOPNOTSUPP'].includes(reasonOf(error))) throw error;
    });
  } finally {
    await file.close();
  }
}

/** One folder at a time: where a system refuses folders with `ENOENT`, as `/proc` does, Node's recursive `mkdir` never ends. */
async function makeFolders(folder: string): Promise<void> {
  const found = await findInfo(folder);
  if (found?.isDirectory()) return;
  if (found !== null) throw Object.assign(new Error('a file stands where a folder is needed'), { code: 'ENOTDIR' });
  const parent = dirname(folder);
  if (parent !== folder) await makeFolders(parent);
  await mkdir(folder).catch((error: unknown) => {
    // Another program may have made it meanwhile.
    if (reasonOf(error) !== 'EEXIST') throw error;
  });
}

/** What stands at a path; null where nothing does. */
async function findInfo(path: string) {
  try {
    return await stat(path);
  } catch (error) {
    if (reasonOf(error) === 'ENOENT') return null;
    throw error;
  }
}
