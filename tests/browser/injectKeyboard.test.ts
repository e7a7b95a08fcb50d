import { describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { driveFind } from './findDriver.ts';
import { driveInject } from './injectDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('Inject for everybody', () => {
  it('should be done from beginning to end by keyboard alone', async () => {
    const launched = await launchPage({ width: 1280, height: 720, reducedMotion: true });
    const { page } = launched;
    const find = driveFind(page);
    const inject = driveInject(page);
    await find.answer.getByText('likely').waitFor();
    const press = async (...keys: readonly string[]) => {
      for (const key of keys) await page.keyboard.press(key);
    };
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');

    await find.unit('-TB1').focus();
    await press('i');
    await inject.injected.waitFor();
    // Entering displays and the walk have no say here.
    await press('e', '2');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);

    await inject.thing('-TB1').focus();
    await press('ArrowRight');
    await expect.poll(() => focused()).toMatch(/^Cable -WH2\./);
    await press('ArrowRight', 'ArrowRight');
    await expect.poll(() => focused()).toMatch(/^Cable -WH3\./);
    await press('Enter');
    await page.getByRole('dialog', { name: 'What is wrong with cable -WH3?' }).waitFor();
    await press('ArrowDown', 'Enter');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => focused()).toMatch(/^Cable -WH3\. Simulated fault: the outbound fibre of cable -WH3 is cut\./);
    await expect
      .poll(() => inject.said.textContent())
      .toMatch(/^Simulated fault: the outbound fibre of cable -WH3 is cut\. -TB2 shows downstream loss/);

    // A second one, thought better of.
    await press('ArrowRight', 'Enter');
    await page.getByRole('dialog', { name: 'What is wrong with -TB3?' }).waitFor();
    await press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => focused()).toMatch(/^-TB3, /);

    // The light, step by step, from anywhere.
    await press('f', 'f');
    await expect.poll(() => inject.said.textContent()).toMatch(/^Step 2 of 12\. -TB1 hears -KE1/);
    await press('s');
    await expect.poll(() => inject.said.textContent()).toMatch(/^Step 4 of 12\. The outbound fibre/);
    await press('b');
    await expect.poll(() => inject.said.textContent()).toMatch(/^Step 3 of 12\./);

    // Part by part, and out.
    await press('F6');
    await press('p');
    await page.getByRole('dialog', { name: 'Take this pattern into the case' }).waitFor();
    await press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await press('Control+Backspace');
    await expect.poll(() => inject.injected.getByText('Nothing is broken yet.').count()).toBe(1);
    await press('Escape');
    await find.answer.getByText('likely').waitFor();
    await launched.close();
  });

  it.each(['light', 'dark', 'high-contrast'] as const)('should pass the automatic check in %s', async (theme) => {
    const launched = await launchPage({ width: 1280, height: 720, theme });
    const { page } = launched;
    const find = driveFind(page);
    const inject = driveInject(page);
    await find.answer.getByText('likely').waitFor();
    for (const [sample, words] of [
      ['Two chains', 'stopped in the middle of a part'],
      ['Forty units', 'One break far down'],
    ] as const) {
      await find.openSample(sample, words);
      await page.keyboard.press('i');
      await inject.injected.waitFor();
      await inject.inject('Cable -WH3', 'one fibre dim, outbound');
      await inject.inject('-TB2', 'down port dead');
      expect(await seriousFindings(launched.page), sample).toEqual([]);
      for (let i = 0; i < 4; i += 1) await page.keyboard.press('f');
      expect(await seriousFindings(launched.page), `${sample}, stepping`).toEqual([]);
      await inject.thing('-TB2').first().click();
      await page.getByRole('dialog').waitFor();
      expect(await seriousFindings(launched.page), `${sample}, choosing`).toEqual([]);
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      await page.keyboard.press('p');
      await page.getByRole('dialog').waitFor();
      expect(await seriousFindings(launched.page), `${sample}, taking`).toEqual([]);
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      await page.keyboard.press('Escape');
    }
    await launched.close();
  });

  it('should have targets of 24 px at least for a mouse, and 44 px for a finger that chooses a fault', async () => {
    for (const touch of [false, true]) {
      const launched = await launchPage({ width: 1280, height: 720, touch });
      const { page } = launched;
      await driveFind(page).answer.getByText('likely').waitFor();
      await page.keyboard.press('i');
      const inject = driveInject(page);
      await inject.inject('Cable -WH3', 'one fibre dim, outbound');
      const tooSmall = (least: number, within: string) =>
        page.evaluate(
          ([limit, scope]) =>
            [...document.querySelectorAll<HTMLElement>(`${scope} button, ${scope} select, ${scope} input`)]
              .filter((element) => element.checkVisibility())
              .map((element) => ({ name: element.getAttribute('aria-label') ?? element.textContent, box: element.getBoundingClientRect() }))
              .filter(({ box }) => box.width > 1 && Math.min(box.width, box.height) < limit)
              .map(({ name, box }) => `${name} ${Math.round(box.width)}×${Math.round(box.height)}`),
          [least, within] as const,
        );
      await expect.poll(() => tooSmall(24, 'main')).toEqual([]);
      await inject.thing('-TB2').click();
      await page.getByRole('dialog').waitFor();
      if (touch) await expect.poll(() => tooSmall(43.5, '[role=dialog]')).toEqual([]);
      await launched.close();
    }
  });
});
