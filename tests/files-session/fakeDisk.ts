import { dirname } from 'node:path';
import type { Disk } from '../../electron/files/disk.ts';
import { digest, type Machine } from '../../electron/files/machine.ts';

export type Deed = keyof Disk;

interface FakeFile {
  content: Uint8Array;
  modified: number;
  mode: number;
}

/** The system's error with its code. */
export function systemError(code: string): Error {
  return Object.assign(new Error(code), { code });
}

/**
 * A disk in memory that can be full, held, protected or gone, and whose power can be cut: then what was being written is torn, and
 * nothing works until `restore`.
 */
export class FakeDisk implements Disk {
  readonly files = new Map<string, FakeFile>();
  readonly folders = new Set<string>(['/', '/plant', '/user']);
  readonly done: { readonly deed: Deed; readonly path: string }[] = [];
  /** Answers the code with which a deed fails; undefined lets it through. */
  fault: (deed: Deed, path: string) => string | undefined = () => undefined;
  #deedsLeft = Number.POSITIVE_INFINITY;
  #clock = 1_000_000;

  /** The power goes during the deed that follows so many others. */
  cutPowerAfter(deeds: number): void {
    this.#deedsLeft = deeds;
  }

  restorePower(): void {
    this.#deedsLeft = Number.POSITIVE_INFINITY;
  }

  put(path: string, content: string | Uint8Array, mode = 0o644): void {
    this.#clock += 1_000;
    this.files.set(path, {
      content: typeof content === 'string' ? new TextEncoder().encode(content) : content,
      modified: this.#clock,
      mode,
    });
  }

  text(path: string): string | undefined {
    const file = this.files.get(path);
    return file && new TextDecoder().decode(file.content);
  }

  async info(path: string) {
    this.#begin('info', path);
    if (this.folders.has(path)) return { kind: 'folder' as const, size: 0, modified: 0, mode: 0o755 };
    const { content, modified, mode } = this.#find(path);
    return { kind: 'file' as const, size: content.byteLength, modified, mode };
  }

  async real(path: string) {
    this.#begin('real', path);
    this.#find(path);
    return path;
  }

  async read(path: string) {
    this.#begin('read', path);
    return this.#find(path).content.slice();
  }

  async checkWritable(path: string) {
    this.#begin('checkWritable', path);
    if ((this.#find(path).mode & 0o200) === 0) throw systemError('EACCES');
  }

  async write(path: string, content: Uint8Array, mode: number) {
    if (!this.folders.has(dirname(path))) throw systemError('ENOENT');
    if (this.#deedsLeft === 0 || this.fault('write', path) !== undefined) this.put(path, content.slice(0, content.byteLength / 2), mode);
    this.#begin('write', path);
    this.put(path, content.slice(), mode);
  }

  async rename(from: string, to: string) {
    this.#begin('rename', to);
    const file = this.#find(from);
    this.files.delete(from);
    this.files.set(to, file);
  }

  async flushFolder(path: string) {
    this.#begin('flushFolder', path);
  }

  async remove(path: string) {
    this.#begin('remove', path);
    this.files.delete(path);
  }

  async makeFolder(path: string) {
    this.#begin('makeFolder', path);
    this.folders.add(path);
  }

  async list(path: string) {
    this.#begin('list', path);
    if (!this.folders.has(path)) throw systemError('ENOENT');
    return [...this.files.keys()].filter((name) => dirname(name) === path).map((name) => name.slice(path.length + 1));
  }

  #begin(deed: Deed, path: string): void {
    if (this.#deedsLeft <= 0) {
      this.#deedsLeft = -1;
      throw systemError('power cut');
    }
    this.#deedsLeft -= 1;
    this.done.push({ deed, path });
    const code = this.fault(deed, path);
    if (code !== undefined) throw systemError(code);
  }

  #find(path: string): FakeFile {
    const file = this.files.get(path);
    if (!file) throw systemError('ENOENT');
    return file;
  }
}

/** A machine with such a disk; `pauses` collects what was waited. */
export function fakeMachine(disk: FakeDisk, windows = false): Machine & { readonly pauses: number[] } {
  const pauses: number[] = [];
  let seconds = 0;
  return {
    disk,
    windows,
    pauses,
    now: () => new Date(Date.UTC(2026, 10, 25, 10, 0, seconds++)),
    pause: async (milliseconds) => void pauses.push(milliseconds),
    mark: digest('test'),
  };
}
