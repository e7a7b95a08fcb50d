import { spawn } from 'node:child_process';
import { copyFile, mkdir, mkdtemp, readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parseCaseFile, serializeCabinet, serializeCase } from '../../engine/cabinet/index.ts';
import { fileWords } from '../../engine/messages/index.ts';
import {
  alertsOf,
  answerDialogs,
  answerQuestion,
  enteredAt,
  isMarkedUnsaved,
  killHard,
  proposedNames,
  readRecoveries,
  typeDisplay,
  waitUntilSaved,
  waitUntilUnsaved,
} from '../support/fileDriver.ts';
import { programFolder } from '../support/folders.ts';
import { findDesktop, type LaunchedDesktop, launchDesktop, testSwitches } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
const sample = (name: string) => join(programFolder, 'sample-cabinets', name);
const words = fileWords;

let folder: string;
let userData: string;
let file: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linkwright-life-'));
  userData = join(folder, 'user');
  await mkdir(join(folder, 'plant'));
  file = join(folder, 'plant', 'grinder.case.json');
  await copyFile(sample('three-units.1.case.json'), file);
});
afterEach(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));

const open = async (more: readonly string[] = []) => {
  const desktop = await launchDesktop({ userData, files: [file, ...more] });
  await desktop.page.getByText('grinder.case.json').first().waitFor();
  return desktop;
};
const change = async ({ page }: LaunchedDesktop, digit = 4) => {
  await typeDisplay(page, '-TB2', digit);
  await waitUntilUnsaved(page);
};
const pressClose = ({ app }: LaunchedDesktop) => app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.close());
const windowCount = ({ app }: LaunchedDesktop) => app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length);
const ended = ({ app }: LaunchedDesktop) => {
  const child = app.process();
  return child.exitCode !== null ? Promise.resolve() : new Promise<void>((resolve) => child.once('exit', () => resolve()));
};
const entered = async () => enteredAt(await readFile(file), 'TB2');
const kept = () => expect.poll(() => readRecoveries(userData)).toHaveLength(1);
/** Changes the file as another program does. */
const changeOutside = async (name: string) => {
  const parsed = parseCaseFile(await readFile(file));
  if (!parsed.ok) throw new Error('the sample does not open');
  await writeFile(file, serializeCase({ ...parsed.value, name }));
};

describe.skipIf(missing)('an open file', () => {
  it('should be marked unsaved after a change, and saved again when that is undone or saved', async () => {
    const desktop = await open();
    const { page } = desktop;
    await expect.poll(() => page.title()).toBe('grinder.case.json – Linkwright');
    await change(desktop);
    await expect.poll(() => page.title()).toBe('● grinder.case.json – Linkwright');
    await page.keyboard.press('Control+z');
    await waitUntilSaved(page);
    await page.keyboard.press('Control+y');
    await waitUntilUnsaved(page);
    await page.keyboard.press('Control+s');
    await waitUntilSaved(page);
    expect(await entered()).not.toBe('');
    await page.keyboard.press('Control+z');
    await waitUntilUnsaved(page);
    await page.keyboard.press('Control+y');
    await waitUntilSaved(page);
    await desktop.close();
  });

  it('should keep the copy of before the last save, and open it', async () => {
    const before = await readFile(file);
    const desktop = await open();
    const { page } = desktop;
    await change(desktop);
    await page.keyboard.press('Control+s');
    await waitUntilSaved(page);
    const [copy] = await readdir(join(userData, 'copies'));
    expect(await readFile(join(userData, 'copies', copy ?? ''))).toEqual(before);
    await page.getByRole('button', { name: 'File', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Open the copy kept before the last save' }).click();
    await expect.poll(() => page.title()).not.toContain('grinder');
    await page.getByText(words.source.copy).first().waitFor();
    await expect.poll(() => page.title()).not.toContain('●');
    await desktop.close();
  });

  it('should offer the kept copy when the file itself is damaged', async () => {
    const first = await open();
    await change(first);
    await first.page.keyboard.press('Control+s');
    await waitUntilSaved(first.page);
    await first.close();
    await writeFile(file, '{"format": "linkwright-case", "formatVersion": 1, "cont');
    const desktop = await launchDesktop({ userData, files: [file] });
    await desktop.page.getByRole('dialog').getByText('There is a copy of it').waitFor();
    await desktop.shoot('files-damaged-with-copy');
    await desktop.page.getByRole('dialog').getByRole('button', { name: words.openKept }).click();
    await expect.poll(() => desktop.page.getByText(words.source.copy).count()).toBeGreaterThan(0);
    await desktop.close();
  });

  it('should stand among the recent files, marked when it is not there any more', async () => {
    const desktop = await open();
    const { page } = desktop;
    const openRecent = async () => {
      await page.getByRole('button', { name: 'File', exact: true }).click();
      await page.getByRole('menuitem', { name: words.recent }).press('ArrowRight');
    };
    await openRecent();
    await page.getByRole('menuitem', { name: 'grinder.case.json' }).waitFor();
    await desktop.shoot('files-recent');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await rename(file, `${file}.away`);
    await openRecent();
    await page.getByRole('menuitem', { name: words.recentMissing }).waitFor();
    await page.getByRole('menuitem', { name: words.recentMissing }).press('Enter');
    await page.getByRole('dialog').getByText('could not be read').waitFor();
    await desktop.close();
  });

  it('should come from a second start even while a question is open, when that is answered', async () => {
    const desktop = await open();
    const { page } = desktop;
    await change(desktop);
    await pressClose(desktop);
    await page.getByRole('alertdialog').waitFor();
    const second = spawn(await findDesktop(), [...testSwitches(userData), programFolder, sample('two-chains.2.case.json')], {
      stdio: 'ignore',
    });
    expect(await new Promise((resolve) => second.on('close', resolve))).toBe(0);
    await page.waitForTimeout(200);
    await expect.poll(() => page.getByRole('alertdialog').count()).toBe(1);
    await page.getByRole('alertdialog').getByRole('button', { name: words.questions.unsaved.cancel }).click();
    // Now the handed-over file asks for the same work.
    await page.getByRole('alertdialog').getByText('Another document is about to take its place.').waitFor();
    await desktop.shoot('files-question-open');
    await answerQuestion(page, words.questions.unsaved.discard);
    await page.getByText('two-chains.2.case.json').first().waitFor();
    await desktop.close();
  });

  it('should come in by a drop, as a copy whose saving asks for a place', async () => {
    const desktop = await launchDesktop({ userData });
    const { page } = desktop;
    await answerDialogs(desktop, null);
    const text = await readFile(sample('three-units.2.case.json'), 'utf8');
    await page.evaluate((content) => {
      const data = new DataTransfer();
      data.items.add(new File([content], 'dropped.case.json'));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    }, text);
    await page.getByText(words.source.copy).first().waitFor();
    await page.keyboard.press('Control+s');
    await expect.poll(() => proposedNames(desktop)).toHaveLength(1);
    await desktop.close();
  });
});

describe.skipIf(missing)('closing the window', () => {
  it('should ask nothing when nothing is unsaved', async () => {
    const desktop = await open();
    await pressClose(desktop);
    await ended(desktop);
  });

  it('should ask once, stay when cancelled, and take the escape key for that', async () => {
    const desktop = await open();
    const { page } = desktop;
    await change(desktop);
    for (const cancel of [() => page.keyboard.press('Escape'), () => answerQuestion(page, words.questions.unsaved.cancel)]) {
      await pressClose(desktop);
      await page.getByRole('alertdialog').waitFor();
      await pressClose(desktop);
      await page.waitForTimeout(150);
      await expect.poll(() => page.getByRole('alertdialog').count()).toBe(1);
      await desktop.shoot('files-question-close');
      await cancel();
      await page.getByRole('alertdialog').waitFor({ state: 'detached' });
      await expect.poll(() => windowCount(desktop)).toBe(1);
    }
    await expect.poll(() => isMarkedUnsaved(page)).toBe(true);
    // By the keyboard alone: the safe answer has the focus.
    await pressClose(desktop);
    await page.getByRole('alertdialog').waitFor();
    // The window may be gone before the key is told to be released.
    await page.keyboard.press('Enter').catch(() => undefined);
    await ended(desktop);
    expect(await entered()).not.toBe('');
    await expect.poll(() => readRecoveries(userData)).toEqual([]);
  });

  it('should drop the work for good when told so', async () => {
    const before = await readFile(file);
    const desktop = await open();
    await change(desktop);
    await kept();
    await pressClose(desktop);
    await answerQuestion(desktop.page, words.questions.unsaved.discard).catch(() => undefined);
    await ended(desktop);
    expect(await readFile(file)).toEqual(before);
    await expect.poll(() => readRecoveries(userData)).toEqual([]);
  });

  it('should stay open when the save fails, and say why until it is solved', async () => {
    const desktop = await open();
    const { page } = desktop;
    await change(desktop);
    await rename(join(folder, 'plant'), join(folder, 'gone'));
    await pressClose(desktop);
    await page.getByRole('alertdialog').waitFor();
    await page.keyboard.press('Enter');
    await alertsOf(page).getByText('That folder is not there any more.').waitFor();
    await desktop.shoot('files-not-saved');
    await expect.poll(() => windowCount(desktop)).toBe(1);
    await page.waitForTimeout(300);
    await expect.poll(() => alertsOf(page).getByText('is not saved: grinder.case.json').count()).toBe(1);
    await rename(join(folder, 'gone'), join(folder, 'plant'));
    await alertsOf(page).getByRole('button', { name: words.alerts.again }).first().click();
    await waitUntilSaved(page);
    await expect.poll(() => alertsOf(page).count()).toBe(0);
    await desktop.close();
  });
});

describe.skipIf(missing)('a file changed by another program', () => {
  it('should be noticed, loaded when told so, and never be replaced unasked', async () => {
    const desktop = await open();
    const { page } = desktop;
    await change(desktop);
    await changeOutside('Changed by others');
    await page.keyboard.press('Control+s');
    await alertsOf(page).getByText('Another program changed grinder.case.json').waitFor();
    await desktop.shoot('files-changed-outside');
    expect((await readFile(file, 'utf8')).includes('Changed by others')).toBe(true);
    await expect.poll(() => isMarkedUnsaved(page)).toBe(true);
    await alertsOf(page).getByRole('button', { name: words.alerts.load }).click();
    await page.getByRole('alertdialog').waitFor();
    await desktop.shoot('files-question-revert');
    await answerQuestion(page, words.questions.revert.discard);
    await page.getByText('Changed by others').first().waitFor();
    await waitUntilSaved(page);
    await expect.poll(() => alertsOf(page).count()).toBe(0);
    await desktop.close();
  });

  it('should be replaced when the user says that his own shall stand', async () => {
    const desktop = await open();
    const { page } = desktop;
    await change(desktop);
    await changeOutside('Changed by others');
    await alertsOf(page).getByRole('button', { name: words.alerts.keepMine }).click();
    await waitUntilSaved(page);
    expect((await readFile(file, 'utf8')).includes('Changed by others')).toBe(false);
    expect(await entered()).not.toBe('');
    await desktop.close();
  });

  it('should not be taken for changed when only its time is another', async () => {
    const desktop = await open();
    await change(desktop);
    await utimes(file, new Date(), new Date(Date.now() + 60_000));
    await desktop.page.keyboard.press('Control+s');
    await waitUntilSaved(desktop.page);
    await desktop.close();
  });

  it('should be told of when it is gone', async () => {
    const desktop = await open();
    await rm(file);
    await alertsOf(desktop.page).getByText('is not there any more').waitFor();
    await desktop.shoot('files-gone');
    await alertsOf(desktop.page).getByRole('button', { name: words.alerts.saveThere }).click();
    await expect
      .poll(() =>
        stat(file).then(
          () => true,
          () => false,
        ),
      )
      .toBe(true);
    await desktop.close();
  });
});

describe.skipIf(missing)('unsaved work of a run that was ended', () => {
  const leaveWork = async () => {
    const desktop = await open();
    await change(desktop);
    await kept();
    await killHard(desktop);
  };

  it('should be back, with both dates, and be undone by going back to the saved file', async () => {
    const before = await readFile(file);
    await leaveWork();
    const desktop = await launchDesktop({ userData });
    const { page } = desktop;
    await alertsOf(page)
      .getByText(/Restored: your unsaved work of .*\d\d:\d\d.*on the disk is older: .*\d\d:\d\d/)
      .waitFor();
    await desktop.shoot('files-restored');
    await expect.poll(() => isMarkedUnsaved(page)).toBe(true);
    await alertsOf(page).getByRole('button', { name: words.alerts.goBack }).click();
    await answerQuestion(page, words.questions.revert.discard);
    await waitUntilSaved(page);
    expect(await readFile(file)).toEqual(before);
    await expect.poll(() => readRecoveries(userData)).toEqual([]);
    await desktop.close();
  });

  it.each([
    [words.questions.recovery.restore, true, 1],
    [words.questions.recovery.discard, false, 0],
    [words.questions.recovery.later, false, 1],
  ])('should not go over a file that is newer: %s', async (answer, unsaved, left) => {
    await leaveWork();
    await changeOutside('Changed by others');
    const newer = await readFile(file);
    const desktop = await launchDesktop({ userData });
    const { page } = desktop;
    await page.getByRole('alertdialog').getByText('display').first().waitFor();
    await desktop.shoot('files-question-recovery');
    expect(await seriousFindings(desktop.page)).toEqual([]);
    await answerQuestion(page, answer);
    await expect.poll(() => isMarkedUnsaved(page)).toBe(unsaved);
    expect(await readFile(file)).toEqual(newer);
    await expect.poll(() => readRecoveries(userData)).toHaveLength(left);
    await killHard(desktop);
  });

  it('should be back after the window itself was lost', async () => {
    const desktop = await open();
    await change(desktop);
    await kept();
    await desktop.app.evaluate(async ({ BrowserWindow }) => {
      const contents = BrowserWindow.getAllWindows()[0]?.webContents;
      const loaded = new Promise((resolve) => contents?.once('did-finish-load', () => resolve(undefined)));
      contents?.forcefullyCrashRenderer();
      await loaded;
    });
    await expect
      .poll(() =>
        desktop.app.evaluate(({ BrowserWindow }) =>
          BrowserWindow.getAllWindows()[0]?.webContents.executeJavaScript('document.body.innerText'),
        ),
      )
      .toContain('Restored: your unsaved work');
    await killHard(desktop);
  });

  it('should be set aside and told of when it is damaged', async () => {
    await mkdir(join(userData, 'recovery'), { recursive: true });
    await writeFile(join(userData, 'recovery', '01234567-89ab-4def-8123-456789abcdef.recovery.json'), '{"format": "linkwright-rec');
    const desktop = await launchDesktop({ userData });
    await desktop.page.getByRole('dialog').getByText('A recovery copy cannot be read').waitFor();
    await desktop.shoot('files-recovery-damaged');
    expect(await readdir(join(userData, 'recovery'))).toEqual(['01234567-89ab-4def-8123-456789abcdef.recovery.damaged']);
    await desktop.close();
  });
});

describe.skipIf(missing)('a case beside its cabinet', () => {
  it('should say that the cabinet has changed since, and take today’s when told so', async () => {
    const parsed = parseCaseFile(await readFile(file));
    if (!parsed.ok) throw new Error('the sample does not open');
    const { cabinet } = parsed.value;
    const [first, ...rest] = cabinet.units ?? [];
    if (!first) throw new Error('the sample has no unit');
    const today = { ...cabinet, revision: '99', units: [{ ...first, designation: '-TB9' }, ...rest] };
    await writeFile(join(folder, 'plant', 'grinder.cabinet.json'), serializeCabinet(today));
    const desktop = await open();
    const { page } = desktop;
    await alertsOf(page).getByText('grinder.cabinet.json has changed since this case was saved').waitFor();
    await alertsOf(page).getByText('1 unit').waitFor();
    await desktop.shoot('files-cabinet-changed');
    await alertsOf(page).getByRole('button', { name: words.alerts.useToday }).click();
    await page.getByRole('button', { name: /^-TB9, / }).waitFor();
    await page.keyboard.press('Control+s');
    await waitUntilSaved(page);
    const saved = parseCaseFile(await readFile(file));
    expect(saved.ok && [saved.value.cabinetRevision, saved.value.cabinet.revision]).toEqual(['99', '99']);
    await desktop.close();
  });

  it('should say nothing when it is the same', async () => {
    await copyFile(sample('three-units.cabinet.json'), join(folder, 'plant', 'grinder.cabinet.json'));
    const desktop = await open();
    await desktop.page.waitForTimeout(300);
    await expect.poll(() => alertsOf(desktop.page).count()).toBe(0);
    await desktop.close();
  });
});
