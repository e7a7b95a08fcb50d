import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { setFields } from '../../engine/edit/index.ts';
import { chosenId, fieldsOf, inspect, sharedValue } from '../../renderer/edit/inspected.ts';
import { readValue } from '../../renderer/edit/readValue.ts';
import { allColumns, columnKey, columnsOf, listTables, rowsOf, usualKeys } from '../../renderer/lists/listColumns.ts';
import { pasteCells, splitCopied } from '../../renderer/lists/pasteCells.ts';
import { done, find, small } from '../edit/small.ts';

const { topology } = checkCabinet(small);
const paste = (table: 'units' | 'links', row: number, column: string, text: string) => {
  const columns = columnsOf(table);
  const at = { row, column: columns.findIndex(({ head }) => head === column) };
  return pasteCells(small, table, rowsOf(topology, small, table), columns, at, splitCopied(text) ?? []);
};

describe('inspect', () => {
  it('should put what is chosen together by table, and show the cabinet where nothing is', () => {
    const typed = { ...small, types: [{ id: 'a', name: 'A type with the id of a unit' }] };
    const tables = inspect(typed, ['b', 'w1', 'nc', 'a', chosenId('types', 'a'), 'gone']).map(
      ({ table, owners }) => `${table} ${owners.length}`,
    );
    expect(tables).toEqual(['controller 1', 'units 2', 'links 1', 'types 1']);
    expect(inspect(typed, ['gone'])[0]?.table).toBe('cabinet');
  });

  it('should show only fields that all of them have, and say where they differ', () => {
    const [units] = inspect(small, ['a', 'p']);
    const paths = units === undefined ? [] : fieldsOf(units).map(({ path }) => path);
    expect(paths).toContain('partNumber');
    expect(paths).not.toContain('axes');
    expect(paths).not.toContain('supply.outputs');
    expect(sharedValue(units?.records ?? [], 'kind')).toEqual({ mixed: true, value: undefined });
    expect(sharedValue(units?.records ?? [], 'model')).toEqual({ mixed: false, value: undefined });
  });
});

describe('readValue', () => {
  it.each([
    ['amount', '0,5', 0.5],
    ['amount', ' 1.25 ', 1.25],
    ['level', '−3', -3],
    ['whole', '4', 4],
    ['line', ' a b ', 'a b'],
    ['flag', 'no', false],
    ['amount', '', null],
  ] as const)('should read %s %j as %j', (form, typed, value) => {
    expect(readValue(form, typed)).toEqual({ ok: true, value });
  });
  it.each([
    ['amount', '1e5'],
    ['amount', '1.2.3'],
    ['amount', '5 m'],
    ['whole', '1.5'],
  ] as const)('should say what is wrong with %s %j', (form, typed) => {
    expect(readValue(form, typed).ok).toBe(false);
  });
});

describe('pasted cells', () => {
  it('should fill cells to the right and downwards, and pass over what is worked out', () => {
    const answer = paste('units', 0, 'Designation', '-TB11\tignored\tSpindle drive\n-TB12\t\tservo-drive\n');
    if (!answer.ok) throw new Error(answer.trouble);
    const { cabinet } = done(setFields(small, answer.edits));
    expect(find(cabinet, 'units', 'a')).toMatchObject({ designation: '-TB11', kind: 'spindle-drive' });
    expect(find(cabinet, 'units', 'b')).toMatchObject({ designation: '-TB12', kind: 'servo-drive' });
  });

  it('should take decimal commas, quotation marks and line ends of every system', () => {
    expect(splitCopied('one')).toBeNull();
    expect(splitCopied('"a ""b"""\t1\r\nc\t2\r\n')).toEqual([
      ['a "b"', '1'],
      ['c', '2'],
    ]);
    const answer = paste('links', 1, 'Length', '0,45\n0.5\n\n7\n8\n9');
    expect(answer.ok && answer.edits.map(({ value }) => value)).toEqual([0.45, 0.5, null]);
  });

  it('should paste all or nothing, and say which cell does not fit', () => {
    const trouble = (table: 'units' | 'links', column: string, text: string) => {
      const answer = paste(table, 0, column, text);
      return answer.ok ? null : answer.trouble;
    };
    expect(trouble('links', 'Length', '1\n-2\n3')).toMatch(/Row 2 of what was copied, Length: .*0 or more/);
    expect(trouble('links', 'Length', '1\nlong\n')).toMatch(/Row 2/);
    expect(trouble('units', 'Kind', 'servo drive\nlamp')).toMatch(/Row 2.*“lamp”/);
    expect(trouble('units', 'Slot', '1\tx')).toMatch(/beyond the last column/);
  });

  it('should have columns for every table, the first one naming the row', () => {
    for (const table of listTables) {
      expect(columnsOf(table).length).toBeGreaterThan(4);
      expect(new Set(columnsOf(table).map(({ head }) => head)).size).toBe(columnsOf(table).length);
      expect(columnsOf(table)[0]?.kind).toBe('field');
    }
  });
});

describe('the columns of a list', () => {
  it('should offer every field that fits into a cell, each once and with words of its own, the usual ones first', () => {
    for (const table of listTables) {
      const all = allColumns(table);
      const keys = all.map(columnKey);
      expect(new Set(keys).size, table).toBe(keys.length);
      const heads = all.map((column) => column.head);
      expect(
        heads.filter((head, index) => heads.indexOf(head) !== index),
        table,
      ).toEqual([]);
      expect(keys.slice(0, usualKeys(table).length)).toEqual(usualKeys(table));
      expect(columnsOf(table).map(columnKey)).toEqual(usualKeys(table));
    }
    expect(allColumns('units').map(columnKey)).toEqual(expect.arrayContaining(['revision', 'control24.minimumV', 'notes', 'dcLinkSupply']));
    expect(allColumns('units').map(columnKey)).not.toContain('axes');
  });

  it('should show what was chosen, always the first one, and nothing that no table has', () => {
    expect(columnsOf('units', { units: ['notes', 'serial', 'of another program'] }).map(columnKey)).toEqual([
      'designation',
      'serial',
      'notes',
    ]);
    expect(columnsOf('leads', { units: ['notes'] }).map(columnKey)).toEqual(usualKeys('leads'));
  });
});
