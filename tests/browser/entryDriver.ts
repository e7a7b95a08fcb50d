import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { parseCaseFile } from '../../engine/cabinet/index.ts';
import type { CaseContent } from '../../engine/schema/index.ts';
import { type LaunchedPage, launchPage, type PageOptions } from '../support/launchPage.ts';
import { driveFind, type FindDriver } from './findDriver.ts';

/** The window while something is entered, as a user at its keyboard has it. */
export interface EntryDriver {
  readonly launched: LaunchedPage;
  readonly page: Page;
  readonly find: FindDriver;
  /** Strikes keys one after another, and counts each of them. */
  readonly press: (...keys: readonly string[]) => Promise<void>;
  /** Strikes the keys of a text, and counts each of them. */
  readonly type: (text: string) => Promise<void>;
  /** How many keys were struck since it was last asked. */
  readonly keys: () => number;
  /** The pop-up that asks what a unit shows. */
  readonly asks: (designation: string) => Locator;
  readonly asksReport: (chain: string) => Locator;
  /** Designations of the units that light up while a report is typed. */
  readonly lit: () => Promise<readonly string[]>;
  /** Opens a sample, and waits until it stands there. */
  readonly open: (sample: string, words: string) => Promise<void>;
  /** Opens the line of quick chain in an empty window, and builds the cabinet of it. */
  readonly build: (line: string) => Promise<void>;
  /** Saves the case, as a download, and reads it. */
  readonly save: () => Promise<CaseContent>;
}

/** Opens the window with its first sample. */
export async function driveEntry(options: PageOptions = {}): Promise<EntryDriver> {
  const launched = await launchPage(options);
  const { page } = launched;
  // The browser's dialogs for files cannot be pressed from a test; without them saving is a download.
  await page.addInitScript(() => Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined }));
  await page.reload();
  const find = driveFind(page);
  await find.answer.getByText('likely').waitFor();
  let struck = 0;
  const press = async (...keys: readonly string[]) => {
    for (const key of keys) {
      await page.keyboard.press(key);
      struck += 1;
    }
  };
  return {
    launched,
    page,
    find,
    press,
    type: (text) => press(...[...text].map((sign) => (sign === ' ' ? 'Space' : sign))),
    keys() {
      const count = struck;
      struck = 0;
      return count;
    },
    asks: (designation) => page.getByRole('dialog', { name: `What ${designation} shows` }),
    asksReport: (chain) => page.getByRole('dialog', { name: `What the controller reports of ${chain}` }),
    lit: () =>
      page.evaluate(() =>
        [...document.querySelectorAll('.unit.lit button')].map((button) => button.getAttribute('aria-label')?.split(',')[0] ?? ''),
      ),
    async open(sample, words) {
      await find.openSample(sample, words);
      await expect.poll(() => find.said.textContent()).toMatch(/ is open\.$/);
    },
    async build(line) {
      await page.keyboard.press('n');
      await page.getByRole('textbox', { name: 'Units' }).fill(line);
      await page.keyboard.press('Enter');
      await page.getByRole('dialog').waitFor();
    },
    async save() {
      const coming = page.waitForEvent('download');
      await page.keyboard.press('Control+s');
      const parsed = parseCaseFile(await readFile(await (await coming).path()));
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
      return parsed.value;
    },
  };
}
