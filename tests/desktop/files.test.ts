import { execFileSync, spawn } from 'node:child_process';
import { copyFile, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseCaseFile } from '../../engine/cabinet/index.ts';
import { programFolder } from '../support/folders.ts';
import { findDesktop, type LaunchedDesktop, launchDesktop, testSwitches } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
const sample = (name: string) => join(programFolder, 'sample-cabinets', name);
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linkwright-files-'));
});
afterAll(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));

const shows = ({ page }: LaunchedDesktop, text: string) => page.getByText(text).first().waitFor();
/** Everything the page could have learned: its markup and what it keeps. */
const pageKnows = ({ page }: LaunchedDesktop) =>
  page.evaluate(() => document.documentElement.outerHTML + JSON.stringify({ ...localStorage }));

/** Answers the system's dialogs in place of the user; they cannot be pressed from a test. Null cancels. */
const answerDialogs = ({ app }: LaunchedDesktop, path: string | null) =>
  app.evaluate(({ dialog }, answer) => {
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
const proposedNames = ({ app }: LaunchedDesktop) => app.evaluate(() => (globalThis as unknown as { asked: readonly string[] }).asked); // put there by answerDialogs

describe.skipIf(missing)('a file handed to the window', () => {
  it('should be opened by its name on the command line, and its path not be told', async () => {
    const file = join(folder, 'mine.cabinet.json');
    await copyFile(sample('three-units.cabinet.json'), file);
    const desktop = await launchDesktop({ files: [file] });
    await shows(desktop, 'Gear deburring machine QD-2');
    expect(await pageKnows(desktop)).not.toContain(basename(folder));
    await desktop.shoot('desktop-file-opened');
    await desktop.close();
  });

  it.each([
    ['is gone', async () => undefined, 'could not be read'],
    ['is a folder', (path: string) => mkdir(path), 'It is a folder'],
    ['never ends', async (path: string) => void execFileSync('mkfifo', [path]), 'could not be read'],
    ['is far too large', (path: string) => writeFile(path, Buffer.alloc(22 * 1024 * 1024, ' ')), 'too large: 22 MB'],
    ['is damaged', (path: string) => writeFile(path, '{"format":'), 'damaged at line 1'],
    ['is not ours', (path: string) => writeFile(path, '{"format": "elsewhere"}'), 'was not opened'],
  ])('should be refused in plain words when it %s', async (what, make, words) => {
    const file = join(folder, `${what.replaceAll(' ', '-')}.cabinet.json`);
    await make(file);
    const desktop = await launchDesktop({ files: [file] });
    await desktop.page.getByRole('dialog').getByText(words).first().waitFor();
    expect(await pageKnows(desktop)).not.toContain(basename(folder));
    await desktop.close();
  });

  it('should come from a second start too, which then ends', async () => {
    const desktop = await launchDesktop();
    await copyFile(sample('three-units.cabinet.json'), join(folder, 'second.cabinet.json'));
    const second = spawn(await findDesktop(), [...testSwitches(desktop.userData), programFolder, 'second.cabinet.json'], {
      cwd: folder,
      stdio: 'ignore',
    });
    expect(await new Promise((resolve) => second.on('close', resolve))).toBe(0);
    await shows(desktop, 'Gear deburring machine QD-2');
    await desktop.close();
  });
});

describe.skipIf(missing)('a file chosen in the dialog', () => {
  it('should be opened, and nothing happen when none is chosen', async () => {
    const desktop = await launchDesktop();
    const { page } = desktop;
    await answerDialogs(desktop, null);
    await page.keyboard.press('Control+o');
    await answerDialogs(desktop, sample('three-units.cabinet.json'));
    await page.keyboard.press('Control+o');
    await shows(desktop, 'Gear deburring machine QD-2');
    await desktop.close();
  });

  it('should be saved whole, under a proposed name without a folder', async () => {
    const desktop = await launchDesktop();
    const file = join(folder, 'saved.case.json');
    await writeFile(file, 'what stood there before');
    await answerDialogs(desktop, file);
    await desktop.page.keyboard.press('Control+s');
    await expect.poll(async () => parseCaseFile(await readFile(file)).ok).toBe(true);
    const [proposed] = await proposedNames(desktop);
    expect(proposed).toMatch(/^[^/]+\.case\.json$/);
    expect((await readdir(folder)).filter((name) => name.startsWith('saved'))).toEqual(['saved.case.json']);
    expect(await pageKnows(desktop)).not.toContain(basename(folder));
    await desktop.close();
  });

  it('should not be saved when the user cancels', async () => {
    const desktop = await launchDesktop();
    const before = await readdir(folder);
    await answerDialogs(desktop, null);
    await desktop.page.keyboard.press('Control+s');
    await expect.poll(() => proposedNames(desktop)).toHaveLength(1);
    expect(await readdir(folder)).toEqual(before);
    expect(await desktop.page.getByRole('dialog').count()).toBe(0);
    await desktop.close();
  });

  it('should say why it could not be saved', async () => {
    const desktop = await launchDesktop();
    await answerDialogs(desktop, join(folder, 'vanished', 'mine.case.json'));
    await desktop.page.keyboard.press('Control+s');
    await desktop.page.getByRole('alert').getByText('That folder is not there any more').waitFor();
    await desktop.shoot('desktop-not-saved');
    await desktop.close();
  });
});
