import { expect, it } from 'vitest';

/*
 * Published figures, and what the formulas of the sums make of the same input. `status` says how far each row may be trusted:
 * READ: the number was read in a copy of the source. READ+CALC: the input was read, the output recomputed. MEM: from memory.
 * MEM✓: from memory, and several remembered numbers agree through one formula. CALC: computed, not published: a regression value.
 */
export interface Row {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  readonly status: 'READ' | 'READ+CALC' | 'MEM' | 'MEM✓' | 'MEM✓ + READ length' | 'MEM + CALC' | 'CALC';
  readonly found: () => number | null;
  readonly expected: number;
  readonly within: number;
}

/** One test for each row: what the product makes of the input, against what is printed. */
export const check = (rows: readonly Row[]) =>
  it.each(rows.map((row) => [`${row.id} ${row.what} [${row.status}; ${row.source}]`, row] as const))(
    '%s',
    (_, { found, expected, within }) => {
      const value = found();
      expect(value).not.toBeNull();
      expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(within);
    },
  );
