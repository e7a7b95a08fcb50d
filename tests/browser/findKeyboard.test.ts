import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { driveFind, type FindDriver } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('Find by keyboard alone', () => {
  let launched: LaunchedPage;
  let find: FindDriver;
  beforeAll(async () => {
    launched = await launchPage({ width: 1280, height: 720, reducedMotion: true });
  });
  // Each scene begins with a reload, which may cut off a font that is being fetched; that is no complaint.
  afterAll(() => launched.close([/ERR_ABORTED/]));
  beforeEach(async () => {
    await launched.page.reload();
    find = driveFind(launched.page);
    await find.answer.getByText('likely').waitFor();
  });

  const focused = () => launched.page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');
  const press = async (...keys: readonly string[]) => {
    for (const key of keys) await launched.page.keyboard.press(key);
  };

  /** Opens the default cabinet with nothing seen, by the menu's keys. */
  const openEmpty = async () => {
    await launched.page.getByRole('button', { name: 'Samples' }).focus();
    await press('Enter', 'ArrowRight', 'End', 'Enter');
    await expect.poll(() => find.answer.textContent()).toBe('Note what every display shows.');
  };

  it('should enter six displays and the report in fifteen keys, and find the cable', async () => {
    await openEmpty();
    let keys = 0;
    const count = async (...pressed: readonly string[]) => {
      keys += pressed.length;
      await press(...pressed);
    };
    // E begins the walk at the first unit that nobody has looked at; each digit goes on to the next.
    await count('e');
    await launched.page.getByRole('dialog', { name: 'What -TB1 shows' }).waitFor();
    await count('2', '4', '3', '2', '2', '2');
    await launched.page.getByRole('dialog', { name: 'What -TB6 shows' }).waitFor();
    // Six marks, two for those who cannot read or tell, and "not looked at": once each, whichever unit the walk has reached.
    await expect.poll(() => launched.page.getByRole('dialog').getByRole('button', { name: / \d$/ }).count()).toBe(9);
    await count('Escape');
    await expect.poll(() => focused()).toMatch(/^-TB6, /);
    await count('ArrowUp');
    await expect.poll(() => focused()).toMatch(/^-TB2, /);
    await count('r');
    await launched.page.getByRole('dialog', { name: 'What the controller reports of chain 1' }).waitFor();
    await count('2', 'Enter');
    expect(keys).toBeLessThanOrEqual(15);
    await expect.poll(() => find.answer.textContent()).toMatch(/^Look at cable -WH3 and its plugs first\./);
    await expect.poll(() => find.report('chain 1').getAttribute('aria-label')).toContain('Seen: lost drive 2 | 3.');
  });

  it('should walk along the chain with Tab and with arrows', async () => {
    await find.unit('-TB1').focus();
    await press('Tab');
    await expect.poll(() => focused()).toMatch(/^-TB2, /);
    await press('ArrowRight');
    await expect.poll(() => focused()).toMatch(/^-TB3, /);
    await press('ArrowDown');
    await expect.poll(() => focused()).toMatch(/^-KE3, /);
    await press('Home', 'ArrowLeft');
    await expect.poll(() => focused()).toMatch(/^chain 2, report/);
    await press('ArrowRight');
    await expect.poll(() => focused()).toMatch(/^-TB5, /);
  });

  it('should enter with digits on a focused unit, go on, and say so', async () => {
    await find.unit('-KE2').focus();
    await press('5');
    await expect.poll(() => focused()).toMatch(/^-TB4, /);
    await expect.poll(() => find.unit('-KE2').getAttribute('aria-label')).toContain('Seen: both losses.');
    await expect.poll(() => find.said.textContent()).toBe('-KE2: both losses. Next: -TB4, not looked at.');
    await press('Control+z');
    await expect.poll(() => find.said.textContent()).toBe('Undone: both losses at -KE2.');
    await expect.poll(() => find.unit('-KE2').getAttribute('aria-label')).toContain('Seen: not looked at.');
    await press('Control+y');
    await expect.poll(() => find.unit('-KE2').getAttribute('aria-label')).toContain('Seen: both losses.');
  });

  it('should give the focus back to the unit when an entry is closed', async () => {
    await find.unit('-TB5').focus();
    await press('Enter');
    await launched.page.getByRole('dialog', { name: 'What -TB5 shows' }).waitFor();
    await press('Escape');
    await launched.page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => focused()).toMatch(/^-TB5, /);
  });

  it('should choose suspects and take the prediction off again', async () => {
    await find.suspect(/^-TB2 board, down port/).focus();
    await press('Enter');
    await expect.poll(() => find.suspect(/^-TB2 board, down port/).getAttribute('aria-pressed')).toBe('true');
    await find.unit('-TB1').focus();
    await press('Escape');
    await expect.poll(() => find.unit('-TB1').getAttribute('aria-label')).not.toContain('Predicted');
  });

  it('should go from part to part of the window, and past everything at the start', async () => {
    const part = () => launched.page.evaluate(() => document.activeElement?.id ?? '');
    await press('F6');
    await expect.poll(() => part()).toBe('answer');
    await press('F6', 'F6');
    await expect.poll(() => part()).toBe('suspects');
    await press('Shift+F6');
    await expect.poll(() => part()).toBe('cabinet');
    await launched.page.reload();
    await find.answer.getByText('likely').waitFor();
    const stop = () => launched.page.evaluate(() => document.activeElement?.textContent);
    for (const words of ['Go to the answer', 'Go to the cabinet', 'Go to the suspects']) {
      await press('Tab');
      await expect.poll(() => stop()).toBe(words);
    }
    await press('Enter');
    await expect.poll(() => part()).toBe('suspects');
  });

  it('should list all its keys', async () => {
    await launched.page.getByRole('button', { name: 'Help' }).focus();
    await press('Enter', 'k', 'Enter');
    const sheet = launched.page.getByRole('dialog', { name: 'Help' });
    await sheet.getByRole('heading', { name: 'Keys' }).waitFor();
    await expect.poll(() => sheet.getByText('Enter displays one by one').count()).toBe(1);
    await press('Escape');
    await sheet.waitFor({ state: 'detached' });
  });

  it('should leave a report of two counted groups to the ordinals, and light the units up', async () => {
    await find.report('chain 2').focus();
    await press('Enter');
    const dialog = launched.page.getByRole('dialog', { name: 'What the controller reports of chain 2' });
    await dialog.getByRole('combobox', { name: 'First one not reached' }).selectOption('encoder interface');
    await dialog.getByRole('textbox', { name: 'First one not reached, number' }).fill('1');
    await expect.poll(() => dialog.getByText('Lost between drive 2 (-TB6) and encoder interface 1 (-KE3).').count()).toBe(1);
    await dialog.getByRole('textbox', { name: 'Last one reached, number' }).fill('7');
    await expect.poll(() => dialog.getByText('This chain has no drive 7.').count()).toBe(1);
    await press('Escape');
    await expect.poll(() => find.report('chain 2').getAttribute('aria-label')).toContain('Seen: lost -TB6 | -KE3.');
  });
});
