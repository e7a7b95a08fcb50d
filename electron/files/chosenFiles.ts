import { randomUUID } from 'node:crypto';
import { basename } from 'node:path';
import { fail, makeProblem, nameTrouble, ok, type Result } from '../../engine/base/index.ts';
import { parseResultFile } from '../../engine/cabinet/index.ts';
import type { ChosenFile, FileLook, KeptCopy, SavedFile } from '../ipc/bridge.ts';
import { findErrorCode } from './errorCode.ts';
import type { KeptCopies } from './keptCopies.ts';
import { digest, type Machine } from './machine.ts';
import { opensAgain } from './opensAgain.ts';
import { type ReadFile, readSmallFile, type Stamp } from './readSmallFile.ts';
import { NotProved, unfinishedPath, writeWhole } from './writeWhole.ts';

interface KnownFile {
  readonly path: string;
  /** How it was when the page last read or wrote it. */
  stamp: Stamp;
}

/** The files that the user chose in this run, by any way. The page knows them by handle only, so it cannot ask for another. */
export class ChosenFiles {
  readonly #machine: Machine;
  readonly #copies: KeptCopies;
  readonly #files = new Map<string, KnownFile>();
  /** The last that was done with each path and is not over. */
  readonly #turns = new Map<string, Promise<unknown>>();
  /** Makes the page's word for a path one that says nothing of it. */
  readonly #salt = randomUUID();

  constructor(machine: Machine, copies: KeptCopies) {
    this.#machine = machine;
    this.#copies = copies;
  }

  /** Reads a file that the user chose and gives it a handle. Fails with a problem that names the file and the reason. */
  async take(path: string): Promise<Result<ChosenFile>> {
    const read = await readSmallFile(this.#machine.disk, path);
    if (!read.ok) return read;
    // What a save left here that was cut off with its program.
    await this.#machine.disk.remove(unfinishedPath(this.#machine, path)).catch(() => undefined);
    return ok(this.#describe(this.#remember(path, read.value.stamp), path, read.value));
  }

  /** Reads it once more; from now on its state of this moment is the known one. */
  async readAgain(handle: string): Promise<Result<ChosenFile>> {
    const known = this.#files.get(handle);
    if (!known) return forgotten('file-unreadable');
    const read = await readSmallFile(this.#machine.disk, known.path);
    if (!read.ok) return read;
    known.stamp = read.value.stamp;
    return ok(this.#describe(handle, known.path, read.value));
  }

  /** Reads it to be looked at: what the page knows of it, and guards, stays what it was. */
  async peek(handle: string): Promise<Result<ChosenFile>> {
    const known = this.#files.get(handle);
    if (!known) return forgotten('file-unreadable');
    const read = await readSmallFile(this.#machine.disk, known.path);
    return read.ok ? ok(this.#describe(handle, known.path, read.value)) : read;
  }

  /** Whether the file is still as the page knows it. */
  async look(handle: string): Promise<Result<FileLook>> {
    const known = this.#files.get(handle);
    return known ? this.#inTurn(known.path, () => this.#lookNow(known)) : forgotten('file-unreadable');
  }

  /** The user wants his own work in the place of what another program wrote: the file's state of this moment is the known one. */
  async keepMine(handle: string): Promise<Result<null>> {
    const known = this.#files.get(handle);
    if (!known) return forgotten('file-not-saved');
    const read = await readSmallFile(this.#machine.disk, known.path);
    if (read.ok) known.stamp = read.value.stamp;
    return ok(null);
  }

  /** Saves over a file that the page has opened or saved before. Refuses when it was changed outside meanwhile. */
  async save(handle: string, content: Uint8Array): Promise<Result<SavedFile>> {
    const known = this.#files.get(handle);
    if (!known) return forgotten('file-not-saved');
    return this.#inTurn(known.path, async () => {
      const look = await this.#lookNow(known);
      if (look.ok && look.value.state === 'changed') {
        return fail(makeProblem('file-changed-outside', 'refused', { facts: { file: basename(known.path) } }));
      }
      const stamp = await this.#replace(known.path, content);
      if (!stamp.ok) return stamp;
      known.stamp = stamp.value;
      return ok(this.#tell(handle, known.path, known.stamp.modified));
    });
  }

  /** Saves under a path that the user chose, and gives it a handle. */
  async saveAs(path: string, content: Uint8Array): Promise<Result<SavedFile>> {
    const file = basename(path);
    const trouble = this.#machine.windows ? nameTrouble(file) : null;
    if (trouble) return fail(makeProblem('file-name-unusable', 'refused', { facts: { file, reason: trouble } }));
    return this.#inTurn(path, async () => {
      const stamp = await this.#replace(path, content);
      if (!stamp.ok) return stamp;
      return ok(this.#tell(this.#remember(path, stamp.value), path, stamp.value.modified));
    });
  }

  /** Puts something under a path that the user chose; it is not opened again, so it gets no handle. Answers its name. */
  async export(path: string, content: Uint8Array): Promise<Result<string>> {
    const file = basename(path);
    const trouble = this.#machine.windows ? nameTrouble(file) : null;
    if (trouble) return fail(makeProblem('file-name-unusable', 'refused', { facts: { file, reason: trouble } }));
    return this.#inTurn(path, async () => {
      try {
        await writeWhole(this.#machine, path, content);
        return ok(file);
      } catch (error) {
        return fail(makeProblem('file-not-saved', 'refused', { facts: { file, reason: findErrorCode(error) } }));
      }
    });
  }

  /** Deletes a result of an exercise for good; refuses every other file, and one that was changed since it was read. */
  async deleteResult(handle: string): Promise<Result<null>> {
    const known = this.#files.get(handle);
    if (!known) return forgotten('file-unreadable');
    const file = basename(known.path);
    return this.#inTurn(known.path, async () => {
      const read = await readSmallFile(this.#machine.disk, known.path);
      if (!read.ok) return read;
      if (read.value.stamp.hash !== known.stamp.hash || !parseResultFile(read.value.content).ok) {
        return fail(makeProblem('result-not-recognised', 'refused', { facts: { file } }));
      }
      try {
        await this.#machine.disk.remove(known.path);
      } catch (error) {
        return fail(makeProblem('result-not-deleted', 'refused', { facts: { file, reason: findErrorCode(error) } }));
      }
      this.#files.delete(handle);
      return ok(null);
    });
  }

  /** What stood in the file before its last save here. */
  async readKept(handle: string): Promise<Result<KeptCopy>> {
    const known = this.#files.get(handle);
    if (!known) return forgotten('file-unreadable');
    const read = await this.#copies.read(known.path);
    if (!read.ok) return read;
    return ok({ name: basename(known.path), content: read.value.content, keptAt: isoTime(read.value.stamp.modified) });
  }

  /** Where a file lies and how it was last known; for the shell only. */
  find(handle: string): { readonly path: string; readonly hash: string } | undefined {
    const known = this.#files.get(handle);
    return known && { path: known.path, hash: known.stamp.hash };
  }

  /** The page's word for a path: equal for equal paths in this run, and telling nothing. */
  keyOf(path: string): string {
    return digest(`${this.#salt} ${path}`).slice(0, 32);
  }

  async #lookNow(known: KnownFile): Promise<Result<FileLook>> {
    try {
      const info = await this.#machine.disk.info(known.path);
      if (info.modified === known.stamp.modified && info.size === known.stamp.size) return ok({ state: 'same' });
      const read = await readSmallFile(this.#machine.disk, known.path);
      const same = read.ok && read.value.stamp.hash === known.stamp.hash;
      return ok(same ? { state: 'same' } : { state: 'changed', modifiedAt: isoTime(info.modified) });
    } catch (error) {
      const reason = findErrorCode(error);
      if (reason === 'ENOENT' || reason === 'ENOTDIR') return ok({ state: 'missing' });
      return fail(makeProblem('file-unreadable', 'refused', { facts: { file: basename(known.path), reason } }));
    }
  }

  async #replace(path: string, content: Uint8Array): Promise<Result<Stamp>> {
    const file = basename(path);
    await this.#copies.keep(path);
    try {
      await writeWhole(this.#machine, path, content, opensAgain);
      const { modified } = await this.#machine.disk.info(path);
      return ok({ modified, size: content.byteLength, hash: digest(content) });
    } catch (error) {
      if (error instanceof NotProved) return fail(makeProblem('file-would-not-open', 'refused', { facts: { file } }));
      return fail(makeProblem('file-not-saved', 'refused', { facts: { file, reason: findErrorCode(error) } }));
    }
  }

  /** What touches one file waits for what touched it before, so that two saves never overlap and a look never sees half of one. */
  async #inTurn<T>(path: string, work: () => Promise<T>): Promise<T> {
    const turn = (this.#turns.get(path) ?? Promise.resolve()).then(work);
    this.#turns.set(path, turn);
    try {
      return await turn;
    } finally {
      if (this.#turns.get(path) === turn) this.#turns.delete(path);
    }
  }

  #remember(path: string, stamp: Stamp): string {
    const handle = randomUUID();
    this.#files.set(handle, { path, stamp });
    return handle;
  }

  #describe(handle: string, path: string, { content, stamp }: ReadFile): ChosenFile {
    return { ...this.#tell(handle, path, stamp.modified), content };
  }

  #tell(handle: string, path: string, modified: number): SavedFile {
    return { handle, key: this.keyOf(path), name: basename(path), modifiedAt: isoTime(modified) };
  }
}

function forgotten<T>(code: 'file-unreadable' | 'file-not-saved'): Result<T> {
  return fail(makeProblem(code, 'refused', { facts: { file: '', reason: 'forgotten' } }));
}

function isoTime(milliseconds: number): string {
  return new Date(milliseconds).toISOString();
}
