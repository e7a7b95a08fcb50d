import { chainLinks, lead, type Sample } from './sketch.ts';

/** One chain fed by two supplies; the scale interface between them has a feed from each. */
export const twoSupplies: Sample = {
  name: 'two-supplies',
  content: {
    id: 'qs4-0015',
    name: 'Internal gear shaper QS-4',
    revision: 'A',
    site: 'Quillmere Gear Works',
    machineNumber: 'QS4-0015',
    designationEdition: '2019',
    controller: { id: 'KE1', designation: '-KE1' },
    chains: [{ id: 'chain1', number: 1 }],
    units: [
      { id: 'TB1', kind: 'servo-drive', designation: '-TB1', axes: [{ name: 'X' }], row: 1, slot: 1 },
      { id: 'TB2', kind: 'servo-drive', designation: '-TB2', axes: [{ name: 'Z', hanging: true }], row: 1, slot: 2 },
      { id: 'TB3', kind: 'spindle-drive', designation: '-TB3', axes: [{ name: 'S', notes: 'stroke' }], row: 1, slot: 3 },
      { id: 'KE2', kind: 'encoder-interface', designation: '-KE2', row: 1, slot: 4 },
      { id: 'TB4', kind: 'servo-drive', designation: '-TB4', axes: [{ name: 'C1' }], row: 2, slot: 1 },
      { id: 'TB5', kind: 'servo-drive', designation: '-TB5', axes: [{ name: 'C2' }], row: 2, slot: 2 },
      {
        id: 'TB8',
        kind: 'supply',
        designation: '-TB8',
        row: 1,
        slot: 5,
        supply: {
          outputs: [
            { id: 'X1', name: 'X1' },
            { id: 'X2', name: 'X2' },
          ],
        },
      },
      {
        id: 'TB9',
        kind: 'supply',
        designation: '-TB9',
        row: 2,
        slot: 3,
        supply: {
          outputs: [
            { id: 'X1', name: 'X1' },
            { id: 'X2', name: 'X2' },
          ],
        },
      },
    ],
    links: chainLinks('chain1', '-KE1', ['TB1', 'TB2', 'TB3', 'KE2', 'TB4', 'TB5'], 1, [3, 0.4, 0.4, 0.4, 1.1, 0.4]),
    leads: [
      lead('WD1', 'TB8', 'TB1', 0.9, { output: 'X1' }),
      lead('WD2', 'TB8', 'TB2', 0.7, { output: 'X2' }),
      lead('WD3', 'TB2', 'TB3', 0.25),
      lead('WD4', 'TB3', 'KE2', 0.25),
      lead('WD5', 'TB9', 'KE2', 1.2, { output: 'X1' }),
      lead('WD6', 'TB9', 'TB4', 0.6, { output: 'X2' }),
      lead('WD7', 'TB4', 'TB5', 0.25),
    ],
    notes: 'Invented sample.',
  },
  cases: [
    {
      name: 'Supply and two drives dark',
      startedAt: '2026-03-17T22:10:00Z',
      faults: [{ item: 'supply', unit: 'TB9', mode: 'dead', presence: 'steady' }],
      story: '-TB9 is dead. The scale interface lives on by its second feed.',
      looks: [{ onset: 'while-running', halted: true, read: { allBut: ['TB2'] }, reports: ['chain1'] }],
    },
    {
      name: 'Three drives dark, their supply lit',
      startedAt: '2026-03-30T07:20:00Z',
      faults: [{ item: 'supply', unit: 'TB8', mode: 'output-lost', presence: 'steady' }],
      story: 'The 24 V converter inside -TB8 failed; its own display runs from another winding.',
      circumstances: [{ kind: 'heat' }],
      looks: [{ onset: 'while-running', halted: true, read: { allBut: ['TB5'] }, reports: ['chain1'] }],
    },
  ],
};
