import type { Browser, BrowserContext, Page } from 'playwright-core';
import { type LoopbackServer, startLoopbackServer } from '../../electron/serve/loopback.ts';
import { launchChromium } from './chromium.ts';
import { type Complaints, collectComplaints } from './complaints.ts';
import { pageFolder, shotPath } from './folders.ts';

export interface PageOptions {
  /** Size of the window in CSS pixels. */
  readonly width?: number;
  readonly height?: number;
  /** What the system says it prefers. */
  readonly theme?: 'light' | 'dark' | 'high-contrast';
  readonly reducedMotion?: boolean;
  /** Added to the address, for example `#find`. */
  readonly at?: string;
  /** Unsaved work is back after a reload, as for a user. Otherwise each load of the page begins afresh, as most tests mean it. */
  readonly keepsWork?: boolean;
  /** A finger instead of a mouse. */
  readonly touch?: boolean;
}

export interface LaunchedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly browser: Browser;
  readonly server: LoopbackServer;
  readonly complaints: Complaints;
  /** Saves a picture into the git-ignored folder `.shots`. */
  readonly shoot: (name: string) => Promise<void>;
  /** Ends browser and server, and fails when the page complained; `allowed` are texts that the test provoked. */
  readonly close: (allowed?: readonly RegExp[]) => Promise<void>;
}

/** Serves the built page by our own loopback server and opens it in the packed Chromium. Needs `npm run build` to have run. */
export async function launchPage(options: PageOptions = {}): Promise<LaunchedPage> {
  const server = await startLoopbackServer({ root: pageFolder, port: 0 });
  const browser = await launchChromium();
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1280, height: options.height ?? 720 },
    colorScheme: options.theme === 'dark' ? 'dark' : 'light',
    contrast: options.theme === 'high-contrast' ? 'more' : 'no-preference',
    reducedMotion: options.reducedMotion ? 'reduce' : 'no-preference',
    hasTouch: options.touch ?? false,
    locale: 'en-GB',
    timezoneId: 'UTC',
  });
  const page = await context.newPage();
  const complaints = collectComplaints(page);
  // Before any script of the page runs, so that it comes before the page's own requests.
  if (!options.keepsWork) await page.addInitScript(() => void indexedDB.deleteDatabase('linkwright'));
  await page.goto(server.address + (options.at ?? ''));
  await page.waitForSelector('#root:not(:empty)');
  return {
    page,
    context,
    browser,
    server,
    complaints,
    shoot: async (name) => {
      await page.screenshot({ path: await shotPath(name) });
    },
    close: async (allowed) => {
      complaints.stop();
      await browser.close();
      await server.close();
      complaints.assertNone(allowed);
    },
  };
}
