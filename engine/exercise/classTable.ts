import { compareNatural } from '../base/index.ts';
import type { ResultContent } from '../schema/index.ts';
import { writeCsv } from '../tables/index.ts';

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

/** The table as CSV, with a head; codes are free text that comes from others, so they are guarded as every list is. */
export function classCsv(rows: readonly ClassRow[], heads: Readonly<Record<keyof ClassRow, string>>): string {
  const columns = Object.keys(heads) as (keyof ClassRow)[]; // the keys are exactly the columns
  return writeCsv(
    columns.map((column) => heads[column]),
    rows.map((row) => columns.map((column) => cellOf(row[column]))),
    { separator: ',', decimal: '.', byteOrderMark: false, designations: 'guarded' },
  );
}

function cellOf(value: string | number | boolean | null): string | number | null {
  if (typeof value === 'number') return Math.round(value * 100) / 100;
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : value;
}
