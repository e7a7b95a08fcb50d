import type { Problem, Result } from '../../engine/base/index.ts';

/** What the desktop program tells of itself. */
export interface ProgramFacts {
  readonly version: string;
  readonly platform: string;
  readonly runtime: string;
  readonly browser: string;
}

/** A file that the user chose. The handle stands for its path, which the page never learns. */
export interface ChosenFile {
  readonly handle: string;
  readonly name: string;
  readonly content: Uint8Array;
}

/**
 * What the desktop program offers its page, under `window.linkwright`. It is the page's own copy of what the shell declares; a type
 * test keeps the two equal.
 */
export interface DesktopBridge {
  readonly describeProgram: () => Promise<Result<ProgramFacts>>;
  readonly takeNotices: () => Promise<Result<readonly Problem[]>>;
  readonly takeHandedOverFiles: () => Promise<Result<readonly Result<ChosenFile>[]>>;
  readonly chooseFile: () => Promise<Result<ChosenFile | null>>;
  readonly saveFileAs: (proposedName: string, content: Uint8Array) => Promise<Result<Pick<ChosenFile, 'handle' | 'name'> | null>>;
  readonly onFilesHandedOver: (listener: () => void) => () => void;
}

declare global {
  interface Window {
    readonly linkwright?: DesktopBridge;
  }
}

/** The desktop program around this page; null where the page stands in a browser. */
export function findDesktop(): DesktopBridge | null {
  return window.linkwright ?? null;
}
