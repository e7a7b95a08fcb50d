export { type ColumnKey, columnsOf, type TableKind, tableKinds } from './columns.ts';
export { type CsvForm, guardCell, readCsv, unguardCell, writeCsv } from './csv.ts';
export { type CellValue, makeTable, type Table, type TableWords } from './makeTable.ts';
export { guessKind, guessMapping, type KnownHeads, type Mapping, plainHead } from './mapping.ts';
export { type Doubt, type FieldChange, type ImportPlan, type ImportRow, planImport, type RawTable } from './planImport.ts';
export { type GraphTables, readGraphml } from './readGraphml.ts';
export { readTableText } from './readText.ts';
export type { DoubtCode } from './readValue.ts';
export { writeGraphml } from './writeGraphml.ts';
