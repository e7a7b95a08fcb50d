import { spawn } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DesktopBridge } from '../../electron/ipc/bridge.ts';
import { programFolder } from '../support/folders.ts';
import { findDesktop, type LaunchedDesktop, launchDesktop, testSwitches } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
const home = 'linkwright://app/index.html';
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linkwright-window-'));
});
afterAll(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));

/** Takes what was handed over, as the page does. */
const takeFiles = ({ page }: LaunchedDesktop) =>
  page.evaluate(async () => {
    const bridge = (window as unknown as { linkwright: DesktopBridge }).linkwright; // put there by the preload
    const taken = await bridge.takeHandedOverFiles();
    if (!taken.ok) return taken.problems.map(({ code }) => code);
    return taken.value.map((file) =>
      file.ok
        ? { keys: Object.keys(file.value).sort(), name: file.value.name, text: new TextDecoder().decode(file.value.content) }
        : { code: file.problems[0]?.code, facts: file.problems[0]?.facts },
    );
  });

describe.skipIf(missing)('files handed to the window', () => {
  it('should reach the page by name and content, never by path', async () => {
    const file = join(folder, 'named.cabinet.json');
    await writeFile(file, '{"hello":1}');
    const desktop = await launchDesktop({ files: [file, join(folder, 'gone.case.json'), folder] });
    expect(await takeFiles(desktop)).toEqual([
      { keys: ['content', 'handle', 'name'], name: 'named.cabinet.json', text: '{"hello":1}' },
      { code: 'file-unreadable', facts: { file: 'gone.case.json', reason: 'ENOENT' } },
    ]);
    // Taken once, they wait no longer.
    expect(await takeFiles(desktop)).toEqual([]);
    await desktop.close();
  });

  it('should be refused when far too large, before they are read', async () => {
    const file = join(folder, 'huge.cabinet.json');
    await writeFile(file, Buffer.alloc(22 * 1024 * 1024, ' '));
    const desktop = await launchDesktop({ files: [file] });
    expect(await takeFiles(desktop)).toEqual([{ code: 'file-too-large', facts: { megabytes: 22, limitMegabytes: 21 } }]);
    await desktop.close();
  });

  it('should come from a second start too, which then ends', async () => {
    const file = join(folder, 'second.cabinet.json');
    await writeFile(file, '{}');
    const desktop = await launchDesktop();
    await desktop.page.evaluate(() => {
      const bridge = (window as unknown as { linkwright: DesktopBridge }).linkwright; // put there by the preload
      Object.assign(window, { told: 0 });
      bridge.onFilesHandedOver(() => {
        Object.assign(window, { told: (window as unknown as { told: number }).told + 1 });
      });
    });
    const second = spawn(await findDesktop(), [...testSwitches(desktop.userData), programFolder, 'second.cabinet.json'], {
      cwd: folder,
      stdio: 'ignore',
    });
    expect(await new Promise((resolve) => second.on('close', resolve))).toBe(0);
    await expect.poll(() => desktop.page.evaluate(() => (window as unknown as { told: number }).told)).toBe(1);
    expect(await takeFiles(desktop)).toMatchObject([{ name: 'second.cabinet.json', text: '{}' }]);
    await desktop.close();
  });
});

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
