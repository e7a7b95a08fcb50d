import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { plainContent } from '../bench/cabinets.ts';
import { findChromium } from '../support/chromium.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { bigCase, dropCase } from './bigCabinet.ts';
import { launchDraw } from './drawDriver.ts';
import { driveFind } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('the inspector', () => {
  let draw: Awaited<ReturnType<typeof launchDraw>>;
  beforeEach(async () => {
    draw = await launchDraw();
  });
  // The reload at the beginning may cut off a font that is being fetched; that is no complaint.
  afterEach(() => draw.launched.close([/ERR_ABORTED/]));

  const inspector = () => draw.page.getByRole('complementary', { name: 'Inspector' });
  const field = (name: string) => inspector().getByLabel(name, { exact: true });

  it('should set a field when Enter is pressed, as one named step, and take it back', async () => {
    await draw.unit('-TB1').click();
    await field('Model').fill('QE drive 3');
    await field('Model').press('Enter');
    await expect.poll(() => draw.lastStep()).toBe('model of -TB1');
    await draw.page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => field('Model').inputValue()).toBe('QE drive 2');
  });

  it('should say at the field what is wrong, keep what was typed, and change nothing', async () => {
    await draw.unit('-TB1').click();
    const load = field('24 V, load');
    const before = await load.inputValue();
    await load.fill('much');
    await load.press('Enter');
    await inspector().getByRole('alert').getByText('Write a number').waitFor();
    await load.fill('-1');
    await load.press('Enter');
    await inspector().getByRole('alert').getByText('0 or more').waitFor();
    await expect.poll(() => load.getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => draw.lastStep()).toBe('');
    await load.press('Escape');
    await expect.poll(() => load.inputValue()).toBe(before);
    // With a decimal comma, as it is typed on many keyboards.
    await load.fill('1,25');
    await load.press('Enter');
    await expect.poll(() => load.inputValue()).toBe('1.25');
  });

  it('should set a field of several units at once', async () => {
    await draw.unit('-TB1').click();
    await draw.unit('-TB2').click({ modifiers: ['Shift'] });
    await draw.unit('-TB3').click({ modifiers: ['Shift'] });
    await inspector().getByText('3 units').waitFor();
    await expect.poll(() => field('Designation').getAttribute('placeholder')).toBe('differ');
    await field('Revision').fill('09');
    await field('Revision').press('Enter');
    await expect.poll(() => draw.lastStep()).toBe('revision of 3 units');
    const units = (await draw.saved()).units ?? [];
    expect(units.filter(({ revision }) => revision === '09').map(({ designation }) => designation)).toEqual(['-TB1', '-TB2', '-TB3']);
  });

  it('should edit lines of a field: add an axis, and take it out', async () => {
    await draw.unit('-TB2').click();
    await inspector()
      .getByRole('button', { name: /^Add ?: Axes/ })
      .click();
    const second = field('Axes, line 2: Name');
    await second.fill('W9');
    await second.press('Enter');
    await expect.poll(() => draw.lastStep()).toBe('axes of -TB2');
    const menuOf = async (row: string, deed: string) => {
      await inspector()
        .getByRole('button', { name: `${row}: what to do` })
        .click();
      expect(await seriousFindings(draw.page, '[role=menu]')).toEqual([]);
      await draw.page.getByRole('menuitem', { name: deed }).click();
    };
    await menuOf('W9', 'Move up');
    await expect.poll(() => second.inputValue()).toBe('C1');
    await menuOf('C1', 'Insert a line above');
    await second.fill('V1');
    await second.press('Enter');
    await expect.poll(() => field('Axes, line 3: Name').inputValue()).toBe('C1');
    await menuOf('W9', 'Take out');
    await expect.poll(() => field('Axes, line 1: Name').inputValue()).toBe('V1');
    await field('Axes, line 3: Name').waitFor({ state: 'detached' });
  });

  it('should add a picture to a unit, made small, and take it out again with what it holds', async () => {
    await draw.unit('-TB2').click();
    const large = await draw.page.evaluate(() => {
      const canvas = Object.assign(document.createElement('canvas'), { width: 3000, height: 1200 });
      canvas.getContext('2d')?.fillRect(0, 0, 1500, 1200);
      return canvas.toDataURL('image/png').slice('data:image/png;base64,'.length);
    });
    const file = inspector().getByLabel('Picture file');
    await file.setInputFiles({ name: 'words.png', mimeType: 'image/png', buffer: Buffer.from('no picture') });
    await inspector().getByText('This file is not a picture that can be read here').waitFor();
    await file.setInputFiles({ name: 'drive.png', mimeType: 'image/png', buffer: Buffer.from(large, 'base64') });
    const picture = inspector().getByRole('button', { name: '-TB2', exact: true });
    await picture.waitFor();
    await expect.poll(() => draw.lastStep()).toBe('picture of -TB2');
    const kept = (await draw.saved()).photos ?? [];
    expect(kept).toHaveLength(1);
    expect(kept[0]).toMatchObject({ caption: '-TB2', mediaType: 'image/jpeg' });
    await picture.click();
    const size = () => picture.locator('canvas').evaluate((canvas: HTMLCanvasElement) => [canvas.width, canvas.height]);
    await expect.poll(size).toEqual([1600, 640]);
    await draw.launched.shoot('draw-picture');
    await picture.press('Escape');
    await inspector().getByRole('button', { name: 'Take out -TB2' }).click();
    await picture.waitFor({ state: 'detached' });
    expect((await draw.saved()).photos ?? []).toEqual([]);
  });

  it('should number what is chosen anew, with signs before the letters and a first number', async () => {
    await draw.unit('-TB2').click();
    await draw.unit('-TB1').click({ modifiers: ['Shift'] });
    await field('Before the letters').fill('M1-');
    await inspector().getByText('It begins with = or + or -').waitFor();
    await field('Before the letters').fill('=M1+C2-');
    await field('First number').fill('20');
    await inspector().getByRole('button', { name: 'Number designations anew' }).click();
    await draw.unit('=M1+C2-TB20').waitFor();
    await draw.unit('=M1+C2-TB21').waitFor();
    await expect.poll(async () => (await draw.chains())[0]?.slice(0, 2)).toEqual(['=M1+C2-TB21', '=M1+C2-TB20']);
  });

  it('should go along cables and leads to what a unit hangs on', async () => {
    await draw.unit('-TB2').click();
    await inspector().getByRole('button', { name: 'cable -WH2' }).click();
    await inspector().getByText('Cable -WH2').waitFor();
    await expect.poll(() => field('Length').inputValue()).toBe('0.4');
    await inspector().getByRole('button', { name: '-TB1' }).click();
    await expect.poll(() => field('Designation').inputValue()).toBe('-TB1');
  });

  it('should show the fields of the cabinet when nothing is chosen', async () => {
    await expect.poll(() => field('Machine number').inputValue()).toBe('QG7-0117');
  });

  it('should list problems with a way there and a fix that is one step', async () => {
    const find = driveFind(draw.page);
    await find.openSample('With problems', 'nothing seen yet');
    const problems = draw.page.getByRole('region', { name: 'Problems' });
    const line = problems.getByRole('listitem').filter({ hasText: 'Lead -WD6 feeds the supply -TB9' });
    await line.getByRole('button', { name: /^Show/ }).click();
    await inspector().getByText('2 chosen').waitFor();
    await line.getByRole('button', { name: 'Turn -WD6 round' }).click();
    await line.waitFor({ state: 'detached' });
    await expect.poll(() => draw.lastStep()).toBe('turn -WD6 round');
    await draw.page.getByRole('button', { name: /^Undo/ }).click();
    await line.waitFor();
    expect(await seriousFindings(draw.page, '#problems')).toEqual([]);
  });

  it('should feed several units and number nameless cables at once, and draw the cables of another cabinet of the same size', async () => {
    await driveFind(draw.page).openSample('Two chains', 'nothing seen yet');
    await draw.press('Alt+1');
    const content = plainContent(2, 5);
    await dropCase(draw.page, { ...bigCase(5), cabinet: { ...content, leads: content.leads?.slice(0, 3) ?? [] } });
    await draw.press('Alt+1');
    await draw.unit('-TB2.5').waitFor();
    const problems = draw.page.getByRole('region', { name: 'Problems' });
    await problems.getByRole('button', { name: 'Number 10 cables without designation' }).click();
    for (const number of [1, 6, 10]) await draw.cable(`-WH${number}`).waitFor();
    await problems.getByRole('button', { name: 'Feed 7 units from -TB0' }).click();
    await problems.getByText('No problems found.').waitFor();
    await expect.poll(() => draw.lastStep()).toContain('-TB0');
  });

  it('should compare with what was saved, mark it on the drawing, and go there', async () => {
    await draw.unit('-TB1').click();
    await field('Model').fill('QE drive 3');
    await field('Model').press('Enter');
    await draw.page.getByRole('button', { name: 'Cabinet', exact: true }).click();
    await draw.page.getByRole('menuitem', { name: 'Compare with what was saved' }).click();
    const pane = draw.page.getByRole('region', { name: 'Compare' });
    const row = pane.getByRole('row').filter({ hasText: 'QE drive 3' });
    await expect.poll(() => row.getByRole('cell').allTextContents()).toEqual(['changed', '-TB1', 'Model', 'QE drive 2', 'QE drive 3']);
    await draw.drawing.getByText('changed').waitFor();
    await pane.getByRole('button', { name: '-TB1' }).click();
    await expect.poll(() => field('Designation').inputValue()).toBe('-TB1');
    expect(await seriousFindings(draw.page, '#problems')).toEqual([]);
    await pane.getByRole('button', { name: 'Stop comparing' }).click();
    await draw.page.getByRole('region', { name: 'Problems' }).waitFor();
  });

  it('should make a new machine from the design, without serial numbers', async () => {
    await draw.page.getByRole('button', { name: 'Cabinet', exact: true }).click();
    await draw.page.getByRole('menuitem', { name: /^New machine from this design/ }).click();
    const dialog = draw.page.getByRole('dialog', { name: 'New machine from this design' });
    expect(await seriousFindings(draw.page, '[role=dialog]')).toEqual([]);
    await dialog.getByLabel('Name of the cabinet').fill('Gear grinder QG-8');
    await dialog.getByLabel('Machine number').fill('QG8-0001');
    await dialog.getByRole('button', { name: 'Make the machine' }).click();
    await expect.poll(() => field('Machine number').inputValue()).toBe('QG8-0001');
    await expect.poll(() => field('Name').inputValue()).toBe('Gear grinder QG-8');
    await draw.unit('-TB1').click();
    await expect.poll(() => field('Part number').inputValue()).not.toBe('');
    await expect.poll(() => field('Serial number').inputValue()).toBe('');
  });

  it('should save a changed design before a machine is made of it, and never offer to drop it', async () => {
    await draw.page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
    await draw.unit('-TB1').click();
    await field('Model').fill('QE drive 3');
    await field('Model').press('Enter');
    await draw.page.getByRole('button', { name: 'Cabinet', exact: true }).click();
    await draw.page.getByRole('menuitem', { name: /^New machine from this design/ }).click();
    await draw.page.getByLabel('Machine number').last().fill('QG8-0002');
    await draw.page.getByRole('button', { name: 'Make the machine' }).click();
    const asked = draw.page.getByRole('alertdialog');
    await asked.waitFor();
    await expect.poll(() => asked.getByRole('button').allTextContents()).toEqual(['Save the design, then make the machine', 'Cancel']);
    await draw.launched.shoot('draw-machine-asked');
    const coming = draw.page.waitForEvent('download');
    await asked.getByRole('button', { name: 'Save the design, then make the machine' }).click();
    await coming;
    await expect.poll(() => field('Machine number').inputValue()).toBe('QG8-0002');
    await draw.unit('-TB1').click();
    await expect.poll(() => field('Model').inputValue()).toBe('QE drive 3');
  });

  it('should give one unit minutes of its own, with their source, check them, and go back to the usual ones', async () => {
    await draw.unit('-TB2').click();
    const own = inspector().getByRole('region', { name: 'Repairs of this alone' });
    await own.getByText('Repairs of this alone').click();
    const minutes = own.getByLabel('Minutes: replace a unit: -TB2');
    await minutes.fill('-3');
    await minutes.press('Enter');
    await own.getByRole('alert').getByText('A number of 0 or more is needed').waitFor();
    await minutes.fill('52,5');
    await minutes.press('Enter');
    await expect.poll(() => draw.lastStep()).toContain('replace a unit: -TB2');
    const source = own.getByLabel('Where from: replace a unit: -TB2');
    await source.fill('work orders');
    await source.press('Enter');
    expect((await draw.saved()).repair?.acts).toEqual([
      expect.objectContaining({ act: 'replace-unit', minutes: 52.5, source: 'work orders' }),
    ]);
    expect(await seriousFindings(draw.page, '#inspector')).toEqual([]);
    await own.getByRole('button', { name: /^Back to the usual figures/ }).click();
    await expect.poll(() => minutes.inputValue()).toBe('40');
    await draw.page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => minutes.inputValue()).toBe('52.5');
  });
});

describe.skipIf(missing)('the inspector for everybody', () => {
  it.each(['light', 'dark', 'high-contrast'] as const)('should pass the automatic check in %s', async (theme) => {
    const draw = await launchDraw({ width: 1280, height: 720, theme });
    expect(await seriousFindings(draw.page, '#inspector')).toEqual([]);
    await draw.unit('-TB1').click();
    expect(await seriousFindings(draw.page, '#inspector')).toEqual([]);
    await draw.unit('-TB10').click();
    await draw.unit('-TB2').click({ modifiers: ['Shift'] });
    expect(await seriousFindings(draw.page, '#inspector')).toEqual([]);
    await draw.launched.close([/ERR_ABORTED/]);
  });
});
