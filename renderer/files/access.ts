import type { Problem, Result } from '../../engine/base/index.ts';
import type { ExportKind, FilePart, FileRef, KeptCopy, RecentEntry, SeveralFiles } from '../state/sitting.ts';

/*
 * What the window can do with files, by the desktop program or by the browser. Files are known by handle; no path is ever known here.
 */

export interface TakenFile extends FileRef {
  readonly content: Uint8Array;
}

/** A list that is to be imported: nothing is ever saved to it. */
export interface ListFile {
  readonly name: string;
  readonly content: Uint8Array;
}

export type FileLook = { readonly state: 'same' | 'missing' } | { readonly state: 'changed'; readonly modifiedAt: string };

/** A file to which unsaved work belongs. `unread`: the browser would have to be asked for it again. */
export interface RecoveredFile {
  readonly name: string;
  readonly state: 'same' | 'changed' | 'missing' | 'unread';
  readonly file: TakenFile | null;
}

export interface RecoveredWork {
  readonly id: string;
  readonly keptAt: string;
  readonly content: Uint8Array;
  readonly caseFile: RecoveredFile | null;
  readonly cabinetFile: RecoveredFile | null;
}

/** The user's own collection of confirmed cases, as it lies there, with what of it could not be read. */
export interface KeptCases {
  readonly cases: readonly { readonly key: string; readonly name: string; readonly content: Uint8Array }[];
  readonly problems: readonly Problem[];
}

export interface FileAccess {
  /** How saving works here: in place and whole (`desktop`), in place by the browser, or only as a download. */
  readonly means: 'desktop' | 'browser' | 'download';
  readonly chooseFile: () => Promise<Result<TakenFile | null>>;
  /** A file dropped onto the window. Where it cannot be saved to later, it has no handle and is a copy. */
  readonly takeDropped: (item: DataTransferItem) => Promise<Result<TakenFile | (Omit<TakenFile, 'handle'> & { readonly handle: null })>>;
  readonly save: (file: FileRef, content: Uint8Array) => Promise<Result<FileRef>>;
  readonly saveAs: (proposedName: string, content: Uint8Array) => Promise<Result<FileRef | null>>;
  /** Puts something that was made of the document where the user wants it, and answers its name; null: nowhere. */
  readonly exportFile: (proposedName: string, content: Uint8Array, kind: ExportKind) => Promise<Result<string | null>>;
  readonly chooseList: () => Promise<Result<ListFile | null>>;
  /** Several JSON files (results of exercises, machines), or a folder of them; null: nothing was chosen. */
  readonly chooseJsonFiles: (from: 'files' | 'folder') => Promise<Result<SeveralFiles | null>>;
  /** Deletes a result for good, and nothing but a result; left out where a page cannot delete. */
  readonly deleteResult?: (file: FileRef) => Promise<Result<null>>;
  readonly readAgain: (file: FileRef) => Promise<Result<TakenFile>>;
  /** Reads a file to be looked at. It stays guarded: a save still notices what another program wrote. */
  readonly peek: (file: FileRef) => Promise<Result<TakenFile>>;
  readonly look: (file: FileRef) => Promise<Result<FileLook>>;
  readonly keepMine: (file: FileRef) => Promise<Result<unknown>>;
  readonly readKeptCopy: (file: FileRef) => Promise<Result<KeptCopy>>;
  readonly findCabinetBeside: (caseFile: FileRef, cabinetId: string) => Promise<Result<TakenFile | null>>;
  readonly listRecent: () => Promise<Result<readonly RecentEntry[]>>;
  readonly openRecent: (key: string) => Promise<Result<TakenFile>>;
  readonly keepRecovery: (id: string, files: Readonly<Record<FilePart, FileRef | null>>, document: string) => Promise<Result<unknown>>;
  readonly dropRecovery: (id: string) => Promise<Result<unknown>>;
  readonly listRecoveries: () => Promise<Result<readonly RecoveredWork[]>>;
  /** Keeps a case file in the collection, in the place of what was kept under this id; a file that does not open is not replaced. */
  readonly keepCase: (id: string, content: Uint8Array) => Promise<Result<null>>;
  readonly listKeptCases: () => Promise<Result<KeptCases>>;
  readonly dropKeptCase: (key: string) => Promise<Result<null>>;
  /** Files that came from outside the window and wait to be taken. */
  readonly takeHandedOver: () => Promise<readonly Result<TakenFile>[]>;
  readonly takeNotices: () => Promise<readonly Problem[]>;
  /** Whether leaving the window would lose something. */
  readonly tellUnsaved: (unsaved: boolean) => void;
  readonly onHandedOver: (listener: () => void) => void;
  readonly onCloseAsked: (listener: () => void) => void;
  readonly answerClose: (word: 'asking' | 'close' | 'stay') => void;
}
