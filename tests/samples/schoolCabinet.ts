import type { CabinetContent } from '../../engine/schema/index.ts';
import { chainLinks, feedback, lead } from './sketch.ts';

const servo = { board: { partNumber: 'QE-4410-B' }, type: 'qe-drive-2' } as const;

/** The cabinet of the ready exercises: small enough to oversee, with all that they need. Invented, as everything here. */
export const schoolCabinet: CabinetContent = {
  id: 'qs1-0001',
  name: 'Quillmere school cabinet',
  site: 'Quillmere Gear Works, training room',
  machineNumber: 'QS1-0001',
  designationEdition: '2019',
  controller: { id: 'KE1', designation: '-KE1' },
  chains: [
    { id: 'chain1', number: 1 },
    { id: 'chain2', number: 2 },
  ],
  types: [{ id: 'qe-drive-2', name: 'QE drive 2', behaviour: {} }],
  units: [
    { id: 'TB1', kind: 'servo-drive', designation: '-TB1', axes: [{ name: 'X' }], row: 1, slot: 1, ...servo },
    { id: 'TB2', kind: 'servo-drive', designation: '-TB2', axes: [{ name: 'Y' }], row: 1, slot: 2, ...servo },
    { id: 'BG1', kind: 'encoder-interface', designation: '-BG1', row: 1, slot: 3, board: { partNumber: 'QE-2107-A' } },
    { id: 'TB3', kind: 'servo-drive', designation: '-TB3', axes: [{ name: 'Z', hanging: true }], row: 1, slot: 4, ...servo },
    { id: 'BG2', kind: 'encoder-interface', designation: '-BG2', row: 1, slot: 5, board: { partNumber: 'QE-2107-A' } },
    { id: 'TB4', kind: 'spindle-drive', designation: '-TB4', axes: [{ name: 'S' }], row: 1, slot: 6, board: { partNumber: 'QE-4470-C' } },
    { id: 'TB5', kind: 'servo-drive', designation: '-TB5', axes: [{ name: 'U' }], row: 2, slot: 1, ...servo },
    { id: 'TB6', kind: 'servo-drive', designation: '-TB6', axes: [{ name: 'W' }], row: 2, slot: 2, ...servo },
    { id: 'TB9', kind: 'supply', designation: '-TB9', row: 2, slot: 6 },
  ],
  links: [
    ...chainLinks('chain1', '-KE1', ['TB1', 'TB2', 'BG1', 'TB3', 'BG2', 'TB4'], 1, [2, 0.4, 0.4, 0.4, 0.4, 0.4], { partNumber: 'QE-8104' }),
    ...chainLinks('chain2', '-KE1', ['TB5', 'TB6'], 7, [2.5, 0.4], { partNumber: 'QE-8104' }),
  ],
  leads: [
    lead('WD1', 'TB9', 'TB1', 0.8),
    lead('WD2', 'TB1', 'TB2', 0.25),
    lead('WD3', 'TB2', 'BG1', 0.25),
    lead('WD4', 'BG1', 'TB3', 0.25),
    lead('WD5', 'TB3', 'BG2', 0.25),
    lead('WD6', 'BG2', 'TB4', 0.25),
    lead('WD7', 'TB9', 'TB5', 0.5),
    lead('WD8', 'TB5', 'TB6', 0.25),
  ],
  feedbacks: [
    feedback('WG1', 'TB1', 'X'),
    feedback('WG2', 'TB2', 'Y'),
    feedback('WG3', 'TB3', 'Z', { positionKept: 'battery-in-unit' }),
    feedback('WG4', 'TB4', 'S', { positionKept: 'none-needed' }),
    feedback('WG5', 'TB5', 'U'),
    feedback('WG6', 'TB6', 'W'),
  ],
  notes: 'Invented sample.',
};
