import { assertNever } from '../base/index.ts';
import { type PaperKind, paperKindWords, startSentence } from '../messages/index.ts';
import { layOut, type Page, type Paper, type PaperSize } from '../paper/index.ts';
import { doorSheets } from './doorSheet.ts';
import { cabinetDrawing } from './drawing.ts';
import { type LabelSheetName, labelSheets } from './labelSheets.ts';
import { labelPages } from './labels.ts';
import { cableSchedule, leadList, unitList } from './lists.ts';
import { patternSheet } from './patternSheet.ts';
import { photoPages } from './photos.ts';
import type { DocumentSource } from './source.ts';
import { sumsPaper } from './sumsPaper.ts';

/** A document with its pages. */
export interface MadeDocument {
  /** Names its file: lower case, hyphens. */
  readonly id: string;
  readonly title: string;
  /** What it says, where it can be written as HTML too; null for what is pages only. */
  readonly paper: Paper | null;
  readonly pages: readonly Page[];
}

/** Makes the documents of one kind: one, or several (door sheets: one for each chain), or none where the cabinet does not allow it. */
export function makeDocument(source: DocumentSource, kind: PaperKind, size: PaperSize, labels: LabelSheetName): readonly MadeDocument[] {
  if (kind === 'labels') {
    const pages = labelPages(source.topology, labelSheets[labels]);
    return pages.length === 0 ? [] : [{ id: 'labels', title: startSentence(paperKindWords.labels.label), paper: null, pages }];
  }
  return papersOf(source, kind, size).map((paper) => ({ id: paper.id, title: paper.head.title, paper, pages: layOut(paper, size) }));
}

function papersOf(source: DocumentSource, kind: Exclude<PaperKind, 'labels'>, size: PaperSize): readonly Paper[] {
  switch (kind) {
    case 'units':
      return [unitList(source)];
    case 'cables':
      return [cableSchedule(source)];
    case 'leads':
      return [leadList(source)];
    case 'door-sheet':
      return doorSheets(source, size);
    case 'pattern-sheet':
      return [patternSheet(source)];
    case 'sums':
      return [sumsPaper(source)];
    case 'photos': {
      const paper = photoPages(source);
      return paper === null ? [] : [paper];
    }
    case 'drawing':
      return [cabinetDrawing(source, size)];
    default:
      return assertNever(kind);
  }
}
