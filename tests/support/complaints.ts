import type { Page } from 'playwright-core';

/** Collects what goes wrong on a page behind its surface: errors thrown, errors and warnings on its console, refused requests. */
export interface Complaints {
  /** Everything so far. */
  readonly all: readonly string[];
  /** Throws when there was any; `allowed` are texts that a test itself provoked. */
  readonly assertNone: (allowed?: readonly RegExp[]) => void;
}

export function collectComplaints(page: Page): Complaints {
  const all: string[] = [];
  page.on('pageerror', (error) => all.push(`thrown: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') all.push(`${message.type()}: ${message.text()}`);
  });
  page.on('requestfailed', (request) => all.push(`failed: ${request.url()} ${request.failure()?.errorText ?? ''}`));
  page.on('crash', () => all.push('the page crashed'));
  return {
    all,
    assertNone(allowed = []) {
      const left = all.filter((text) => !allowed.some((pattern) => pattern.test(text)));
      if (left.length > 0) throw new Error(`the page complained:\n${left.join('\n')}`);
    },
  };
}
