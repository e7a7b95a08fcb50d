import type { CabinetContent } from '../../engine/schema/index.ts';
import { chainLinks, lead, link } from './sketch.ts';

/** Begun and not finished: it opens, it can be simulated as far as it goes, and it lists what is missing. */
export const unfinished: CabinetContent = {
  id: 'qn1-draft',
  name: 'Gear hone QN-1, draft',
  designationEdition: '2019',
  chains: [
    { id: 'chain1', number: 1 },
    { id: 'chain2', number: 2 },
  ],
  units: [
    { id: 'TB1', kind: 'servo-drive', designation: '-TB1' },
    { id: 'TB2', kind: 'servo-drive', designation: '' },
    { id: 'TB3', kind: 'supply', designation: '-TB3' },
  ],
  links: [
    ...chainLinks('chain1', '-KE1', ['TB1', 'TB2'], 1, [2, 0.4]),
    // Its lower plug is not drawn yet.
    { id: 'WH3', designation: '-WH3', upper: { unit: 'TB2' } },
  ],
  leads: [lead('WD1', 'TB3', 'TB1', 0.8), { id: 'WD2', designation: '-WD2', from: { unit: 'TB1' } }],
  notes: 'Invented sample. -TB2 has no 24 V yet, chain 2 no unit, and the control is not drawn.',
};

/** Drawn wrongly in many ways: it opens, names each, and refuses to simulate. */
export const withProblems: CabinetContent = {
  id: 'qx0-problems',
  name: 'Shaving machine QX-0, as found',
  designationEdition: '2019',
  controller: { id: 'KE1', designation: '-KE1' },
  chains: [
    { id: 'chain1', number: 1, cycleClass: 'fast' },
    { id: 'chain2', number: 2, cycleClass: 'slow' },
    { id: 'chain3', number: 2 },
  ],
  types: [{ id: 'qe-drive-2', name: 'QE drive 2', legend: 'codes' }],
  legends: [
    {
      id: 'codes',
      name: 'Codes, copied twice',
      codes: [
        { code: 'n7', meanings: ['upstream-loss'] },
        { code: 'n7', meanings: ['downstream-loss'] },
      ],
    },
  ],
  axisLimits: [{ cycleClass: 'fast', maximumAxes: 6 }],
  units: [
    {
      id: 'TB1',
      kind: 'servo-drive',
      designation: '-TB1',
      type: 'qe-drive-2',
      axes: [{ name: 'X1' }, { name: 'X2' }, { name: 'X3' }, { name: 'X4' }],
      row: 1,
      slot: 1,
    },
    {
      id: 'TB2',
      kind: 'servo-drive',
      designation: '-TB2',
      axes: [{ name: 'Y1' }, { name: 'Y2' }, { name: 'Y3' }, { name: 'Y4' }],
      row: 1,
      slot: 2,
    },
    { id: 'TB3', kind: 'servo-drive', designation: '-TB3', row: 1, slot: 3 },
    // The same designation and the same slot as the one before.
    { id: 'TB4', kind: 'servo-drive', designation: '-TB3', row: 1, slot: 3 },
    { id: 'TB5', kind: 'servo-drive', designation: '-TB5', row: 2, slot: 1 },
    { id: 'TB6', kind: 'servo-drive', designation: '-TB6', row: 2, slot: 2 },
    { id: 'TB7', kind: 'servo-drive', designation: '-TB7', onChain: false, row: 2, slot: 3 },
    { id: 'TB8', kind: 'servo-drive', designation: '-TB8', row: 2, slot: 4 },
    { id: 'TB9', kind: 'supply', designation: '-TB9', row: 2, slot: 5 },
  ],
  links: [
    // The spare cable has another part number than the only one that is written down.
    link('WH1', { chain: 'chain1' }, 'TB1', 2, { partNumber: 'QE-7704' }),
    link('WH2', { unit: 'TB1' }, 'TB2', 0.4),
    // A fork: two cables leave the port of -TB2.
    link('WH3', { unit: 'TB2' }, 'TB3', 0.4),
    link('WH4', { unit: 'TB2' }, 'TB4', 0.4),
    // A loop that hangs on no chain.
    link('WH5', { unit: 'TB5' }, 'TB6', 0.4),
    link('WH6', { unit: 'TB6' }, 'TB5', 0.4),
    // A drive off the chain with a chain cable.
    link('WH7', { chain: 'chain2' }, 'TB7', 0.4),
    // A cable to a unit that is not there.
    link('WH8', { unit: 'TB3' }, 'TB99', 0.4),
  ],
  leads: [
    lead('WD1', 'TB9', 'TB1', 0.8),
    lead('WD2', 'TB1', 'TB2', 0.25),
    lead('WD3', 'TB2', 'TB3', 0.25),
    // Two that feed each other and get nothing; -TB4, -TB7 and -TB8 have no lead at all.
    lead('WD4', 'TB5', 'TB6', 0.25),
    lead('WD5', 'TB6', 'TB5', 0.25),
    lead('WD6', 'TB3', 'TB9', 0.9),
  ],
  feedbacks: [{ id: 'WG1', designation: '-WG1', unit: 'TB1', axis: 'Q9' }],
  spares: [{ id: 'spare-cable', kind: 'cable', partNumber: 'QE-0000', count: 1 }],
  notes: 'Invented sample.',
};
