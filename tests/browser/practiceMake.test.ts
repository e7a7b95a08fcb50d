import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseExerciseFile, serializeResult } from '../../engine/cabinet/index.ts';
import { debrief, makeResult } from '../../engine/exercise/index.ts';
import { classWords, generateWords, makeWords, practiceWords, windowTexts } from '../../engine/messages/index.ts';
import { openSeal } from '../../engine/sealing/index.ts';
import { readyGame } from '../exercise/readyGames.ts';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { driveInject } from './injectDriver.ts';

const missing = await whyMissing('Chromium', findChromium);
const passphrase = 'kiln and quartz';
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linkwright-class-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** The page where files are saved as downloads. */
async function open(options: Parameters<typeof launchPage>[0] = {}): Promise<LaunchedPage> {
  const launched = await launchPage(options);
  await launched.page.addInitScript(() => Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined }));
  await launched.page.waitForLoadState('networkidle');
  await launched.page.reload();
  await launched.page.waitForSelector('#root:not(:empty)');
  return launched;
}

/** What the page saves, as text. */
async function saved(page: LaunchedPage['page'], save: () => Promise<void>): Promise<{ readonly name: string; readonly text: string }> {
  const coming = page.waitForEvent('download', { timeout: 60_000 });
  await save();
  const file = await coming;
  return { name: file.suggestedFilename(), text: await readFile(await file.path(), 'utf8') };
}

async function typePassphrase(page: LaunchedPage['page'], again = passphrase): Promise<void> {
  await page.getByLabel(makeWords.passphrase, { exact: true }).fill(passphrase);
  await page.getByLabel(makeWords.passphraseAgain).fill(again);
}

describe.skipIf(missing)('an instructor', () => {
  it('should make an exercise of an injected fault by keyboard, be told what cannot be decided, seal it, and play it', async () => {
    const launched = await open({ width: 1280, height: 720, theme: 'light' });
    const { page } = launched;
    await page.locator('body').press('i');
    await driveInject(page).inject('Cable -WH3', 'cut, both fibres');
    await page.getByRole('button', { name: makeWords.ofInjected }).press('Enter');
    const plan = page.getByRole('complementary', { name: makeWords.plan });
    await plan.getByRole('heading', { name: makeWords.holds }).waitFor({ timeout: 60_000 });
    await page.getByRole('region', { name: makeWords.hidden }).getByText('Cable -WH3', { exact: true }).waitFor();
    await expect.poll(() => plan.locator('.make-plan li').count()).toBeGreaterThan(0);
    expect(await seriousFindings(launched.page)).toEqual([]);
    await launched.shoot('practice-make-1280-light');

    // Without any look it cannot be decided; the answers that stay are named in words.
    const steps = page.getByRole('region', { name: makeWords.steps }).getByRole('checkbox');
    for (const box of await steps.all()) if (await box.isChecked()) await box.press(' ');
    await plan.getByText('Allow at least one step.').waitFor();
    await steps.first().press(' ');
    await plan.getByRole('heading', { name: makeWords.refused }).waitFor({ timeout: 60_000 });
    await expect.poll(() => plan.textContent()).toMatch(/No allowed step can decide between .*-WH3 with plugs and route/);
    await page.getByRole('button', { name: makeWords.asProposed }).press('Enter');
    await plan.getByRole('heading', { name: makeWords.holds }).waitFor({ timeout: 60_000 });

    const save = plan.getByRole('button', { name: makeWords.save });
    await typePassphrase(page, 'kiln and quarts');
    await plan.getByText(makeWords.passphraseDiffers).waitFor();
    await expect.poll(() => save.isDisabled()).toBe(true);
    await typePassphrase(page);
    const { name, text } = await saved(page, () => save.press('Enter'));
    expect(name).toMatch(/\.exercise\.json$/);
    expect(text).not.toContain(passphrase);
    const parsed = parseExerciseFile(text);
    const seal = parsed.ok ? await openSeal(parsed.value.sealed, passphrase) : null;
    expect(seal).toMatchObject({ ok: true, value: { faults: [{ item: 'cable', link: 'WH3', mode: 'cut' }] } });

    // What it hides is out of sight now, and comes back by the passphrase.
    const closed = page.getByRole('region', { name: makeWords.locked });
    await closed.getByText(name).waitFor({ timeout: 30_000 });
    await expect.poll(() => page.getByRole('region', { name: makeWords.hidden }).getByText(makeWords.nothingHidden).count()).toBe(1);
    await expect.poll(() => page.getByLabel(makeWords.passphrase, { exact: true }).inputValue()).toBe('');
    await closed.getByLabel(/^Passphrase of /).fill('kiln and quarts');
    await closed.getByRole('button', { name: makeWords.unlock }).press('Enter');
    await closed.getByText(makeWords.unlockWrong).waitFor({ timeout: 30_000 });
    await closed.getByLabel(/^Passphrase of /).fill(passphrase);
    await closed.getByRole('button', { name: makeWords.unlock }).press('Enter');
    await plan.getByRole('heading', { name: makeWords.holds }).waitFor({ timeout: 30_000 });
    await page.getByLabel(makeWords.passphrase, { exact: true }).fill('x');
    await plan.getByText('1 character: a program that guesses finds it within a minute').waitFor();
    await typePassphrase(page);

    await plan.getByRole('button', { name: makeWords.tryIt }).press('Enter');
    await page.getByRole('group', { name: practiceWords.steps }).waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: practiceWords.giveUp }).press('Enter');
    await page.getByRole('heading', { name: /^Given up: cable -WH3/i }).waitFor({ timeout: 60_000 });
    // After one of his own the first of the ready ones comes.
    await page.getByRole('button', { name: windowTexts.commands.practiceNext }).press('Enter');
    await page.getByRole('heading', { name: readyGame('counting').exercise.name }).waitFor({ timeout: 60_000 });
    await launched.close();
  }, 150_000);

  it('should generate a set with its figures, save it, and change one of it', async () => {
    const launched = await open({ width: 1280, height: 720, theme: 'dark' });
    const { page } = launched;
    await page.keyboard.press('Alt+3');
    await page.getByRole('navigation', { name: makeWords.screens }).getByRole('button', { name: 'Generate' }).press('Enter');
    await page.getByLabel(generateWords.count).fill('3');
    await page.getByLabel(practiceWords.seed).fill('7');
    await page.locator('form').getByRole('button', { name: generateWords.generate, exact: true }).press('Enter');
    await page.getByText(generateWords.made(3)).waitFor({ timeout: 60_000 });
    const rows = page.locator('tbody tr');
    await expect.poll(() => rows.count()).toBe(3);
    expect(await seriousFindings(launched.page)).toEqual([]);
    await launched.shoot('practice-generate-1280-dark');
    await typePassphrase(page);
    const title = (await rows.first().getByRole('rowheader').textContent()) ?? '';
    const { text } = await saved(page, () =>
      rows
        .first()
        .getByRole('button', { name: generateWords.saveName(title) })
        .press('Enter'),
    );
    const parsed = parseExerciseFile(text);
    expect(parsed.ok && parsed.value.name).toBe(title);
    // The seed would draw its answer again.
    expect(parsed.ok && parsed.value.seed).toBeUndefined();
    await rows.first().getByText(generateWords.saved, { exact: true }).waitFor();
    await expect
      .poll(() =>
        rows
          .first()
          .getByRole('button', { name: generateWords.editName(title) })
          .isDisabled(),
      )
      .toBe(true);
    await rows
      .nth(1)
      .getByRole('button', { name: /^Change: / })
      .press('Enter');
    await page
      .getByRole('complementary', { name: makeWords.plan })
      .getByRole('heading', { name: makeWords.holds })
      .waitFor({ timeout: 60_000 });
    await launched.close();
  }, 150_000);

  it('should see a class as a table that can be sorted and exported, with damaged files named', async () => {
    const { game, answer, exercise } = readyGame('neighbours');
    const looked = debrief(game, answer, [{ do: 'give-up' }]);
    if (looked === null) throw new Error('not ended');
    const files: string[] = [];
    for (const code of ['kiln 9', '=quartz 10', 'kiln 2']) {
      const text = serializeResult(makeResult(exercise, [{ do: 'give-up' }], looked, { code, seconds: 90 }));
      files.push(join(folder, `${files.length}.result.json`));
      await writeFile(files.at(-1) ?? '', files.length === 3 ? text.replace('"solved": false', '"solved": true') : text);
    }
    const launched = await open({ width: 1280, height: 720, theme: 'light' });
    const { page } = launched;
    await page.keyboard.press('Alt+3');
    await page.getByRole('navigation', { name: makeWords.screens }).getByRole('button', { name: 'Class' }).press('Enter');
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: classWords.files }).press('Enter');
    await (await chooser).setFiles(files);
    await page.getByText(classWords.count(2)).waitFor();
    await page.getByText('2.result.json').waitFor();
    await expect.poll(() => page.locator('.class-damaged').textContent()).toContain('checksum');
    await page.getByText(classWords.cannotDelete).waitFor();
    const codes = () => page.locator('tbody th').allTextContents();
    const byCode = page.getByRole('button', { name: classWords.heads.code });
    const before = await codes();
    await byCode.press('Enter');
    await expect.poll(() => codes()).toEqual([...before].reverse());
    await expect.poll(() => page.getByRole('columnheader', { name: classWords.heads.code }).getAttribute('aria-sort')).toBe('descending');
    expect(await seriousFindings(launched.page)).toEqual([]);
    await launched.shoot('practice-class-1280-light');
    const { name, text } = await saved(page, () => page.getByRole('button', { name: classWords.csv }).press('Enter'));
    expect(name).toBe('class.csv');
    expect(text).toContain("'=quartz 10");
    await launched.close();
  }, 150_000);
});
