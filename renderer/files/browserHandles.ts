/*
 * The part of the File System Access standard that the types of the language do not have yet. Browsers without it have neither function.
 */

export interface BrowserFile {
  readonly kind: 'file' | 'directory';
  readonly name: string;
  readonly getFile: () => Promise<File>;
  readonly createWritable: () => Promise<{
    readonly write: (content: Uint8Array) => Promise<void>;
    readonly close: () => Promise<void>;
    readonly abort: () => Promise<void>;
  }>;
  readonly isSameEntry: (other: BrowserFile) => Promise<boolean>;
  readonly queryPermission?: (wish: { readonly mode: 'read' | 'readwrite' }) => Promise<PermissionState>;
  readonly requestPermission?: (wish: { readonly mode: 'read' | 'readwrite' }) => Promise<PermissionState>;
}

const types = [{ description: 'JSON', accept: { 'application/json': ['.json'] } }];

interface Pickers {
  readonly showOpenFilePicker?: (options: object) => Promise<readonly BrowserFile[]>;
  readonly showSaveFilePicker?: (options: object) => Promise<BrowserFile>;
}

const pickers = (): Pickers => window as unknown as Pickers; // newer than the types

export function hasPickers(): boolean {
  return pickers().showOpenFilePicker !== undefined && pickers().showSaveFilePicker !== undefined;
}

/** Null when the user chose nothing. */
export async function pickToOpen(): Promise<BrowserFile | null> {
  const picked = await orNull(pickers().showOpenFilePicker?.({ types }));
  return picked?.[0] ?? null;
}

/** Null when the user chose nothing. */
export function pickToSave(suggestedName: string, accept?: Readonly<Record<string, readonly string[]>>): Promise<BrowserFile | null> {
  return orNull(pickers().showSaveFilePicker?.({ types: accept === undefined ? types : [{ accept }], suggestedName }));
}

/** The file behind a dropped item, where the browser gives it. Asked for during the event. */
export function handleOf(item: DataTransferItem): Promise<BrowserFile | null> | null {
  const { getAsFileSystemHandle } = item as unknown as { getAsFileSystemHandle?: () => Promise<BrowserFile | null> }; // newer than the types
  return getAsFileSystemHandle ? getAsFileSystemHandle.call(item).catch(() => null) : null;
}

async function orNull<T>(picked: Promise<T> | undefined): Promise<T | null> {
  try {
    return (await picked) ?? null;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}
