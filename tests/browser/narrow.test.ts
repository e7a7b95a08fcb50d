import { describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { driveFind } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

/** Larger text makes the window small: 1280 × 720 at two and at four steps of a fifth; and a small window at usual text. */
describe.skipIf(missing).each([
  [889, 500],
  [617, 347],
  [800, 600],
])('a window of %i × %i', (width, height) => {
  it('should stack what stands side by side elsewhere, lose nothing at its sides, and let everything be reached and pressed', async () => {
    const launched = await launchPage({ width, height, reducedMotion: true });
    const { page } = launched;
    const find = driveFind(page);
    await find.answer.getByText('likely').waitFor();
    await page.locator('#step[aria-busy="false"] .planning').waitFor({ timeout: 60_000 });
    const lostAtTheSide = await page.evaluate(() =>
      [...document.querySelectorAll('.menu-bar button, .answer button, .side button, .caution button')]
        .filter((one) => one.getBoundingClientRect().right > window.innerWidth + 1)
        .map((one) => one.textContent),
    );
    expect(lostAtTheSide).toEqual([]);
    // The cautions stand at the lower edge wherever one is.
    const atLowerEdge = () => page.locator('#caution').evaluate((one) => Math.round(one.getBoundingClientRect().bottom));
    expect(await atLowerEdge()).toBe(height);
    await page.getByRole('button', { name: /^machine runs/ }).scrollIntoViewIfNeeded();
    expect(await atLowerEdge()).toBe(height);
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('button', { name: /^machine runs/ }).click();
    await find.answer.getByText('The machine runs').waitFor();
    // The grid keeps its width, and is pushed to and fro by itself.
    await expect.poll(() => page.locator('.grid').evaluate((one) => one.getBoundingClientRect().width)).toBeGreaterThan(800);
    await expect.poll(() => page.evaluate(() => document.querySelector('.app')?.scrollWidth ?? 0)).toBeLessThanOrEqual(width);
    // The way back to usual text is in sight, and so is every workspace.
    await page.getByRole('button', { name: 'View', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Zoom in' }).waitFor();
    await page.keyboard.press('Escape');
    // Every command is a line of its own, in its whole width.
    await page.keyboard.press('Control+Shift+p');
    const command = page.getByRole('dialog', { name: 'All commands' }).getByRole('menuitem', { name: /^Open a cabinet or a case/ });
    await expect.poll(() => command.evaluate((one) => one.getBoundingClientRect().height)).toBeLessThan(40);
    await page.keyboard.press('Escape');
    for (const workspace of ['Draw', 'Practice', 'Find']) {
      await page.locator('.workspaces').getByRole('button', { name: workspace }).click();
      await page.getByRole('main').first().waitFor();
    }
    await launched.close();
  });
});
