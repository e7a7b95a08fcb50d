import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { parseCaseFile } from '../../engine/cabinet/index.ts';
import { fileWords, windowTexts } from '../../engine/messages/index.ts';
import { findChromium } from '../support/chromium.ts';
import {
  alertsOf,
  answerQuestion,
  isMarkedUnsaved,
  readBrowserRecoveries,
  typeDisplay,
  waitUntilSaved,
  waitUntilUnsaved,
} from '../support/fileDriver.ts';
import { type LaunchedPage, launchPage, type PageOptions } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';

const missing = await whyMissing('Chromium', findChromium);
const name = 'grinder.case.json';
let launched: LaunchedPage;

/** Opens the page after a script that runs first in it. */
async function launch(before: (() => void) | null, options: PageOptions = {}): Promise<Page> {
  launched = await launchPage({ ...options, keepsWork: true });
  if (before) {
    await launched.page.addInitScript(before);
    await launched.page.reload();
    await launched.page.waitForSelector('#root:not(:empty)');
  }
  return launched.page;
}
afterEach(() => launched.close());

/** The browser's file dialogs cannot be pressed from a test: they give a file of the browser's own file system, which is a real one. */
const givesFiles = () => {
  const give = async () => (await navigator.storage.getDirectory()).getFileHandle('grinder.case.json', { create: true });
  Object.assign(window, { showSaveFilePicker: give, showOpenFilePicker: async () => [await give()] });
};
const hasNoPickers = () => Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined });
const readGiven = (page: Page) =>
  page.evaluate(async () => {
    const handle = await (await navigator.storage.getDirectory()).getFileHandle('grinder.case.json');
    return (await handle.getFile()).text();
  });
const writeGiven = (page: Page, text: string) =>
  page.evaluate(async (content) => {
    const handle = await (await navigator.storage.getDirectory()).getFileHandle('grinder.case.json');
    const writable = await handle.createWritable();
    await writable.write(content);
    await writable.close();
  }, text);
const change = async (page: Page, digit = 4) => {
  await typeDisplay(page, '-TB2', digit);
  await waitUntilUnsaved(page);
};
const countKept = async (page: Page) => (await readBrowserRecoveries(page)).length;

describe.skipIf(missing)('files in a browser that gives access to them', () => {
  it('should be saved in place, be clean then, and open again as a recent file', async () => {
    const page = await launch(givesFiles);
    await change(page);
    await page.keyboard.press('Control+s');
    await waitUntilSaved(page);
    await expect.poll(() => page.title()).toBe(`${name} – Linkwright`);
    expect(parseCaseFile(await readGiven(page)).ok).toBe(true);
    await change(page, 2);
    await page.keyboard.press('Control+s');
    await waitUntilSaved(page);
    await page.reload();
    await page.getByRole('button', { name: 'File', exact: true }).click();
    await launched.shoot('browser-file-menu');
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('menuitem', { name: fileWords.recent }).press('ArrowRight');
    await page.getByRole('menuitem', { name }).press('Enter');
    await expect.poll(() => page.title()).toBe(`${name} – Linkwright`);
    // The question before what was entered since is lost.
    await change(page);
    await page.getByRole('button', { name: 'File', exact: true }).click();
    await page.getByRole('menuitem', { name: windowTexts.commands.revert }).click();
    await page.getByRole('alertdialog').waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await answerQuestion(page, fileWords.questions.revert.cancel);
  });

  it('should not be replaced when another program changed them, and be loaded or replaced when told so', async () => {
    const page = await launch(givesFiles);
    await change(page);
    await page.keyboard.press('Control+s');
    await waitUntilSaved(page);
    const saved = await readGiven(page);
    await change(page, 2);
    const other = saved.replace('"name": "QG-7', '"name": "Others: QG-7');
    await writeGiven(page, other);
    await page.keyboard.press('Control+s');
    await alertsOf(page).getByText(`Another program changed ${name}`).waitFor();
    await expect.poll(() => readGiven(page)).toBe(other);
    expect(await seriousFindings(page)).toEqual([]);
    await alertsOf(page).getByRole('button', { name: fileWords.alerts.keepMine }).click();
    await waitUntilSaved(page);
    await expect.poll(() => readGiven(page)).not.toBe(other);
  });

  it('should say why a save failed until it is solved', async () => {
    const page = await launch(givesFiles, { theme: 'dark' });
    await change(page);
    await page.keyboard.press('Control+s');
    await waitUntilSaved(page);
    await page.evaluate(() => {
      const { prototype } = FileSystemFileHandle;
      Object.assign(window, { writes: prototype.createWritable });
      prototype.createWritable = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));
    });
    await change(page, 2);
    await page.keyboard.press('Control+s');
    await alertsOf(page).getByText('is full').waitFor();
    await launched.shoot('browser-not-saved-dark');
    expect(await seriousFindings(page)).toEqual([]);
    await expect.poll(() => isMarkedUnsaved(page)).toBe(true);
    await page.evaluate(() => {
      FileSystemFileHandle.prototype.createWritable = (window as unknown as { writes: FileSystemFileHandle['createWritable'] }).writes; // put there above
    });
    await alertsOf(page).getByRole('button', { name: fileWords.alerts.again }).click();
    await waitUntilSaved(page);
    await expect.poll(() => alertsOf(page).count()).toBe(0);
  });
});

describe.skipIf(missing)('files in a browser that gives none', () => {
  it('should be handed over as a download, with the limits said', async () => {
    const page = await launch(hasNoPickers);
    await change(page);
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
    expect(download.suggestedFilename()).toMatch(/^[\w.-]+\.case\.json$/);
    expect(parseCaseFile(await readFile(await download.path())).ok).toBe(true);
    await waitUntilSaved(page);
    await alertsOf(page).getByText('Only you can see whether it arrived').waitFor();
    await launched.shoot('browser-downloaded');
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'File', exact: true }).click();
    await page.getByText(fileWords.limits.download).waitFor();
    await launched.shoot('browser-file-menu-download');
  });
});

describe.skipIf(missing)('unsaved work in a browser', () => {
  it('should be back after the tab is gone, and not be taken from a tab that is still there', async () => {
    const page = await launch(null);
    await change(page);
    await expect.poll(() => countKept(page)).toBe(1);
    const beside = await launched.context.newPage();
    await beside.goto(launched.server.address);
    await beside.waitForSelector('#root:not(:empty)');
    await beside.waitForTimeout(300);
    await expect.poll(() => alertsOf(beside).count()).toBe(0);
    await beside.close();
    // As a crash: the page is not asked.
    await page.close();
    const again = await launched.context.newPage();
    await again.goto(launched.server.address);
    await alertsOf(again).getByText('Restored: your unsaved work of today').waitFor();
    await again.screenshot({ path: '.shots/browser-restored.png' });
    expect(await seriousFindings(again)).toEqual([]);
    await again.keyboard.press('Control+z');
    await expect.poll(() => isMarkedUnsaved(again)).toBe(true);
  });

  it('should be asked for before the tab is closed, and before another document takes its place', async () => {
    const page = await launch(null, { theme: 'dark' });
    await change(page);
    const asked = page.waitForEvent('dialog');
    void page.close({ runBeforeUnload: true });
    const dialog = await asked;
    expect(dialog.type()).toBe('beforeunload');
    await dialog.dismiss();
    await page.getByRole('button', { name: 'File', exact: true }).click();
    await page.getByRole('menuitem', { name: 'New cabinet' }).click();
    await page.getByRole('alertdialog').waitFor();
    await launched.shoot('browser-question-dark');
    expect(await seriousFindings(page)).toEqual([]);
    // By keyboard: from the safe answer to the next one.
    await page.keyboard.press('Tab');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe(fileWords.questions.unsaved.discard);
    await page.keyboard.press('Escape');
    await page.getByRole('alertdialog').waitFor({ state: 'detached' });
    await expect.poll(() => isMarkedUnsaved(page)).toBe(true);
    await page.getByRole('button', { name: 'File', exact: true }).click();
    await page.getByRole('menuitem', { name: 'New cabinet' }).click();
    await answerQuestion(page, fileWords.questions.unsaved.discard);
    await page.getByText(fileWords.newCabinetName).first().waitFor();
    await launched.shoot('browser-new-cabinet-dark');
    await expect.poll(() => isMarkedUnsaved(page)).toBe(false);
    await expect.poll(() => countKept(page)).toBe(0);
  });
});
