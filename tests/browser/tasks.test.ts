import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { enterFirstLook, enterLaterLook, expectAnswer, openTask } from '../tasks/enterTask.ts';
import { readTaskCases } from '../tasks/taskCases.ts';

const missing = await whyMissing('Chromium', findChromium);
const tasks = readTaskCases();

describe.skipIf(missing)('every sample case, entered as a user would', () => {
  let launched: LaunchedPage;
  beforeAll(async () => {
    launched = await launchPage({ width: 1440, height: 900, reducedMotion: true });
  });
  afterAll(() => launched.close());

  it.each(tasks)('should lead to the true cause, and to nothing that can be told from it: $name', async (task) => {
    await openTask(launched.page, task);
    const [, ...later] = task.looks;
    await enterFirstLook(launched.page, task);
    await expectAnswer(launched.page, task, 1);
    for (const [index, look] of later.entries()) {
      await enterLaterLook(launched.page, task, look);
      await expectAnswer(launched.page, task, index + 2);
    }
  });

  it('should be a whole task by keyboard alone, from an open cabinet to the chosen suspect', async () => {
    const { page } = launched;
    const press = async (...keys: readonly string[]) => {
      for (const key of keys) await page.keyboard.press(key);
    };
    const task = tasks.find(({ name }) => name === 'two-chains.1');
    if (!task) throw new Error('no such task');
    const find = await openTask(page, task);
    // From here on nothing but keys: the focus is never set by the test.
    await page.evaluate(() => (document.activeElement instanceof HTMLElement ? document.activeElement.blur() : undefined));
    await press('e');
    await page.getByRole('dialog', { name: 'What -TB1 shows' }).waitFor();
    await press('2', '4', '3', '2', '2', '2');
    await press('Escape');
    await press('ArrowUp', 'r');
    await page.getByRole('dialog', { name: 'What the controller reports of chain 1' }).waitFor();
    await press('2', 'Enter');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => find.answer.textContent()).toMatch(/-WH3/);
    // On to the suspects, and the second one laid over the cabinet.
    for (let stop = 0; stop < 12; stop += 1) {
      await press('F6');
      if ((await page.evaluate(() => document.activeElement?.id)) === 'suspects') break;
    }
    await press('Tab', 'Tab', 'Enter');
    const chosen = await page.evaluate(() => document.activeElement?.getAttribute('aria-pressed'));
    expect(chosen).toBe('true');
    await expect.poll(() => find.unit('-TB2').getAttribute('aria-label')).toContain('Predicted');
  });
});
