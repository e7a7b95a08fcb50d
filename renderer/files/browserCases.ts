import { fail, makeProblem, ok, type Result } from '../../engine/base/index.ts';
import { isOwnFile } from '../../engine/cabinet/index.ts';
import type { KeptCases } from './access.ts';
import { browserStore } from './browserStore.ts';

/*
 * The collection of confirmed cases in the browser's storage: case files by the ids of their cases.
 */

type KeptFile = KeptCases['cases'][number];

/** Keeps a case, in the place of what was kept of it before; what does not open is never replaced. */
export function keepBrowserCase(id: string, content: Uint8Array): Promise<Result<null>> {
  return tried(async () => {
    const before = await browserStore.get('cases', id);
    const name = `${id}.case.json`;
    if (before !== undefined && !(isKept(before) && isOwnFile(before.content))) {
      return fail(makeProblem('case-in-the-way', 'refused', { facts: { file: name } }));
    }
    await browserStore.put('cases', id, { key: id, name, content } satisfies KeptFile);
    return ok(null);
  });
}

/** Everything that is kept; nothing where the browser keeps nothing. */
export async function listBrowserCases(): Promise<readonly KeptFile[]> {
  const stored: readonly unknown[] = await browserStore.all('cases').catch(() => []);
  return stored.filter(isKept);
}

export function dropBrowserCase(key: string): Promise<Result<null>> {
  return tried(async () => {
    await browserStore.remove('cases', key);
    return ok(null);
  });
}

async function tried(work: () => Promise<Result<null>>): Promise<Result<null>> {
  try {
    return await work();
  } catch (error) {
    const reason = error instanceof Error ? error.name : String(error);
    return fail(makeProblem('case-not-kept', 'refused', { facts: { reason } }));
  }
}

function isKept(value: unknown): value is KeptFile {
  return typeof value === 'object' && value !== null && 'content' in value && value.content instanceof Uint8Array;
}
