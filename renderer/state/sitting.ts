import type { Problem } from '../../engine/base/index.ts';
import type { DifferenceCounts } from '../../engine/messages/index.ts';
import type { CabinetContent, CaseContent } from '../../engine/schema/index.ts';

/*
 * What the window knows of the files behind its document, and what it must tell or ask about them.
 */

/** What is made of the document and not opened again. */
export type ExportKind = 'pdf' | 'zip' | 'html' | 'csv' | 'graphml';

/** A case without its copy of the cabinet, which stands beside it in the document. */
export type CaseRecord = Omit<CaseContent, 'cabinet'>;

/** A file is of one part of the document: the case (with its copy of the cabinet), or the cabinet alone. */
export type FilePart = 'case' | 'cabinet';

/** A file on the disk, as far as the page may know it. */
export interface FileRef {
  readonly handle: string;
  /** Equal for the same file. */
  readonly key: string;
  readonly name: string;
  /** ISO 8601. */
  readonly modifiedAt: string;
}

/** Results of exercises that were chosen, with those that could not be read. */
export interface SeveralFiles {
  readonly files: readonly (FileRef & { readonly content: Uint8Array })[];
  readonly problems: readonly Problem[];
  /** How many more were chosen than are read at once. */
  readonly leftOut: number;
}

/** The files to which the document belongs. Both null: it was not saved yet. */
export interface OpenFiles {
  readonly case: FileRef | null;
  readonly cabinet: FileRef | null;
}

/** The content as it lies on the disk, or as it was when the document was begun; null: it lies nowhere. */
export interface SavedContent {
  readonly caseRecord: CaseRecord | null;
  /** The copy of the cabinet in the case file. */
  readonly caseCabinet: CabinetContent | null;
  readonly cabinet: CabinetContent | null;
}

/** Something that stays on the screen until it is solved or put away. */
export type Alert =
  | { readonly kind: 'not-saved'; readonly part: FilePart; readonly name: string; readonly problems: readonly Problem[] }
  | { readonly kind: 'changed-outside'; readonly part: FilePart; readonly name: string; readonly modifiedAt: string }
  | { readonly kind: 'gone'; readonly part: FilePart; readonly name: string }
  | { readonly kind: 'no-recovery'; readonly problems: readonly Problem[] }
  | { readonly kind: 'downloaded'; readonly name: string }
  | {
      readonly kind: 'restored';
      readonly keptAt: string;
      readonly file: { readonly name: string; readonly modifiedAt: string | null } | null;
      /** Other unsaved work that waits. */
      readonly others: number;
    }
  | {
      readonly kind: 'cabinet-changed';
      readonly name: string;
      readonly today: CabinetContent;
      readonly revisions: { readonly copy: string | null; readonly today: string | null };
      readonly differences: DifferenceCounts;
    };
export type AlertKind = Alert['kind'];

/** Why the document would leave the window. */
export type LeavingFor = 'close' | 'open' | 'new' | 'machine' | 'revert';

/** Something that the user must answer before anything else goes on. */
export type Question =
  | { readonly kind: 'unsaved'; readonly leavingFor: LeavingFor; readonly name: string }
  | { readonly kind: 'revert'; readonly name: string; readonly modifiedAt: string }
  | {
      readonly kind: 'recovery';
      readonly name: string;
      readonly keptAt: string;
      readonly modifiedAt: string;
      /** Null where the file itself does not open. */
      readonly differences: DifferenceCounts | null;
    };
export type Answer = 'save' | 'discard' | 'cancel' | 'restore' | 'later';

/** What stood in a file before its last save. */
export interface KeptCopy {
  readonly name: string;
  readonly content: Uint8Array;
  readonly keptAt: string;
}

export interface RecentEntry {
  readonly key: string;
  readonly name: string;
  readonly openedAt: string;
  readonly missing: boolean;
}

/** How a repair report is wanted. */
export interface ReportChoice {
  readonly kind: 'pdf' | 'html';
  readonly withPhotos: boolean;
}

/** What the commands can ask of the files. */
export interface FileActions {
  readonly newCabinet: () => Promise<void>;
  readonly newCase: () => Promise<void>;
  /** Begins the cabinet of a new machine, made from the one in the window. */
  readonly newMachine: (named: { readonly name: string; readonly machineNumber: string }) => Promise<void>;
  /** Lets a file be chosen, and compares the cabinet in it with the one in the window. */
  readonly compareWith: () => Promise<void>;
  readonly openSample: (name: string) => Promise<void>;
  readonly open: () => Promise<void>;
  readonly openRecent: (key: string) => Promise<void>;
  readonly listRecent: () => Promise<void>;
  readonly openKeptCopy: () => Promise<void>;
  /** Opens the kept copy of the file that could not be opened. */
  readonly openRefusedKept: () => Promise<void>;
  readonly save: () => Promise<void>;
  readonly saveAs: (part: FilePart) => Promise<void>;
  /** Puts a document or list where the user says. */
  readonly exportFile: (proposedName: string, content: Uint8Array, kind: ExportKind) => Promise<void>;
  /** Saves a file that is no part of the document, an exercise or a result, where the user says; answers its name, null: nowhere. */
  readonly saveApart: (proposedName: string, content: Uint8Array) => Promise<string | null>;
  /** Lets the user choose results of exercises, or a folder of them, for the table of a class; null: nothing. */
  readonly chooseResults: (from: 'files' | 'folder') => Promise<SeveralFiles | null>;
  /** Deletes results for good, and answers those that are gone; null: a page cannot delete. */
  readonly deleteResults: ((files: readonly FileRef[]) => Promise<readonly FileRef[]>) | null;
  /** Lets the user choose cabinet files, or a folder of them, and adds the machines of this design to what is printed. */
  readonly chooseMachines: (from: 'files' | 'folder') => Promise<void>;
  /** Lets the user choose a list, and shows what it would do. */
  readonly importList: () => Promise<void>;
  readonly revert: () => Promise<void>;
  /** Loads what another program wrote, in the place of what stands in the window. */
  readonly loadOutside: () => Promise<void>;
  /** Compares the cabinet in the window with what another program wrote. */
  readonly compareOutside: (part: FilePart) => Promise<void>;
  /** What stands in the window shall replace what another program wrote. */
  readonly keepMine: (part: FilePart) => Promise<void>;
  readonly answer: (answer: Answer) => void;
  /** Makes the repair report and puts it where the user wants it. */
  readonly saveReport: (choice: ReportChoice) => Promise<void>;
  /** Reads the collection of confirmed cases, and works out what it teaches. */
  readonly readKeptCases: () => Promise<void>;
  /** Keeps the case in the window as a confirmed one. */
  readonly keepCase: () => Promise<void>;
  readonly removeKept: (key: string) => Promise<void>;
  /** Puts back what was removed last. */
  readonly putBackKept: () => Promise<void>;
  /** Leaves off making it. */
  readonly cancelReport: () => void;
}
