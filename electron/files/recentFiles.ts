import { basename } from 'node:path';
import { fail, makeProblem, type Result } from '../../engine/base/index.ts';
import type { ChosenFile, RecentFile } from '../ipc/bridge.ts';
import type { ChosenFiles } from './chosenFiles.ts';
import type { Disk } from './disk.ts';

const mostRecent = 10;

/** One entry as it is remembered between two runs. */
export interface RememberedFile {
  readonly path: string;
  /** ISO 8601. */
  readonly openedAt: string;
}

/** Where the list is kept. */
export interface RecentMemory {
  recent: readonly RememberedFile[];
}

/** The files opened and saved last, the newest first. The page knows them by key only. */
export class RecentFiles {
  readonly #memory: RecentMemory;
  readonly #chosen: ChosenFiles;
  readonly #disk: Disk;

  constructor(memory: RecentMemory, chosen: ChosenFiles, disk: Disk) {
    this.#memory = memory;
    this.#chosen = chosen;
    this.#disk = disk;
  }

  remember(path: string, now: Date): void {
    const others = this.#memory.recent.filter((entry) => entry.path !== path);
    this.#memory.recent = [{ path, openedAt: now.toISOString() }, ...others].slice(0, mostRecent);
  }

  /** The list; what is not there now is marked, and stays: a drive may come back. */
  list(): Promise<readonly RecentFile[]> {
    return Promise.all(
      this.#memory.recent.map(async ({ path, openedAt }) => ({
        key: this.#chosen.keyOf(path),
        name: basename(path),
        openedAt,
        missing: await this.#disk.info(path).then(
          ({ kind }) => kind !== 'file',
          () => true,
        ),
      })),
    );
  }

  open(key: string): Promise<Result<ChosenFile>> {
    const entry = this.#memory.recent.find(({ path }) => this.#chosen.keyOf(path) === key);
    if (entry) return this.#chosen.take(entry.path);
    return Promise.resolve(fail(makeProblem('file-unreadable', 'refused', { facts: { file: '', reason: 'forgotten' } })));
  }
}
