import { basename } from 'node:path';
import { ok, type Result } from '../../engine/base/index.ts';
import type { ListFile } from '../ipc/bridge.ts';
import type { Machine } from './machine.ts';
import { readSmallFile } from './readSmallFile.ts';

/** Reads a list that the user chose. */
export async function readList(machine: Machine, path: string): Promise<Result<ListFile>> {
  const read = await readSmallFile(machine.disk, path);
  return read.ok ? ok({ name: basename(path), content: read.value.content }) : read;
}
