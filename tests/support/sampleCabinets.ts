import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkCabinet, parseCabinetFile } from '../../engine/cabinet/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { programFolder } from './folders.ts';

/** What a sample cabinet file holds. */
export function readContent(name: string): CabinetContent {
  const parsed = parseCabinetFile(readFileSync(join(programFolder, 'sample-cabinets', `${name}.cabinet.json`)));
  if (!parsed.ok) throw new Error(name);
  return parsed.value;
}

/** The same, where it is sound. */
export function readCabinet(name: string): Cabinet {
  const { cabinet } = checkCabinet(readContent(name));
  if (cabinet === null) throw new Error(`${name} is not sound`);
  return cabinet;
}
