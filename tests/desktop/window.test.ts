import { cp, mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { programFolder } from '../support/folders.ts';
import { findDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
const home = 'linkwright://app/index.html';
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linkwright-window-'));
});
afterAll(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));

describe.skipIf(missing)('the window when something breaks', () => {
  it('should say in plain words that the page was not built', async () => {
    const program = join(folder, 'unbuilt');
    await mkdir(join(program, 'dist'), { recursive: true });
    await cp(join(programFolder, 'package.json'), join(program, 'package.json'));
    for (const part of ['main', 'preload']) await cp(join(programFolder, 'dist', part), join(program, 'dist', part), { recursive: true });
    const desktop = await launchDesktop({ program });
    expect(await desktop.page.getByRole('alert').textContent()).toContain('npm run build');
    await desktop.shoot('desktop-not-built');
    await desktop.close();
  });

  it('should load the page again when its process is gone, and give up after the third time in a row', async () => {
    const desktop = await launchDesktop();
    // The test driver's own view of the page dies with the page, so the program is asked.
    const crash = () =>
      desktop.app.evaluate(async ({ BrowserWindow }) => {
        const contents = BrowserWindow.getAllWindows()[0]?.webContents;
        const gone = new Promise((resolve) => contents?.once('render-process-gone', () => resolve(undefined)));
        contents?.forcefullyCrashRenderer();
        await gone;
        await new Promise((resolve) => contents?.once('did-finish-load', () => resolve(undefined)));
        return contents?.getURL();
      });
    expect(await crash()).toBe(home);
    expect(await crash()).toBe(home);
    expect(await crash()).toBe('linkwright://app/failure');
    await desktop.close([/crashed/, /ERR_ABORTED/]);
  });

  it('should ask when the page hangs, and load it again when told to', async () => {
    const desktop = await launchDesktop();
    const asked = await desktop.app.evaluate(async ({ BrowserWindow, dialog }) => {
      const window = BrowserWindow.getAllWindows()[0];
      if (!window) return undefined;
      const shown: unknown[] = [];
      // The box of the system cannot be pressed from here: it is answered in its place.
      dialog.showMessageBox = ((_window: unknown, options: { buttons: string[] }) => {
        shown.push(options.buttons);
        return Promise.resolve({ response: 1, checkboxChecked: false });
      }) as typeof dialog.showMessageBox; // one of its two forms
      const loaded = new Promise((resolve) => window.webContents.once('did-finish-load', () => resolve(undefined)));
      window.emit('unresponsive');
      await loaded;
      return shown;
    });
    expect(asked).toEqual([['Wait', 'Load again']]);
    await desktop.close([/crashed/, /ERR_ABORTED/]);
  });
});
