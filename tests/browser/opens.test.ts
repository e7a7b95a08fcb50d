import { describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('the page in Chromium', () => {
  it('should open without a complaint', async () => {
    const { page, shoot, close } = await launchPage();
    await expect.poll(() => page.locator('#root').textContent()).toContain('Linkwright');
    await shoot('page-opens');
    await close();
  });
});
