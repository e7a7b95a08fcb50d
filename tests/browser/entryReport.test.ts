import { afterEach, describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { whyMissing } from '../support/required.ts';
import { driveEntry, type EntryDriver } from './entryDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('entering the report', () => {
  let entry: EntryDriver;
  afterEach(() => entry.launched.close([/ERR_ABORTED/]));

  const reported = async (chain: string) => /Seen: ([^.]*)\./.exec((await entry.find.report(chain).getAttribute('aria-label')) ?? '')?.[1];

  it('should light up the units while their ordinals are typed, also where the third unit is the first encoder interface', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.build('ssess');
    await entry.press('Escape', 'r');
    await entry.asksReport('chain 1').waitFor();
    await entry.type('2');
    await expect.poll(entry.lit).toEqual(['-TB2', '-KE2']);
    await entry.press('Backspace');
    await entry.type('e1');
    await expect.poll(entry.lit).toEqual(['-KE2', '-TB3']);
    await entry.page.getByText('Lost between encoder interface 1 (-KE2) and drive 3 (-TB3).').waitFor();
    // The first one not reached, in the other field: two gaps are left.
    await entry.type('-4');
    await expect.poll(entry.lit).toEqual(['-KE2', '-TB3', '-TB4']);
    await expect.poll(() => reported('chain 1')).toContain('2 possible gaps');
    await entry.press('Backspace');
    await entry.type('9');
    await entry.page.getByText('This chain has no drive 9.').waitFor();
    await entry.press('Backspace', 'Backspace');
    await entry.press('Backspace', 'Backspace', '0');
    await expect.poll(entry.lit).toEqual(['-TB1']);
    await entry.press('Enter');
    await expect.poll(() => reported('chain 1')).toContain('controller | drive 1');
    await entry.press('r', 'n');
    await entry.page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => reported('chain 1')).toContain('all 5 reached');
  });

  it('should go from chain to chain with arrows, take the last unit for all of them, and follow a click on a gap', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.build('ss;sss');
    await entry.press('Escape', 'r');
    await entry.asksReport('chain 1').waitFor();
    await entry.type('2');
    await entry.press('ArrowDown');
    await entry.asksReport('chain 2').waitFor();
    await expect.poll(() => reported('chain 1')).toContain('all 2 reached');
    await entry.page.getByRole('button', { name: /^Report: chain 2 lost between drive 1/ }).click();
    await expect.poll(entry.lit).toEqual(['-TB3', '-TB4']);
    await expect.poll(() => entry.page.getByRole('textbox', { name: 'Last one reached, number' }).inputValue()).toBe('1');
    await entry.page.getByRole('button', { name: 'Not entered' }).click();
    await expect.poll(() => reported('chain 2')).toMatch(/^not entered/i);
  });

  it('should pass over no chain unseen when Enter is struck behind an answer that needs none', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.build('ss;ss');
    await entry.press('0', '0', '0', '0', '0');
    await entry.asksReport('chain 1').waitFor();
    await entry.press('n', 'Enter');
    await entry.asksReport('chain 2').getByText('Nothing is entered for this chain').waitFor();
    await entry.press('1', 'Enter');
    await expect.poll(() => reported('chain 2')).toContain('lost drive 1 | 2');
  });

  it('should be entered in three keys from anywhere in the window', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.open('Three units', 'nothing seen yet');
    entry.keys();
    await entry.press('r', '1', 'Enter');
    expect(entry.keys()).toBe(3);
    await expect.poll(() => reported('chain 1')).toContain('lost drive 1 | 2');
  });
});
