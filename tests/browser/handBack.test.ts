import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from '../documents/pdfReader.ts';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { driveFind } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('From a halted machine to the report', () => {
  let launched: LaunchedPage;
  beforeAll(async () => {
    launched = await launchPage({ width: 1440, height: 900, reducedMotion: true });
    // The browser's dialogs for files cannot be pressed from a test; without them saving is a download.
    await launched.page.addInitScript(() => Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined }));
    await launched.page.reload();
  });
  afterAll(() => launched.close([/ERR_ABORTED/]));

  it('should lead by keyboard alone to a report that a general reader reads, and pass the automatic check', async () => {
    const { page } = launched;
    const find = driveFind(page);
    const card = page.getByRole('region', { name: 'Next step' });
    await card.getByText(/^(looked \d+ steps? ahead|exact order)$/).waitFor({ timeout: 60_000 });
    const act = (await card.getByRole('heading', { level: 3 }).textContent()) ?? '';
    await page.locator('body').press('d');
    await find.tabToOutcome();
    await page.keyboard.press('Enter');
    await find.answer.getByText(/^The machine runs: /).waitFor({ timeout: 60_000 });
    await page.keyboard.press('h');
    const dialog = page.getByRole('dialog', { name: 'Hand the machine back' });
    await dialog.getByText('All 10 displays quiet.').waitFor();
    await dialog.getByText(/^None of the \d points above is ticked yet\. The report says “not confirmed”/).waitFor();
    await dialog.getByRole('checkbox', { name: /^Every plug that was touched/ }).press(' ');
    await dialog.getByText(/^\d of the \d points above are not ticked yet\./).waitFor();
    await dialog.getByRole('textbox', { name: 'Name' }).fill('Night shift');
    expect(await seriousFindings(page)).toEqual([]);
    const coming = page.waitForEvent('download');
    await dialog.getByRole('button', { name: 'Save as PDF' }).press('Enter');
    const file = await (await coming).path();
    const text = (await readPdf(new Uint8Array(await readFile(file)))).pages.map((one) => one.text.replace(/\s+/g, ' ')).join(' ');
    expect(text).toContain(act.replace(/^Clean /, 'Cleaned ').replace(/^Reseat /, 'Reseated '));
    expect(text).toContain('Night shift');
    expect(text).toMatch(/-TB2 chain 1, position 2, drive 2 downstream loss/);
    expect(text).toMatch(/Every plug that was touched .* yes/);
    expect(text).toContain('not confirmed');
    await dialog.getByText(/^\d points of the checklist stand in it as not confirmed\.$/).waitFor();
  });
});
