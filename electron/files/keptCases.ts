import { join } from 'node:path';
import { fail, makeProblem, ok, type Problem, type Result } from '../../engine/base/index.ts';
import type { KeptCase } from '../ipc/bridge.ts';
import { findErrorCode } from './errorCode.ts';
import { digest, type Machine } from './machine.ts';
import { opensAgain } from './opensAgain.ts';
import { readSmallFile } from './readSmallFile.ts';
import { writeWhole } from './writeWhole.ts';

const ending = '.case.json';
/** More than anybody repairs; a folder gone wild would fill the memory. */
const mostCases = 2_000;

/** The user's own collection of confirmed cases: a folder with one case file each, whole at every moment. */
export class KeptCases {
  readonly #machine: Machine;
  readonly #folder: string;
  #last: Promise<unknown> = Promise.resolve();

  constructor(machine: Machine, folder: string) {
    this.#machine = machine;
    this.#folder = folder;
  }

  /** Keeps a case, in the place of what was kept of it before. A file that does not open is never replaced. */
  keep(id: string, content: Uint8Array): Promise<Result<null>> {
    return this.#inTurn(async () => {
      // The digest because some disks take a and A for one name, and some names are no file names.
      const name = `${id}-${digest(id).slice(0, 8)}${ending}`;
      const path = join(this.#folder, name);
      await this.#machine.disk.makeFolder(this.#folder);
      if ((await this.#names()).includes(name)) {
        const before = await readSmallFile(this.#machine.disk, path);
        if (!before.ok || !opensAgain(before.value.content)) {
          return fail(makeProblem('case-in-the-way', 'refused', { facts: { file: name } }));
        }
      }
      await writeWhole(this.#machine, path, content, opensAgain);
      return ok(null);
    });
  }

  /** Everything in the folder, as it lies there; what cannot be read is told. */
  async list(): Promise<Result<{ readonly cases: readonly KeptCase[]; readonly problems: readonly Problem[] }>> {
    const cases: KeptCase[] = [];
    const problems: Problem[] = [];
    for (const name of (await this.#names()).slice(0, mostCases)) {
      const read = await readSmallFile(this.#machine.disk, join(this.#folder, name));
      if (read.ok) cases.push({ key: keyOf(name), name, content: read.value.content });
      else problems.push(...read.problems);
    }
    return ok({ cases, problems });
  }

  /** Takes a case out of the collection. */
  drop(key: string): Promise<Result<null>> {
    return this.#inTurn(async () => {
      const name = (await this.#names()).find((one) => keyOf(one) === key);
      if (name !== undefined) await this.#machine.disk.remove(join(this.#folder, name));
      return ok(null);
    });
  }

  async #names(): Promise<readonly string[]> {
    const names = await this.#machine.disk.list(this.#folder).catch(() => []);
    return names.filter((name) => name.endsWith(ending)).sort();
  }

  #inTurn(work: () => Promise<Result<null>>): Promise<Result<null>> {
    const turn = this.#last.then(work).catch((error: unknown) =>
      // The system's code, such as ENOSPC.
      fail<null>(makeProblem('case-not-kept', 'refused', { facts: { reason: findErrorCode(error) } })),
    );
    this.#last = turn;
    return turn;
  }
}

const keyOf = (name: string) => digest(name).slice(0, 32);
