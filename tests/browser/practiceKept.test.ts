import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { serializeExercise, serializeResult } from '../../engine/cabinet/index.ts';
import { debrief, makeResult } from '../../engine/exercise/index.ts';
import { classWords, makeWords, practiceTabWords, practiceWords, windowTexts } from '../../engine/messages/index.ts';
import { sealAnswer } from '../../engine/sealing/index.ts';
import { readyGame } from '../exercise/readyGames.ts';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { hiddenWords, lookInto } from './practiceSecrets.ts';

const missing = await whyMissing('Chromium', findChromium);
const slow = 240_000;

const neighbours = readyGame('neighbours');

/** Drops a file onto the window, as from the file manager. */
async function dropFile({ page }: LaunchedPage, name: string, text: string): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([file, content]) => {
      const data = new DataTransfer();
      data.items.add(new File([content ?? ''], file ?? '', { type: 'application/json' }));
      return data;
    },
    [name, text],
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
}

async function takeFirstStep({ page }: LaunchedPage): Promise<void> {
  await page.getByRole('group', { name: practiceWords.steps }).waitFor({ timeout: 60_000 });
  await page.getByRole('group', { name: practiceWords.suspects }).getByRole('checkbox').first().check();
  await page.getByRole('group', { name: practiceWords.steps }).getByRole('radio').first().check();
  await page.getByRole('group', { name: practiceWords.predict }).getByRole('radio').first().check();
  await page.getByRole('button', { name: practiceWords.doIt }).click();
  await expect.poll(() => page.locator('.practice-done li').count()).toBe(1);
}

describe.skipIf(missing)('an exercise that is being made', () => {
  it(
    'should be there again after a reload, and wait aside when another is begun',
    async () => {
      const launched = await launchPage({ keepsWork: true });
      const { page } = launched;
      const make = async () => {
        await page.keyboard.press('Alt+3');
        await page.getByRole('button', { name: practiceTabWords.make, exact: true }).click();
      };
      await make();
      await page.getByRole('button', { name: makeWords.hide }).click();
      await page.getByLabel(makeWords.story).fill('A tool box was set down on it.');
      await expect.poll(async () => (await lookInto(page)).includes('linkwright-drafts')).toBe(true);
      await page.reload();
      await page.waitForSelector('#root:not(:empty)');
      await make();
      await expect.poll(() => page.getByLabel(makeWords.story).inputValue()).toContain('tool box');
      await page.getByRole('heading', { name: makeWords.holds }).waitFor({ timeout: 60_000 });
      await page.getByRole('button', { name: makeWords.again }).click();
      await expect.poll(() => page.getByLabel(makeWords.story).inputValue()).toBe('');
      await launched.shoot('practice-make-aside');
      expect(await seriousFindings(page)).toEqual([]);
      await page.getByRole('button', { name: /^Go on: / }).press('Enter');
      await expect.poll(() => page.getByLabel(makeWords.story).inputValue()).toContain('tool box');
      await launched.close();
    },
    slow,
  );
});

describe.skipIf(missing)('a play in the window', () => {
  it(
    'should survive a reload, keep its answer out of everything that is stored, and be gone once it is left',
    async () => {
      const launched = await launchPage({ keepsWork: true });
      const { page } = launched;
      await page.keyboard.press('Alt+3');
      await page.getByRole('button', { name: `${practiceWords.start}: ${neighbours.exercise.name}` }).click();
      await takeFirstStep(launched);
      await expect.poll(async () => (await lookInto(page)).includes('linkwright-play')).toBe(true);
      await page.reload();
      await page.getByText(practiceWords.resumed(neighbours.exercise.name)).first().waitFor({ timeout: 60_000, state: 'attached' });
      await expect.poll(() => page.locator('.practice-done li').count()).toBe(1);
      const inside = await lookInto(page);
      for (const hidden of hiddenWords(neighbours)) expect(inside).not.toContain(hidden);
      // The end is kept too, until it is left.
      await page.getByRole('button', { name: practiceWords.giveUp }).click();
      await page.getByRole('heading', { name: /^Given up: / }).waitFor();
      // The search would have found it: now that it is told, it does.
      await expect.poll(() => lookInto(page)).toContain(neighbours.answer.story);
      await page.reload();
      await page.getByRole('heading', { name: /^Given up: / }).waitFor({ timeout: 60_000 });
      await page.getByRole('button', { name: practiceWords.back }).click();
      await expect.poll(async () => (await lookInto(page)).includes('linkwright-play')).toBe(false);
      await launched.close();
    },
    slow,
  );

  it(
    'should wait in the list once it is left in the middle, over other exercises and a reload, until it is given up',
    async () => {
      const { name } = neighbours.exercise;
      const launched = await launchPage({ keepsWork: true });
      const { page } = launched;
      await page.keyboard.press('Alt+3');
      await page.getByRole('button', { name: `${practiceWords.start}: ${name}` }).click();
      await takeFirstStep(launched);
      await page.getByRole('button', { name: practiceWords.back }).click();
      await page.getByRole('heading', { name: practiceWords.left }).waitFor();
      // Another one is played, and left untouched: nothing of it waits.
      await page.getByRole('button', { name: `${practiceWords.start}: ${readyGame('power').exercise.name}` }).click();
      await page.getByRole('group', { name: practiceWords.steps }).waitFor({ timeout: 60_000 });
      await page.getByRole('button', { name: practiceWords.back }).click();
      await expect.poll(() => page.locator('.practice-left li').count()).toBe(1);
      await expect.poll(async () => (await lookInto(page)).includes('"left":true')).toBe(true);
      await page.reload();
      // It was left, not interrupted: it waits, and nothing jumps to it.
      await page.waitForSelector('#root:not(:empty)');
      await page.keyboard.press('Alt+3');
      await page.getByRole('button', { name: practiceWords.goOnWith(name) }).click();
      await expect.poll(() => page.locator('.practice-done li').count()).toBe(1);
      await page.getByRole('button', { name: practiceWords.back }).click();
      await page.getByRole('button', { name: practiceWords.forgetLeft(name) }).click();
      await expect.poll(() => page.getByRole('heading', { name: practiceWords.left }).count()).toBe(0);
      await expect.poll(async () => (await lookInto(page)).includes('linkwright-play')).toBe(false);
      await launched.close();
    },
    slow,
  );

  it(
    'should open an exercise that is dropped, ask for its passphrase again after a reload, and take a result into the table',
    async () => {
      const launched = await launchPage({ keepsWork: true });
      const { page } = launched;
      const { exercise, answer, game } = neighbours;
      const sealed = await sealAnswer(answer, 'take your time', { workFactor: 8 });
      await dropFile(launched, 'own.exercise.json', serializeExercise({ ...exercise, sealed }));
      await page.getByRole('heading', { name: practiceWords.sealedTitle }).waitFor();
      await page.getByLabel(practiceWords.passphrase).fill('wrong');
      await page.getByRole('button', { name: practiceWords.unseal }).click();
      await page.getByText('The seal does not open with this passphrase').waitFor();
      await page.getByLabel(practiceWords.passphrase).fill('take your time');
      await page.getByRole('button', { name: practiceWords.unseal }).click();
      await takeFirstStep(launched);
      await expect.poll(async () => (await lookInto(page)).includes('linkwright-play')).toBe(true);
      await expect.poll(() => lookInto(page)).not.toContain('take your time');
      await page.reload();
      await page.getByRole('heading', { name: practiceWords.resumedTitle(exercise.name) }).waitFor();
      await page.getByLabel(practiceWords.passphrase).fill('take your time');
      await page.getByRole('button', { name: practiceWords.unseal }).click();
      await expect.poll(() => page.locator('.practice-done li').count()).toBe(1);

      const looked = debrief(game, answer, [{ do: 'give-up' }]);
      if (looked === null) throw new Error('not ended');
      const result = serializeResult(makeResult(exercise, [{ do: 'give-up' }], looked, { code: 'B-07' }));
      await dropFile(launched, 'b.result.json', result);
      await page.getByRole('cell', { name: 'B-07' }).or(page.getByText('B-07')).first().waitFor();
      await expect.poll(() => page.locator('main').textContent()).toContain(classWords.title);
      // Another exercise does not take the place of the one that is played.
      await dropFile(launched, 'other.exercise.json', readFileSync('sample-cabinets/ready-01-counting.exercise.json', 'utf8'));
      await page.getByText(practiceWords.playGoesOn('other.exercise.json')).first().waitFor({ state: 'attached' });
      await expect.poll(() => page.locator('.practice-done li').count()).toBe(1);
      await launched.close();
    },
    slow,
  );

  it(
    'should be printed: the exercise, the answer sheet with the passphrase alone, the debrief; and shown large by a key',
    async () => {
      const launched = await launchPage({ width: 1280, height: 720 });
      const { page } = launched;
      // The browser's dialogs for files cannot be pressed from a test; without them saving is a download.
      await page.addInitScript(() => Object.assign(window, { showSaveFilePicker: undefined }));
      await page.reload();
      await page.waitForSelector('#root:not(:empty)');
      await page.keyboard.press('Alt+3');
      await page.getByRole('button', { name: `${practiceWords.print}: ${neighbours.exercise.name}` }).click();
      const saved = async (button: string) => {
        const waiting = page.waitForEvent('download');
        await page.getByRole('button', { name: button, exact: true }).click();
        const download = await waiting;
        return readFileSync(await download.path());
      };
      expect((await saved(practiceWords.printSheet)).subarray(0, 5).toString()).toBe('%PDF-');
      await page.getByLabel(practiceWords.passphrase).fill('wrong');
      await page.getByRole('button', { name: practiceWords.printAnswer }).click();
      await page.getByText('The seal does not open with this passphrase').waitFor();
      await page.getByLabel(practiceWords.passphrase).fill('quillmere');
      await page.getByLabel(practiceWords.printForms.html).check();
      expect((await saved(practiceWords.printAnswer)).toString()).toContain(neighbours.answer.story);
      await launched.shoot('practice-print-1280-light');
      await page.getByRole('button', { name: practiceWords.back }).click();
      await page.getByRole('button', { name: `${practiceWords.start}: ${neighbours.exercise.name}` }).click();
      await takeFirstStep(launched);
      await page.locator('#practice').focus();
      await page.keyboard.press('p');
      await page.locator('.practice-large').waitFor();
      await expect
        .poll(() => page.getByRole('button', { name: windowTexts.commands.practiceProjector }).getAttribute('aria-pressed'))
        .toBe('true');
      await page.getByRole('button', { name: practiceWords.giveUp }).click();
      await page.getByRole('heading', { name: /^Given up: / }).waitFor();
      expect((await saved(practiceWords.printDebrief)).subarray(0, 5).toString()).toBe('%PDF-');
      await launched.close();
    },
    slow,
  );
});
