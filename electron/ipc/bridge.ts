import type { Problem, Result } from '../../engine/base/index.ts';

/** What the page may know about the program it runs in. */
export interface ProgramFacts {
  readonly version: string;
  readonly platform: string;
  /** Version of the desktop runtime and of the browser in it, for a problem report. */
  readonly runtime: string;
  readonly browser: string;
}

/** A file that the user chose, by any way: the page gets its name and content, and a handle instead of its path. */
export interface ChosenFile {
  readonly handle: string;
  /** Name without folders, for titles. */
  readonly name: string;
  readonly content: Uint8Array;
}

/** Where something was saved, as far as the page may know. */
export type SavedFile = Pick<ChosenFile, 'handle' | 'name'>;

/** Every question the page can ask the desktop program, with its arguments and its answer. None takes a path. */
export interface BridgeCalls {
  describeProgram(): ProgramFacts;
  /** What the desktop program found wrong by itself since it was last asked, such as settings that could not be read. */
  takeNotices(): readonly Problem[];
  /** Files named on the command line, or handed over by a second start, that the page has not yet taken. */
  takeHandedOverFiles(): readonly Result<ChosenFile>[];
  /** Lets the user choose a file to open in the system's dialog; null when nothing was chosen. */
  chooseFile(): ChosenFile | null;
  /** Lets the user choose where to save, and saves; null when nothing was chosen. The name is only what the dialog proposes. */
  saveFileAs(proposedName: string, content: Uint8Array): SavedFile | null;
}

/** Every word the desktop program sends to the page unasked, with what it carries. */
export interface BridgeNotices {
  /** There are files to take with `takeHandedOverFiles`. */
  filesHandedOver: undefined;
}

export type CallName = keyof BridgeCalls;
export type NoticeName = keyof BridgeNotices;

/** The bridge as the page sees it, under `window.linkwright`. The page declares its own copy; a type test keeps the two equal. */
export type DesktopBridge = {
  readonly [Name in CallName]: (...args: Parameters<BridgeCalls[Name]>) => Promise<Result<ReturnType<BridgeCalls[Name]>>>;
} & {
  /** Calls back whenever files wait to be taken; returns how to stop that. */
  readonly onFilesHandedOver: (listener: () => void) => () => void;
};
