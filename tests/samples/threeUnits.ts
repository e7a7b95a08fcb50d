import { chainLinks, feedback, lead, type Sample } from './sketch.ts';

/** The smallest sample: one chain of three, everything with its default behaviour, nothing but the needful documented. */
export const threeUnits: Sample = {
  name: 'three-units',
  content: {
    id: 'qd2-0031',
    name: 'Gear deburring machine QD-2',
    site: 'Quillmere Gear Works',
    machineNumber: 'QD2-0031',
    designationEdition: '2019',
    controller: { id: 'KE1', designation: '-KE1' },
    chains: [{ id: 'chain1', number: 1 }],
    units: [
      { id: 'TB1', kind: 'servo-drive', designation: '-TB1', axes: [{ name: 'X' }], row: 1, slot: 1 },
      { id: 'TB2', kind: 'servo-drive', designation: '-TB2', axes: [{ name: 'Z', hanging: true }], row: 1, slot: 2 },
      { id: 'TB3', kind: 'spindle-drive', designation: '-TB3', axes: [{ name: 'S' }], row: 1, slot: 3 },
      { id: 'TB4', kind: 'supply', designation: '-TB4', row: 1, slot: 4 },
    ],
    links: chainLinks('chain1', '-KE1', ['TB1', 'TB2', 'TB3'], 1, [2, 0.3, 0.3]),
    leads: [lead('WD1', 'TB4', 'TB1', 0.8), lead('WD2', 'TB1', 'TB2', 0.25), lead('WD3', 'TB2', 'TB3', 0.25)],
    feedbacks: [feedback('WG1', 'TB1', 'X'), feedback('WG2', 'TB2', 'Z', { positionKept: 'battery-in-unit' }), feedback('WG3', 'TB3', 'S')],
    notes: 'Invented sample.',
  },
  cases: [
    {
      name: 'Two neighbours complain about each other',
      startedAt: '2026-05-06T09:15:00Z',
      faults: [{ item: 'cable', link: 'WH2', mode: 'cut', presence: 'steady' }],
      story: '-WH2 was pinched by a duct cover and is cut through.',
      looks: [{ onset: 'while-running', halted: true, read: { allBut: ['TB3', 'TB4'] }, reports: ['chain1'] }],
    },
    {
      name: 'The first drive has lost the controller',
      startedAt: '2026-05-19T16:40:00Z',
      faults: [{ item: 'board', unit: 'TB1', mode: 'up-rx', presence: 'steady' }],
      story: 'The receiver towards the control on the board of -TB1 is blind.',
      looks: [{ onset: 'while-running', halted: true, read: { allBut: [] }, reports: ['chain1'] }],
    },
    {
      name: 'Runs again after a plug was reseated',
      startedAt: '2026-06-11T05:30:00Z',
      faults: [{ item: 'plug', link: 'WH3', end: 'upper', mode: 'loose', presence: 'steady' }],
      story: 'The upper plug of -WH3 was loose. Pushed home, the machine ran.',
      looks: [
        { onset: 'while-running', halted: true, read: { allBut: ['TB4'] }, reports: ['chain1'] },
        {
          onset: 'at-power-up',
          halted: false,
          restarted: true,
          interventions: [{ do: 'reseat-plug', link: 'WH3', end: 'upper' }],
          read: { only: ['TB2', 'TB3'] },
          reports: ['chain1'],
        },
      ],
    },
  ],
};
