import type { CabinetContent } from '../../engine/schema/index.ts';
import type { ChosenMachines } from '../papers/papersState.ts';
import { readDocument } from './readDocument.ts';

interface Chosen {
  readonly name: string;
  readonly content: Uint8Array;
}

/** The design of a cabinet: the one that it was made from, else its own. */
const designOf = ({ basedOn, id }: CabinetContent): string => basedOn?.design ?? id;

/** Which of the chosen files hold machines of the same design; the cabinet in the window is not taken twice, nor any other. */
export function sortMachines(cabinet: CabinetContent, files: readonly Chosen[]): ChosenMachines {
  const machines: ChosenMachines['machines'][number][] = [];
  const leftOut: string[] = [];
  const seen = new Set([cabinet.id]);
  for (const { name, content } of files) {
    const read = readDocument(name, content);
    const found = read.ok ? read.value.document.cabinet : null;
    if (found === null || designOf(found) !== designOf(cabinet)) leftOut.push(name);
    else if (!seen.has(found.id)) {
      seen.add(found.id);
      machines.push({ file: name, content: found });
    }
  }
  return { machines, leftOut };
}
