import { fail, makeProblem, ok, type Problem, type Result } from '../base/index.ts';
import { areKinds, headWords, nearestKindWord, plainWord, readChainNumber, readKind, typeHeadMeans } from '../quick/index.ts';
import type { UnitKind } from '../schema/index.ts';

/** What a column of pasted rows can hold. */
export const rowColumns = [
  'designation',
  'kind',
  'chain',
  'position',
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
const kindFirstOrder: readonly RowColumn[] = ['kind', 'designation', ...usualOrder.slice(2)];

/** How the head of a column may be written, without signs and blanks. */
const heads: { readonly [C in RowColumn]: readonly string[] } = {
  ...headWords,
  fedBy: ['fedby', 'feed', 'supply', '24v', '24vfrom', 'from', 'speisung', 'gespeistvon', 'versorgung', 'netzteil'],
  cable: ['cable', 'link', 'cabledesignation', 'kabel', 'leitung'],
  cableLengthM: headWords.lengthM,
};

const numberColumns = ['position', 'row', 'slot', 'loadA', 'cableLengthM'] as const;
const wholeColumns: readonly RowColumn[] = ['position', 'row', 'slot'];
/** So many lines may stand above the head: a title, a date. */
const mostAboveHead = 10;

/**
 * Reads rows copied from a spreadsheet: cells parted by tabs, else by semicolons, else by commas. A line may name the
 * columns, below a title or without one; without it they stand in the usual order: designation, kind, chain, axes, fed by, model, part
 * number, serial number; the kind may also come first. Units of a chain go by their positions where those are given. Numbers may have a decimal comma unless commas part the cells. Fails with everything that is wrong, line by line.
 */
export function readRows(text: string): Result<UnitRows> {
  const lines = splitCells(text);
  if (lines.length > mostRows) return fail(makeProblem('rows-too-many', 'refused', { facts: { maximum: mostRows } }));
  const headAt = lines.slice(0, mostAboveHead).findIndex(({ cells }, index) => readHead(cells, lines.slice(index + 1)) !== null);
  const body = lines.slice(headAt + 1);
  const first = lines[headAt];
  const named = first === undefined ? null : readHead(first.cells, body);
  if (named === null) {
    const halfHead = lines.slice(0, mostAboveHead).find(({ cells }) => knownHeads(cells).filter((known) => known !== null).length >= 2);
    if (halfHead) return fail(makeProblem('rows-no-kind-column', 'refused', { facts: { row: halfHead.line } }));
  }
  const columns: readonly (RowColumn | null)[] = named ?? (isKindFirst(body) ? kindFirstOrder : usualOrder);
  const problems: Problem[] = [];
  const rows: UnitRow[] = [];
  let chain: number | null = null;
  for (const { line, cells } of body) {
    const row = readRow(line, cells, columns, chain, named !== null);
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
  return ok({ rows: byPosition(rows), head: named, ignored });
}

function readRow(
  line: number,
  cells: readonly string[],
  columns: readonly (RowColumn | null)[],
  before: number | null,
  hasHead: boolean,
): Result<UnitRow> {
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
  if (texts.kind === undefined)
    problems.push(makeProblem('rows-kind-missing', 'refused', { facts: { row: line, form: hasHead ? 'head' : 'no-head' } }));
  else if (kind === null) {
    const facts = {
      row: line,
      word: short(texts.kind),
      nearest: nearestKindWord(texts.kind.toLowerCase()),
      form: hasHead ? 'head' : 'no-head',
    };
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
  const number = readChainNumber(cell) ?? 0;
  return number >= 1 && number <= highestChain ? number : undefined;
}

interface Line {
  readonly line: number;
  readonly cells: readonly string[];
}

/** The columns that a line names; null where it is no head. `below` tells what a column headed "Type" holds. */
function readHead(cells: readonly string[], below: readonly Line[]): readonly (RowColumn | null)[] | null {
  const found = knownHeads(cells);
  for (const [index, cell] of cells.entries()) {
    const means = typeHeadMeans(
      cell,
      below.map((one) => one.cells[index] ?? ''),
    );
    if (means !== null && !found.includes(means)) found[index] = means;
  }
  // A line that names a kind describes a unit, whatever its other cells are called.
  return found.includes('kind') && found.filter((column) => column !== null).length >= 2 ? found : null;
}

const knownHeads = (cells: readonly string[]): (RowColumn | null)[] =>
  cells.map((cell) => rowColumns.find((column) => heads[column].includes(plainWord(cell))) ?? null);

const column = (lines: readonly Line[], index: number) => lines.map(({ cells }) => cells[index] ?? '');
const isKindFirst = (lines: readonly Line[]) => areKinds(column(lines, 0)) && !areKinds(column(lines, 1));

/** The rows of each chain by their positions; where not every one of a chain has one, they stay as they stand. */
function byPosition(rows: readonly UnitRow[]): readonly UnitRow[] {
  const ordered = [...rows];
  for (const chain of new Set(rows.map((row) => row.chain))) {
    const at = rows.flatMap((row, index) => (row.chain === chain && chain !== null ? [index] : []));
    const members = at.flatMap((index) => rows[index] ?? []);
    if (members.some(({ numbers }) => numbers.position === undefined)) continue;
    const sorted = members.sort((a, b) => (a.numbers.position ?? 0) - (b.numbers.position ?? 0));
    for (const [rank, index] of at.entries()) {
      const row = sorted[rank];
      if (row !== undefined) ordered[index] = row;
    }
  }
  return ordered;
}

/** The lines that hold anything, cut into cells; a cell in quotation marks may hold separators, line ends and doubled marks. */
function splitCells(text: string): readonly Line[] {
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
