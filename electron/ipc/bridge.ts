import type { Problem, Result } from '../../engine/base/index.ts';

/** What the page may know about the program it runs in. */
export interface ProgramFacts {
  readonly version: string;
  readonly platform: string;
  /** Version of the desktop runtime and of the browser in it, for a problem report. */
  readonly runtime: string;
  readonly browser: string;
}

/** Where something was saved, as far as the page may know: a handle instead of its path. */
export interface SavedFile {
  readonly handle: string;
  /** Equal for the same file in one run, and telling nothing of where it lies. */
  readonly key: string;
  /** Name without folders, for titles. */
  readonly name: string;
  /** When it was last changed on the disk, ISO 8601. */
  readonly modifiedAt: string;
}

/** A file that the user chose, by any way. */
export interface ChosenFile extends SavedFile {
  readonly content: Uint8Array;
}

/** A list that is to be imported. */
export interface ListFile {
  readonly name: string;
  readonly content: Uint8Array;
}

/** Results of exercises that the user chose, with those that could not be read. */
export interface SeveralFiles {
  readonly files: readonly ChosenFile[];
  readonly problems: readonly Problem[];
  /** How many more the folder holds than are read at once. */
  readonly leftOut: number;
}

/** Whether a file is still as the page knows it. */
export type FileLook = { readonly state: 'same' | 'missing' } | { readonly state: 'changed'; readonly modifiedAt: string };

/** What stood in a file before its last save. */
export interface KeptCopy {
  readonly name: string;
  readonly content: Uint8Array;
  readonly keptAt: string;
}

export interface RecentFile {
  readonly key: string;
  readonly name: string;
  readonly openedAt: string;
  /** It is not there now. */
  readonly missing: boolean;
}

/** A file of the collection of confirmed cases, as it lies there. `key` names it in calls. */
export interface KeptCase {
  readonly key: string;
  readonly name: string;
  readonly content: Uint8Array;
}

/** A file to which unsaved work belongs, and whether it is still as it was when that work was kept. */
export interface RecoveredFile {
  readonly name: string;
  readonly state: 'same' | 'changed' | 'missing';
  /** As it is now; null where it is missing. */
  readonly file: ChosenFile | null;
}

/** Work that an earlier run ended without saving. */
export interface RecoveredWork {
  readonly id: string;
  readonly keptAt: string;
  /** The document as a case file. */
  readonly content: Uint8Array;
  readonly caseFile: RecoveredFile | null;
  readonly cabinetFile: RecoveredFile | null;
}

/** Handles of the files to which the document in the window belongs. */
export interface DocumentFiles {
  readonly case: string | null;
  readonly cabinet: string | null;
}

/** Every question the page can ask the desktop program, with its arguments and its answer. None takes a path. */
export interface BridgeCalls {
  describeProgram(): ProgramFacts;
  /** Enlarges or lessens everything in the window. */
  changeTextSize(change: 'larger' | 'smaller' | 'normal'): null;
  /** What the desktop program found wrong by itself since it was last asked, such as settings that could not be read. */
  takeNotices(): readonly Problem[];
  /** Files named on the command line, or handed over by a second start, that the page has not yet taken. */
  takeHandedOverFiles(): readonly Result<ChosenFile>[];
  /** Lets the user choose a file to open in the system's dialog; null when nothing was chosen. */
  chooseFile(): ChosenFile | null;
  /** Lets the user choose where to save, and saves; null when nothing was chosen. The name is only what the dialog proposes. */
  saveFileAs(proposedName: string, content: Uint8Array): SavedFile | null;
  /**
   * Lets the user choose where to put something that was made of the document and is not opened again: a PDF, a web page. Null when
   * nothing was chosen; else the name of the file.
   */
  exportFile(proposedName: string, content: Uint8Array): string | null;
  /** Saves over a file of this run; refused when another program has changed it. */
  saveFile(handle: string, content: Uint8Array): SavedFile;
  /** Lets the user choose a list to import; null when nothing was chosen. It gets no handle. */
  chooseList(): ListFile | null;
  /** Lets the user choose several JSON files (results of exercises, machines), or a folder of them; null when nothing was chosen. */
  chooseJsonFiles(from: 'files' | 'folder'): SeveralFiles | null;
  /** Deletes a file of this run for good, if it is a result of an exercise and still as it was read; refused otherwise. */
  deleteResult(handle: string): null;
  readFileAgain(handle: string): ChosenFile;
  /** Reads it to be looked at; what is known of the file does not change. */
  peekFile(handle: string): ChosenFile;
  lookAtFile(handle: string): FileLook;
  /** The next save may replace what another program wrote. */
  keepMine(handle: string): null;
  readKeptCopy(handle: string): KeptCopy;
  /** The cabinet file with this id in the folder of the case; null when there is none. */
  findCabinetBeside(handle: string, cabinetId: string): ChosenFile | null;
  listRecentFiles(): readonly RecentFile[];
  openRecentFile(key: string): ChosenFile;
  /** Keeps unsaved work; `document` is a case file. */
  keepRecovery(id: string, files: DocumentFiles, document: string): null;
  dropRecovery(id: string): null;
  listRecoveries(): readonly RecoveredWork[];
  /** Keeps a case file in the user's own collection; a file there that does not open is not replaced. */
  keepCase(id: string, content: Uint8Array): null;
  listKeptCases(): { readonly cases: readonly KeptCase[]; readonly problems: readonly Problem[] };
  /** Deletes a file of the collection. */
  dropKeptCase(key: string): null;
  /** Whether closing the window would lose something. */
  tellUnsaved(unsaved: boolean): null;
  /** The page's word on the notice `closeAsked`. */
  answerClose(word: 'asking' | 'close' | 'stay'): null;
}

/** Every word the desktop program sends to the page unasked, with what it carries. */
export interface BridgeNotices {
  /** There are files to take with `takeHandedOverFiles`. */
  filesHandedOver: undefined;
  /** The window shall be closed, and holds unsaved work. */
  closeAsked: undefined;
}

export type CallName = keyof BridgeCalls;
export type NoticeName = keyof BridgeNotices;

/** The bridge as the page sees it, under `window.linkwright`. The page declares its own copy; a type test keeps the two equal. */
export type DesktopBridge = {
  readonly [Name in CallName]: (...args: Parameters<BridgeCalls[Name]>) => Promise<Result<ReturnType<BridgeCalls[Name]>>>;
} & {
  /** Calls back whenever files wait to be taken; returns how to stop that. */
  readonly onFilesHandedOver: (listener: () => void) => () => void;
  /** Calls back whenever the window shall be closed; returns how to stop that. */
  readonly onCloseAsked: (listener: () => void) => () => void;
};
