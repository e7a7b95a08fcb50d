import { fail, makeProblem, ok, type Result } from '../../engine/base/index.ts';
import { keptDraftsContent } from '../../engine/schema/index.ts';
import type { FileAccess } from '../files/access.ts';
import { isOwn, type KeptDraft } from './makeDraft.ts';
import { type MakeState, makeStore } from './makeStore.ts';

/*
 * Exercises that are being made are kept as plays are, until they are saved under their seal. What they hide is kept in the open.
 */

const head = '{"format":"linkwright-drafts",';

/** What of drafts is kept. */
export interface KeptDrafts {
  readonly current: KeptDraft | null;
  readonly aside: readonly KeptDraft[];
}

/** Whether a text is one of drafts that were kept, sound or not. */
export function isKeptDrafts(text: string): boolean {
  return text.startsWith(head);
}

/** Fails with a problem where it is damaged. */
export function readKeptDrafts(text: string): Result<KeptDrafts> {
  try {
    const { current, aside } = keptDraftsContent.parse(JSON.parse(text));
    return ok({ current, aside } as KeptDrafts); // fields that may be left out are never written as undefined
  } catch {
    return fail(makeProblem('drafts-not-restored', 'warning')); // cut off, or written by something else
  }
}

/** The text of what is to be kept; null: nothing of anybody's own. */
export function writeKeptDrafts({ draft, aside, content, savedAs }: MakeState): string | null {
  const cabinet = content === null ? null : { id: content.id, name: content.name };
  const current = isOwn(draft) && savedAs === null ? { draft, cabinet } : null;
  return current === null && aside.length === 0 ? null : JSON.stringify({ format: 'linkwright-drafts', version: 1, current, aside });
}

/** So long after a change it is kept; a text is not written at each key. */
const patience = 300;

/** Keeps drafts from now on, under this name; what lay there is replaced. `onFailure` hears when they could not be kept. */
export function keepDrafts(access: Pick<FileAccess, 'keepRecovery' | 'dropRecovery'>, keptAs: string, onFailure: () => void): void {
  let last: Promise<unknown> = Promise.resolve();
  let written: string | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const write = async () => {
    const text = writeKeptDrafts(makeStore.getState());
    if (text === written) return;
    written = text;
    const kept = text === null ? await access.dropRecovery(keptAs) : await access.keepRecovery(keptAs, { case: null, cabinet: null }, text);
    if (!kept.ok) onFailure();
  };
  const writeInTurn = () => {
    last = last.then(write).catch(onFailure);
  };
  makeStore.subscribe((now, before) => {
    if (now.draft === before.draft && now.aside === before.aside && now.savedAs === before.savedAs && now.content === before.content)
      return;
    clearTimeout(timer);
    timer = setTimeout(writeInTurn, patience);
  });
}
