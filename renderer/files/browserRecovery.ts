import type { RecoveredFile, RecoveredWork } from './access.ts';
import { browserStore } from './browserStore.ts';

/*
 * Recovery copies in the browser's storage. Several tabs may hold a document each: a tab holds a lock by the name of its document, so
 * that none takes for left over what another one is working on.
 */

const lockName = (id: string) => `linkwright-document-${id}`;
const held = new Set<string>();

interface Kept {
  readonly id: string;
  readonly keptAt: string;
  readonly caseName: string | null;
  readonly cabinetName: string | null;
  readonly document: string;
}

export async function keepBrowserRecovery(
  id: string,
  names: { readonly case: string | null; readonly cabinet: string | null },
  document: string,
): Promise<void> {
  hold(id);
  const kept: Kept = { id, keptAt: new Date().toISOString(), caseName: names.case, cabinetName: names.cabinet, document };
  await browserStore.put('recovery', id, kept);
}

/** What was left by tabs that are gone, the newest first. */
export async function listBrowserRecoveries(): Promise<readonly RecoveredWork[]> {
  const stored: readonly unknown[] = await browserStore.all('recovery').catch(() => []);
  const all = stored.filter(isKept);
  const locks = (await navigator.locks?.query())?.held?.map(({ name }) => name) ?? [];
  return all
    .filter(({ id }) => !locks.includes(lockName(id)))
    .sort((a, b) => (a.keptAt < b.keptAt ? 1 : -1))
    .map(({ id, keptAt, caseName, cabinetName, document }) => ({
      id,
      keptAt,
      content: new TextEncoder().encode(document),
      caseFile: unread(caseName),
      cabinetFile: unread(cabinetName),
    }));
}

function unread(name: string | null): RecoveredFile | null {
  return name === null ? null : { name, state: 'unread', file: null };
}

/** Until the tab is gone; the browser itself then lets the lock go. */
function hold(id: string): void {
  if (held.has(id) || !navigator.locks) return;
  held.add(id);
  void navigator.locks.request(lockName(id), () => new Promise(() => undefined));
}

function isKept(value: unknown): value is Kept {
  return typeof value === 'object' && value !== null && 'document' in value && typeof value.document === 'string';
}
