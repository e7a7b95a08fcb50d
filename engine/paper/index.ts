export type {
  Block,
  CautionBlock,
  FigureCell,
  Paper,
  PhotoBlock,
  TableBlock,
  TableCell,
  TableColumn,
  TextCell,
} from './blocks.ts';
export { bodySize } from './frame.ts';
export { hasGlyph } from './glyphWidths.ts';
export { layOut } from './layOut.ts';
export { lineHeight, middleBaseline, textWidth } from './measure.ts';
export { placeLine, plainText, type RichLine, type RichText, type Run, wrapText } from './richText.ts';
export {
  type BoxShape,
  type Face,
  type Figure,
  inks,
  type Page,
  type PathShape,
  type PictureShape,
  type Shape,
  type TextShape,
} from './shapes.ts';
export { displaySigns, placeSign, type Sign } from './signs.ts';
export { mmPerPoint, type PaperSize, pageSize, paperNames, paperSizes, type Size } from './sizes.ts';
export { writeHtml } from './writeHtml.ts';
export { writeSvg } from './writeSvg.ts';
