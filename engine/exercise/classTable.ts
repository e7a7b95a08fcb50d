import { compareNatural } from '../base/index.ts';
import type { ResultContent } from '../schema/index.ts';

/** One line of the table of a class. */
export interface ClassRow {
  readonly code: string;
  readonly exercise: string;
  readonly name: string;
  readonly solved: boolean;
  readonly minutes: number;
  readonly bestMinutes: number;
  /** Minutes against those of the best plan: 1 is as good. Null where the best plan costs nothing. */
  readonly ratio: number | null;
  readonly predictions: number;
  readonly predictionsRight: number;
  readonly unsafe: number;
  readonly steps: number;
  readonly startedAt: string | null;
  readonly seconds: number | null;
}

/** Results as a table: by exercise, then by code. */
export function classTable(results: readonly ResultContent[]): readonly ClassRow[] {
  return results
    .map((result) => ({
      code: result.code,
      exercise: result.exercise,
      name: result.name,
      solved: result.solved,
      minutes: result.minutes,
      bestMinutes: result.bestMinutes,
      ratio: result.bestMinutes > 0 ? result.minutes / result.bestMinutes : null,
      predictions: result.predictions,
      predictionsRight: result.predictionsRight,
      unsafe: result.unsafe.length,
      steps: result.moves.filter((move) => move.do === 'step').length,
      startedAt: result.startedAt ?? null,
      seconds: result.seconds ?? null,
    }))
    .sort(
      (a, b) =>
        compareNatural(a.exercise, b.exercise) || compareNatural(a.code, b.code) || compareNatural(a.startedAt ?? '', b.startedAt ?? ''),
    );
}

/**
 * A table as comma-separated values (RFC 4180), with a head. A text that a spreadsheet would take for a formula gets an apostrophe
 * before it: codes are free text, and come from others.
 */
export function classCsv(rows: readonly ClassRow[], heads: Readonly<Record<keyof ClassRow, string>>): string {
  const columns = Object.keys(heads) as (keyof ClassRow)[]; // the keys are exactly the columns
  const lines = rows.map((row) => columns.map((column) => cell(row[column])));
  return [columns.map((column) => cell(heads[column])), ...lines].map((line) => `${line.join(',')}\r\n`).join('');
}

function cell(value: string | number | boolean | null): string {
  if (typeof value === 'number') return String(Math.round(value * 100) / 100);
  const text = value === null ? '' : typeof value === 'boolean' ? (value ? 'yes' : 'no') : value;
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
