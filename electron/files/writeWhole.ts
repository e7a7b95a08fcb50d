import { basename, dirname, join } from 'node:path';
import { findErrorCode } from './errorCode.ts';
import { digest, type Machine } from './machine.ts';

/** Waits between tries, in milliseconds: virus scanners and indexers hold a new file for a moment. Together about five seconds. */
const waits = [10, 20, 40, 80, 160, 320, 640, 1_280, 2_560];
const heldCodes = new Set(['EPERM', 'EBUSY', 'EACCES']);
const newFileMode = 0o644;

/** What was written does not open again. */
export class NotProved extends Error {}

/**
 * Puts `content` in the place of the file at `path`, so that at every moment, whatever ends, either the old or the new file stands
 * there whole: written beside, flushed, read back, renamed, the folder flushed. `proves` looks at what was read back; where it says
 * no, the file stays as it is (`NotProved`). Follows links, keeps the permission bits, and respects a file that may not be written.
 * Fails with the system's error, and then leaves nothing behind but after an end of the whole program.
 */
export async function writeWhole(
  machine: Machine,
  path: string,
  content: Uint8Array,
  proves: (readBack: Uint8Array) => boolean = () => true,
): Promise<void> {
  const { disk } = machine;
  const target = await disk.real(path).catch(() => path);
  const mode = await modeOf(machine, target);
  const aside = unfinishedPath(machine, target);
  try {
    await disk.write(aside, content, mode);
    const readBack = await disk.read(aside);
    if (!isEqual(readBack, content) || !proves(readBack)) throw new NotProved();
    await renamePatiently(machine, aside, target);
  } catch (error) {
    await disk.remove(aside).catch(() => undefined);
    throw error;
  }
  // The new file is in place; a folder that cannot be flushed is no failure of the save.
  await disk.flushFolder(dirname(target)).catch(() => undefined);
}

/**
 * Where the unfinished file stands: short, because names have a longest length, and always the same for one file and user, so that
 * what an ended program left is used up by the next save.
 */
export function unfinishedPath(machine: Machine, target: string): string {
  return join(dirname(target), `.~${digest(`${machine.mark} ${basename(target)}`).slice(0, 12)}.tmp`);
}

async function modeOf({ disk }: Machine, target: string): Promise<number> {
  try {
    const { mode } = await disk.info(target);
    // A rename would replace a protected file without asking.
    await disk.checkWritable(target);
    return mode;
  } catch (error) {
    if (findErrorCode(error) === 'ENOENT') return newFileMode;
    throw error;
  }
}

async function renamePatiently({ disk, windows, pause }: Machine, from: string, to: string): Promise<void> {
  for (const wait of windows ? waits : []) {
    try {
      return await disk.rename(from, to);
    } catch (error) {
      if (!heldCodes.has(findErrorCode(error))) throw error;
      await pause(wait);
    }
  }
  await disk.rename(from, to);
}

function isEqual(a: Uint8Array, b: Uint8Array): boolean {
  return a.byteLength === b.byteLength && a.every((byte, index) => byte === b[index]);
}
