import { type BrowserWindow, dialog } from 'electron';
import { shellWords } from '../../engine/messages/index.ts';
import { type Failure, pageMissing } from './failurePage.ts';
import { failureAddress, pageAddress } from './pageScheme.ts';

/** After so many stops in a row we no longer load the page again. */
const mostStops = 3;
/** A page that ran for so long ends the row of stops. */
const soundAfterMilliseconds = 60_000;

/** Keeps a window usable: loads the page again when its process is gone, asks when it hangs, and shows a failure as a page. */
export class WindowWatch {
  readonly #window: BrowserWindow;
  #failure: Failure = pageMissing;
  #stops = 0;
  #lastStop = 0;

  constructor(window: BrowserWindow) {
    this.#window = window;
    window.webContents.on('render-process-gone', (_event, details) => {
      if (details.reason !== 'clean-exit') this.#onPageGone();
    });
    // Only the empty page gets past the refusal of navigations: the runtime does not ask about it.
    window.webContents.on('did-navigate', (_event, address) => {
      if (address !== pageAddress && address !== failureAddress) void this.loadPage();
    });
    window.on('unresponsive', () => void this.#askWhenHanging());
  }

  get failure(): Failure {
    return this.#failure;
  }

  /** Loads the page; where that fails, the failure page. Never fails itself. */
  loadPage(): Promise<void> {
    return this.#load(pageAddress);
  }

  /** Shows what went wrong in place of the page. Never fails itself. */
  showFailure(failure: Failure): Promise<void> {
    this.#failure = failure;
    return this.#load(failureAddress);
  }

  async #load(address: string): Promise<void> {
    try {
      await this.#window.loadURL(address);
    } catch (error) {
      // Another load took its place, or the window was closed meanwhile.
      if (this.#window.isDestroyed() || isAborted(error)) return;
      console.error(`${address} did not load`, error);
      if (address === pageAddress) await this.showFailure(pageMissing);
    }
  }

  #onPageGone(): void {
    const now = Date.now();
    this.#stops = now - this.#lastStop > soundAfterMilliseconds ? 1 : this.#stops + 1;
    this.#lastStop = now;
    if (this.#stops < mostStops) void this.loadPage();
    else void this.showFailure({ title: shellWords.pageCrashedTitle, text: shellWords.pageCrashed });
  }

  async #askWhenHanging(): Promise<void> {
    const answered = new AbortController();
    const stopAsking = () => answered.abort();
    this.#window.once('responsive', stopAsking);
    const { response } = await dialog.showMessageBox(this.#window, {
      type: 'warning',
      message: shellWords.unresponsiveTitle,
      detail: shellWords.unresponsive,
      buttons: [shellWords.wait, shellWords.loadAgain],
      defaultId: 0,
      cancelId: 0,
      signal: answered.signal,
    });
    this.#window.off('responsive', stopAsking);
    // The hanging process would not hear a plain reload; its end is answered by loading the page again.
    if (response === 1) this.#window.webContents.forcefullyCrashRenderer();
  }
}

function isAborted(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ERR_ABORTED';
}
