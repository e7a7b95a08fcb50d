import type { RichText } from './richText.ts';
import type { Figure, PictureShape } from './shapes.ts';

/**
 * What a document says, in the order in which it is read, without pages. `layOut` makes pages of it, `writeHtml` a page for a browser.
 * Sentences come from the message catalogue; nothing here words anything.
 */
export type Block =
  | HeadingBlock
  | { readonly kind: 'paragraph'; readonly text: RichText; readonly size?: number }
  | { readonly kind: 'list'; readonly items: readonly RichText[]; readonly isNumbered?: boolean; readonly size?: number }
  | TableBlock
  | { readonly kind: 'figure'; readonly figure: Figure; readonly caption?: RichText }
  | PhotoBlock
  | CautionBlock
  /** Labels with what was entered, or with a line to write on. `columns`: how many stand beside each other. */
  | { readonly kind: 'fields'; readonly fields: readonly { readonly label: string; readonly value?: string }[]; readonly columns?: number }
  /** A space to write in, ruled. */
  | { readonly kind: 'lines'; readonly count: number }
  | { readonly kind: 'space'; readonly mm: number }
  | { readonly kind: 'page-break' }
  /** Kept on one page, if it fits on one. */
  | { readonly kind: 'together'; readonly blocks: readonly Block[] };

export interface HeadingBlock {
  readonly kind: 'heading';
  readonly text: RichText;
  readonly level: 1 | 2;
}

/** A photo in its own proportions. */
export interface PhotoBlock {
  readonly kind: 'photo';
  readonly photo: Pick<PictureShape, 'mediaType' | 'data' | 'words' | 'instead'>;
  readonly caption?: RichText;
  /** Greatest height, mm. */
  readonly height: number;
}

/** A framed caution with a warning sign. */
export interface CautionBlock {
  readonly kind: 'caution';
  readonly title: RichText;
  readonly text: RichText;
}

/** A table. Its head is repeated on each page; a row is not broken. */
export interface TableBlock {
  readonly kind: 'table';
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly TableCell[])[];
  /** Points; default 9. */
  readonly size?: number;
  /** Points of the heads; default as the text. */
  readonly headSize?: number;
  /** What is read out as the table's name. */
  readonly words: string;
  /** Lines and rows stand closer. */
  readonly tight?: boolean;
  /** Least height of a row, mm. */
  readonly rowHeight?: number;
}

/** A column of a table with its head. */
export interface TableColumn {
  readonly head: RichText;
  /** A second, lighter line of the head. */
  readonly under?: RichText;
  readonly align?: 'left' | 'center' | 'right';
  /** mm; left out: as wide as it needs, and a share of what is left by `grow`. */
  readonly width?: number;
  readonly grow?: number;
  /** The head reads from below, where columns are narrow. */
  readonly turned?: boolean;
}

export type TableCell = RichText | FigureCell | TextCell;

/** A cell that holds a drawing. */
export interface FigureCell {
  readonly figure: Figure;
  /** Filled behind. */
  readonly fill?: string;
}

/** A cell with more than one text. */
export interface TextCell {
  readonly text: RichText;
  /** Further lines below, each a paragraph. */
  readonly below?: readonly RichText[];
  /** A number in a ring before it. */
  readonly ring?: string;
}

/** A whole document: what it says, and what stands at the head and foot of each page. */
export interface Paper {
  /** Names the file: lower case, hyphens. */
  readonly id: string;
  readonly head: {
    readonly title: string;
    readonly subtitle: string;
    /** Lines at the right: who, which revision, which date. */
    readonly right: readonly string[];
  };
  readonly foot: {
    readonly left: string;
    /** At the right. */
    readonly right: string;
    /** A caution at the foot of each page. */
    readonly caution?: CautionBlock;
  };
  /** Words the number of a page: "sheet 1 of 2". */
  readonly pageOf: (page: number, pages: number) => string;
  readonly isLandscape?: boolean;
  readonly blocks: readonly Block[];
}
