import type { Diagnosis } from '../../engine/diagnosis/index.ts';
import type { LabelSheetName, ReportSource } from '../../engine/documents/index.ts';
import type { PaperKind } from '../../engine/messages/index.ts';
import type { PaperSize, PictureShape } from '../../engine/paper/index.ts';
import type { IsolationFigures } from '../../engine/patterns/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';

/** What is to be made. `date`: the day that is printed; `madeAt`: the moment that stands in the file, milliseconds. */
export interface PapersRequest {
  readonly content: CabinetContent;
  /** Other machines of which the same is printed behind it; they are not previewed. */
  readonly others: readonly CabinetContent[];
  readonly kinds: readonly PaperKind[];
  readonly size: PaperSize;
  readonly labels: LabelSheetName;
  readonly date: string;
  readonly madeAt: number;
  /** `zip`: a PDF of each machine for itself, packed into one file. */
  readonly form: 'preview' | 'pdf' | 'zip' | 'html';
}

/** The repair report of a case is to be made. */
export interface ReportRequest extends Pick<PapersRequest, 'content' | 'date' | 'madeAt'> {
  readonly report: Pick<ReportSource, 'record' | 'withPhotos'> & { readonly diagnosis: Diagnosis };
  readonly form: 'pdf' | 'html';
}

/** A document for the preview. */
export interface PreviewDocument {
  readonly id: string;
  readonly title: string;
  readonly pages: readonly PreviewPage[];
}

/** A page as SVG without its pictures: the content policy lets none in by its data, so the window draws them. */
export interface PreviewPage {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
  readonly pictures: readonly PictureShape[];
}

export type PapersReply =
  | { readonly kind: 'progress'; readonly document: PaperKind; readonly share: number }
  | { readonly kind: 'preview'; readonly documents: readonly PreviewDocument[]; readonly isolation: IsolationFigures | null }
  | {
      readonly kind: 'file';
      readonly bytes: Uint8Array;
      readonly missingSigns: readonly string[];
      readonly missingPictures: readonly string[];
    }
  | { readonly kind: 'failed'; readonly detail: string };
