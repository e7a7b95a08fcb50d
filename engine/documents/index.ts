export { type LabelSheetName, labelSheets } from './labelSheets.ts';
export { type MadeDocument, makeDocument } from './makeDocument.ts';
export type { DocumentSource } from './source.ts';
