import { chainLinks, lead, type Sample } from './sketch.ts';

/** Three equipment types on one chain; how the third behaves is only partly known. */
export const mixedBehaviours: Sample = {
  name: 'mixed-behaviours',
  content: {
    id: 'qb5-0002',
    name: 'Bevel gear cutter QB-5',
    revision: 'B',
    site: 'Quillmere Gear Works',
    machineNumber: 'QB5-0002',
    designationEdition: '2019',
    controller: { id: 'KE1', designation: '-KE1' },
    chains: [{ id: 'chain1', number: 1, behaviour: { onReceiveLoss: 'keep' } }],
    types: [
      { id: 'old', name: 'QE drive 1', behaviour: { onReceiveLoss: 'mute', holds: 'until-reset' } },
      {
        id: 'new',
        name: 'QE drive 3',
        behaviour: { lossScope: 'neighbour', onReceiveLoss: 'keep', complainsFrom: 'power-on', holds: 'live' },
      },
      {
        id: 'foreign',
        name: 'Scale interface of unknown origin',
        behaviour: { lossScope: 'unknown', onReceiveLoss: 'unknown', whenBoth: 'unknown', holds: 'unknown' },
        notes: 'Came with the retrofit; no manual was handed over.',
      },
    ],
    units: [
      { id: 'TB1', kind: 'servo-drive', designation: '-TB1', type: 'old', axes: [{ name: 'X' }], row: 1, slot: 1 },
      { id: 'TB2', kind: 'servo-drive', designation: '-TB2', type: 'new', axes: [{ name: 'Y' }], row: 1, slot: 2 },
      { id: 'TB3', kind: 'servo-drive', designation: '-TB3', type: 'new', axes: [{ name: 'Z' }], row: 1, slot: 3 },
      { id: 'KE2', kind: 'encoder-interface', designation: '-KE2', type: 'foreign', row: 1, slot: 4 },
      { id: 'TB4', kind: 'servo-drive', designation: '-TB4', type: 'old', axes: [{ name: 'A' }], row: 1, slot: 5 },
      { id: 'TB5', kind: 'spindle-drive', designation: '-TB5', type: 'new', axes: [{ name: 'S' }], row: 1, slot: 6 },
      { id: 'TB6', kind: 'supply', designation: '-TB6', row: 1, slot: 7 },
    ],
    links: chainLinks('chain1', '-KE1', ['TB1', 'TB2', 'TB3', 'KE2', 'TB4', 'TB5'], 1, [2.5, 0.3, 0.3, 0.3, 0.3, 0.3]),
    leads: [
      lead('WD1', 'TB6', 'TB1', 0.9),
      lead('WD2', 'TB1', 'TB2', 0.25),
      lead('WD3', 'TB2', 'TB3', 0.25),
      lead('WD4', 'TB6', 'KE2', 0.7),
      lead('WD5', 'KE2', 'TB4', 0.25),
      lead('WD6', 'TB4', 'TB5', 0.25),
    ],
    notes: 'Invented sample.',
  },
  cases: [
    {
      name: 'Only one unit complains: one fibre of a pair',
      startedAt: '2026-07-01T13:00:00Z',
      faults: [{ item: 'cable', link: 'WH3', mode: 'outbound-cut', presence: 'steady' }],
      story:
        'The outbound fibre of -WH3 is broken. -TB2 and -TB3 go on sending when they hear nothing, so only the receiver -TB3 noticed. The scale interface complains about any break of its chain.',
      really: { foreign: { lossScope: 'chain', onReceiveLoss: 'keep', whenBoth: 'upstream', holds: 'live' } },
      looks: [{ onset: 'while-running', halted: true, read: { allBut: ['TB6'] }, reports: ['chain1'] }],
    },
    {
      name: 'Break beside the equipment of unknown behaviour',
      startedAt: '2026-07-22T08:45:00Z',
      faults: [{ item: 'cable', link: 'WH5', mode: 'cut', presence: 'steady' }],
      story: '-WH5 was cut when a new duct was fitted.',
      really: { foreign: { lossScope: 'chain', onReceiveLoss: 'keep', whenBoth: 'upstream', holds: 'live' } },
      circumstances: [{ kind: 'work-at-door', subjects: ['WH5', 'WH6'] }],
      looks: [{ onset: 'while-running', halted: true, read: { allBut: ['TB5', 'TB6'] }, reports: ['chain1'] }],
    },
  ],
};
