import type { LabelSheetName } from '../../engine/documents/index.ts';
import type { PaperKind } from '../../engine/messages/index.ts';
import type { PaperSize } from '../../engine/paper/index.ts';
import type { IsolationFigures } from '../../engine/patterns/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';

/** What is to be made. `date`: the day that is printed; `madeAt`: the moment that stands in the file, milliseconds. */
export interface PapersRequest {
  readonly content: CabinetContent;
  readonly kinds: readonly PaperKind[];
  readonly size: PaperSize;
  readonly labels: LabelSheetName;
  readonly date: string;
  readonly madeAt: number;
  readonly form: 'preview' | 'pdf' | 'html';
}

/** A document for the preview: its pages as SVG. */
export interface PreviewDocument {
  readonly id: string;
  readonly title: string;
  readonly pages: readonly string[];
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
