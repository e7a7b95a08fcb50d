import { describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { bigCase, dropCase, lastDesignation } from './bigCabinet.ts';
import { driveEntry } from './entryDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('entering with a finger', () => {
  it.each([
    ['light', 1280, 720],
    ['dark', 1440, 900],
    ['high-contrast', 1920, 1080],
  ] as const)('should have targets of 44 px, and pass the automatic check: %s, %i × %i', async (theme, width, height) => {
    const entry = await driveEntry({ touch: true, theme, width, height, reducedMotion: true });
    const { page } = entry;
    /** Everything in the pop-up that a finger can strike, and the least side of each. */
    const tooSmall = () =>
      page
        .getByRole('dialog')
        .locator('button, select, input:not([type=file], [type=checkbox]), label:has([type=checkbox])')
        .evaluateAll((all) =>
          all
            .filter((element) => element.checkVisibility())
            .map((element) => ({ name: element.textContent || element.getAttribute('aria-label'), box: element.getBoundingClientRect() }))
            .filter(({ box }) => Math.min(box.width, box.height) < 44)
            .map(({ name, box }) => `${name} ${Math.round(box.width)} × ${Math.round(box.height)}`),
        );
    await entry.open('Two chains', 'nothing seen yet');
    await page
      .getByRole('button', { name: /^Enter displays/ })
      .first()
      .tap();
    await entry.asks('-TB1').waitFor();
    await expect.poll(() => tooSmall()).toEqual([]);
    expect(await seriousFindings(page)).toEqual([]);
    // The whole pop-up is in the window.
    const box = await page.getByRole('dialog').boundingBox();
    expect(box && box.y >= 0 && box.y + box.height <= height).toBe(true);
    await page.getByRole('dialog').getByRole('button', { name: 'downstream loss 4' }).tap();
    await entry.asks('-TB2').waitFor();
    await page.getByRole('dialog').getByRole('button', { name: /^Back/ }).tap();
    await entry.asks('-TB1').waitFor();
    await page.getByRole('dialog').getByRole('button', { name: 'mounting' }).tap();
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /^Report/ })
      .tap();
    await entry.asksReport('chain 1').waitFor();
    await expect.poll(() => tooSmall()).toEqual([]);
    expect(await seriousFindings(page)).toEqual([]);
    // The gap itself, on the picture.
    const gap = page.getByRole('button', { name: /^Report: chain 1 lost between drive 1/ });
    const gapBox = await gap.boundingBox();
    expect(Math.min(gapBox?.width ?? 0, gapBox?.height ?? 0)).toBeGreaterThanOrEqual(43.9);
    // It is struck at its edges, too, and so are the displays and the windows of the report.
    const struck = await gap.evaluate((element) => {
      const { left, right, top, height } = element.getBoundingClientRect();
      return [left + 2, right - 2].map((x) => document.elementFromPoint(x, top + height / 2) === element);
    });
    expect(struck).toEqual([true, true]);
    for (const target of [entry.find.unit('-TB2'), entry.find.report('chain 1'), entry.find.report('chain 2')]) {
      const { width: wide, height: high } = (await target.boundingBox()) ?? { width: 0, height: 0 };
      expect(Math.min(wide, high)).toBeGreaterThanOrEqual(43.9);
    }
    await gap.tap();
    await expect.poll(entry.lit).toEqual(['-TB1', '-TB2']);
    await page.getByRole('dialog').getByRole('button', { name: /^Done/ }).tap();
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /^All units reached/ })
      .tap();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /^Circumstances/ }).tap();
    await page.getByRole('dialog').waitFor();
    await page.getByRole('checkbox', { name: /^oil/ }).tap();
    await expect.poll(() => tooSmall()).toEqual([]);
    await entry.launched.close([/ERR_ABORTED/]);
  });

  it.each([
    ['forty units', 1280, 720, null],
    ['sixty units', 1280, 720, 60],
  ] as const)('should open the display of the strip that is struck, on %s: %i × %i', async (_, width, height, big) => {
    const entry = await driveEntry({ touch: true, width, height, reducedMotion: true });
    const { page } = entry;
    if (big === null) await entry.open('Forty units', 'nothing seen yet');
    else {
      await dropCase(page, bigCase(big));
      await entry.find.unit(lastDesignation(big)).waitFor();
    }
    // Forty units leave room for a finger. Sixty in one row do not: there the walk has the large buttons, and each is struck where it stands.
    const least = big === null ? 43.9 : 23.9;
    const targets = () =>
      page.locator('.react-flow__node .unit:not(.controller) > .hit').evaluateAll((all, side) => {
        const view = document.querySelector('.react-flow')?.getBoundingClientRect();
        return all
          .map((element) => ({ element, box: element.getBoundingClientRect() }))
          .filter(({ box }) => view !== undefined && box.left >= view.left && box.right <= view.right)
          .map(({ element, box: { x, y, width: wide, height: high } }) => {
            const reach = [-side / 2 + 2, 0, side / 2 - 2];
            const struck = reach.every((off) => document.elementFromPoint(x + wide / 2 + off, y + high / 2) === element);
            return { name: element.getAttribute('data-unit'), fits: Math.min(wide, high) >= side && struck };
          });
      }, least);
    await expect.poll(async () => (await targets()).filter(({ fits }) => !fits)).toEqual([]);
    await expect.poll(async () => (await targets()).length).toBeGreaterThanOrEqual(30);
    const target = big === null ? '-TB12' : '-TB1.20';
    const box = await entry.find.unit(target).boundingBox();
    await page.touchscreen.tap((box?.x ?? 0) + 3, (box?.y ?? 0) + (box?.height ?? 0) / 2);
    await entry.asks(target).waitFor();
    await entry.launched.close([/ERR_ABORTED/]);
  });
});
