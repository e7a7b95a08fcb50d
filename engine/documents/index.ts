export { debriefPaper, type ExerciseSource, exerciseAnswer, exerciseSheet } from './exercise.ts';
export { type ExportedList, exportedLists, writeList } from './exportedLists.ts';
export { type LabelSheetName, labelSheets } from './labelSheets.ts';
export { type MadeDocument, makeDocument } from './makeDocument.ts';
export { makeRepairReport, type ReportSource } from './repairReport.ts';
export type { DocumentSource } from './source.ts';
export { listSumTables, type SumTable } from './sumTables.ts';
