import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkCabinet, parseCaseFile, parseTruthFile } from '../../engine/cabinet/index.ts';
import { makeNames, type Names, windowTexts } from '../../engine/messages/index.ts';
import type { Circumstance, Fault, Snapshot } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { programFolder } from '../support/folders.ts';
import { findAlike, type SettledFault } from './oracle.ts';

/** One sample case as a task: what is seen at first and after what was done, what is really wrong, and what cannot be told from it. */
export interface TaskCase {
  /** `two-chains.1`. */
  readonly name: string;
  /** The sample's name in the menu. */
  readonly sample: string;
  readonly cabinet: Cabinet;
  readonly names: Names;
  /** The looks at the machine, in their order. */
  readonly looks: readonly [Snapshot, ...Snapshot[]];
  readonly circumstances: readonly Circumstance[];
  readonly truth: readonly SettledFault[];
  /** Every hypothesis that cannot be told from the truth by the first looks, as many as are given. */
  readonly alikeAfter: (looks: number) => readonly (readonly SettledFault[])[];
}

const folder = join(programFolder, 'sample-cabinets');

/** Every sample case that has its truth beside it. */
export function readTaskCases(): readonly TaskCase[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.case.json'))
    .sort()
    .map((file) => readTask(file.slice(0, -'.case.json'.length)));
}

function readTask(name: string): TaskCase {
  const parsed = parseCaseFile(readFileSync(join(folder, `${name}.case.json`)));
  const truth = parseTruthFile(readFileSync(join(folder, `${name}.truth.json`)));
  if (!parsed.ok || !truth.ok) throw new Error(`${name} does not open`);
  const { cabinet } = checkCabinet(parsed.value.cabinet);
  const [first, ...later] = parsed.value.evidence.snapshots;
  if (!cabinet || !first) throw new Error(`${name} is no task`);
  const settled = truth.value.faults.map((fault): SettledFault => ({ ...fault, presence: fault.presence ?? 'steady' }));
  return {
    name,
    sample: startLarge(name.replace(/\.\d+$/, '').replaceAll('-', ' ')),
    cabinet,
    names: makeNames(cabinet),
    looks: [first, ...later],
    circumstances: parsed.value.evidence.circumstances ?? [],
    truth: settled,
    alikeAfter: (looks) => findAlike(cabinet, [first, ...later].slice(0, looks), settled),
  };
}

const startLarge = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Where a fault is looked for, by the names that the list of suspects gives it: "-WH3", "-TB2", "chain 1". */
export function spotName({ names, cabinet: { content } }: TaskCase, fault: Fault): string {
  const designation = (list: readonly { readonly id: string; readonly designation?: string | undefined }[] | undefined, id: string) =>
    list?.find((one) => one.id === id)?.designation ?? id;
  switch (fault.item) {
    case 'cable':
    case 'plug':
    case 'route':
      return designation(content.links, fault.link);
    case 'board':
    case 'fuse':
    case 'place':
    case 'wiring':
    case 'supply':
      return names.unit(fault.unit);
    case 'controller-port':
      return names.chain(fault.chain);
    case 'controller':
      return windowTexts.suspects.allPorts;
    case 'lead':
      return designation(content.leads, fault.lead);
    case 'feedback':
      return designation(content.feedbacks, fault.feedback);
  }
}
