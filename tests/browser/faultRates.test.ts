import { describe, expect, it } from 'vitest';
import { rateTableWords as words } from '../../engine/messages/index.ts';
import { findChromium } from '../support/chromium.ts';
import { launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { driveFind } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('the fault rates in the window', () => {
  it('should say where each comes from, take the user’s own with its source, rank by them at once, and give the assumed ones back', async () => {
    const launched = await launchPage({ reducedMotion: true });
    const { page } = launched;
    const find = driveFind(page);
    await find.answer.getByText('84 %').waitFor();
    await page.locator('#suspects .rates-basis').press('Enter');
    const dialog = page.getByRole('dialog', { name: words.title });
    const row = (kind: string) => dialog.getByRole('row', { name: kind });
    await row('Communication board: up port, receiver dead').getByText(words.assumed).waitFor();
    const field = dialog.getByRole('textbox', { name: words.field('Communication board: up port, receiver dead', words.heads.rate) });
    await expect.poll(() => field.inputValue()).toBe('0.6');
    await field.fill('many');
    await field.press('Enter');
    await dialog.getByRole('alert').getByText(words.badFigure(null)).waitFor();
    await field.fill('60,5');
    await field.press('Enter');
    const source = dialog.getByRole('textbox', { name: words.field('Communication board: up port, receiver dead', words.heads.origin) });
    await source.fill('service records');
    await source.press('Enter');
    await expect.poll(() => field.inputValue()).toBe('60.5');
    expect(await seriousFindings(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await find.answer.getByText('board').waitFor();
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await find.answer.getByText('84 %').waitFor();
    await launched.close();
  });
});
