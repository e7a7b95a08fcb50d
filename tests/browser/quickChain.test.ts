import { afterEach, describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { findChromium } from '../support/chromium.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { driveEntry, type EntryDriver } from './entryDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('quick chain', () => {
  let entry: EntryDriver;
  // The reload at the beginning may cut off a font that is being fetched; that is no complaint.
  afterEach(() => entry.launched.close([/ERR_ABORTED/]));

  const line = () => entry.page.getByRole('textbox', { name: 'Units' });
  /** From the window as it is to the line. */
  const begin = async () => {
    await entry.press('n');
    await line().and(entry.page.locator(':focus')).waitFor();
  };

  it.each([
    ['one letter per unit', 'ssspes'],
    ['counts and letters', '3s,p,e,s'],
    ['words', '3servo spindle encoder servo'],
  ])('should take six units, their whole pattern and the report in forty keys at most: %s', async (_how, typed) => {
    entry = await driveEntry({ reducedMotion: true });
    entry.keys();
    await begin();
    await entry.type(typed);
    await entry.press('Enter');
    await entry.asks('-TB1').waitFor();
    // -TB3 hears nothing from below, -TB4 nothing from above; then what the supply shows, and the report: lost after drive 3.
    await entry.type('2243222');
    await entry.asksReport('chain 1').waitFor();
    await entry.type('3');
    await entry.press('Enter');
    const keys = entry.keys();
    expect(keys).toBeLessThanOrEqual(40);
    await expect.poll(() => entry.find.answer.textContent()).toMatch(/^Look at cable -WH4 and its plugs first\./);
    await expect.poll(() => entry.find.unit('-TB6').getAttribute('aria-label')).toContain('supply');
    await expect.poll(() => entry.find.unit('-TB6').getAttribute('aria-label')).toContain('Seen: quiet.');
    await expect.poll(() => entry.find.report('chain 1').getAttribute('aria-label')).toContain('Seen: lost drive 3 | 4.');
  });

  it('should keep what was built as an ordinary cabinet: one step back and forth, saved with the case', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.build('3 servo, encoder; spindle; off chain 2 servo');
    await entry.press('4', 'Escape');
    await entry.press('Control+z', 'Control+z');
    await line().waitFor();
    await expect.poll(() => entry.find.said.textContent()).toBe('Undone: cabinet as found, 7 units.');
    await entry.page.getByRole('heading', { level: 1 }).click();
    await entry.press('Control+y', 'Control+y');
    await expect.poll(() => entry.find.unit('-TB1').getAttribute('aria-label')).toContain('Seen: downstream loss.');
    const saved = await entry.save();
    expect(saved.cabinet.name).toBe('Cabinet as found');
    expect(saved.cabinet.notes).toContain('assumed');
    expect(checkCabinet(saved.cabinet).problems).toEqual([]);
    expect(saved.cabinet.units?.filter(({ onChain }) => onChain === false).length).toBe(2);
    expect(saved.evidence.snapshots[0]?.displays?.map(({ unit, meanings }) => [unit, meanings])).toEqual([['TB1', ['downstream-loss']]]);
  });

  it('should say what it cannot read, where, and what to do, and build nothing then', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await begin();
    await entry.type('2 servo, ser');
    await expect.poll(() => entry.page.locator('.quick-problem').count()).toBe(0);
    await entry.type('bo');
    await expect.poll(() => entry.page.locator('.quick-problem').count()).toBe(0);
    await entry.press('Enter');
    await entry.page.getByText('“serbo” is not a kind of unit.').waitFor();
    await expect.poll(() => entry.page.getByText('It stands at sign 10 of the line. Perhaps “servo” is meant.').count()).toBe(1);
    await expect.poll(() => line().getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => line().evaluate((field) => field === document.activeElement)).toBe(true);
    await entry.press('Backspace', 'Backspace');
    await entry.type('vo');
    await expect.poll(() => entry.page.locator('.quick-problem').count()).toBe(0);
    await expect.poll(() => entry.page.locator('.quick-chip').count()).toBe(4 - 1);
    await entry.press('Enter');
    await entry.asks('-TB1').waitFor();
  });

  it('should be built with a finger, key by key, and be usable by everybody', async () => {
    for (const theme of ['light', 'dark', 'high-contrast'] as const) {
      entry = await driveEntry({ touch: true, theme, reducedMotion: true });
      await entry.page.keyboard.press('n');
      await line().waitFor();
      const keys = entry.page.getByRole('group', { name: 'Add a unit' });
      for (const name of ['servo s', 'servo s', 'spindle p', 'next chain ;', 'encoder e', 'off the chain ; off', 'servo s', 'servo s']) {
        await keys.getByRole('button', { name, exact: true }).tap();
      }
      await keys.getByRole('button', { name: 'Take the last one back' }).tap();
      await expect.poll(() => line().inputValue()).toBe('ssp;e; off s');
      const boxes = await entry.page
        .getByRole('region', { name: 'Quick chain' })
        .getByRole('button')
        .evaluateAll((buttons) =>
          buttons.map((button) => button.getBoundingClientRect()).map(({ width, height }) => Math.min(width, height)),
        );
      expect(Math.min(...boxes)).toBeGreaterThanOrEqual(44);
      expect(await seriousFindings(entry.page)).toEqual([]);
      await entry.page.getByRole('button', { name: /^Build it/ }).tap();
      await entry.asks('-TB1').waitFor();
      await expect.poll(() => entry.find.unit('-TB4').getAttribute('aria-label')).toContain('not on a chain');
      if (theme !== 'high-contrast') await entry.launched.close([/ERR_ABORTED/]);
    }
  });
});
