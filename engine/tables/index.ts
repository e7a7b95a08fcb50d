export type { ColumnKey, TableKind } from './columns.ts';
export { type CellValue, makeTable, type Table, type TableWords } from './makeTable.ts';
