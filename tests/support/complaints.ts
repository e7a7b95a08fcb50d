import type { Page } from 'playwright-core';

/** Collects what goes wrong on a page behind its surface: errors thrown, errors and warnings on its console, refused requests. */
export interface Complaints {
  /** Everything so far. */
  readonly all: readonly string[];
  /** Nothing from here on counts. Called before the page is ended: what the end breaks off, such as a font on its way, is no fault of the page. */
  readonly stop: () => void;
  /** Throws when there was any; `allowed` are texts that a test itself provoked. */
  readonly assertNone: (allowed?: readonly RegExp[]) => void;
}

export function collectComplaints(page: Page): Complaints {
  const all: string[] = [];
  let stopped = false;
  const note = (text: string) => {
    if (!stopped) all.push(text);
  };
  page.on('pageerror', (error) => note(`thrown: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') note(`${message.type()}: ${message.text()}`);
  });
  page.on('requestfailed', (request) => {
    const why = request.failure()?.errorText ?? '';
    // A reload or a close breaks off what is still on its way, such as a font. What is refused has another reason.
    if (why !== 'net::ERR_ABORTED') note(`failed: ${request.url()} ${why}`);
  });
  page.on('crash', () => note('the page crashed'));
  return {
    all,
    stop() {
      stopped = true;
    },
    assertNone(allowed = []) {
      const left = all.filter((text) => !allowed.some((pattern) => pattern.test(text)));
      if (left.length > 0) throw new Error(`the page complained:\n${left.join('\n')}`);
    },
  };
}
