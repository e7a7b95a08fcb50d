import { readdir, readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Io, LineRead } from '../../engine/cli/io.ts';
import { splitLines } from '../../engine/cli/lines.ts';
import { run } from '../../engine/cli/run.ts';
import { programFolder } from '../support/folders.ts';

/** What a run of the command line left behind. */
export interface Ran {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
  /** What it wrote, by path. Nothing reaches the disk. */
  readonly written: ReadonlyMap<string, Uint8Array>;
}

/** Files that exist only in a test, by name, and what stands on standard input (as "-"). */
export type Files = Readonly<Record<string, string>>;

/** Runs the command line inside this process, from the program's folder, as `linkwright …args` would. */
export async function linkwright(args: readonly string[], files: Files = {}, columns = 100, removed: string[] = []): Promise<Ran> {
  let out = '';
  let err = '';
  const written = new Map<string, Uint8Array>();
  const io: Io = {
    columns,
    async readFile(path) {
      if (Object.hasOwn(files, path)) return { bytes: new TextEncoder().encode(files[path]) };
      try {
        return { bytes: await readFile(resolve(programFolder, path)) };
      } catch (error) {
        // Node's own errors carry a code; anything else would be a bug of the test.
        return { reason: (error as NodeJS.ErrnoException).code ?? String(error) };
      }
    },
    async listFolder(path) {
      const inside = Object.keys(files).flatMap((name) => (name.startsWith(`${path}/`) ? [name.slice(path.length + 1)] : []));
      return inside.length > 0 ? inside : await readdir(resolve(programFolder, path)).catch(() => null);
    },
    async writeFile(path, bytes, { replace }) {
      if (!replace && (written.has(path) || Object.hasOwn(files, path))) return 'EEXIST';
      written.set(path, bytes);
      return null;
    },
    now: () => new Date('2026-11-26T10:00:00Z'),
    isWatched: false,
    async removeFile(path) {
      removed.push(path);
      return Object.hasOwn(files, path) ? null : 'ENOENT';
    },
    readLines: (path) => lines(path, files),
    async out(text) {
      out += text;
    },
    async err(text) {
      err += text;
    },
  };
  const exit = await run(args, io);
  return { exit, out, err, written };
}

async function* lines(path: string, files: Files): AsyncGenerator<LineRead> {
  const bytes = Object.hasOwn(files, path) ? new TextEncoder().encode(files[path]) : await readFile(resolve(programFolder, path));
  yield* splitLines(
    (async function* () {
      yield bytes;
    })(),
  );
}

/** The JSON that a run wrote. */
export function jsonOf(ran: Ran): Record<string, unknown> {
  // A wrong shape makes the expectations of the caller fail.
  return JSON.parse(ran.out) as Record<string, unknown>;
}

/** The JSON lines that a batch wrote. */
export function jsonLinesOf(ran: Ran): Record<string, unknown>[] {
  return ran.out
    .trim()
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line) as Record<string, unknown>); // as above
}

/** Splits a command line as a POSIX shell would, for the examples of the help: words, with double quotes. */
export function shellWords(line: string): readonly string[] {
  return [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');
}
