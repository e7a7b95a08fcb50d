import type { StoreApi } from 'zustand/vanilla';
import type { AppState } from '../state/appState.ts';
import type { FileAccess } from './access.ts';
import { clearAlerts, raiseAlert } from './alerts.ts';
import { isUnsaved } from './unsaved.ts';
import { writeDocument } from './writeDocument.ts';

/** After the last change. */
const settledAfter = 1_000;
/** After the first change that is not kept yet, while changes keep coming. */
const longestWait = 5_000;

/**
 * Keeps a recovery copy of unsaved work a second after each change, and takes it away when nothing is unsaved. Writes never overlap,
 * and the newest state is always written last.
 */
export class RecoveryKeeper {
  readonly #store: StoreApi<AppState>;
  readonly #access: Pick<FileAccess, 'keepRecovery' | 'dropRecovery'>;
  readonly #newId: () => string;
  #id: string;
  #isKept = false;
  /** The state that is kept: its parts, by identity. */
  #kept: Pick<AppState, 'cabinet' | 'caseRecord' | 'files'> | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #waitingSince = 0;
  #last: Promise<void> = Promise.resolve();
  #ended = false;

  constructor(store: StoreApi<AppState>, access: Pick<FileAccess, 'keepRecovery' | 'dropRecovery'>, newId: () => string) {
    this.#store = store;
    this.#access = access;
    this.#newId = newId;
    this.#id = newId();
  }

  /** Follows the document from now on. */
  follow(): void {
    this.#store.subscribe((state, before) => {
      const changed = state.cabinet !== before.cabinet || state.caseRecord !== before.caseRecord || state.saved !== before.saved;
      if (changed) this.#schedule();
    });
  }

  /** Brings what is kept up to date now. Never fails: what went wrong is an alert. */
  flush(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#last = this.#last.then(() => this.#bringUpToDate());
    return this.#last;
  }

  /** Another document has come into the window; what was kept of the one before is taken away. */
  async begin(): Promise<void> {
    const before = this.#id;
    const wasKept = this.#isKept;
    this.#take(this.#newId(), false);
    if (wasKept) await this.#inTurn(() => this.#access.dropRecovery(before));
    this.#schedule();
  }

  /** The document in the window is work that was kept under this id. */
  async adopt(id: string): Promise<void> {
    await this.begin();
    this.#take(id, true);
    this.#schedule();
  }

  /** The user does not want the work: it is taken away, and nothing is kept from now on. */
  async end(): Promise<void> {
    this.#ended = true;
    clearTimeout(this.#timer);
    await this.#inTurn(() => this.#access.dropRecovery(this.#id));
  }

  #take(id: string, isKept: boolean): void {
    this.#id = id;
    this.#isKept = isKept;
    this.#kept = null;
  }

  #schedule(): void {
    const now = Date.now();
    if (this.#timer === undefined) this.#waitingSince = now;
    clearTimeout(this.#timer);
    const wait = Math.max(0, Math.min(settledAfter, this.#waitingSince + longestWait - now));
    this.#timer = setTimeout(() => void this.flush(), wait);
  }

  async #bringUpToDate(): Promise<void> {
    if (this.#ended) return;
    const state = this.#store.getState();
    if (!isUnsaved(state)) {
      if (this.#isKept) await this.#access.dropRecovery(this.#id);
      this.#take(this.#id, false);
      return;
    }
    const { cabinet, caseRecord, files } = state;
    const kept = this.#kept;
    if (kept?.cabinet === cabinet && kept.caseRecord === caseRecord && kept.files === files) return;
    const id = this.#id;
    const done = await this.#access.keepRecovery(id, files, writeDocument('case', state));
    if (id !== this.#id) {
      // Another document came meanwhile.
      await this.#access.dropRecovery(id);
    } else if (done.ok) {
      this.#isKept = true;
      this.#kept = { cabinet, caseRecord, files };
      clearAlerts(this.#store, ['no-recovery']);
    } else {
      raiseAlert(this.#store, { kind: 'no-recovery', problems: done.problems });
    }
  }

  #inTurn(work: () => Promise<unknown>): Promise<void> {
    this.#last = this.#last.then(async () => {
      await work();
    });
    return this.#last;
  }
}
