import { basename, join } from 'node:path';
import type { Result } from '../../engine/base/index.ts';
import { digest, type Machine } from './machine.ts';
import { opensAgain } from './opensAgain.ts';
import { type ReadFile, readSmallFile } from './readSmallFile.ts';
import { writeWhole } from './writeWhole.ts';

/** The last good copy of each file: what stood there before the last save, if it opened. */
export class KeptCopies {
  readonly #machine: Machine;
  readonly #folder: string;

  constructor(machine: Machine, folder: string) {
    this.#machine = machine;
    this.#folder = folder;
  }

  /** Keeps what stands at `path` now. A file that would not open takes the place of no good copy. Never fails: the save matters more. */
  async keep(path: string): Promise<void> {
    try {
      const before = await readSmallFile(this.#machine.disk, path);
      if (!before.ok || !opensAgain(before.value.content)) return;
      await this.#machine.disk.makeFolder(this.#folder);
      await writeWhole(this.#machine, this.#placeOf(path), before.value.content);
    } catch (error) {
      console.error('no copy of the file before was kept', error);
    }
  }

  /** The copy kept of the file at `path`. */
  read(path: string): Promise<Result<ReadFile>> {
    return readSmallFile(this.#machine.disk, this.#placeOf(path));
  }

  #placeOf(path: string): string {
    // The name for people who look into the folder, the digest because files of one name lie in many folders.
    return join(this.#folder, `${digest(path).slice(0, 16)}-${basename(path).slice(0, 100)}`);
  }
}
