import { type CodeTrouble, meaningWords } from '../../engine/messages/index.ts';
import { type DisplayMeaning, displayMeanings, type LegendRecord } from '../../engine/schema/index.ts';

export type CodeRow = LegendRecord['codes'][number];

const longestCode = 40;
const longestNote = 200;
export const mostCodes = 500;

/** Why a code cannot stand in a legend beside `others`; null when it can. */
export function codeTrouble(code: string, others: readonly CodeRow[]): CodeTrouble | null {
  const trimmed = code.trim();
  if (trimmed === '') return 'empty';
  if (trimmed.length > longestCode) return 'too-long';
  return others.some((row) => row.code === trimmed) ? 'doubled' : null;
}

/** Rows as they were pasted: those that can be taken, and what is wrong with the others, by row from 1. */
export interface PastedRows {
  readonly rows: readonly CodeRow[];
  readonly troubles: readonly { readonly row: number; readonly trouble: CodeTrouble; readonly word?: string }[];
}

/**
 * Reads rows of code, meanings and note, with a tab or (where there is none) a semicolon between them. Meanings are the words of the
 * displays or their names in files, joined by a comma or a plus. Empty rows are left out.
 */
export function readPastedRows(text: string): PastedRows {
  const rows: CodeRow[] = [];
  const troubles: { row: number; trouble: CodeTrouble; word?: string }[] = [];
  text.split(/\r\n|\r|\n/).forEach((line, index) => {
    if (line.trim() === '') return;
    const [code = '', means = '', ...notes] = line.split(line.includes('\t') ? '\t' : ';').map(unquote);
    const trouble = codeTrouble(code, rows);
    if (trouble) {
      troubles.push({ row: index + 1, trouble });
      return;
    }
    const words = means
      .split(/[,+/]/)
      .map((word) => word.trim())
      .filter(Boolean);
    if (words.length === 0) {
      troubles.push({ row: index + 1, trouble: 'no-meaning' });
      return;
    }
    const found = words.map((word) => ({ word, meaning: findMeaning(word) }));
    const unknown = found.find(({ meaning }) => meaning === undefined);
    if (unknown) {
      troubles.push({ row: index + 1, trouble: 'unknown-meaning', word: unknown.word });
      return;
    }
    const meanings = displayMeanings.filter((meaning) => found.some((one) => one.meaning === meaning));
    const note = notes.join('; ').trim().slice(0, longestNote);
    rows.push({ code: code.trim(), meanings, ...(note === '' ? {} : { note }) });
  });
  return { rows, troubles };
}

/** Spreadsheets put quotation marks round a cell that holds a separator. */
function unquote(cell: string): string {
  const trimmed = cell.trim();
  return /^".*"$/.test(trimmed) ? trimmed.slice(1, -1).replaceAll('""', '"') : trimmed;
}

const plain = (word: string) =>
  word
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();

function findMeaning(word: string): DisplayMeaning | undefined {
  return displayMeanings.find((meaning) => plain(meaning) === plain(word) || plain(meaningWords[meaning].label) === plain(word));
}

/** A legend's codes with pasted rows: a code that is there already is changed in its place, the others follow. */
export function mergeRows(codes: readonly CodeRow[], pasted: readonly CodeRow[]): readonly CodeRow[] {
  const byCode = new Map(codes.map((row) => [row.code, row]));
  for (const row of pasted) byCode.set(row.code, row);
  return [...byCode.values()];
}
