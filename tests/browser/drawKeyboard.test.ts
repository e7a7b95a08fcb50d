import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { findChromium } from '../support/chromium.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { launchDraw } from './drawDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('Draw without a mouse', () => {
  let draw: Awaited<ReturnType<typeof launchDraw>>;
  // The reload at the beginning may cut off a font that is being fetched; that is no complaint.
  afterEach(() => draw.launched.close([/ERR_ABORTED/]));

  it('should draw, save and open again three units', async () => {
    draw = await launchDraw();
    const { page, press } = draw;
    await press('n');
    await page.getByRole('textbox', { name: 'Units' }).and(page.locator(':focus')).waitFor();
    // One by one: the line makes the first, keys make the others behind what is chosen.
    await press('s', 'Enter');
    await draw.unit('-TB1').and(page.locator(':focus')).waitFor();
    await press('e');
    await draw.unit('-KE2').and(page.locator(':focus')).waitFor();
    await press('ArrowLeft');
    await expect.poll(() => draw.cable('-WH2').evaluate((cable) => cable === document.activeElement)).toBe(true);
    await press('p');
    await expect.poll(() => draw.chains()).toEqual([['-TB1', '-TB3', '-KE2']]);
    await expect.poll(() => draw.said.textContent()).not.toBe('');
    // Towards the controller and back again.
    await press('Control+ArrowLeft');
    await expect.poll(() => draw.chains()).toEqual([['-TB3', '-TB1', '-KE2']]);
    await expect.poll(() => draw.said.textContent()).toContain('-TB3: chain 1, position 1, drive 1');
    await press('Control+ArrowRight');

    const folder = await mkdtemp(join(tmpdir(), 'linkwright-'));
    try {
      const coming = page.waitForEvent('download');
      await press('Control+s');
      const file = join(folder, 'three.case.json');
      await (await coming).saveAs(file);
      await press('n');
      await page.getByRole('textbox', { name: 'Units' }).waitFor();
      const choosing = page.waitForEvent('filechooser');
      await press('Control+o');
      await (await choosing).setFiles(file);
      await expect.poll(() => draw.chains()).toEqual([['-TB1', '-TB3', '-KE2']]);
    } finally {
      await rm(folder, { recursive: true });
    }
    // Tab walks along the chain.
    await page.locator('#cabinet').focus();
    const walked: string[] = [];
    for (let stop = 0; stop < 20 && !walked.includes('-KE2'); stop += 1) {
      await press('Tab');
      const label = await page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');
      if (label.startsWith('-')) walked.push(label.split(',')[0] ?? '');
    }
    expect(walked.filter((name) => name !== '-KE1')).toEqual(['-TB1', '-TB3', '-KE2']);
  });

  it('should have twelve units on two chains, with supply, leads and designations, after sixty actions at most', async () => {
    draw = await launchDraw();
    const { page, press } = draw;
    draw.actions();
    await press('n');
    await page.getByRole('textbox', { name: 'Units' }).and(page.locator(':focus')).waitFor();
    // Seven on the first chain, five on the second; every letter and sign is an action.
    await press(...'sssspes;sspes', 'Enter');
    await draw.unit('-TB1').waitFor();
    await expect.poll(async () => (await draw.chains()).map(({ length }) => length)).toEqual([7, 5]);
    // By mouse: another supply beside, and the second chain hung on it.
    await draw.click(draw.unit('-TB1'));
    await press('u');
    const supply = await page.locator(':focus').getAttribute('aria-label');
    const name = supply?.split(',')[0] ?? '';
    await draw.click(page.getByRole('button', { name: /^chain 2 / }));
    await press('w');
    await page.getByRole('dialog', { name: 'Connect to' }).getByRole('searchbox').waitFor();
    await press(...`feed from ${name}`.split(''));
    await press('Enter');
    await expect.poll(() => draw.lastStep()).toContain(`from ${name}`);
    const cabinet = await draw.saved();
    const actions = draw.actions();
    console.log(`${actions} actions`);
    expect(actions).toBeLessThanOrEqual(60);
    const drives = (cabinet.units ?? []).filter(({ kind }) => kind !== 'supply');
    expect(drives).toHaveLength(12);
    expect(cabinet.chains).toHaveLength(2);
    expect(drives.every(({ designation }) => /^-(TB|KE)\d+$/.test(designation))).toBe(true);
    expect(new Set(cabinet.units?.map(({ designation }) => designation)).size).toBe(cabinet.units?.length);
    expect(drives.every(({ id }) => cabinet.leads?.some(({ to }) => to?.unit === id))).toBe(true);
    expect(checkCabinet(cabinet).problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it.each(['light', 'dark', 'high-contrast'] as const)('should pass the automatic check in %s', async (theme) => {
    draw = await launchDraw({ theme, width: 1280, height: 720 });
    expect(await seriousFindings(draw.page)).toEqual([]);
    await draw.click(draw.unit('-TB2'));
    expect(await seriousFindings(draw.page)).toEqual([]);
    await draw.press('w');
    await draw.page.getByRole('dialog', { name: 'Connect to' }).waitFor();
    expect(await seriousFindings(draw.page)).toEqual([]);
    await draw.press('Escape', 'Shift+F10');
    await draw.page.getByRole('menuitem', { name: 'Choose the whole chain' }).waitFor();
    expect(await seriousFindings(draw.page)).toEqual([]);
    await draw.press('Escape', 'Control+Shift+p');
    await draw.page.getByRole('dialog', { name: 'All commands' }).waitFor();
    expect(await seriousFindings(draw.page)).toEqual([]);
  });
});
