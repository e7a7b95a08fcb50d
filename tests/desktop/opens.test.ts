import { describe, expect, it } from 'vitest';
import { findDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);

describe.skipIf(missing)('the desktop program', () => {
  it('should open its window on the page without a complaint', async () => {
    const { page, shoot, close } = await launchDesktop();
    expect(page.url()).toBe('linkwright://app/index.html');
    await expect.poll(() => page.locator('#root').textContent()).toContain('Linkwright');
    // The search runs in a worker, which the page's policy must let through.
    await page.getByText('likely').first().waitFor();
    await shoot('desktop-opens');
    await close();
  });

  it('should enlarge the text, and close, from its own menus', async () => {
    const { app, page, close } = await launchDesktop();
    const choose = async (menu: string, line: string) => {
      await page.getByRole('button', { name: menu, exact: true }).click();
      await page.getByRole('menuitem', { name: line }).click();
    };
    const width = await page.evaluate(() => window.innerWidth);
    await choose('View', 'Larger text');
    await expect.poll(() => page.evaluate(() => window.innerWidth)).toBeLessThan(width);
    await choose('View', 'Text of normal size');
    await expect.poll(() => page.evaluate(() => window.innerWidth)).toBe(width);
    const gone = app.waitForEvent('close');
    await choose('File', 'Quit').catch(() => undefined);
    await gone;
    await close();
  });
});
