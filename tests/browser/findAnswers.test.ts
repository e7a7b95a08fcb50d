import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { parseCaseFile, parseTruthFile } from '../../engine/cabinet/index.ts';
import { findChromium } from '../support/chromium.ts';
import { programFolder } from '../support/folders.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { driveFind, type FindDriver } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

/** What a sample case really was: taken from its own file, never from the page. */
async function readSample(name: string) {
  const folder = join(programFolder, 'sample-cabinets');
  const seen = parseCaseFile(await readFile(join(folder, `${name}.case.json`)));
  const truth = parseTruthFile(await readFile(join(folder, `${name}.truth.json`)));
  if (!seen.ok || !truth.ok) throw new Error(`sample ${name} is damaged`);
  return { seen: seen.value, truth: truth.value };
}

describe.skipIf(missing)('Find, from what is seen to the suspects', () => {
  let launched: LaunchedPage;
  let find: FindDriver;
  beforeAll(async () => {
    launched = await launchPage({ width: 1440, height: 900 });
  });
  // Each scene begins with a reload, which may cut off a font that is being fetched; that is no complaint.
  afterAll(() => launched.close([/ERR_ABORTED/]));
  beforeEach(async () => {
    await launched.page.reload();
    find = driveFind(launched.page);
    await find.answer.getByText('likely').waitFor();
  });

  it('should open with a case half entered and name the true cause first', async () => {
    const { truth } = await readSample('two-chains.1');
    const [fault] = truth.faults;
    expect(fault).toMatchObject({ link: 'WH3' });
    await expect.poll(() => find.answer.textContent()).toMatch(/^Look at cable -WH3 and its plugs first\. \d+ % likely$/);
    const [first, ...others] = await find.firstGroup();
    expect(first).toMatch(/^-WH3 /);
    expect(others.map((name) => name.split(',')[0]).sort()).toEqual(['-TB2 board', '-TB3 board']);
  });

  it('should suspect nobody before anything was entered, and say what to do', async () => {
    await find.openSample('Two chains', 'nothing seen yet');
    await expect.poll(() => find.answer.textContent()).toBe('Note what every display shows.');
    await expect.poll(() => find.suspect(/%/).count()).toBe(0);
    await expect.poll(() => launched.page.getByText('switching off erases them').count()).toBe(1);
    // No step is shown yet, so what always holds is said, and nothing twice.
    const strip = launched.page.getByRole('region', { name: 'Cautions' });
    await expect
      .poll(() => strip.getByRole('listitem').allTextContents())
      .toEqual(['First note all displays and the report', 'Dangerous voltages', 'Never look into a fibre end']);
  });

  it('should find the cause from displays and report that are clicked in', async () => {
    const { seen } = await readSample('two-chains.1');
    const [snapshot] = seen.evidence.snapshots;
    await find.openSample('Two chains', 'nothing seen yet');
    await find.enter('-TB1', 'quiet');
    await find.enter('-TB2', 'downstream loss');
    await find.enter('-TB3', 'upstream loss');
    await launched.page.getByRole('button', { name: 'Report: chain 1 lost between drive 2 (-TB2) and drive 3 (-TB3)' }).click();
    await launched.page.getByText('while running', { exact: true }).click();
    await launched.page.getByText('halted', { exact: true }).click();
    // The same that the sample holds, so the same answer must come out.
    expect(snapshot?.reports?.find(({ chain }) => chain === 'chain1')?.gaps).toEqual([3]);
    await expect.poll(() => find.answer.textContent()).toMatch(/^Look at cable -WH3 and its plugs first\./);
    await expect
      .poll(() => find.unit('-TB2').getAttribute('aria-label'))
      .toMatch(/Seen: downstream loss\. Predicted: downstream loss, fits\./);
    await expect
      .poll(() => find.report('chain 1').getAttribute('aria-label'))
      .toMatch(/Seen: lost drive 2 \| 3\. Predicted: lost drive 2 \| 3, fits\./);
  });

  it('should lay the chosen suspect over the cabinet, seen above and predicted below', async () => {
    await find.suspect(/^Show \d+ more$/).click();
    const name = /-TB3 board, dead, display still lit/;
    await find
      .row(name)
      .getByRole('button', { name: /^Lay over/ })
      .click();
    // A dead, lit board stays quiet; what was seen there contradicts it, and its neighbour below would complain.
    await expect
      .poll(() => find.unit('-TB3').getAttribute('aria-label'))
      .toMatch(/Seen: upstream loss, code n7\. Predicted: quiet, against\./);
    await expect
      .poll(() => find.unit('-KE2').getAttribute('aria-label'))
      .toMatch(/Seen: not looked at\. Predicted: upstream loss, not looked at\./);
    await expect.poll(() => launched.page.getByText('-TB3 would show quiet, but shows upstream loss.').count()).toBe(1);
    await expect.poll(() => find.row(name).getByRole('cell', { name: 'predicted quiet, seen upstream loss: against' }).count()).toBe(1);
    await launched.page.getByRole('button', { name: 'Take the prediction off' }).click();
    await expect.poll(() => find.unit('-TB3').getAttribute('aria-label')).not.toContain('Predicted');
  });

  it('should name what contradicts when nothing fits everything, and what follows if it was misread', async () => {
    await find.openSample('Two chains', 'one display read from the wrong row');
    await expect.poll(() => find.answer.textContent()).toBe('Does not fit, read again: display of -TB4.');
    const pane = launched.page.getByRole('region', { name: 'Suspects' });
    const answer = launched.page.getByRole('region', { name: 'Answer' });
    await expect.poll(() => answer.getByText(/If all was read right, the likeliest is cable -WH7 and its plugs: \d+ %\./).count()).toBe(1);
    await expect.poll(() => pane.getByText('Against it stands: display of -TB4').count()).toBe(1);
    await expect.poll(() => pane.getByText(/^Display of -TB4 misread\? Then all the rest is explained by/).count()).toBe(1);
  });

  it('should show that a long search goes on, stop it, keep the suspects of before, and work on when asked', async () => {
    const { page } = launched;
    await page.evaluate(() => {
      // The question does not come to the worker: to the page that is a search that takes very long.
      const { postMessage } = Worker.prototype;
      Worker.prototype.postMessage = () => undefined;
      Object.assign(window, { letGo: () => Object.assign(Worker.prototype, { postMessage }) });
    });
    const answer = page.getByRole('region', { name: 'Answer' });
    const before = await find.answer.textContent();
    await find.unit('-TB4').press('2');
    await answer.getByRole('progressbar', { name: 'Working out the suspects' }).waitFor();
    await expect.poll(() => find.answer.textContent()).toBe(before);
    await answer.getByRole('button', { name: 'Stop' }).click();
    await answer.getByText('Stopped. The suspects shown are those of before.').waitFor();
    await page.evaluate(() => (window as unknown as { letGo: () => void }).letGo()); // put there above
    await answer.getByRole('button', { name: 'Work out again' }).click();
    await page.locator('#suspects[aria-busy="false"]').waitFor();
    await expect.poll(() => answer.getByText('Stopped.').count()).toBe(0);
  });

  it('should read a raw code through the legend, and keep one that is not in it', async () => {
    await find.unit('-KE2').click();
    const dialog = launched.page.getByRole('dialog');
    await dialog.getByRole('textbox', { name: 'Code shown' }).fill('N7');
    await expect.poll(() => dialog.getByText(/^= upstream loss, by /).count()).toBe(1);
    await dialog.getByRole('textbox', { name: 'Code shown' }).fill('zz-9');
    await expect.poll(() => dialog.getByText(/kept as “other”/).count()).toBe(1);
    await dialog.getByRole('button', { name: 'Enter code' }).click();
    await expect.poll(() => find.unit('-KE2').getAttribute('aria-label')).toContain('Seen: other, code zz-9.');
  });

  it('should take the answers of those who cannot read or cannot tell', async () => {
    await find.enter('-KE2', 'lit, cannot read it');
    await expect.poll(() => find.unit('-KE2').getAttribute('aria-label')).toContain('Seen: lit, cannot read it.');
    await find.enter('-TB4', 'complains, cannot tell which way');
    await expect.poll(() => find.unit('-TB4').getAttribute('aria-label')).toContain('Seen: complains, cannot tell which way.');
    await find.enter('-TB4', 'not looked at');
    await expect.poll(() => find.unit('-TB4').getAttribute('aria-label')).toContain('Seen: not looked at.');
  });

  it('should take back and redo every step by name, and withdraw single entries', async () => {
    await find.enter('-KE2', 'dark');
    await launched.page.getByRole('button', { name: 'Undo: dark at -KE2' }).click();
    await expect.poll(() => find.unit('-KE2').getAttribute('aria-label')).toContain('Seen: not looked at.');
    await launched.page.getByRole('button', { name: 'Redo: dark at -KE2' }).click();
    await expect.poll(() => find.unit('-KE2').getAttribute('aria-label')).toContain('Seen: dark.');
    await launched.page.getByRole('button', { name: 'Withdraw: -KE2 dark' }).click();
    await expect.poll(() => find.unit('-KE2').getAttribute('aria-label')).toContain('Seen: not looked at.');
    await expect.poll(() => launched.page.getByRole('button', { name: 'Undo: withdrawn: -KE2 dark' }).isEnabled()).toBe(true);
  });

  it('should show a cabinet with errors, and say what stands in the way', async () => {
    await find.openSample('With problems', 'nothing seen yet');
    await expect.poll(() => find.answer.textContent()).toBe('This cabinet cannot be worked with yet.');
    const pane = launched.page.getByRole('region', { name: 'Errors in the cabinet' });
    await expect.poll(() => pane.getByRole('listitem').count()).toBeGreaterThan(3);
  });

  it('should put two chains, forty units and three units on the window without leaving any out', async () => {
    for (const [sample, units] of [
      ['Three units', 4],
      ['Forty units', 43],
      ['Drives off chain', 8],
    ] as const) {
      await find.openSample(sample, 'nothing seen yet');
      await expect.poll(() => launched.page.getByRole('button', { name: /Seen: not looked at\./ }).count()).toBeGreaterThanOrEqual(units);
    }
  });
});
