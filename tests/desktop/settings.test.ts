import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findDesktop, type LaunchedDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);

const boundsOf = ({ app }: LaunchedDesktop) => app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getBounds());
const dialogOf = ({ page }: LaunchedDesktop) => page.getByRole('dialog');

describe.skipIf(missing)('the settings', () => {
  let userData: string;
  let file: string;

  beforeEach(async () => {
    userData = await mkdtemp(join(tmpdir(), 'linkwright-settings-'));
    await mkdir(userData, { recursive: true });
    file = join(userData, 'settings.json');
  });
  afterEach(() => rm(userData, { recursive: true, force: true, maxRetries: 5 }));

  it('should open the window where it was left', async () => {
    const first = await launchDesktop({ userData });
    const left = { x: 40, y: 30, width: 900, height: 600 };
    await first.app.evaluate(({ BrowserWindow }, to) => BrowserWindow.getAllWindows()[0]?.setBounds(to), left);
    await expect.poll(async () => JSON.parse(await readFile(file, 'utf8').catch(() => '{}')).window?.bounds).toEqual(left);
    await first.close();
    const second = await launchDesktop({ userData });
    expect(await boundsOf(second)).toEqual(left);
    expect(await dialogOf(second).count()).toBe(0);
    await second.close();
  });

  it('should not open the window off the screen', async () => {
    const bounds = { x: 9000, y: 9000, width: 900, height: 600 };
    await writeFile(file, JSON.stringify({ version: 1, window: { bounds, maximized: false } }));
    const desktop = await launchDesktop({ userData });
    expect((await boundsOf(desktop))?.x).toBeLessThan(5000);
    await desktop.close();
  });

  it.each([
    ['damaged', '{"version": 1, "window": {'],
    ['empty', ''],
    ['of another version', '{"version": 2}'],
    ['of the wrong shape', '{"version": 1, "window": {"bounds": {"x": "left"}, "maximized": 1}}'],
    ['not even an object', '[1]'],
  ])('should set aside a file that is %s, say so, and go on', async (_what, text) => {
    await writeFile(file, text);
    const desktop = await launchDesktop({ userData });
    const aside = 'settings.damaged-1.json';
    await dialogOf(desktop).getByText(aside).waitFor();
    expect(await readFile(join(userData, aside), 'utf8')).toBe(text);
    await desktop.close();
    expect(await readdir(userData)).not.toContain('settings.damaged-2.json');
  });

  it('should not keep the program from starting when they cannot be read', async () => {
    await mkdir(file);
    const desktop = await launchDesktop({ userData });
    await dialogOf(desktop).getByText('EISDIR').waitFor();
    await desktop.close();
  });
});
