/** What a command needs of the outside. Tests give their own; `nodeIo.ts` is the real one. */
export interface Io {
  /** Reads a whole file, or says why not by the system's code (`ENOENT`, …). */
  readFile(path: string): Promise<{ readonly bytes: Uint8Array } | { readonly reason: string }>;
  /** The names of what lies in a folder; null where the path is none, or cannot be listed. */
  listFolder(path: string): Promise<readonly string[] | null>;
  /** Deletes a file; null when it is done, else why not, by the system's code. */
  removeFile(path: string): Promise<string | null>;
  /** The lines of a file, or of standard input for "-", as they come. Throws an error with a system's code when it cannot be read. */
  readLines(path: string): AsyncIterable<LineRead>;
  /** Writes a whole file, with the folders on the way to it; answers why not, by the system's code (`EEXIST`, …), or null. */
  writeFile(path: string, bytes: Uint8Array, options: { readonly replace: boolean }): Promise<string | null>;
  /** Writes to standard output; waits when the reader is slow. */
  out(text: string): Promise<void>;
  /** Writes to standard error. */
  err(text: string): Promise<void>;
  /** What day and time it is. */
  now(): Date;
  /** Somebody looks on while it works, so that it says how far it is. */
  readonly isWatched: boolean;
  /** Width of the output in columns. */
  readonly columns: number;
}

/** One line of a batch: its number from 1 and its text, or that it was too long to be taken. */
export type LineRead = { readonly line: number; readonly text: string } | { readonly line: number; readonly tooLong: true };

/** The largest line of a batch, in megabytes: a cabinet of the greatest size allowed, with room for the rest. */
export const longestLineMegabytes = 32;

/** How a command ended: 0 done, 1 findings, 2 bad use, 3 a file could not be read or written. */
export type ExitCode = 0 | 1 | 2 | 3;
