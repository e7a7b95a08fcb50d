import { describe, expect, it } from 'vitest';
import { debrief } from '../../engine/exercise/index.ts';
import { debriefWords, practiceWords, solvedWords, windowTexts } from '../../engine/messages/index.ts';
import { readyGame } from '../exercise/readyGames.ts';
import { readyExercises } from '../samples/exercises.ts';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { hiddenWords, lookInto } from './practiceSecrets.ts';

const missing = await whyMissing('Chromium', findChromium);
const slow = 240_000;

async function openPractice(options: Parameters<typeof launchPage>[0] = {}): Promise<LaunchedPage> {
  const launched = await launchPage({ width: 1440, height: 900, ...options });
  await launched.page.keyboard.press('Alt+3');
  await launched.page
    .getByRole('button', { name: /^Start: / })
    .first()
    .waitFor();
  return launched;
}

describe.skipIf(missing)('Practice', () => {
  it(
    'should let every ready exercise be solved, and keep its answer out of the page until the end',
    async () => {
      const launched = await openPractice();
      const { page } = launched;
      for (const { file } of readyExercises) {
        const { game, answer, exercise } = readyGame(file);
        const looked = debrief(game, answer, [{ do: 'give-up' }]);
        if (looked === null) throw new Error('not ended');
        await page.getByRole('button', { name: `Start: ${exercise.name}` }).click();
        await page.getByRole('group', { name: practiceWords.steps }).waitFor({ timeout: 60_000 });
        for (const [index, { step }] of looked.plan.entries()) {
          await page.getByRole('group', { name: practiceWords.suspects }).getByRole('checkbox').first().check();
          const at = game.steps.findIndex(({ id }) => id === step);
          await page.getByRole('group', { name: practiceWords.steps }).getByRole('radio').nth(at).check();
          await page.getByRole('group', { name: practiceWords.predict }).getByRole('radio').first().check();
          const cautions = page.getByRole('group', { name: practiceWords.cautions }).getByRole('checkbox');
          for (const caution of await cautions.all()) await caution.check();
          if (index > 0) {
            const inside = await lookInto(page);
            for (const hidden of hiddenWords({ game, answer, exercise })) expect(inside).not.toContain(hidden);
          }
          await page.getByRole('button', { name: practiceWords.doIt }).click();
          await expect.poll(() => page.locator('.practice-done li').count()).toBe(index + 1);
        }
        if (exercise.solved === 'mended') await page.getByRole('button', { name: practiceWords.handOver }).click();
        else {
          await page.getByRole('combobox', { name: practiceWords.answer }).selectOption(looked.trueAnswer);
          await page.getByRole('button', { name: practiceWords.name }).click();
        }
        await page.getByRole('heading', { name: /^Right: / }).waitFor();
        await expect.poll(() => page.locator('main').textContent()).toContain(answer.story);
        await expect.poll(() => page.locator('.practice-unsafe').count()).toBe(0);
        if (file.includes('quiet-unit')) await launched.shoot('practice-debrief-1440-light');
        await page.getByRole('button', { name: practiceWords.back }).click();
        await page.getByText(solvedWords.mended.label).first().waitFor();
      }
      await launched.close();
    },
    slow,
  );

  it.each(['light', 'dark'] as const)(
    'should pass the automatic check, and be played by keyboard alone: %s',
    async (theme) => {
      const launched = await openPractice({ width: 1280, height: 720, theme });
      const { page } = launched;
      expect(await seriousFindings(launched.page)).toEqual([]);
      await launched.shoot(`practice-list-1280-${theme}`);
      await page.getByRole('button', { name: 'Start: Two neighbours' }).focus();
      await page.keyboard.press('Enter');
      const suspects = page.getByRole('group', { name: practiceWords.suspects }).getByRole('checkbox');
      await suspects.first().waitFor({ timeout: 60_000 });
      // The keyboard stands at the head of what appeared, there and after the end.
      const focused = () => page.evaluate(() => document.activeElement?.tagName);
      expect(await focused()).toBe('H1');
      await suspects.first().focus();
      await page.keyboard.press('Space');
      const steps = page.getByRole('group', { name: practiceWords.steps }).getByRole('radio');
      await steps.first().focus();
      await page.keyboard.press('Space');
      const outcomes = page.getByRole('group', { name: practiceWords.predict }).getByRole('radio');
      await outcomes.first().focus();
      await page.keyboard.press('Space');
      expect(await seriousFindings(launched.page)).toEqual([]);
      await launched.shoot(`practice-play-1280-${theme}`);
      await page.getByRole('button', { name: practiceWords.doIt }).focus();
      await page.keyboard.press('Enter');
      await expect.poll(() => page.locator('.practice-done li').count()).toBe(1);
      await page.getByRole('button', { name: practiceWords.giveUp }).focus();
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { name: /^Given up: / }).waitFor();
      expect(await focused()).toBe('H1');
      // The cabinet was opened live, and nobody said so.
      await expect.poll(() => page.locator('.practice-unsafe').count()).toBe(1);
      expect(await seriousFindings(launched.page)).toEqual([]);
      await launched.shoot(`practice-debrief-1280-${theme}`);
      // The menu leads back to the list, unless a code was typed that is not saved yet.
      const toList = async () => {
        await page
          .getByRole('navigation', { name: windowTexts.menus.all })
          .getByRole('button', { name: windowTexts.menus.practice })
          .click();
        await page.getByRole('menuitem', { name: windowTexts.commands.practiceExercises, exact: true }).click();
      };
      await page.getByLabel(practiceWords.code).fill('kiln');
      await toList();
      await page.getByText(debriefWords.notSaved).waitFor();
      await page.getByLabel(practiceWords.code).fill('');
      await toList();
      await page.getByRole('heading', { name: practiceWords.ready }).waitFor();
      await launched.close();
    },
    slow,
  );
});
