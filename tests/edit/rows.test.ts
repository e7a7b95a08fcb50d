import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { pasteRows, readRows, rowColumns } from '../../engine/edit/index.ts';
import { wordProblem } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { brokenBy } from './brokenBy.ts';
import { chains, done, find, refused, row, small } from './small.ts';

const empty: CabinetContent = { id: 'x', name: 'New' };
const sheet = [
  'Designation\tKind\tChain\tAxes\tFed by\tPart number\tCable\tLength m\tColour',
  '-TB9\tsupply\t\t\t\tQ-1\t\t\tred',
  '-TB1\tServo drive\t1\tX, Y\t-TB9\tQ-7\t-WH1\t1,5\t',
  '-TB2\tspindle\t\tS1\tTB9\tQ-8\t\t0.4\t',
  '-KE2\tencoder\t1\t\t-TB2\t\t\t\t',
  '-TB3\tservo\t2\t"Z ""left"""\t-TB9\t\t\t\t',
  '-TB4\tservo\toff\t\t-TB9\t\t\t\t',
].join('\r\n');

describe('pasteRows', () => {
  it('should make a whole sound cabinet at once', () => {
    const { cabinet } = done(pasteRows(empty, sheet));
    expect(checkCabinet(cabinet).problems).toEqual([]);
    expect(chains(cabinet)).toEqual(['w1 u2 w2 u3 w3 u4', 'w4 u5']);
    expect(cabinet.units?.map(({ designation, kind }) => `${designation} ${kind}`)).toEqual([
      '-TB9 supply',
      '-TB1 servo-drive',
      '-TB2 spindle-drive',
      '-KE2 encoder-interface',
      '-TB3 servo-drive',
      '-TB4 servo-drive',
    ]);
    expect(find(cabinet, 'units', 'u2')).toMatchObject({ axes: [{ name: 'X' }, { name: 'Y' }], partNumber: 'Q-7' });
    expect(find(cabinet, 'links', 'w1')).toMatchObject({ designation: '-WH1', lengthM: 1.5 });
    expect(find(cabinet, 'links', 'w2')).toMatchObject({ designation: '-WH2', lengthM: 0.4 });
    expect(cabinet.leads?.map(({ from, to }) => `${from?.unit} ${to?.unit}`)).toEqual(['u1 u2', 'u1 u3', 'u3 u4', 'u1 u5', 'u1 u6']);
    expect([row(cabinet, 1), row(cabinet, 2)]).toEqual(['1 u1, 2 u2, 3 u3, 4 u4', '1 u5, 2 u6']);
    const read = readRows(sheet);
    expect(read.ok && read.value.ignored).toEqual(['Colour']);
  });

  it('should say the same with semicolons and with commas, and without a head in the usual order', () => {
    const bare = (text: string) => done(pasteRows(empty, text)).cabinet.units?.map(({ designation, kind }) => `${designation} ${kind}`);
    const expected = ['-TB1 servo-drive', '-TB2 spindle-drive', '-TB3 supply'];
    expect(bare('-TB1;servo;1\n-TB2;spindle drive;1\n-TB3;supply')).toEqual(expected);
    expect(bare('-TB1,s,1\n\n-TB2,p\n-TB3,u\n')).toEqual(expected);
  });

  it('should go on behind what hangs on a chain, and feed from the only supply where nothing is said', () => {
    const { cabinet } = done(pasteRows(small, 'Kind;Chain\nservo;2\nencoder;\nservo;5'));
    expect(chains(cabinet)).toEqual(['w1 a w2 b w3 c', 'w4 d w5 u1 w6 u2', 'w7 u3']);
    expect(cabinet.chains?.map(({ number }) => number)).toEqual([1, 2, 5]);
    expect(row(cabinet, 2)).toBe('1 d, 2 e, 4 p, 5 u1, 6 u2');
    expect(cabinet.leads?.slice(5).map(({ from, to }) => `${from?.unit} ${to?.unit}`)).toEqual(['p u1', 'p u2', 'p u3']);
  });

  it.each([
    ['', 'rows-empty'],
    ['Kind;Chain', 'rows-empty'],
    ['-TB1', 'rows-kind-missing'],
    ['-TB1;lamp', 'rows-kind-unknown'],
    ['-TB1;servoo', 'rows-kind-unknown'],
    ['-TB1;servo;x', 'rows-chain-wrong'],
    ['-TB1;servo;0', 'rows-chain-wrong'],
    ['-TB1;encoder;off', 'rows-not-on-chain'],
    ['-TB1;supply;1', 'rows-not-on-chain'],
    ['-TB1;servo;1;X;-TB7', 'rows-feeder-unknown'],
    ['Kind;Row;Slot\nservo;1;x', 'rows-value-wrong'],
    ['Kind;Row;Slot\nservo;1;1.5', 'rows-value-wrong'],
    [`${'x'.repeat(201)};servo`, 'rows-text-too-long'],
    ['x;servo\n'.repeat(2001), 'rows-too-many'],
    ['-TB1;lamp\n-TB2;servo;x', 'rows-kind-unknown,rows-chain-wrong'],
  ])('should refuse %j with every reason: %s', (text, codes) => {
    expect(refused(pasteRows(small, text))).toBe(codes);
  });

  it('should take any text without a throw, and make nothing that does not hang together', () => {
    const cell = fc.oneof(
      fc.constantFrom(
        'servo',
        'supply',
        'encoder',
        '1',
        '2',
        'off',
        '-TB1',
        '-TB9',
        'Kind',
        'Chain',
        'Fed by',
        '"',
        '""',
        '3,5',
        'Row',
        '',
      ),
      fc.string({ maxLength: 12 }),
    );
    const text = fc
      .tuple(fc.constantFrom('\t', ';', ','), fc.array(fc.array(cell, { maxLength: 6 }), { maxLength: 6 }))
      .map(([by, lines]) => lines.map((cells) => cells.join(by)).join('\n'));
    const property = fc.property(text, (pasted) => {
      const answer = pasteRows(small, pasted);
      if (answer.ok) expect(brokenBy(answer.value.cabinet)).toEqual([]);
      else for (const problem of answer.problems) expect(wordProblem(problem).title).not.toMatch(/undefined/);
    });
    fc.assert(property, { seed: 31, numRuns: 1500 });
  });

  it('should know a head for each of its columns', () => {
    const heads = [
      'Designation',
      'Kind',
      'Chain',
      'Position',
      'Axes',
      'Fed by',
      'Model',
      'Part number',
      'Serial number',
      'Board part number',
    ];
    heads.push('Board serial number', 'Row', 'Slot', 'Load A', 'Cable', 'Cable length m', 'Notes');
    const read = readRows(`${heads.join('\t')}\n-TB1\tservo`);
    expect(read.ok && read.value.head).toEqual(rowColumns);
  });

  it('should understand the list of a workshop: a title above, other words for its heads, kinds in any spelling', () => {
    const list = [
      'Drives, cabinet 4',
      '',
      'Chain\tPos\tBMK\tType\tModel\tAxes\tSerial no.',
      'Light 1\t2\t-TB2\tSPINDLE\tSP9\tS1\tS2',
      'Light 1\t1\t-TB1\tServo drive\tAX-100\tX; Y\tS1',
      '2\t1\t-KE2\tEncoder\tEN-1\t\tS4',
      '\t\t-TB20\tsupply\tSU\t\tS16',
    ].join('\n');
    const { cabinet } = done(pasteRows(empty, list));
    expect(cabinet.units?.map(({ designation, kind, model, serial }) => [designation, kind, model, serial].join(' '))).toEqual([
      '-TB1 servo-drive AX-100 S1',
      '-TB2 spindle-drive SP9 S2',
      '-KE2 encoder-interface EN-1 S4',
      '-TB20 supply SU S16',
    ]);
    expect(chains(cabinet)).toEqual(['w1 u1 w2 u2', 'w3 u3']);
  });

  it('should understand a German list with semicolons and decimal commas', () => {
    const text =
      'Schaltschrank\n\nBetriebsmittel;Art;Kette;Achse;Länge\n-TB1;Servoantrieb;1;X;0,4\n-TB2;Spindelantrieb;1;S;1,25\n-TB9;Netzteil;;;';
    const { cabinet } = done(pasteRows(empty, text));
    expect(cabinet.units?.map(({ kind }) => kind)).toEqual(['servo-drive', 'spindle-drive', 'supply']);
    expect(cabinet.links?.map(({ lengthM }) => lengthM)).toEqual([0.4, 1.25]);
  });

  it('should say once that a head lacks the kind, rather than doubt every row', () => {
    expect(readRows('Tag;Type;Chain;Serial no.\n-TB1;EB-41 C;1;0017\n-TB2;EB-41 C;1;0018')).toMatchObject({
      ok: false,
      problems: [{ code: 'rows-no-kind-column', facts: { row: 1 } }],
    });
  });

  it('should take a column headed “Type” for the model where another one holds the kind', () => {
    const read = readRows('Kind;Type;Chain\nservo;AX-100;1');
    expect(read.ok && read.value.head).toEqual(['kind', 'model', 'chain']);
  });

  it('should take the kind before the designation too, and else say how the columns stand', () => {
    const { cabinet } = done(pasteRows(empty, 'servo\t-TB1\t1\nspindle\t-TB2\t1'));
    expect(cabinet.units?.map(({ designation, kind }) => `${designation} ${kind}`)).toEqual(['-TB1 servo-drive', '-TB2 spindle-drive']);
    const read = readRows('Nr;Ding\n1;Antrieb');
    expect(read.ok ? '' : read.problems.map((problem) => wordProblem(problem).whatToDo).join()).toContain(
      'designation, kind, chain, axes, fed by, model, part number, serial number',
    );
  });
});
