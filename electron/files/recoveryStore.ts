import { join } from 'node:path';
import { z } from 'zod';
import { fail, makeProblem, ok, type Problem, type Result } from '../../engine/base/index.ts';
import type { RecoveredFile, RecoveredWork } from '../ipc/bridge.ts';
import type { ChosenFiles } from './chosenFiles.ts';
import { findErrorCode } from './errorCode.ts';
import type { Machine } from './machine.ts';
import { readSmallFile } from './readSmallFile.ts';
import { writeWhole } from './writeWhole.ts';

/** The file behind a document, as it was when the page last read or wrote it. */
const baseFile = z.strictObject({ path: z.string().min(1).max(40_000), hash: z.string().max(128) });
const recoveryShape = z.strictObject({
  format: z.literal('linkwright-recovery'),
  version: z.literal(1),
  keptAt: z.string().max(40),
  caseFile: baseFile.optional(),
  cabinetFile: baseFile.optional(),
  /** The document as a case file. */
  document: z.string(),
});
type RecoveryContent = z.infer<typeof recoveryShape>;

const ending = '.recovery.json';
/** Nobody has so many; a page gone wild would fill the disk. */
const mostRecoveries = 100;

/** Work that is not yet saved, one file for each document, whole at every moment. */
export class RecoveryStore {
  readonly #machine: Machine;
  readonly #folder: string;
  readonly #chosen: ChosenFiles;
  #last: Promise<unknown> = Promise.resolve();

  constructor(machine: Machine, folder: string, chosen: ChosenFiles) {
    this.#machine = machine;
    this.#folder = folder;
    this.#chosen = chosen;
  }

  /** Keeps the work of a document in the place of what was kept of it before. */
  keep(id: string, files: { readonly case: string | null; readonly cabinet: string | null }, document: string): Promise<Result<null>> {
    return this.#inTurn(async () => {
      try {
        await this.#machine.disk.makeFolder(this.#folder);
        const names = await this.#names();
        if (names.length >= mostRecoveries && !names.includes(id + ending)) throw Object.assign(new Error(), { code: 'EDQUOT' });
        const caseFile = files.case === null ? undefined : this.#chosen.find(files.case);
        const cabinetFile = files.cabinet === null ? undefined : this.#chosen.find(files.cabinet);
        const content: RecoveryContent = {
          format: 'linkwright-recovery',
          version: 1,
          keptAt: this.#machine.now().toISOString(),
          ...(caseFile && { caseFile }),
          ...(cabinetFile && { cabinetFile }),
          document,
        };
        await writeWhole(this.#machine, join(this.#folder, id + ending), new TextEncoder().encode(JSON.stringify(content)));
        return ok(null);
      } catch (error) {
        return fail(makeProblem('recovery-not-kept', 'warning', { facts: { reason: findErrorCode(error) } }));
      }
    });
  }

  /** The work was saved, or is not wanted. */
  drop(id: string): Promise<Result<null>> {
    return this.#inTurn(async () => {
      await this.#machine.disk.remove(join(this.#folder, id + ending)).catch(() => undefined);
      return ok(null);
    });
  }

  /** What earlier runs left, the newest first. What cannot be read is set aside, and told as a problem. */
  async list(): Promise<{ readonly works: readonly RecoveredWork[]; readonly problems: readonly Problem[] }> {
    const works: RecoveredWork[] = [];
    const problems: Problem[] = [];
    for (const name of await this.#names()) {
      const content = await this.#read(name);
      if (content === undefined) {
        const aside = name.replace(/\.json$/, '.damaged');
        await this.#machine.disk.rename(join(this.#folder, name), join(this.#folder, aside)).catch(() => undefined);
        problems.push(makeProblem('recovery-unreadable', 'warning', { facts: { file: aside } }));
        continue;
      }
      const [caseFile, cabinetFile] = await Promise.all([this.#recall(content.caseFile), this.#recall(content.cabinetFile)]);
      works.push({
        id: name.slice(0, -ending.length),
        keptAt: content.keptAt,
        content: new TextEncoder().encode(content.document),
        caseFile,
        cabinetFile,
      });
    }
    return { works: works.sort((a, b) => (a.keptAt < b.keptAt ? 1 : -1)), problems };
  }

  async #recall(base: z.infer<typeof baseFile> | undefined): Promise<RecoveredFile | null> {
    if (!base) return null;
    const file = await this.#chosen.take(base.path);
    const name = base.path.split(/[/\\]/).pop() ?? '';
    if (!file.ok) return { name, state: 'missing', file: null };
    return { name, state: this.#chosen.find(file.value.handle)?.hash === base.hash ? 'same' : 'changed', file: file.value };
  }

  async #read(name: string): Promise<RecoveryContent | undefined> {
    // As a text inside a text a document has more signs.
    const read = await readSmallFile(this.#machine.disk, join(this.#folder, name), 3);
    if (!read.ok) return undefined;
    try {
      const parsed = recoveryShape.safeParse(JSON.parse(new TextDecoder().decode(read.value.content)));
      return parsed.success ? parsed.data : undefined;
    } catch {
      return undefined;
    }
  }

  async #names(): Promise<readonly string[]> {
    const names = await this.#machine.disk.list(this.#folder).catch(() => []);
    return names.filter((name) => name.endsWith(ending));
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#last.then(work);
    this.#last = turn;
    return turn;
  }
}
