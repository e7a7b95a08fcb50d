import { access, chmod, constants, mkdir, open, readdir, readFile, realpath, rename, rm, stat } from 'node:fs/promises';

export interface DiskInfo {
  readonly kind: 'file' | 'folder' | 'other';
  /** Bytes. */
  readonly size: number;
  /** When it was last changed, milliseconds since 1970. */
  readonly modified: number;
  /** Permission bits. */
  readonly mode: number;
}

/**
 * The few things that are done to files. Each fails with an error that carries the system's code (`ENOSPC`). Tests put a disk in its
 * place that is full, slow, held by another program, or gone.
 */
export interface Disk {
  readonly info: (path: string) => Promise<DiskInfo>;
  /** The file behind links. */
  readonly real: (path: string) => Promise<string>;
  readonly read: (path: string) => Promise<Uint8Array>;
  /** Whether the file may be written, without touching it. */
  readonly checkWritable: (path: string) => Promise<void>;
  /** Makes or empties the file, writes all of it, and comes back when it lies on the disk itself. */
  readonly write: (path: string, content: Uint8Array, mode: number) => Promise<void>;
  readonly rename: (from: string, to: string) => Promise<void>;
  /** Comes back when the folder's list of names lies on the disk itself; does nothing where the system has no such thing. */
  readonly flushFolder: (path: string) => Promise<void>;
  /** Nothing happens when there is none. */
  readonly remove: (path: string) => Promise<void>;
  readonly makeFolder: (path: string) => Promise<void>;
  readonly list: (path: string) => Promise<readonly string[]>;
}

/** What some network drives answer when they are asked to flush: they do it when they like. */
const flushUnknown = new Set(['EINVAL', 'ENOTSUP', 'ENOSYS', 'EOPNOTSUPP']);

/** The disk of this machine. */
export const nodeDisk: Disk = {
  async info(path) {
    const found = await stat(path);
    const kind = found.isFile() ? 'file' : found.isDirectory() ? 'folder' : 'other';
    return { kind, size: found.size, modified: found.mtimeMs, mode: found.mode & 0o777 };
  },
  real: (path) => realpath(path),
  read: async (path) => new Uint8Array(await readFile(path)),
  checkWritable: (path) => access(path, constants.W_OK),
  async write(path, content, mode) {
    const file = await open(path, 'w', mode);
    try {
      await file.writeFile(content);
      await file.sync().catch((error: unknown) => {
        if (!flushUnknown.has(codeOf(error))) throw error;
      });
    } finally {
      await file.close();
    }
    // The mask of the process may have taken bits from the mode.
    if (process.platform !== 'win32') await chmod(path, mode);
  },
  rename: (from, to) => rename(from, to),
  async flushFolder(path) {
    if (process.platform === 'win32') return;
    const folder = await open(path, 'r');
    try {
      await folder.sync().catch(() => undefined);
    } finally {
      await folder.close();
    }
  },
  remove: (path) => rm(path, { force: true }),
  makeFolder: async (path) => {
    await mkdir(path, { recursive: true });
  },
  list: (path) => readdir(path),
};

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}
