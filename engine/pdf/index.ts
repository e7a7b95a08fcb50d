export { type Pdf, type PdfOptions, type PdfSection, writePdf } from './writePdf.ts';
