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
});
