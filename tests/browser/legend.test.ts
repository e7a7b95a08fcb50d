import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { driveFind, type FindDriver } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('equipment types', () => {
  let launched: LaunchedPage;
  let find: FindDriver;
  const dialog = () => launched.page.getByRole('dialog', { name: 'Equipment types' });
  const openTypes = async () => {
    await launched.page.getByRole('button', { name: 'Cabinet', exact: true }).click();
    await launched.page.getByRole('menuitem', { name: 'Equipment types' }).click();
    await dialog().waitFor();
  };
  beforeAll(async () => {
    launched = await launchPage({ width: 1280, height: 720, reducedMotion: true, theme: 'dark' });
    find = driveFind(launched.page);
    await find.answer.getByText('likely').waitFor();
  });
  afterAll(() => launched.close());

  it('should draw what a value does while it is pointed at, and change nothing by that', async () => {
    await openTypes();
    const shown = () =>
      dialog()
        .locator('.example-unit .window')
        .evaluateAll((all) => all.map((one) => one.getAttribute('data-meaning')));
    const lossScope = dialog().getByRole('group', { name: /^Complains about/ });
    await lossScope.getByText('any break in that direction').hover();
    await expect.poll(shown).toEqual(['downstream-loss', 'downstream-loss', 'upstream-loss', 'upstream-loss']);
    await lossScope.getByText('its own receivers only').hover();
    await expect.poll(shown).toEqual(['quiet', 'downstream-loss', 'upstream-loss', 'quiet']);
    await expect.poll(() => dialog().getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    expect(await seriousFindings(launched.page)).toEqual([]);
  });

  it('should refuse empty and doubled codes at the field, and read the case anew when a code changes', async () => {
    await dialog()
      .getByRole('navigation')
      .getByRole('button', { name: /QE drives and interfaces/ })
      .click();
    const code = dialog().getByRole('textbox', { name: 'Code n7', exact: true });
    await code.fill('');
    await expect.poll(() => dialog().getByRole('alert').textContent()).toBe('The code is empty. Write what the display shows.');
    await code.fill('s7');
    await expect.poll(() => dialog().getByRole('alert').textContent()).toContain('in the legend already');
    await code.press('Escape');
    await expect.poll(() => code.inputValue()).toBe('n7');
    await dialog().getByRole('checkbox', { name: 'code n7: both losses' }).check();
    await expect.poll(() => dialog().locator('.equipment-notice').textContent()).toMatch(/^Read anew by the legend: -TB3, code n7, now /);
    await dialog()
      .getByRole('button', { name: /^Undo: codes of/ })
      .click();
    await expect.poll(() => dialog().getByRole('checkbox', { name: 'code n7: both losses' }).isChecked()).toBe(false);
    await dialog().getByText('Paste rows').click();
    await dialog().getByRole('textbox', { name: 'Rows' }).fill('q1;quiet;new\nq2;nonsense');
    await expect
      .poll(() =>
        dialog()
          .getByText(/^Row 2: “nonsense” is not one of the meanings/)
          .count(),
      )
      .toBe(1);
    await dialog().getByRole('button', { name: 'Take 1 row' }).click();
    await dialog().getByRole('textbox', { name: 'Code q1', exact: true }).waitFor();
    expect(await seriousFindings(launched.page)).toEqual([]);
    await dialog()
      .getByRole('button', { name: /^Undo: codes of/ })
      .click();
  });

  it('should settle a behaviour by a staged break, and record it with its date', async () => {
    const { page } = launched;
    await dialog()
      .getByRole('navigation')
      .getByRole('button', { name: /QE drive 2/ })
      .click();
    await dialog()
      .getByRole('group', { name: /^Complains about/ })
      .getByRole('radio', { name: /^not known/ })
      .check();
    await expect.poll(() => dialog().getByText('Not verified on the real equipment.').count()).toBe(1);
    await dialog().getByRole('button', { name: 'Find it out: staged break' }).click();
    // First the caution; nothing can be entered before it is answered.
    await expect.poll(() => dialog().getByRole('combobox').count()).toBe(0);
    await dialog()
      .getByRole('checkbox', { name: /whole, in a safe state/ })
      .check();
    await dialog().getByRole('combobox', { name: 'Link' }).selectOption('cable -WH2');
    await dialog().getByRole('toolbar', { name: 'What shows now' }).getByRole('button').first().focus();
    // -TB1 downstream loss, -TB2 upstream loss, all others quiet: they look at their own receivers only.
    for (const key of ['4', '3', '2', '2', '2']) await page.keyboard.press(key);
    await dialog().getByText('settled', { exact: true }).waitFor();
    expect(await seriousFindings(launched.page)).toEqual([]);
    await dialog().getByRole('button', { name: 'Take over 1 settled value' }).click();
    await expect
      .poll(() =>
        dialog()
          .getByText(/^Verified on \d{4}-\d\d-\d\d: Staged break: lower plug of cable -WH2/)
          .count(),
      )
      .toBe(1);
    await expect
      .poll(() =>
        dialog()
          .getByRole('radio', { name: /^its own receivers only/ })
          .isChecked(),
      )
      .toBe(true);
    await page.keyboard.press('Escape');
    await dialog().waitFor({ state: 'detached' });
  });

  it('should open from a unit', async () => {
    await find.unit('-TB2').click();
    await launched.page.getByRole('button', { name: 'Equipment type of -TB2' }).click();
    await dialog().getByRole('article', { name: 'Type QE drive 2' }).waitFor();
    await launched.page.keyboard.press('Escape');
    await dialog().waitFor({ state: 'detached' });
  });
});
