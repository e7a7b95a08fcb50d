import { basename } from 'node:path';
import { fail, makeProblem, ok, type Result } from '../../engine/base/index.ts';
import type { Disk } from './disk.ts';
import { findErrorCode } from './errorCode.ts';
import { bytesPerMegabyte, mostFileBytes, mostFileMegabytes } from './limits.ts';
import { digest } from './machine.ts';

/** By what we know a file again. Equal `hash`: the same content. */
export interface Stamp {
  readonly modified: number;
  readonly size: number;
  readonly hash: string;
}

export interface ReadFile {
  readonly content: Uint8Array;
  readonly stamp: Stamp;
}

/**
 * Reads a file that may be one of ours: no folder, no device, nothing larger than `times` the limit of a file. The problem names file
 * and reason.
 */
export async function readSmallFile(disk: Disk, path: string, times = 1): Promise<Result<ReadFile>> {
  const unreadable = (reason: string) =>
    fail<ReadFile>(makeProblem('file-unreadable', 'refused', { facts: { file: basename(path), reason } }));
  try {
    const info = await disk.info(path);
    if (info.kind === 'folder') return unreadable('EISDIR');
    // A device or a pipe may never end.
    if (info.kind === 'other') return unreadable('special');
    if (info.size > mostFileBytes * times) {
      const facts = { megabytes: Math.ceil(info.size / bytesPerMegabyte), limitMegabytes: mostFileMegabytes * times };
      return fail(makeProblem('file-too-large', 'refused', { facts }));
    }
    const content = await disk.read(path);
    return ok({ content, stamp: { modified: info.modified, size: content.byteLength, hash: digest(content) } });
  } catch (error) {
    return unreadable(findErrorCode(error));
  }
}
