import { fail, makeProblem, ok, type Result } from '../../engine/base/index.ts';
import { isOwnFile } from '../../engine/cabinet/index.ts';
import type { FileRef } from '../state/sitting.ts';
import type { TakenFile } from './access.ts';
import type { BrowserFile } from './browserHandles.ts';
import { rememberRecent } from './browserRecent.ts';
import { attempt, bytesOf, describe, mostFileBytes, tooLarge } from './browserResults.ts';
import { browserStore } from './browserStore.ts';

/** How a file was when it was last read or written here. */
interface Stamp {
  readonly modified: number;
  readonly size: number;
}

interface KnownFile {
  readonly file: BrowserFile;
  stamp: Stamp;
}

/** The files of this sitting that the browser lets us read and write in place, by handle. */
export class KnownFiles {
  readonly #known = new Map<string, KnownFile>();

  get(handle: string): KnownFile | undefined {
    return this.#known.get(handle);
  }

  /** Reads a file and knows it from then on. */
  take(file: BrowserFile): Promise<Result<TakenFile>> {
    return attempt('file-unreadable', file.name, async () => {
      const content = await file.getFile();
      if (content.size > mostFileBytes) return tooLarge(content.size);
      const handle = crypto.randomUUID();
      this.#known.set(handle, { file, stamp: stampOf(content) });
      const key = await this.#keyOf(handle, file);
      await rememberRecent(key, file);
      return ok({ ...describe(handle, key, content), content: await bytesOf(content) });
    });
  }

  /** Writes to a file that was chosen just now, and knows it from then on. */
  async writeNew(file: BrowserFile, content: Uint8Array): Promise<Result<FileRef>> {
    const handle = crypto.randomUUID();
    const target: KnownFile = { file, stamp: { modified: 0, size: 0 } };
    this.#known.set(handle, target);
    const key = await this.#keyOf(handle, file);
    const saved = await replaceWhole(handle, key, target, content);
    if (saved.ok) await rememberRecent(key, file);
    return saved;
  }

  /** Writes to a known file, unless another program wrote to it since. */
  async writeAgain({ handle, key, name }: FileRef, target: KnownFile, content: Uint8Array): Promise<Result<FileRef>> {
    const now = await target.file.getFile().catch(() => null);
    if (now && isChanged(target, now)) return fail(makeProblem('file-changed-outside', 'refused', { facts: { file: name } }));
    return replaceWhole(handle, key, target, content);
  }

  /** One key for one file, in this sitting. */
  async #keyOf(handle: string, file: BrowserFile): Promise<string> {
    for (const [other, { file: before }] of this.#known) if (other !== handle && (await before.isSameEntry(file))) return other;
    return handle;
  }
}

export function isChanged({ stamp }: KnownFile, now: File): boolean {
  return now.lastModified !== stamp.modified || now.size !== stamp.size;
}

export const stampOf = (file: File): Stamp => ({ modified: file.lastModified, size: file.size });

/** Puts a whole file in the place of what stands there, of which a copy is kept. */
function replaceWhole(handle: string, key: string, target: KnownFile, content: Uint8Array): Promise<Result<FileRef>> {
  return attempt('file-not-saved', target.file.name, async () => {
    // The same proof as in the desktop program: what would not open again replaces nothing.
    if (!isOwnFile(content)) return fail(makeProblem('file-would-not-open', 'refused', { facts: { file: target.file.name } }));
    const before = await target.file.getFile();
    const good = await bytesOf(before);
    if (isOwnFile(good)) {
      const copy = { name: before.name, content: good, keptAt: new Date(before.lastModified).toISOString() };
      await browserStore.put('copies', key, copy).catch(() => undefined);
    }
    await writeContent(target.file, content);
    const after = await target.file.getFile();
    target.stamp = stampOf(after);
    return ok(describe(handle, key, after));
  });
}

/** The browser writes aside and puts the whole in place when it is closed. */
export async function writeContent(file: BrowserFile, content: Uint8Array): Promise<void> {
  const writable = await file.createWritable();
  try {
    await writable.write(content);
    await writable.close();
  } catch (error) {
    await writable.abort().catch(() => undefined);
    throw error;
  }
}
