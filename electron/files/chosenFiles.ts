import { randomUUID } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { fail, makeProblem, ok, type Result } from '../../engine/base/index.ts';
import type { ChosenFile, SavedFile } from '../ipc/bridge.ts';
import { findErrorCode } from './errorCode.ts';
import { bytesPerMegabyte, mostFileBytes, mostFileMegabytes } from './limits.ts';

/** The files that the user chose in this run, by any way. The page knows them by handle only, so it cannot ask for another. */
export class ChosenFiles {
  readonly #paths = new Map<string, string>();

  /** Reads a file that the user chose and gives it a handle. Fails with a problem that names the file and the reason. */
  async take(path: string): Promise<Result<ChosenFile>> {
    const name = basename(path);
    const content = await readSmallFile(path);
    if (!content.ok) return content;
    return ok({ handle: this.#remember(path), name, content: content.value });
  }

  /**
   * Saves under a path that the user chose, and gives it a handle. The file is whole at every moment: it is written beside and renamed,
   * so a failure leaves what stood there before.
   */
  async saveAs(path: string, content: Uint8Array): Promise<Result<SavedFile>> {
    const name = basename(path);
    try {
      await writeFileAtomic(path, Buffer.from(content));
    } catch (error) {
      return fail(makeProblem('file-not-saved', 'refused', { facts: { file: name, reason: findErrorCode(error) } }));
    }
    return ok({ handle: this.#remember(path), name });
  }

  #remember(path: string): string {
    const handle = randomUUID();
    this.#paths.set(handle, path);
    return handle;
  }
}

async function readSmallFile(path: string): Promise<Result<Uint8Array>> {
  const unreadable = (reason: string) =>
    fail<Uint8Array>(makeProblem('file-unreadable', 'refused', { facts: { file: basename(path), reason } }));
  try {
    const info = await stat(path);
    if (info.isDirectory()) return unreadable('EISDIR');
    // A device or a pipe may never end.
    if (!info.isFile()) return unreadable('special');
    if (info.size > mostFileBytes) {
      const facts = { megabytes: Math.ceil(info.size / bytesPerMegabyte), limitMegabytes: mostFileMegabytes };
      return fail(makeProblem('file-too-large', 'refused', { facts }));
    }
    return ok(new Uint8Array(await readFile(path)));
  } catch (error) {
    return unreadable(findErrorCode(error));
  }
}
