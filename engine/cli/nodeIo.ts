import { createReadStream } from 'node:fs';
import { readdir, readFile, unlink } from 'node:fs/promises';
import type { Writable } from 'node:stream';
import type { Io } from './io.ts';
import { splitLines } from './lines.ts';
import { reasonOf } from './read/index.ts';
import { writeWhole } from './writeWhole.ts';

const usualColumns = 100;
const fewestColumns = 40;

/** The real outside: files, standard input and output of this process. */
export function makeNodeIo(): Io {
  return {
    columns: Math.max(fewestColumns, process.stdout.isTTY ? process.stdout.columns || usualColumns : usualColumns),
    async readFile(path) {
      try {
        return { bytes: await readFile(path) };
      } catch (error) {
        return { reason: reasonOf(error) };
      }
    },
    listFolder: (path) => readdir(path).catch(() => null),
    async writeFile(path, bytes, options) {
      try {
        await writeWhole(path, bytes, options);
        return null;
      } catch (error) {
        return reasonOf(error);
      }
    },
    now: () => new Date(),
    isWatched: process.stderr.isTTY === true,
    async removeFile(path) {
      try {
        await unlink(path);
        return null;
      } catch (error) {
        return reasonOf(error);
      }
    },
    readLines: (path) => splitLines(path === '-' ? process.stdin : createReadStream(path)),
    out: (text) => write(process.stdout, text),
    err: (text) => write(process.stderr, text),
  };
}

/** Waits until the reader has taken what was written. A reader that has gone away (`| head`) is no failure: `main.ts` ends quietly. */
function write(stream: Writable, text: string): Promise<void> {
  return new Promise((resolve) => {
    stream.write(text, () => resolve());
  });
}
