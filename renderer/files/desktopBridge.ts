import type { Problem, Result } from '../../engine/base/index.ts';
import type { FileRef, KeptCopy, RecentEntry, SeveralFiles } from '../state/sitting.ts';
import type { FileLook, KeptCases, ListFile, TakenFile } from './access.ts';

/** What the desktop program tells of itself. */
export interface ProgramFacts {
  readonly version: string;
  readonly platform: string;
  readonly runtime: string;
  readonly browser: string;
}

interface RecoveredFile {
  readonly name: string;
  readonly state: 'same' | 'changed' | 'missing';
  readonly file: TakenFile | null;
}

interface RecoveredWork {
  readonly id: string;
  readonly keptAt: string;
  readonly content: Uint8Array;
  readonly caseFile: RecoveredFile | null;
  readonly cabinetFile: RecoveredFile | null;
}

/**
 * What the desktop program offers its page, under `window.linkwright`. It is the page's own copy of what the shell declares; a type
 * test keeps the two equal.
 */
export interface DesktopBridge {
  readonly describeProgram: () => Promise<Result<ProgramFacts>>;
  readonly changeTextSize: (change: 'larger' | 'smaller' | 'normal') => Promise<Result<null>>;
  readonly takeNotices: () => Promise<Result<readonly Problem[]>>;
  readonly takeHandedOverFiles: () => Promise<Result<readonly Result<TakenFile>[]>>;
  readonly chooseFile: () => Promise<Result<TakenFile | null>>;
  readonly saveFileAs: (proposedName: string, content: Uint8Array) => Promise<Result<FileRef | null>>;
  readonly exportFile: (proposedName: string, content: Uint8Array) => Promise<Result<string | null>>;
  readonly saveFile: (handle: string, content: Uint8Array) => Promise<Result<FileRef>>;
  readonly chooseList: () => Promise<Result<ListFile | null>>;
  readonly chooseJsonFiles: (from: 'files' | 'folder') => Promise<Result<SeveralFiles | null>>;
  readonly deleteResult: (handle: string) => Promise<Result<null>>;
  readonly readFileAgain: (handle: string) => Promise<Result<TakenFile>>;
  readonly peekFile: (handle: string) => Promise<Result<TakenFile>>;
  readonly lookAtFile: (handle: string) => Promise<Result<FileLook>>;
  readonly keepMine: (handle: string) => Promise<Result<null>>;
  readonly readKeptCopy: (handle: string) => Promise<Result<KeptCopy>>;
  readonly findCabinetBeside: (handle: string, cabinetId: string) => Promise<Result<TakenFile | null>>;
  readonly listRecentFiles: () => Promise<Result<readonly RecentEntry[]>>;
  readonly openRecentFile: (key: string) => Promise<Result<TakenFile>>;
  readonly keepRecovery: (
    id: string,
    files: { readonly case: string | null; readonly cabinet: string | null },
    document: string,
  ) => Promise<Result<null>>;
  readonly dropRecovery: (id: string) => Promise<Result<null>>;
  readonly listRecoveries: () => Promise<Result<readonly RecoveredWork[]>>;
  readonly keepCase: (id: string, content: Uint8Array) => Promise<Result<null>>;
  readonly listKeptCases: () => Promise<Result<KeptCases>>;
  readonly dropKeptCase: (key: string) => Promise<Result<null>>;
  readonly tellUnsaved: (unsaved: boolean) => Promise<Result<null>>;
  readonly answerClose: (word: 'asking' | 'close' | 'stay') => Promise<Result<null>>;
  readonly onFilesHandedOver: (listener: () => void) => () => void;
  readonly onCloseAsked: (listener: () => void) => () => void;
}

declare global {
  interface Window {
    readonly linkwright?: DesktopBridge;
  }
}

/** The desktop program around this page; null where the page stands in a browser. */
export function findDesktop(): DesktopBridge | null {
  return typeof window === 'undefined' ? null : (window.linkwright ?? null);
}
