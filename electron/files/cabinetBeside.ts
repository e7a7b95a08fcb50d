import { dirname, join } from 'node:path';
import { parseCabinetFile } from '../../engine/cabinet/index.ts';
import type { ChosenFile } from '../ipc/bridge.ts';
import type { ChosenFiles } from './chosenFiles.ts';
import type { Disk } from './disk.ts';

/** A folder of more cabinet files than this is an archive; which of them is meant the user says himself. */
const mostLookedAt = 30;

/** Looks in the folder of a case for the cabinet file with this id: its cabinet as it is today. Null when there is none. */
export async function findCabinetBeside(
  disk: Disk,
  chosen: ChosenFiles,
  caseHandle: string,
  cabinetId: string,
): Promise<ChosenFile | null> {
  const known = chosen.find(caseHandle);
  if (!known) return null;
  const folder = dirname(known.path);
  const names = await disk.list(folder).catch(() => []);
  const cabinets = names.filter((name) => name.toLowerCase().endsWith('.cabinet.json')).sort();
  for (const name of cabinets.slice(0, mostLookedAt)) {
    const file = await chosen.take(join(folder, name));
    if (!file.ok) continue;
    const parsed = parseCabinetFile(file.value.content);
    if (parsed.ok && parsed.value.id === cabinetId) return file.value;
  }
  return null;
}
