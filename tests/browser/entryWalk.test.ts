import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { parseCaseFile } from '../../engine/cabinet/index.ts';
import { findChromium } from '../support/chromium.ts';
import { readBrowserRecoveries } from '../support/fileDriver.ts';
import { whyMissing } from '../support/required.ts';
import { driveEntry, type EntryDriver } from './entryDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

/** How many displays of the last snapshot the newest recovery copy holds. */
async function displaysKept(page: Page): Promise<number> {
  const kept = (await readBrowserRecoveries(page)).map((document) => parseCaseFile(document));
  return Math.max(0, ...kept.map((one) => (one.ok ? (one.value.evidence.snapshots.at(-1)?.displays?.length ?? 0) : 0)));
}

describe.skipIf(missing)('walking along the displays', () => {
  let entry: EntryDriver;
  afterEach(() => entry.launched.close([/ERR_ABORTED/]));

  const seen = async (designation: string) =>
    /Seen: ([^.]*)\./.exec((await entry.find.unit(designation).getAttribute('aria-label')) ?? '')?.[1];

  it('should take six displays and a report of a known cabinet in fifteen keys at most', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.open('Two chains', 'nothing seen yet');
    entry.keys();
    await entry.press('e');
    await entry.asks('-TB1').waitFor();
    await entry.type('243222');
    await entry.asks('-TB6').waitFor();
    await entry.press('+');
    await entry.asksReport('chain 1').waitFor();
    await entry.type('2');
    await entry.press('Enter');
    const keys = entry.keys();
    expect(keys).toBeLessThanOrEqual(15);
    await expect.poll(() => entry.find.answer.textContent()).toMatch(/^Look at cable -WH3 and its plugs first\./);
  });

  it('should take the number pad with NumLock off for the figures that stand on it', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.build('ssse');
    // What the pad sends without NumLock: End, an arrow, nothing that has a name.
    await entry.press('Numpad2', 'Numpad4', 'Numpad3', 'Numpad5');
    await entry.asks('-TB4').waitFor();
    await expect
      .poll(() => Promise.all(['-TB1', '-TB2', '-TB3', '-KE2'].map(seen)))
      .toEqual(['quiet', 'downstream loss', 'upstream loss', 'both losses']);
    await entry.press('NumpadAdd');
    await entry.asksReport('chain 1').waitFor();
    await entry.press('Numpad2', 'NumpadEnter');
    await expect.poll(() => entry.find.report('chain 1').getAttribute('aria-label')).toContain('lost drive 2 | 3');
    // On the picture as well.
    await entry.find.unit('-TB1').focus();
    await entry.press('Numpad1');
    await expect.poll(() => seen('-TB1')).toBe('dark');
  });

  it('should go back with Backspace, skip with 0 without losing what was entered, and take back with Delete', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.build('ssse');
    await entry.type('24');
    await entry.asks('-TB3').waitFor();
    await entry.press('Backspace');
    await entry.asks('-TB2').waitFor();
    await entry.type('3');
    await entry.asks('-TB3').waitFor();
    await entry.press('Backspace', 'Backspace', '0', '0', '0');
    await entry.asks('-KE2').waitFor();
    await expect.poll(() => Promise.all(['-TB1', '-TB2', '-TB3'].map(seen))).toEqual(['quiet', 'upstream loss', 'not looked at']);
    await entry.press('Backspace', 'Backspace', 'Delete');
    await expect.poll(() => seen('-TB2')).toBe('not looked at');
    await entry.asks('-TB2').waitFor();
    await entry.press('Backspace', 'Backspace');
    await entry.asks('-TB1').waitFor();
    await expect.poll(() => entry.find.said.textContent()).toBe('This is the first unit.');
    // Enter, struck once too often on a display that nobody has read, answers nothing.
    await entry.press('0', 'Enter');
    await expect.poll(() => seen('-TB2')).toBe('not looked at');
  });

  it('should go in the order of mounting when told so, and remember it', async () => {
    entry = await driveEntry({ reducedMotion: true, keepsWork: true });
    await entry.build('s u p; e s');
    await entry.asks('-TB1').waitFor();
    await entry.press('/');
    await expect.poll(() => entry.find.said.textContent()).toBe('Now as they are mounted.');
    for (const unit of ['-TB1', '-TB4', '-TB2', '-KE2', '-TB3']) {
      await expect.poll(() => entry.page.getByRole('dialog').getAttribute('aria-label')).toBe(`What ${unit} shows`);
      await entry.press('2');
    }
    await entry.asksReport('chain 1').waitFor();
    await entry.press('Backspace');
    await entry.asks('-TB3').waitFor();
    await entry.press('Escape');
    await expect.poll(() => displaysKept(entry.page)).toBe(5);
    await entry.page.reload();
    await expect.poll(() => entry.page.title()).toContain('Cabinet as found');
    // By keys on the units themselves it goes the same way.
    await entry.find.unit('-TB1').focus();
    await entry.press('1');
    await expect.poll(() => entry.page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^-TB4, /);
    await entry.press('Backspace');
    await expect.poll(() => entry.page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^-TB1, .*Seen: dark\./);
  });

  it('should read codes through the legend while walking, and take the answers of those who cannot tell', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.open('Two chains', 'nothing seen yet');
    await entry.press('e');
    await entry.asks('-TB1').waitFor();
    await entry.type('n7');
    await entry.page.getByText(/^= upstream loss, by /).waitFor();
    await entry.press('Enter');
    await entry.asks('-TB2').waitFor();
    await entry.type('78');
    await entry.asks('-KE2').waitFor();
    // The decimal point of the number pad begins a code, too; taken back, digits answer again.
    await entry.press('.');
    await entry.type('7');
    await entry.press('Backspace', 'Backspace', '1');
    await entry.asks('-TB4').waitFor();
    await entry.type('zz9');
    await entry.press('Enter');
    await entry.asks('-TB5').waitFor();
    await expect
      .poll(() => Promise.all(['-TB1', '-TB2', '-TB3', '-KE2', '-TB4'].map(seen)))
      .toEqual(['upstream loss, code n7', 'lit, cannot read it', 'complains, cannot tell which way', 'dark', 'other, code zz9']);
  });

  it('should go on from a display that is clicked, and end where everything is entered', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.build('ss;s');
    await entry.find.unit('-TB3').click();
    await entry.asks('-TB3').waitFor();
    await entry.press('2', '2');
    await entry.asksReport('chain 1').waitFor();
    await entry.press('n');
    await entry.asksReport('chain 2').waitFor();
    await entry.press('n');
    // Two quiet displays and no loss reported: whether the control is halted weighs more than all of that, and is asked.
    await entry.page.getByRole('dialog', { name: 'Is the control halted by an alarm of a chain?' }).waitFor();
    await entry.press('Backspace');
    await entry.asksReport('chain 2').waitFor();
    await entry.press('n');
    await entry.page.getByRole('dialog', { name: 'Is the control halted by an alarm of a chain?' }).waitFor();
    await entry.press('1');
    await entry.page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => entry.find.said.textContent()).toBe('Control: halted. That was everything.');
    expect((await entry.save()).evidence.snapshots[0]?.halted).toBe(true);
    await expect.poll(() => entry.find.report('chain 2').getAttribute('aria-label')).toContain('unit reached');
  });

  it('should keep the display that it asks for beside its answers, also far down a large cabinet', async () => {
    entry = await driveEntry({ reducedMotion: true, width: 1280, height: 720 });
    await entry.open('Forty units', 'nothing seen yet');
    await entry.press('e');
    for (let i = 0; i < 10; i++) {
      const dialog = entry.page.getByRole('dialog');
      const unit = ((await dialog.getAttribute('aria-label')) ?? '').replace(/^What (.*) shows$/, '$1');
      const over = await dialog.boundingBox();
      const asked = await entry.find.unit(unit).boundingBox();
      if (!over || !asked) throw new Error(`${unit} is not drawn`);
      const covered = asked.y + asked.height > over.y + 1 && asked.x < over.x + over.width;
      expect(covered, unit).toBe(false);
      expect(asked.x, unit).toBeGreaterThanOrEqual(0);
      await entry.press('2', '2', '2', '2');
    }
  });
});
