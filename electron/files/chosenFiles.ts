import { randomUUID } from 'node:crypto';
import { open } from 'node:fs/promises';
import { basename } from 'node:path';
import { fail, makeProblem, ok, type Result } from '../../engine/base/index.ts';
import type { ChosenFile } from '../ipc/bridge.ts';
import { findErrorCode } from './errorCode.ts';

/** More than any cabinet or case may have (the engine refuses from 20 MB on, with a better message), and no device without end. */
const mostMegabytes = 21;
const bytesPerMegabyte = 1024 * 1024;

/** The files that the user chose in this run, by any way. The page knows them by handle only, so it cannot ask for another. */
export class ChosenFiles {
  readonly #paths = new Map<string, string>();

  /** Reads a file that the user chose and gives it a handle. Fails with a problem that names the file and the reason. */
  async take(path: string): Promise<Result<ChosenFile>> {
    const name = basename(path);
    const content = await readSmallFile(path);
    if (!content.ok) return content;
    const handle = randomUUID();
    this.#paths.set(handle, path);
    return ok({ handle, name, content: content.value });
  }

  /** The path behind a handle, for the desktop program alone. */
  findPath(handle: string): string | undefined {
    return this.#paths.get(handle);
  }
}

async function readSmallFile(path: string): Promise<Result<Uint8Array>> {
  try {
    const file = await open(path, 'r');
    try {
      const { size } = await file.stat();
      if (size > mostMegabytes * bytesPerMegabyte) {
        const facts = { megabytes: Math.ceil(size / bytesPerMegabyte), limitMegabytes: mostMegabytes };
        return fail(makeProblem('file-too-large', 'refused', { facts }));
      }
      return ok(await file.readFile());
    } finally {
      await file.close();
    }
  } catch (error) {
    return fail(makeProblem('file-unreadable', 'refused', { facts: { file: basename(path), reason: findErrorCode(error) } }));
  }
}
