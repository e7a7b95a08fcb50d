import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { tableWords, wordDoes, wordDoubt, wordImport } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import {
  type CsvForm,
  columnsOf,
  countKnownHeads,
  guardCell,
  guessKind,
  guessMapping,
  labelHeads,
  makeTable,
  planImport,
  readCsv,
  type TableKind,
  tableKinds,
  unguardCell,
  writeCsv,
} from '../../engine/tables/index.ts';
import { keepHeads, readKnownHeads } from '../../renderer/papers/knownHeads.ts';
import { plainContent } from '../bench/cabinets.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { readContent } from '../support/sampleCabinets.ts';

const forms: readonly CsvForm[] = ([';', ',', '\t'] as const).flatMap((separator) =>
  (['.', ','] as const).flatMap((decimal) =>
    [true, false].map((yes) => ({ separator, decimal, byteOrderMark: yes, designations: yes ? ('plain' as const) : ('guarded' as const) })),
  ),
);
const exported = (content: CabinetContent, kind: TableKind, form: CsvForm) => {
  const table = makeTable(checkCabinet(content).topology, kind, tableWords);
  return writeCsv(
    table.columns.map((key) => tableWords.heads[key]),
    table.rows,
    form,
  );
};
const imported = (content: CabinetContent, kind: TableKind, text: string, replace = true) => {
  const csv = readCsv(text);
  return planImport(content, kind, csv, tableWords, { mapping: guessMapping(kind, csv, tableWords), replace });
};

describe('the guard against formulas', () => {
  const texts = fc.string({ unit: fc.constantFrom("'", '=', '+', '-', '@', '＝', '\t', 'a', '1', ' ', '"', ';', '\n'), maxLength: 12 });

  it('should add exactly one sign where a spreadsheet would see a formula, none elsewhere, and take away what it added', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const guarded = guardCell(text);
        expect(unguardCell(guarded)).toBe(text);
        expect([text, `'${text}`]).toContain(guarded);
        expect(guarded).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]/);
        if (/^[a1 ";]/.test(text)) expect(guarded).toBe(text);
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  it('should guard designations, and not numbers', () => {
    expect(
      writeCsv(['a'], [['-TB1'], ['=C1+TA2'], ['+C1'], [-3.5]], {
        separator: ';',
        decimal: ',',
        byteOrderMark: false,
        designations: 'guarded',
      }),
    ).toBe("a\r\n'-TB1\r\n'=C1+TA2\r\n'+C1\r\n-3,5\r\n");
  });

  it('should let plain designations stand where labels are printed, and guard all else', () => {
    const form: CsvForm = { separator: ';', decimal: ',', byteOrderMark: false, designations: 'plain' };
    const plain = ['-TB1', '+C1', '=A1+C2-TB3', '==A1', '-WH1 / -KE1', '-XD2:4', '-QA1.2'];
    const threats = [
      '=1+1',
      '=SUM(A1)',
      "=cmd|' /C x'!A0",
      '-2+3',
      '@SUM(A1)',
      '=A1*9',
      '+C1 (left)',
      '=HYPERLINK("x")',
      '＝A1',
      "'-TB2",
      '-TB1\n=X',
    ];
    const text = writeCsv(
      ['a'],
      [...plain, ...threats].map((cell) => [cell]),
      form,
    );
    const cells = Papa.parse<string[]>(text, { delimiter: ';', skipEmptyLines: true }).data.map(([cell]) => cell);
    expect(cells.slice(1)).toEqual([...plain, ...threats.map((cell) => `'${cell}`)]);
    expect(readCsv(text).rows.map(([cell]) => cell)).toEqual([...plain, ...threats]);
  });
});

describe('CSV', () => {
  it('should be read back by a spreadsheet-grade parser as it was written, whatever the cells hold', () => {
    const cell = fc.string({ unit: fc.constantFrom('"', ';', ',', '\n', '\r', '\t', 'a', ' ', 'é', "'", '-'), maxLength: 8 });
    const rows = fc.array(fc.tuple(fc.constant('x'), cell, cell), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(rows, fc.constantFrom(...forms), (cells, form) => {
        const text = writeCsv(['one', 'two', 'three'], cells, form);
        const read = Papa.parse<string[]>(text.replace(/^\ufeff/, ''), { delimiter: form.separator, skipEmptyLines: true });
        expect(read.errors).toEqual([]);
        const isPlain = (one: string) => form.designations === 'plain' && /^-a+$/.test(one) && one.length < 5;
        expect(read.data.slice(1)).toEqual(cells.map((row) => row.map((one) => (isPlain(one) ? one : guardCell(one)))));
        expect(text.startsWith('\ufeff')).toBe(form.byteOrderMark);
        const own = readCsv(text);
        expect(own.rows).toEqual(cells);
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('should take what spreadsheets write: a byte order mark, sep=, any separator, quoted line breaks; and say where a quotation never ends', () => {
    expect(readCsv('\ufeffsep=;\r\na;b\r\n1;"x\r\ny"\r\n\r\n2;z')).toMatchObject({
      heads: ['a', 'b'],
      rows: [
        ['1', 'x\r\ny'],
        ['2', 'z'],
      ],
      lines: [3, 6],
      separator: ';',
    });
    expect(readCsv('a\tb\n1\t2')).toMatchObject({ rows: [['1', '2']], separator: '\t' });
    expect(readCsv('a,b\n1,"never ends').isBroken).toBe(true);
    expect(readCsv('')).toMatchObject({ heads: [], rows: [] });
  });

  it('should take the first line for the heads where no line has two known ones: one may be a cell by chance', () => {
    const known = (cells: readonly string[]) => cells.filter((cell) => cell === 'serial').length;
    expect(readCsv('Thing;Means\r\nserial;12', known)).toMatchObject({ heads: ['Thing', 'Means'], rows: [['serial', '12']] });
    const both = (cells: readonly string[]) => cells.filter((cell) => cell === 'serial' || cell === 'slot').length;
    expect(readCsv('Plant;7\r\nserial;slot\r\nS1;4', both)).toMatchObject({ heads: ['serial', 'slot'], rows: [['S1', '4']] });
  });
});

describe('what is exported', () => {
  const samples = ['two-chains', 'three-units', 'drives-off-chain', 'forty-units', 'two-supplies', 'with-problems', 'unfinished'];

  it.each(samples)('should import unchanged into %s, in every form', (name) => {
    const content = readContent(name);
    for (const kind of tableKinds) {
      for (const form of forms) {
        const plan = imported(content, kind, exported(content, kind, form));
        expect(plan.rows.filter(({ does }) => does !== 'same')).toEqual([]);
        expect(plan.content).toBe(content);
      }
    }
  });

  it('should import unchanged for any cabinet', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom(...forms), fc.constantFrom(...tableKinds), (seed, form, kind) => {
        const content = makeCabinet(seed);
        const plan = imported(content, kind, exported(content, kind, form));
        expect(plan.rows.filter(({ does }) => does !== 'same')).toEqual([]);
        expect(plan.content).toBe(content);
      }),
      { seed: 3, numRuns: 60 },
    );
  });

  it.each(['two-chains', 'drives-off-chain', 'two-supplies'])('should build the same lists of %s anew where they are gone', (name) => {
    const content = readContent(name);
    const { units: _units, links: _links, leads: _leads, feedbacks: _feedbacks, ...bare } = content;
    let built: CabinetContent = bare;
    for (const kind of tableKinds) built = imported(built, kind, exported(content, kind, forms[0] as CsvForm)).content;
    for (const kind of tableKinds) {
      expect(exported(built, kind, forms[0] as CsvForm)).toBe(exported(content, kind, forms[0] as CsvForm));
    }
  });
});

describe('an import', () => {
  const content = readContent('two-chains');

  it('should know the columns by their heads, by what was said of them before, and which list they are', () => {
    expect(guessKind(['Designation', 'Label at upper plug', 'Length, m'], tableWords)).toBe('cables');
    expect(guessMapping('units', { heads: ['  designation ', 'SERIAL NUMBER', 'Ser.', 'x'], rows: [] }, tableWords)).toEqual({
      designation: 0,
      serial: 1,
    });
    expect(
      guessMapping('units', { heads: ['Mark', 'S:'], rows: [] }, tableWords, { 'units/mark': 'designation', 'units/s:': 'serial' }),
    ).toEqual({
      designation: 0,
      serial: 1,
    });
  });

  it('should understand the list of a workshop: a title above, other words for its heads, kinds in any spelling', () => {
    const list = [
      'Cabinet list, QX-9;;;;;;',
      'Chain;Pos;BMK;Type;Model;Axes;Serial no.',
      'Light 3;1;-TB31;Servo;AX-100;X, Y;S1',
      '3;2;-TB32;SPINDLE;SP9;S;',
      ';;;;;;',
      '3;3;-KE33;encoder;EN-1;;S4',
      '3;4;-TB34;servos;AX-100;W;S7',
      '3;5;-TB35;lamp;AX-100;V;S8',
      ';;-TB30;supply;SU;;S16',
    ].join('\r\n');
    const csv = readCsv(list, (cells) => countKnownHeads(cells, tableWords));
    expect(guessKind(csv.heads, tableWords)).toBe('units');
    const mapping = guessMapping('units', csv, tableWords);
    const plan = planImport(content, 'units', csv, tableWords, { mapping, replace: false, place: true });
    expect(plan.rows.map(({ line, name, does }) => [line, name, does])).toEqual([
      [3, '-TB31', 'add'],
      [4, '-TB32', 'add'],
      [6, '-KE33', 'add'],
      [7, '-TB34', 'add'],
      [8, '-TB35', 'doubtful'],
      [9, '-TB30', 'add'],
    ]);
    expect(plan.rows[4]?.doubts.map(wordDoubt).join()).toBe(
      'Kind: “lamp” is not known here; write servo drive, spindle drive, encoder interface or supply',
    );
    expect(plan.content.units?.filter(({ id }) => /^(TB|KE)3\d$/.test(id)).map(({ kind, model }) => `${kind} ${model}`)).toEqual([
      'servo-drive AX-100',
      'spindle-drive SP9',
      'encoder-interface EN-1',
      'servo-drive AX-100',
      'supply SU',
    ]);
    expect(checkCabinet(plan.content).topology.chains.at(-1)?.units).toEqual(['TB31', 'TB32', 'KE33', 'TB34']);
  });

  it('should doubt half a slot, and half a coupler: such figures count things', () => {
    const list = `${tableWords.heads.designation};${tableWords.heads.slot}\r\n-TB1;1.5\r\n-TB2;2.0`;
    const { rows } = imported(readContent('two-chains'), 'units', list);
    expect(rows.map(({ does, doubts }) => [does === 'doubtful', doubts.map(({ code }) => code)])).toEqual([
      [true, ['not-a-number']],
      [false, []],
    ]);
  });

  it('should take a column headed “Type” for the model where its cells are no kinds, and for the type of equipment in a graph of ours', () => {
    const mapped = (head: string, cell: string) =>
      guessMapping('units', { heads: ['Designation', head], rows: [['-TB1', cell]] }, tableWords);
    expect(mapped('Type', 'AX-100')).toEqual({ designation: 0, model: 1 });
    expect(mapped('type', 'QE drive 2')).toEqual({ designation: 0, type: 1 });
    expect(mapped('Type of equipment', 'servo')).toEqual({ designation: 0, type: 1 });
  });

  it('should tell equal heads and empty ones apart, and remember which of them was meant, and which was not', () => {
    const heads = ['Designation', 'Text', 'Text', '', 'Notes'];
    expect(labelHeads(heads, (number) => `column ${number}`)).toEqual(['Designation', 'Text', 'Text (2)', 'column 4', 'Notes']);
    const kept = new Map<string, string>();
    const storage = { getItem: (key: string) => kept.get(key) ?? null, setItem: (key: string, value: string) => void kept.set(key, value) };
    const guess = (kind: TableKind) => guessMapping(kind, { heads, rows: [] }, tableWords, readKnownHeads(storage));
    expect(guess('units')).toEqual({ designation: 0, notes: 4 });
    keepHeads(storage, 'units', heads, guess('units'), { model: 2, notes: -1 });
    expect(guess('units')).toEqual({ designation: 0, model: 2 });
    // Of another list nothing was said.
    expect(guess('cables')).toEqual({ designation: 0, notes: 4 });
    keepHeads(storage, 'units', heads, guess('units'), { notes: 4, model: 1 });
    expect(guess('units')).toEqual({ designation: 0, notes: 4, model: 1 });
  });

  it('should not call a row as it is when it says something else that stays', () => {
    const plan = imported(content, 'units', 'Designation;Serial number\n-TB1;OTHER\n-TB1x;\n', false);
    expect(plan.rows[0]).toMatchObject({ does: 'same', changes: [{ key: 'serial', isTaken: false }] });
    const [row] = plan.rows;
    expect(row && wordDoes(row)).toBe('differs, stays');
    expect(wordImport(plan.rows)).toBe('2 rows: 1 doubtful and left out and 1 differs and stays');
    expect(plan.content).toBe(content);
  });

  it('should replace nothing that is there unless asked to, and fill in what is empty', () => {
    const text = 'Designation;Serial number;Notes\n-TB1;OTHER;new note\n';
    const kept = imported(content, 'units', text, false);
    expect(kept.rows[0]).toMatchObject({
      does: 'change',
      changes: [
        { key: 'serial', before: 'D-55021', after: 'OTHER', isTaken: false },
        { key: 'notes', isTaken: true },
      ],
    });
    expect(kept.content.units?.find(({ id }) => id === 'TB1')).toMatchObject({ serial: 'D-55021', notes: 'new note' });
    expect(imported(content, 'units', text, true).content.units?.find(({ id }) => id === 'TB1')).toMatchObject({ serial: 'OTHER' });
  });

  it('should take the words for kinds that pasted rows may use too', () => {
    const text = ['Designation;Kind', '-TB50;servo', '-TB51;Spindle', '-KE52;encoder', '-TB53;axes and more'].join('\n');
    const plan = imported(content, 'units', text);
    expect(plan.rows.map(({ does }) => does)).toEqual(['add', 'add', 'add', 'doubtful']);
    expect(plan.content.units?.slice(-3).map(({ kind }) => kind)).toEqual(['servo-drive', 'spindle-drive', 'encoder-interface']);
  });

  it('should show doubtful rows with the reason and leave them out whole', () => {
    const text = [
      'Designation;Kind;Row;24 V load, A;Type of equipment',
      '-TB50;servo drive;1;1,5;',
      '-TB51;toaster;1;1;',
      '-TB52;servo drive;two;1;',
      '-TB53;;1;1;',
      '-TB54;servo drive;1;-4;',
      '-TB55;servo drive;1;1;no such type',
      '-TB50;servo drive;2;1;',
      ';servo drive;3;1;',
    ].join('\n');
    const plan = imported(content, 'units', text);
    expect(plan.rows.map(({ line, does, doubts }) => [line, does, ...doubts.map(({ code, key }) => `${code} ${key}`)])).toEqual([
      [2, 'add'],
      [3, 'doubtful', 'word-unknown kind'],
      [4, 'doubtful', 'not-a-number row'],
      [5, 'doubtful', 'kind-missing kind'],
      [6, 'doubtful', 'value-refused loadA'],
      [7, 'doubtful', 'name-unknown type'],
      [8, 'doubtful', 'row-doubled null'],
      [9, 'doubtful', 'designation-missing designation'],
    ]);
    expect(plan.content.units).toHaveLength((content.units?.length ?? 0) + 1);
    expect(plan.content.units?.at(-1)).toMatchObject({ designation: '-TB50', control24: { loadA: 1.5 } });
  });

  it('should hang new units on the ends of their chains, and leave doubtful places and what hangs already', () => {
    const given: CabinetContent = {
      ...plainContent(1, 2),
      units: [...(plainContent(1, 2).units ?? []), { id: 'o', designation: '-TB8', kind: 'servo-drive' }],
    };
    const text = [
      'Designation;Kind;Chain;Position;On a chain',
      '-TB1.1;;1;2;',
      '-TB8;;chain 1;3;',
      '-TB10;servo drive;2;2;',
      '-TB9;servo drive;2;1;',
      '-TB11;servo drive;2;7;',
      '-TB12;servo drive;1;1;',
      '-TB13;supply;1;4;',
      '-TB14;servo drive;first;1;',
      '-TB15;servo drive;2;;',
      '-TB16;servo drive;2;4;no',
    ].join('\n');
    const csv = readCsv(text);
    const plan = planImport(given, 'units', csv, tableWords, {
      mapping: guessMapping('units', csv, tableWords),
      replace: false,
      place: true,
    });
    expect(plan.rows.map(({ name, does, doubts }) => [name, does, ...doubts.map(({ code }) => code)])).toEqual([
      ['-TB1.1', 'same'],
      ['-TB8', 'change'],
      ['-TB10', 'add'],
      ['-TB9', 'add'],
      ['-TB11', 'doubtful', 'position-gap'],
      ['-TB12', 'doubtful', 'position-taken'],
      ['-TB13', 'doubtful', 'never-on-chain'],
      ['-TB14', 'doubtful', 'name-unknown'],
      ['-TB15', 'add'],
      ['-TB16', 'doubtful', 'never-on-chain'],
    ]);
    expect(plan.rows[0]?.changes).toEqual([{ key: 'position', before: '1', after: '2', isTaken: false }]);
    const { topology } = checkCabinet(plan.content);
    const names = topology.chains.map(({ units }) => units.map((unit) => topology.units.get(unit)?.designation));
    expect(names).toEqual([
      ['-TB1.1', '-TB1.2', '-TB8'],
      ['-TB9', '-TB10', '-TB15'],
    ]);
    expect(plan.content.units?.map(({ designation }) => designation)).not.toContain('-TB11');
  });

  it('should build the chains of any cabinet anew from its list of units, and then find its cables there', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const whole = makeCabinet(seed);
        const { units: _units, links: _links, leads: _leads, feedbacks: _feedbacks, chains: _chains, ...bare } = whole;
        const form = forms[0] as CsvForm;
        const csv = readCsv(exported(whole, 'units', form));
        const mapping = guessMapping('units', csv, tableWords);
        const first = planImport(bare, 'units', csv, tableWords, { mapping, replace: false, place: true });
        expect(first.rows.filter(({ does }) => does !== 'add')).toEqual([]);
        const before = checkCabinet(whole).topology;
        const after = checkCabinet(first.content).topology;
        expect(after.chains.map(({ units }) => units)).toEqual(before.chains.map(({ units }) => units));
        const second = imported(first.content, 'cables', exported(whole, 'cables', form), false);
        expect(second.rows.filter(({ does }) => does === 'add' || does === 'doubtful')).toEqual([]);
        const withoutIds = (content: CabinetContent) => exported(content, 'cables', form).replace(/;[^;\r]*\r/g, ';\r');
        const fibreless = (whole.links ?? []).every(({ fibre }) => fibre === undefined);
        if (fibreless) expect(withoutIds(second.content)).toBe(withoutIds(whole));
      }),
      { seed: 21, numRuns: 60 },
    );
  });

  it('should never crash, and never lose a record, whatever the file holds', () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 6 }),
      fc.constantFrom('-TB1', '-WH1', 'chain 1', '1e999', '__proto__', 'servo drive', '9'.repeat(400)),
    );
    fc.assert(
      fc.property(fc.constantFrom(...tableKinds), fc.array(fc.array(cell, { maxLength: 6 }), { maxLength: 5 }), (kind, rows) => {
        const keys = columnsOf(kind).slice(0, 6);
        const text = writeCsv(
          keys.map(({ key }) => tableWords.heads[key]),
          rows,
          forms[0] as CsvForm,
        );
        const plan = planImport(content, kind, readCsv(text), tableWords, {
          mapping: guessMapping(kind, readCsv(text), tableWords),
          replace: true,
          place: true,
        });
        for (const list of ['units', 'links', 'leads', 'feedbacks'] as const) {
          const ids = new Set(plan.content[list]?.map(({ id }) => id));
          for (const { id } of content[list] ?? []) expect(ids.has(id)).toBe(true);
        }
      }),
      { seed: 9, numRuns: 200 },
    );
  });
});
