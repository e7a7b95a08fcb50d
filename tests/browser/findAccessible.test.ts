import { describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { driveFind } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('Find for everybody', () => {
  it.each(['light', 'dark', 'high-contrast'] as const)('should pass the automatic check in %s', async (theme) => {
    const launched = await launchPage({ width: 1280, height: 720, theme });
    const find = driveFind(launched.page);
    await find.answer.getByText('likely').waitFor();
    expect(await seriousFindings(launched.page)).toEqual([]);
    // The drawing and what joins its modules are called by what they are, not by ids.
    await launched.page.getByRole('application', { name: 'Cabinet' }).waitFor();
    await expect
      .poll(() => launched.page.getByRole('img', { name: /^cable -WH3 between -TB2 down and -TB3 up, suspect: \d+ %$/ }).count())
      .toBe(1);
    await expect.poll(() => launched.page.getByRole('img', { name: /^Edge from/ }).count()).toBe(0);

    await find.unit('-KE2').click();
    await launched.page.getByRole('dialog').waitFor();
    expect(await seriousFindings(launched.page)).toEqual([]);
    await launched.page.keyboard.press('Escape');

    await find.report('chain 1').click();
    await launched.page.getByRole('dialog').waitFor();
    expect(await seriousFindings(launched.page)).toEqual([]);
    await launched.page.keyboard.press('Escape');

    for (const [sample, words] of [
      ['Forty units', 'One break far down'],
      ['Two chains', 'one display read from the wrong row'],
      ['With problems', 'nothing seen yet'],
      ['Unfinished', 'nothing seen yet'],
    ] as const) {
      await find.openSample(sample, words);
      expect(await seriousFindings(launched.page), sample).toEqual([]);
    }
    await launched.close();
  });

  it('should keep ground and words of what is chosen one pair where the system sets all colours', async () => {
    const launched = await launchPage({ width: 1280, height: 720 });
    const find = driveFind(launched.page);
    await find.answer.getByText('likely').waitFor();
    await launched.page.emulateMedia({ forcedColors: 'active' });
    const first = find.suspect(/%/).first();
    await first.click();
    await expect
      .poll(() =>
        first.evaluate((row) => {
          const pair = document.createElement('i');
          pair.style.cssText = 'forced-color-adjust: none; background: Highlight; color: HighlightText';
          document.body.append(pair);
          const { backgroundColor: ground, color: words } = getComputedStyle(pair);
          pair.remove();
          const parts = [row, ...row.querySelectorAll('.name, .designation, .share')].map((part) => getComputedStyle(part).color);
          return getComputedStyle(row).backgroundColor === ground && parts.every((colour) => colour === words);
        }),
      )
      .toBe(true);
    await launched.close();
  });

  it('should have targets of 24 px at least for a mouse and 44 px for a finger while entering', async () => {
    for (const touch of [false, true]) {
      const launched = await launchPage({ width: 1280, height: 720, touch });
      const find = driveFind(launched.page);
      await find.answer.getByText('likely').waitFor();
      const tooSmall = () =>
        launched.page.evaluate(
          (least) =>
            [...document.querySelectorAll<HTMLElement>('button, .segment, select, input:not([type=radio])')]
              .filter((element) => element.checkVisibility() && element.getAttribute('tabindex') !== '-1')
              .map((element) => ({ name: element.getAttribute('aria-label') ?? element.textContent, box: element.getBoundingClientRect() }))
              .filter(({ box }) => box.width > 1 && Math.min(box.width, box.height) < least)
              .map(({ name, box }) => `${name} ${Math.round(box.width)}×${Math.round(box.height)}`),
          24,
        );
      await expect.poll(() => tooSmall()).toEqual([]);
      await find.unit('-KE2').click();
      const dialog = launched.page.getByRole('dialog');
      await dialog.waitFor();
      const heights = await dialog
        // The answers, each with its digit; a designation ends with a digit too, but not after a small letter.
        .getByRole('button', { name: /[a-z]\s*\d$/ })
        .evaluateAll((buttons) => buttons.map((button) => button.getBoundingClientRect().height));
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
      await launched.close();
    }
  });
});
