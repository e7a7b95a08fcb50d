import type { BrowserFile } from './browserHandles.ts';
import { browserStore } from './browserStore.ts';

const mostRecent = 10;

interface Remembered {
  readonly key: string;
  readonly name: string;
  readonly openedAt: string;
  readonly file: BrowserFile;
}

/** Puts a file at the head of the list of recent ones. */
export async function rememberRecent(key: string, file: BrowserFile): Promise<void> {
  const entry: Remembered = { key, name: file.name, openedAt: new Date().toISOString(), file };
  try {
    for (const other of await listRemembered()) {
      if (await other.file.isSameEntry(file)) await browserStore.remove('recent', other.key);
    }
    await browserStore.put('recent', key, entry);
    for (const old of (await listRemembered()).slice(mostRecent)) await browserStore.remove('recent', old.key);
  } catch {
    // A list of recent files is a comfort; a private window may keep none.
  }
}

/** The recent files, the latest first. */
export async function listRemembered(): Promise<readonly Remembered[]> {
  // Written by the function above, and by nobody else.
  const all = (await browserStore.all('recent').catch(() => [])) as Remembered[];
  return all.sort((a, b) => (a.openedAt < b.openedAt ? 1 : -1));
}
