import { type FieldEdit, setFields } from '../../engine/edit/index.ts';
import { editWords, wordProblem } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { ListTable } from '../edit/inspected.ts';
import { optionsOf } from '../edit/options.ts';
import { readValue } from '../edit/readValue.ts';
import type { Column } from './listColumns.ts';

/** Cells that were copied from a spreadsheet: lines of cells; null where it is a single one. */
export function splitCopied(text: string): readonly (readonly string[])[] | null {
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n+$/, '').split('\n');
  if (lines.length === 1 && !text.includes('\t')) return null;
  return lines.map((line) =>
    line.split('\t').map((cell) => cell.replace(/^"([\s\S]*)"$/, (_all, inner: string) => inner.replaceAll('""', '"'))),
  );
}

export type PastedCells = { readonly ok: true; readonly edits: readonly FieldEdit[] } | { readonly ok: false; readonly trouble: string };

/**
 * Turns copied cells into edits, from one cell of a table to the right and downwards. Columns that are not typed (places, ends of
 * cables) are passed over. All cells must fit, or nothing is pasted; rows beyond the last one are left out.
 */
export function pasteCells(
  content: CabinetContent,
  table: ListTable,
  rows: readonly { readonly id: string }[],
  columns: readonly Column[],
  at: { readonly row: number; readonly column: number },
  copied: readonly (readonly string[])[],
): PastedCells {
  const edits: FieldEdit[] = [];
  const places: { readonly row: number; readonly column: string }[] = [];
  for (const [down, cells] of copied.entries()) {
    const row = rows[at.row + down];
    if (row === undefined) break;
    for (const [right, cell] of cells.entries()) {
      const column = columns[at.column + right];
      const where = { row: down + 1, column: column?.head ?? '' };
      if (column === undefined) {
        if (cell.trim() === '') continue;
        return { ok: false, trouble: editWords.lists.pasteTrouble(where.row, cell, editWords.lists.pasteBesides) };
      }
      if (column.kind !== 'field') continue;
      const read = readCell(content, column, cell);
      if (!read.ok) return { ok: false, trouble: editWords.lists.pasteTrouble(where.row, where.column, read.trouble) };
      edits.push({ of: { in: table, id: row.id }, path: column.path.split('.'), value: read.value });
      places.push(where);
    }
  }
  // One by one only when something is wrong: to say where.
  if (setFields(content, edits).ok) return { ok: true, edits };
  for (const [index, edit] of edits.entries()) {
    const answer = setFields(content, [edit]);
    const [problem] = answer.ok ? [] : answer.problems;
    const place = places[index];
    if (problem === undefined || place === undefined) continue;
    const { explanation, whatToDo } = wordProblem(problem);
    return { ok: false, trouble: editWords.lists.pasteTrouble(place.row, place.column, `${explanation} ${whatToDo}`) };
  }
  // Each for itself fits, only all together do not: two chains of one number.
  return { ok: true, edits };
}

function readCell(content: CabinetContent, column: Extract<Column, { kind: 'field' }>, cell: string) {
  const options = optionsOf(content, column.path, column.form);
  const text = cell.trim();
  if (options === null || text === '') return readValue(column.form, text);
  const found = options.find(({ value, label }) => value === text || label.toLowerCase() === text.toLowerCase());
  if (found === undefined) return { ok: false as const, trouble: editWords.lists.notAnOption(text.slice(0, 40)) };
  return readValue(column.form, found.value);
}
