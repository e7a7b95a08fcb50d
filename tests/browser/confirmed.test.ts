import { mkdir } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { confirmedCases } from '../samples/confirmed.ts';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { openRepair } from './repairDriver.ts';

const missing = await whyMissing('Chromium', findChromium);
const shots = process.env['CONFIRMED_SHOTS'];

async function shoot(page: Page, name: string) {
  if (shots === undefined) return;
  await mkdir(shots, { recursive: true });
  for (const [width, height] of [
    [1280, 720],
    [1920, 1080],
  ] as const) {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize({ width, height });
      await page.emulateMedia({ colorScheme });
      await page.waitForTimeout(300);
      await page.screenshot({ path: `${shots}/${name}-${width}-${colorScheme}.png` });
    }
  }
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.emulateMedia({ colorScheme: 'light' });
}

describe.skipIf(missing)('Confirmed cases', () => {
  let launched: LaunchedPage;
  beforeAll(async () => {
    launched = await launchPage({ width: 1440, height: 900, reducedMotion: true, keepsWork: true });
  });
  afterAll(() => launched.close());

  it('should be kept by one key, shown with what they changed, and sharpen the rates of the next case', { timeout: 120_000 }, async () => {
    const { page } = launched;
    const proved = confirmedCases['qg7-0203.1.case.json'];
    const cabinet = proved && checkCabinet(proved.cabinet).cabinet;
    if (!proved || !cabinet) throw new Error('no sample');
    await openRepair(page, cabinet, proved.evidence);
    const rates = page.locator('#suspects .rates-basis');
    await page.getByRole('heading', { name: /^The machine runs: proved/ }).waitFor({ timeout: 60_000 });
    await page.keyboard.press('h');
    const handBack = page.getByRole('dialog', { name: 'Hand the machine back' });
    await handBack.getByText('The cause is proved.', { exact: false }).waitFor();
    // Whoever saw what was wrong names it; else the case is shared out.
    const named = handBack.getByRole('combobox', { name: 'What was wrong with it' });
    await expect.poll(() => named.locator('option:checked').textContent()).toBe('Nobody saw it: shared out by the rates');
    await shoot(page, 'hand-back');
    await named.selectOption({ label: 'Lower plug of cable -WH2: fouled' });
    await page.keyboard.press('Tab');
    await page.keyboard.press('k');
    await handBack.getByText('Kept. Keep it again if something in it has changed since.').waitFor();
    await handBack.getByRole('button', { name: 'Show confirmed cases…' }).press('Enter');

    const dialog = page.getByRole('dialog', { name: 'Confirmed cases' });
    await dialog.getByText('nothing leaves it', { exact: false }).waitFor();
    await dialog.getByText(/^Plug: fouled 100 %/).waitFor();
    await dialog.getByText('Only this case is confirmed yet', { exact: false }).waitFor();
    await dialog.getByText(/“QE drive 2”, revision 07: in 1 confirmed case/).waitFor();
    const strength = dialog.getByRole('textbox', { name: 'Confirmed cases that an assumed rate is worth' });
    await strength.fill('0,5');
    await dialog.getByText('Each assumed rate is worth 0.5 confirmed cases', { exact: false }).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await shoot(page, 'dialog');
    await dialog.getByRole('button', { name: /^Remove / }).press('Enter');
    await dialog.getByRole('button', { name: 'Put it back' }).press('Enter');
    await dialog.getByText(/^Plug: fouled 100 %/).waitFor();
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });

    // It outlasts the window, and the next case stands on it.
    await page.reload();
    await page.getByRole('button', { name: 'Cabinet', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Confirmed cases…' }).click();
    await dialog.getByText(/^Plug: fouled 100 %/).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'File' }).click();
    await page.getByRole('menuitem', { name: /^New case/ }).click();
    const discard = page.getByRole('alertdialog').getByRole('button', { name: 'Do not save' });
    await discard.click();
    await page.keyboard.press('e');
    await page.keyboard.press('4');
    await page.keyboard.press('Escape');
    await expect.poll(() => rates.textContent()).toBe('rates sharpened by 1 confirmed case');
    await shoot(page, 'find');
    await rates.press('Enter');
    await page.getByRole('dialog', { name: 'Fault rates' }).getByRole('button', { name: 'Confirmed cases…' }).press('Enter');
    await dialog.getByRole('radio', { name: 'Assumed rates' }).press(' ');
    await page.keyboard.press('Escape');
    await expect.poll(() => rates.textContent()).toBe('rates assumed');
    await page.keyboard.press('Control+z');
    await expect.poll(() => rates.textContent()).toBe('rates sharpened by 1 confirmed case');
    // What behaved otherwise is told at the suspects, with the way to settle it.
    await page.locator('#suspects').getByRole('button', { name: 'Settle it by a staged break…' }).first().press('Enter');
    await page.getByRole('dialog').getByText('QE drive 2').first().waitFor();
  });
});
