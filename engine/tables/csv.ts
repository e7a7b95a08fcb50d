/// <reference path="./libraries.d.ts" />
import Papa from 'papaparse';
import type { CellValue } from './makeTable.ts';

/**
 * How a CSV file is written: what parts its columns, how a decimal mark looks, whether a byte order mark says that it is UTF-8, and
 * whether designations are guarded (`guardCell`) like every other text that a spreadsheet would take for a formula. As they are, they
 * do no harm, but a spreadsheet shows 0 for -TB1, which is the name of a cell too; labels need them so.
 */
export interface CsvForm {
  readonly separator: ';' | ',' | '\t';
  readonly decimal: '.' | ',';
  readonly byteOrderMark: boolean;
  readonly designations: 'guarded' | 'plain';
}

/** Spreadsheets take a cell that begins with one of these for a formula; some also with their full-width forms (OWASP, CSV injection). */
const formulaStart = /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;
const guard = "'";
/** A number as it is written here; a minus sign before it makes no formula of it. */
const plainNumber = /^-?\d+(?:[.,]\d+)?(?:e[+-]?\d+)?$/i;

/**
 * Guards a text against being taken for a formula: exactly one apostrophe before what begins like one, or like a guarded one, so that
 * reading takes away exactly what was added. Designations begin with such signs.
 */
export function guardCell(text: string): string {
  return formulaStart.test(text.replace(/^'+/, '')) ? guard + text : text;
}

/**
 * One designation with its aspect signs, or several parted by strokes, with a terminal where there is one: -TB1, =A1+C2-TB3, -WH1 / -KE1,
 * -XD2:4 (in the manner of IEC 81346-1, from memory). Without brackets, quotation marks, functions and sheets it is no formula that does anything.
 */
const designation = '(?:[=+-]{1,2}[A-Za-z]{1,3}[0-9]{0,9}(?:\\.[0-9]{1,9}){0,4}){1,12}(?::[A-Za-z0-9.]{1,12})?';
const onlyDesignations = new RegExp(`^${designation}(?: ?/ ?${designation}){0,4}$`);

/** Takes the guard away that `guardCell` added. */
export function unguardCell(text: string): string {
  return text.startsWith(guard) && formulaStart.test(text.replace(/^'+/, '')) ? text.slice(1) : text;
}

/** Writes rows as CSV (RFC 4180, with line ends CR LF). Numbers have the decimal mark asked for and no grouping. */
export function writeCsv(heads: readonly string[], rows: readonly (readonly CellValue[])[], form: CsvForm): string {
  const cells = [heads.map((head) => writeCell(head, form)), ...rows.map((row) => row.map((cell) => writeCell(cell, form)))];
  const body = Papa.unparse(cells, { delimiter: form.separator, newline: '\r\n', quotes: false });
  return `${form.byteOrderMark ? '\ufeff' : ''}${body}\r\n`;
}

function writeCell(cell: CellValue, { decimal, designations }: CsvForm): string {
  if (cell === null) return '';
  if (typeof cell === 'string') return designations === 'plain' && onlyDesignations.test(cell) ? cell : guardCell(cell);
  const number = String(cell);
  return decimal === ',' ? number.replace('.', ',') : number;
}

/** What a CSV file holds: its heads and rows as texts, and what parted them. */
export interface ReadCsv {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly separator: string;
  /** Lines of the file (from 1) on which each row begins. */
  readonly lines: readonly number[];
  /** A quotation mark that is never closed: what follows it may be wrong. */
  readonly isBroken: boolean;
}

const separators = [';', '\t', ',', '|'] as const;

/** So many lines may stand above the heads: a title, a date. */
const mostAboveHeads = 10;

/**
 * Reads a CSV file, or cells pasted from a spreadsheet. What parts the columns is found from the first lines. Empty rows are left out,
 * and so are lines above the heads: these are the first of some lines of which `countKnown` knows the most cells, and at least two.
 */
export function readCsv(text: string, countKnown: (cells: readonly string[]) => number = () => 0): ReadCsv {
  const withoutMark = text.startsWith('\ufeff') ? text.slice(1) : text;
  // A first line such as `sep=;` tells the separator to some spreadsheets.
  const told = /^sep=(.)\r?\n/.exec(withoutMark)?.[1];
  const body = told === undefined ? withoutMark : withoutMark.replace(/^sep=.\r?\n/, '');
  const parsed = Papa.parse<string[]>(body, {
    delimiter: told ?? guessSeparator(body, countKnown),
    skipEmptyLines: false,
  });
  const lines: number[] = [];
  let line = told === undefined ? 1 : 2;
  const rows: string[][] = [];
  for (const row of parsed.data) {
    if (row.some((cell) => cell.trim() !== '')) {
      rows.push(row.map(unguardCell));
      lines.push(line);
    }
    line += 1 + row.reduce((sum, cell) => sum + (cell.match(/\r\n|\r|\n/g)?.length ?? 0), 0);
  }
  const counts = rows.slice(0, mostAboveHeads).map(countKnown);
  const most = Math.max(...counts, 0);
  const headsAt = most < fewestKnown ? 0 : counts.indexOf(most);
  return {
    heads: (rows[headsAt] ?? []).map((head) => head.trim()),
    rows: rows.slice(headsAt + 1),
    separator: parsed.meta.delimiter,
    lines: lines.slice(headsAt + 1),
    isBroken: parsed.errors.some(({ type }) => type === 'Quotes'),
  };
}

/** One known cell may stand anywhere by chance. */
const fewestKnown = 2;

/** The sign that makes most known heads of a line; else what stands most often in the first line, outside of quotation marks. */
function guessSeparator(text: string, countKnown: (cells: readonly string[]) => number): string {
  const known = (sign: string) =>
    Math.max(0, ...Papa.parse<string[]>(text, { delimiter: sign, preview: mostAboveHeads }).data.map((cells) => countKnown(cells)));
  const head = (/^(?:"(?:[^"]|"")*"|[^"\r\n])*/.exec(text)?.[0] ?? '').replace(/"(?:[^"]|"")*"/g, '');
  const count = (sign: string) => head.split(sign).length - 1;
  const ranked = separators.map((sign) => ({ sign, known: known(sign), count: count(sign) }));
  const best = [...ranked].sort((a, b) => b.known - a.known)[0];
  if (best !== undefined && best.known >= fewestKnown) return best.sign;
  return [...ranked].sort((a, b) => b.count - a.count)[0]?.sign ?? ';';
}

/** Whether a text is a number by either decimal mark; null when it is none, or cannot be told (grouping). */
export function readDecimal(text: string): number | null {
  const trimmed = text.trim().replace('\u2212', '-');
  return plainNumber.test(trimmed) ? Number(trimmed.replace(',', '.')) : null;
}
