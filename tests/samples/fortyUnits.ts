import type { CabinetContent, UnitRecord } from '../../engine/schema/index.ts';
import { chainLinks, lead, type Sample } from './sketch.ts';

/*
 * A large cabinet, made by rule: three chains of 16, 14 and 10 units, every fifth an encoder interface, the first of chain 2 the
 * spindle. Each supply feeds the heads of groups of four, which pass power on.
 */
const chainSizes = [16, 14, 10] as const;
const groupSize = 4;

interface Placed {
  readonly record: UnitRecord;
  readonly chain: number;
}

const placed: readonly Placed[] = chainSizes.flatMap((size, c) =>
  Array.from({ length: size }, (_, i): Placed => {
    const before = chainSizes.slice(0, c).reduce((sum, n) => sum + n, 0);
    const number = before + i + 1;
    const place = { row: c + 1, slot: i + 1 };
    if (i % 5 === 4)
      return {
        chain: c,
        record: { id: `KE${number}`, kind: 'encoder-interface', designation: `-KE${number}`, type: 'qe-scale-1', ...place },
      };
    const kind = c === 1 && i === 0 ? 'spindle-drive' : 'servo-drive';
    return {
      chain: c,
      record: {
        id: `TB${number}`,
        kind,
        designation: `-TB${number}`,
        type: 'qe-drive-2',
        axes: [{ name: `${'XYZ'[c]}${i + 1}` }],
        ...place,
      },
    };
  }),
);

const unitsOf = (chain: number) => placed.filter((unit) => unit.chain === chain).map((unit) => unit.record.id);
const firstLink = (chain: number) => 1 + chainSizes.slice(0, chain).reduce((sum, n) => sum + n, 0);

const leads = chainSizes.flatMap((_, c) =>
  unitsOf(c).map((unit, i) => {
    const head = i % groupSize === 0;
    const before = unitsOf(c)[i - 1];
    return lead(`WD${firstLink(c) + i}`, head || before === undefined ? `TB${51 + c}` : before, unit, head ? 1.5 : 0.25);
  }),
);

const content: CabinetContent = {
  id: 'qt9-0001',
  name: 'Gear transfer line QT-9, main cabinet',
  revision: 'E',
  site: 'Quillmere Gear Works',
  location: 'Hall 3, +C1 to +C3',
  machineNumber: 'QT9-0001',
  designationEdition: '2019',
  controller: { id: 'KE100', designation: '-KE100', model: 'QE control 9' },
  chains: [
    { id: 'chain1', number: 1, name: 'Stations 1 to 4' },
    { id: 'chain2', number: 2, name: 'Stations 5 to 7' },
    { id: 'chain3', number: 3, name: 'Transfer and gantry' },
  ],
  rows: chainSizes.map((_, c) => ({ row: c + 1, name: `Rail ${c + 1}` })),
  types: [
    { id: 'qe-drive-2', name: 'QE drive 2' },
    { id: 'qe-scale-1', name: 'QE scale interface' },
  ],
  units: [
    ...placed.map((unit) => unit.record),
    ...chainSizes.map((_, c): UnitRecord => ({ id: `TB${51 + c}`, kind: 'supply', designation: `-TB${51 + c}`, row: c + 1, slot: 20 })),
  ],
  links: chainSizes.flatMap((size, c) =>
    chainLinks(`chain${c + 1}`, `-KE100 Light ${c + 1}`, unitsOf(c), firstLink(c), [6, ...Array.from({ length: size - 1 }, () => 0.4)]),
  ),
  leads,
  notes: 'Invented sample.',
};

export const fortyUnits: Sample = {
  name: 'forty-units',
  content,
  cases: [
    {
      name: 'One break far down the first chain',
      startedAt: '2026-02-10T10:00:00Z',
      faults: [{ item: 'route', link: 'WH11', mode: 'kinked', presence: 'steady' }],
      story: 'The duct between -KE10 and -TB11 bends the fibre too sharply; a new cable there would be dim as well.',
      looks: [
        {
          onset: 'while-running',
          halted: true,
          read: { only: ['TB8', 'TB9', 'KE10', 'TB11', 'TB12', 'TB13', 'TB16', 'TB17', 'TB31'] },
          asSet: { TB13: ['quiet', 'upstream-loss', 'downstream-loss', 'both-losses', 'other'] },
          reports: ['chain1', 'chain2', 'chain3'],
        },
      ],
    },
    {
      name: 'Two faults at once, on two chains',
      startedAt: '2026-02-24T03:35:00Z',
      faults: [
        { item: 'cable', link: 'WH5', mode: 'cut', presence: 'steady' },
        { item: 'plug', link: 'WH36', end: 'lower', mode: 'fouled', presence: 'steady' },
      ],
      story: 'A gantry crash cut -WH5 and sprayed coolant into the lower plug of -WH36.',
      circumstances: [{ kind: 'transport-or-crash' }, { kind: 'oil-or-coolant' }],
      looks: [
        {
          onset: 'while-running',
          halted: true,
          read: { only: ['TB3', 'TB4', 'KE5', 'TB6', 'TB17', 'TB34', 'KE35', 'TB36', 'TB37'] },
          reports: ['chain1', 'chain2', 'chain3'],
        },
      ],
    },
    {
      name: 'One dark interface in the middle',
      startedAt: '2026-03-03T19:50:00Z',
      faults: [{ item: 'place', unit: 'KE21', mode: 'contact-bad', presence: 'steady' }],
      story: 'The slot contacts of -KE21 are corroded: whatever stands there is dark. It passes power on all the same.',
      looks: [
        {
          onset: 'while-running',
          halted: true,
          read: { only: ['TB19', 'TB20', 'KE21', 'TB22', 'TB23', 'TB52'] },
          reports: ['chain1', 'chain2', 'chain3'],
        },
      ],
    },
  ],
};
