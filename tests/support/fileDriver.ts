import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { parseCaseFile } from '../../engine/cabinet/index.ts';
import { fileWords } from '../../engine/messages/index.ts';
import type { LaunchedDesktop } from './launchDesktop.ts';

/*
 * What tests of files do at the window, and what they read from the disk beside it.
 */

/** When the display of a unit was last entered, by the case file; empty when it was not. Throws when the file does not open. */
export function enteredAt(content: string | Uint8Array, unit: string): string {
  const parsed = parseCaseFile(content);
  if (!parsed.ok) throw new Error(`does not open: ${JSON.stringify(parsed.problems)}`);
  const displays = parsed.value.evidence.snapshots.flatMap((snapshot) => snapshot.displays ?? []);
  return displays.find((display) => display.unit === unit)?.at ?? '';
}

/** The documents in the recovery folder, as case files. */
export async function readRecoveries(userData: string): Promise<readonly string[]> {
  const folder = join(userData, 'recovery');
  const names = (await readdir(folder).catch(() => [])).filter((name) => name.endsWith('.recovery.json'));
  // A copy may be taken away between the two calls.
  const texts = await Promise.all(names.map((name) => readFile(join(folder, name), 'utf8').catch(() => '{"document":""}')));
  return texts.map((text) => (JSON.parse(text) as { document: string }).document).filter((document) => document !== '');
}

/** The documents kept in the browser's storage, as case files. */
export const readBrowserRecoveries = (page: Page): Promise<readonly string[]> =>
  page.evaluate(
    () =>
      new Promise<string[]>((resolve) => {
        const opening = indexedDB.open('linkwright');
        // The page has not made its storage yet: left alone, so that it makes it itself.
        opening.onupgradeneeded = () => opening.transaction?.abort();
        opening.onerror = () => resolve([]);
        opening.onsuccess = () => {
          const database = opening.result;
          const reading = database.transaction('recovery').objectStore('recovery').getAll();
          reading.onsuccess = () => {
            database.close();
            resolve(reading.result.map(({ document }: { document: string }) => document));
          };
        };
      }),
  );

/** Types a digit on a unit of the cabinet: an entry of its display. */
export async function typeDisplay(page: Page, designation: string, digit: number): Promise<void> {
  const escaped = designation.replace(/[+.]/g, '\\$&');
  await page.getByRole('button', { name: new RegExp(`^${escaped}, `) }).press(String(digit));
}

export const isMarkedUnsaved = async (page: Page) => (await page.title()).startsWith('●');
export const waitUntilSaved = (page: Page) => expect.poll(() => isMarkedUnsaved(page), { interval: 5 }).toBe(false);
export const waitUntilUnsaved = (page: Page) => expect.poll(() => isMarkedUnsaved(page), { interval: 5 }).toBe(true);

/** Presses one of the buttons of the question that is open. */
export async function answerQuestion(page: Page, answer: string): Promise<void> {
  await page.getByRole('alertdialog').getByRole('button', { name: answer, exact: true }).click();
  await page.getByRole('alertdialog').waitFor({ state: 'detached' });
}

/** The notices about files. */
export const alertsOf = (page: Page) => page.getByRole('region', { name: fileWords.alerts.region });

/** Ends the program as a power cut does, and waits until it is gone. */
export async function killHard({ app }: LaunchedDesktop): Promise<void> {
  const child = app.process();
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGKILL');
  await gone;
}

/** Answers the system's dialogs in place of the user; they cannot be pressed from a test. Null cancels. */
export function answerDialogs({ app }: LaunchedDesktop, path: string | null): Promise<void> {
  return app.evaluate(({ dialog }, answer) => {
    const asked: (string | undefined)[] = [];
    Object.assign(globalThis, { asked });
    // Each stands in for one of the two forms of its dialog.
    dialog.showOpenDialog = (() =>
      Promise.resolve({
        canceled: answer === null,
        filePaths: answer === null ? [] : [answer],
      })) as unknown as typeof dialog.showOpenDialog;
    dialog.showSaveDialog = ((_window: unknown, options: { defaultPath?: string }) => {
      asked.push(options.defaultPath);
      return Promise.resolve({ canceled: answer === null, filePath: answer ?? '' });
    }) as unknown as typeof dialog.showSaveDialog;
  }, path);
}

/** The names that save dialogs proposed since `answerDialogs`. */
export const proposedNames = ({ app }: LaunchedDesktop) =>
  app.evaluate(() => (globalThis as unknown as { asked: readonly string[] }).asked); // put there by answerDialogs
