import { fail, makeProblem, ok, type Problem, type Result } from '../base/index.ts';
import { nearestKindWord, readKind } from '../quick/index.ts';
import type { UnitKind } from '../schema/index.ts';

/** What a column of pasted rows can hold. */
export const rowColumns = [
  'designation',
  'kind',
  'chain',
  'axes',
  'fedBy',
  'model',
  'partNumber',
  'serial',
  'boardPartNumber',
  'boardSerial',
  'row',
  'slot',
  'loadA',
  'cable',
  'cableLengthM',
  'notes',
] as const;
export type RowColumn = (typeof rowColumns)[number];

/** One unit as a row describes it. */
export interface UnitRow {
  /** Line of the text, from 1. */
  readonly line: number;
  readonly kind: UnitKind;
  /** Number of its chain; null: on none. */
  readonly chain: number | null;
  readonly texts: { readonly [C in RowColumn]?: string };
  readonly numbers: { readonly [C in RowColumn]?: number };
  readonly axes: readonly string[];
}

/** Rows as they were read. */
export interface UnitRows {
  readonly rows: readonly UnitRow[];
  /** Columns that the first line names; null where it names none and the usual order is taken. */
  readonly head: readonly (RowColumn | null)[] | null;
  /** Heads of columns that are not known and were left out. */
  readonly ignored: readonly string[];
}

export const mostRows = 2000;
const longestCell = 200;
const highestChain = 999;

/** Without a head the columns stand in this order. */
const usualOrder: readonly RowColumn[] = ['designation', 'kind', 'chain', 'axes', 'fedBy', 'model', 'partNumber', 'serial'];

/** How the head of a column may be written, without signs and blanks. */
const heads: { readonly [C in RowColumn]: readonly string[] } = {
  designation: ['designation', 'unit', 'name', 'tag', 'referencedesignation'],
  kind: ['kind', 'kindofunit', 'what'],
  chain: ['chain', 'chainnumber', 'onchain'],
  axes: ['axes', 'axis', 'axisnames'],
  fedBy: ['fedby', 'feed', 'supply', '24v', '24vfrom', 'from'],
  model: ['model', 'modeltext', 'description'],
  partNumber: ['partnumber', 'partno', 'part', 'ordernumber'],
  serial: ['serial', 'serialnumber', 'serialno'],
  boardPartNumber: ['boardpartnumber', 'boardpartno', 'board'],
  boardSerial: ['boardserial', 'boardserialnumber', 'boardserialno'],
  row: ['row', 'rail'],
  slot: ['slot', 'place', 'position'],
  loadA: ['load', 'loada', '24vload', '24vloada'],
  cable: ['cable', 'link', 'cabledesignation'],
  cableLengthM: ['length', 'lengthm', 'cablelength', 'cablelengthm'],
  notes: ['notes', 'note', 'remark', 'remarks'],
};

const numberColumns = ['row', 'slot', 'loadA', 'cableLengthM'] as const;
const wholeColumns: readonly RowColumn[] = ['row', 'slot'];

/**
 * Reads rows copied from a spreadsheet: cells parted by tabs, else by semicolons, else by commas. The first line may name the
 * columns; without it they stand in the usual order: designation, kind, chain, axes, fed by, model, part number, serial number.
 * Numbers may have a decimal comma unless commas part the cells. Fails with everything that is wrong, line by line.
 */
export function readRows(text: string): Result<UnitRows> {
  const lines = splitCells(text);
  if (lines.length > mostRows) return fail(makeProblem('rows-too-many', 'refused', { facts: { maximum: mostRows } }));
  const [first] = lines;
  const named = first === undefined ? null : readHead(first.cells);
  const columns: readonly (RowColumn | null)[] = named ?? usualOrder;
  const body = named === null ? lines : lines.slice(1);
  const problems: Problem[] = [];
  const rows: UnitRow[] = [];
  let chain: number | null = null;
  for (const { line, cells } of body) {
    const row = readRow(line, cells, columns, chain);
    if (!row.ok) problems.push(...row.problems);
    else {
      rows.push(row.value);
      if (row.value.chain !== null) chain = row.value.chain;
    }
  }
  if (problems.length > 0) return fail(...problems);
  if (rows.length === 0) return fail(makeProblem('rows-empty', 'refused'));
  const ignored =
    named === null || first === undefined ? [] : first.cells.filter((cell, index) => cell.trim() !== '' && named[index] === null);
  return ok({ rows, head: named, ignored });
}

function readRow(line: number, cells: readonly string[], columns: readonly (RowColumn | null)[], before: number | null): Result<UnitRow> {
  const problems: Problem[] = [];
  const texts: { [C in RowColumn]?: string } = {};
  for (const [index, column] of columns.entries()) {
    const cell = (cells[index] ?? '').trim();
    if (column === null || cell === '') continue;
    texts[column] = cell;
    if (cell.length > longestCell) {
      problems.push(
        makeProblem('rows-text-too-long', 'refused', { facts: { row: line, column: heads[column][0] ?? column, maximum: longestCell } }),
      );
    }
  }
  const numbers: { [C in RowColumn]?: number } = {};
  for (const column of numberColumns) {
    const cell = texts[column];
    if (cell === undefined) continue;
    const value = readAmount(cell);
    if (value === null || (wholeColumns.includes(column) && !Number.isInteger(value))) {
      problems.push(
        makeProblem('rows-value-wrong', 'refused', { facts: { row: line, column: heads[column][0] ?? column, word: short(cell) } }),
      );
    } else numbers[column] = value;
  }
  const kind = texts.kind === undefined ? null : readKind(texts.kind);
  if (texts.kind === undefined) problems.push(makeProblem('rows-kind-missing', 'refused', { facts: { row: line } }));
  else if (kind === null) {
    const facts = { row: line, word: short(texts.kind), nearest: nearestKindWord(texts.kind.toLowerCase()) };
    problems.push(makeProblem('rows-kind-unknown', 'refused', { facts }));
  }
  const chain = readChain(texts.chain, kind, before);
  if (chain === undefined) {
    problems.push(
      makeProblem('rows-chain-wrong', 'refused', { facts: { row: line, word: short(texts.chain ?? ''), maximum: highestChain } }),
    );
  } else if ((kind === 'supply' && chain !== null) || (kind === 'encoder-interface' && chain === null)) {
    problems.push(makeProblem('rows-not-on-chain', 'refused', { facts: { row: line } }));
  }
  if (problems.length > 0 || kind === null || chain === undefined) return fail(...problems);
  const axes = (texts.axes ?? '')
    .split(/[,+/;\s]+/)
    .map((name) => name.trim())
    .filter(Boolean)
    .slice(0, 4);
  return ok({ line, kind, chain, texts, numbers, axes });
}

/** The number of a chain; null: on none; undefined: neither. Left open: none for a supply, else the chain of the row above, or 1. */
function readChain(cell: string | undefined, kind: UnitKind | null, before: number | null): number | null | undefined {
  if (cell === undefined) return kind === 'supply' ? null : (before ?? 1);
  if (/^(off|none|no|own|-|–|—)$/i.test(cell)) return null;
  const digits = /^(?:chain\s*)?([0-9]{1,4})(?:\s*[/.:].*)?$/i.exec(cell)?.[1];
  const number = digits === undefined ? 0 : Number(digits);
  return number >= 1 && number <= highestChain ? number : undefined;
}

function readHead(cells: readonly string[]): readonly (RowColumn | null)[] | null {
  const found = cells.map((cell) => {
    const word = cell.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
    return rowColumns.find((column) => heads[column].includes(word)) ?? null;
  });
  // A line that names a kind describes a unit, whatever its other cells are called.
  return found.includes('kind') && found.filter((column) => column !== null).length >= 2 ? found : null;
}

/** The lines that hold anything, cut into cells; a cell in quotation marks may hold separators, line ends and doubled marks. */
function splitCells(text: string): readonly { readonly line: number; readonly cells: readonly string[] }[] {
  const separator = text.includes('\t') ? '\t' : text.includes(';') ? ';' : ',';
  const lines: { line: number; cells: string[] }[] = [];
  let cells: string[] = [];
  let cell = '';
  let quoted = false;
  let line = 1;
  let began = 1;
  const endCell = () => {
    cells.push(cell);
    cell = '';
  };
  const endLine = () => {
    endCell();
    if (cells.some((one) => one.trim() !== '')) lines.push({ line: began, cells });
    cells = [];
    began = line + 1;
  };
  for (let at = 0; at < text.length && lines.length <= mostRows + 1; at += 1) {
    const sign = text.charAt(at);
    if (quoted) {
      if (sign === '"' && text.charAt(at + 1) === '"') {
        cell += sign;
        at += 1;
      } else if (sign === '"') quoted = false;
      else cell += sign === '\n' || sign === '\r' ? ' ' : sign;
      if (sign === '\n') line += 1;
    } else if (sign === '"' && cell.trim() === '') {
      cell = '';
      quoted = true;
    } else if (sign === separator) endCell();
    else if (sign === '\n' || sign === '\r') {
      if (sign === '\r' && text.charAt(at + 1) === '\n') at += 1;
      endLine();
      line += 1;
    } else cell += sign;
  }
  endLine();
  return lines;
}

/** A number of zero or more, with a point or a comma before its decimals; null when it is none. */
function readAmount(cell: string): number | null {
  const found = /^([0-9]{1,9}(?:[.,][0-9]{1,6})?)\s*(?:m|A)?$/.exec(cell);
  return found === null ? null : Number((found[1] ?? '').replace(',', '.'));
}

const short = (word: string) => (word.length > 40 ? `${word.slice(0, 40)}…` : word);
