import type { Result } from '../../engine/base/index.ts';
import type { Edited } from '../../engine/edit/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';

/**
 *     -TB9 feeds all
 *     chain 1: a ══ b ══ c      row 1, slots 1 to 3
 *     chain 2: d                row 2, slot 1; -TB8 behind it
 */
export const small: CabinetContent = {
  id: 'cab',
  name: 'Press 3',
  designationEdition: '2019',
  controller: { id: 'nc', designation: '-KE1' },
  chains: [
    { id: 'ch1', number: 1 },
    { id: 'ch2', number: 2 },
  ],
  units: [
    { id: 'a', kind: 'servo-drive', designation: '-TB1', row: 1, slot: 1, serial: 'S1', board: { serial: 'B1', partNumber: 'P' } },
    { id: 'b', kind: 'spindle-drive', designation: '-TB2', row: 1, slot: 2 },
    { id: 'c', kind: 'encoder-interface', designation: '-KE2', row: 1, slot: 3 },
    { id: 'd', kind: 'servo-drive', designation: '-TB3', row: 2, slot: 1 },
    { id: 'e', kind: 'servo-drive', designation: '-TB8', onChain: false, row: 2, slot: 2 },
    { id: 'p', kind: 'supply', designation: '-TB9', row: 2, slot: 4 },
  ],
  links: [
    { id: 'w1', designation: '-WH1', upper: { chain: 'ch1' }, lower: { unit: 'a' } },
    { id: 'w2', designation: '-WH2', upper: { unit: 'a' }, lower: { unit: 'b' }, lengthM: 0.4 },
    { id: 'w3', designation: '-WH3', upper: { unit: 'b' }, lower: { unit: 'c' } },
    { id: 'w4', designation: '-WH4', upper: { chain: 'ch2' }, lower: { unit: 'd' } },
  ],
  leads: [
    { id: 'l1', designation: '-WD1', from: { unit: 'p' }, to: { unit: 'a' } },
    { id: 'l2', designation: '-WD2', from: { unit: 'a' }, to: { unit: 'b' } },
    { id: 'l3', designation: '-WD3', from: { unit: 'p' }, to: { unit: 'c' } },
    { id: 'l4', from: { unit: 'p' }, to: { unit: 'd' } },
    { id: 'l5', from: { unit: 'p' }, to: { unit: 'e' } },
  ],
  feedbacks: [{ id: 'g1', designation: '-WG1', unit: 'a' }],
};

/** The value of an answer that must be one. */
export function done(answer: Result<Edited>): Edited {
  if (!answer.ok) throw new Error(answer.problems.map(({ code }) => code).join());
  return answer.value;
}

/** The code of the one problem for which something was refused. */
export function refused<T>(answer: Result<T>): string {
  return answer.ok ? 'not refused' : answer.problems.map(({ code }) => code).join();
}

/** Chains as texts: "w1 a w2 b". */
export function chains(content: CabinetContent): readonly string[] {
  const { topology } = buildTopology(content);
  return topology.chains.map(({ units, links }) => units.map((unit, index) => `${links[index]} ${unit}`).join(' '));
}

/** A row as a text: "1 a, 2 b". */
export function row(content: CabinetContent, number: number): string {
  const standing = [...(content.units ?? []), ...(content.controller ? [content.controller] : [])].filter((unit) => unit.row === number);
  return standing
    .sort((x, y) => (x.slot ?? 0) - (y.slot ?? 0))
    .map(({ id, slot }) => `${slot} ${id}`)
    .join(', ');
}

export function find<K extends 'units' | 'links' | 'leads' | 'feedbacks' | 'chains'>(
  content: CabinetContent,
  list: K,
  id: string | undefined,
) {
  const records = (content[list] ?? []) as readonly NonNullable<CabinetContent[K]>[number][];
  return records.find((record) => record.id === id);
}
