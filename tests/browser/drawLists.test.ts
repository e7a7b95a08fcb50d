import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { launchDraw } from './drawDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('the lists', () => {
  let draw: Awaited<ReturnType<typeof launchDraw>>;
  beforeEach(async () => {
    draw = await launchDraw();
    await draw.press('t');
    await tab('Units').waitFor();
  });
  // The reload at the beginning may cut off a font that is being fetched; that is no complaint.
  afterEach(() => draw.launched.close([/ERR_ABORTED/]));

  const tab = (name: string) => draw.page.getByRole('tab', { name: new RegExp(`^${name}`) });
  const cell = (name: string) => draw.page.getByLabel(name, { exact: true });
  /** What a spreadsheet puts on the clipboard, pasted where the focus is. */
  const paste = (text: string) =>
    draw.page.evaluate((copied) => {
      const data = new DataTransfer();
      data.setData('text/plain', copied);
      document.activeElement?.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
    }, text);

  it('should show all units along the chains, and edit a cell with keys alone', async () => {
    await expect.poll(() => draw.page.getByRole('row').count()).toBe(11);
    await cell('-TB1: Part number').focus();
    await draw.page.keyboard.type('Q-77');
    await draw.press('Enter');
    // Enter takes the cell and goes to the one below.
    await cell('-TB2: Part number').and(draw.page.locator(':focus')).waitFor();
    await draw.press('ArrowUp');
    await cell('-TB1: Part number').and(draw.page.locator(':focus')).waitFor();
    await expect.poll(() => draw.lastStep()).toBe('part number of -TB1');
  });

  it('should paste copied cells as one step, or say which one does not fit', async () => {
    await tab('Cables').click();
    await cell('cable -WH2: Length').focus();
    await paste('0,6\n0,7\n0.8\n');
    await expect.poll(() => cell('cable -WH4: Length').inputValue()).toBe('0.8');
    await expect.poll(() => cell('cable -WH2: Length').inputValue()).toBe('0.6');
    await expect.poll(() => draw.lastStep()).toBe('length of 3 cables');
    await cell('cable -WH5: Length').focus();
    await paste('0,9\nlong');
    await draw.page.getByRole('alert').getByText('Nothing was pasted. Row 2 of what was copied, Length').waitFor();
    await expect.poll(() => cell('cable -WH5: Length').inputValue()).toBe('0.4');
    await draw.page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => cell('cable -WH2: Length').inputValue()).toBe('0.4');
  });

  it('should plug an end of a cable in elsewhere, and tell why not', async () => {
    await tab('Cables').click();
    await cell('cable -WH5: Lower plug').selectOption({ label: '-TB7' });
    await expect.poll(() => draw.said.textContent()).toContain('-WH9');
    // Refused: it sits where it sat.
    await expect
      .poll(() => cell('cable -WH5: Lower plug').evaluate((select: HTMLSelectElement) => select.selectedOptions[0]?.text))
      .toBe('-TB4');
    await cell('cable -WH9: Lower plug').selectOption('');
    await cell('cable -WH5: Lower plug').selectOption({ label: '-TB7' });
    await expect.poll(() => draw.lastStep()).toBe('another end of cable -WH5');
  });

  it('should choose a line for the inspector, and take lines out', async () => {
    await draw.page.getByRole('button', { name: '3: choose -TB3' }).click();
    const inspector = draw.page.getByRole('complementary', { name: 'Inspector' });
    await expect.poll(() => inspector.getByLabel('Designation', { exact: true }).inputValue()).toBe('-TB3');
    await tab('Leads').click();
    const lines = await draw.page.getByRole('row').count();
    await draw.page.getByRole('button', { name: 'Take lead -WD1 out' }).click();
    await expect.poll(() => draw.page.getByRole('row').count()).toBe(lines - 1);
  });

  it('should add what is not on the drawing: a spare, a fibre', async () => {
    for (const [name, button] of [
      ['Spares', 'Add a spare'],
      ['Fibres', 'Add a fibre'],
    ] as const) {
      await tab(name).click();
      const lines = await draw.page.getByRole('row').count();
      await draw.page.getByRole('button', { name: button }).click();
      await expect.poll(() => draw.page.getByRole('row').count()).toBe(lines + 1);
    }
    await draw.page.getByRole('button', { name: 'Take New fibre out' }).click();
    await expect.poll(() => draw.page.getByRole('row').count()).toBe(2);
  });

  it('should pass the automatic check with every table', async () => {
    for (const name of ['Units', 'Cables', 'Leads', 'Feedback cables', 'Chains', 'Spares', 'Fibres', 'Types']) {
      await tab(name).click();
      await draw.page.getByRole('table').waitFor();
      expect(await seriousFindings(draw.page, '#cabinet'), name).toEqual([]);
    }
  });

  it('should show other columns by keys alone, keep them for the user, and go back to the usual ones', async () => {
    const heads = () => draw.page.getByRole('columnheader').allTextContents();
    const usual = await heads();
    await draw.press('Control+Shift+l');
    const menu = draw.page.getByRole('menu', { name: /^Columns/ });
    await menu.waitFor();
    expect(await seriousFindings(draw.page, '[role=menu]')).toEqual([]);
    // The last one above "the usual columns".
    await draw.press('End', 'ArrowUp', 'Space');
    await menu.getByRole('menuitemcheckbox', { name: 'Notes', checked: true }).waitFor();
    await draw.launched.shoot('draw-list-columns');
    await draw.press('Escape');
    await expect.poll(heads).toEqual([...usual.slice(0, -1), 'Notes', usual[usual.length - 1]]);
    await cell('-TB1: Notes').fill('spare in the workshop');
    await draw.press('Tab');
    await expect.poll(() => draw.lastStep()).toContain('notes of -TB1');
    await draw.page.reload();
    await draw.page.getByRole('region', { name: 'Answer' }).waitFor();
    await draw.press('Alt+1');
    await draw.page.getByRole('region', { name: 'Cabinet, drawing' }).waitFor();
    await draw.press('t');
    await tab('Units').waitFor();
    await expect.poll(heads).toContain('Notes');
    await draw.press('Control+Shift+l');
    await draw.page.getByRole('menuitem', { name: 'The usual columns' }).click();
    await expect.poll(heads).toEqual(usual);
  });
});
