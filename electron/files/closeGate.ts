import type { BrowserWindow } from 'electron';

/** What the page says of itself when the window shall be closed. */
export type CloseWord = 'asking' | 'close' | 'stay';

/**
 * Lets the window close only when nothing unsaved is in it, or the user has said what to do with it. The page asks; a page that does
 * not even hear the question (it hangs, or is gone) is closed by the second try: its work is in the recovery file.
 */
export class CloseGate {
  readonly #window: BrowserWindow;
  readonly #askPage: () => void;
  #unsaved = false;
  #state: 'open' | 'unheard' | 'asking' | 'free' = 'open';

  constructor(window: BrowserWindow, askPage: () => void) {
    this.#window = window;
    this.#askPage = askPage;
    window.on('close', (event) => {
      if (!this.#mayClose()) event.preventDefault();
    });
    // A page that is loaded anew, or that failed, has nothing yet.
    window.webContents.on('did-start-loading', () => this.#forget());
    window.webContents.on('render-process-gone', () => this.#forget());
  }

  /** The page tells whether it holds something that is not saved. */
  set unsaved(unsaved: boolean) {
    this.#unsaved = unsaved;
    if (process.platform === 'darwin' && !this.#window.isDestroyed()) this.#window.setDocumentEdited(unsaved);
  }

  /** The page's word on the question whether to close. */
  answer(word: CloseWord): void {
    if (this.#state !== 'unheard' && this.#state !== 'asking') return;
    if (word === 'asking') this.#state = 'asking';
    else if (word === 'stay') this.#state = 'open';
    else {
      this.#state = 'free';
      this.#window.close();
    }
  }

  #mayClose(): boolean {
    if (!this.#unsaved || this.#state === 'free' || this.#state === 'unheard') return true;
    if (this.#state === 'open') {
      this.#state = 'unheard';
      this.#askPage();
    }
    this.#window.focus();
    return false;
  }

  #forget(): void {
    this.#unsaved = false;
    this.#state = 'open';
  }
}
