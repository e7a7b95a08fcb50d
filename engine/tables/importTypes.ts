import type { ColumnKey } from './columns.ts';
import type { DoubtCode } from './readValue.ts';

/** A table as it came in: rows of texts, each with the line on which it begins. */
export interface RawTable {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly lines: readonly number[];
}

/** One field of a row: what it is now, and what the file says. `isTaken: false`: it would replace something, and was not asked to. */
export interface FieldChange {
  readonly key: ColumnKey;
  readonly before: string;
  readonly after: string;
  readonly isTaken: boolean;
}

/** Why a row, or one of its cells, is doubtful. A row with a doubt is left out as a whole. */
export interface Doubt {
  readonly code: DoubtCode;
  readonly key: ColumnKey | null;
  readonly text: string;
}
