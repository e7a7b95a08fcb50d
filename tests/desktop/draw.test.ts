import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DrawDriver, driveDraw } from '../browser/drawDriver.ts';
import { findDesktop, type LaunchedDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);

describe.skipIf(missing)('Draw in the desktop program', () => {
  let launched: LaunchedDesktop;
  let draw: DrawDriver;
  beforeAll(async () => {
    launched = await launchDesktop();
    draw = await driveDraw(launched.page);
    await draw.unit('-TB1').waitFor();
  });
  afterAll(async () => {
    // All is taken back, so the program does not ask for what is unsaved.
    while ((await draw.lastStep()) !== '') await draw.press('Control+z');
    await launched.close();
  });

  it('should insert and reorder by real drags', async () => {
    await draw.drag(await draw.at(draw.shelf('Spindle drive')), await draw.at(draw.cable('-WH3')));
    await expect.poll(async () => (await draw.chains())[0]).toEqual(['-TB1', '-TB2', '-TB11', '-TB3', '-KE2', '-TB4']);
    await draw.drag(await draw.at(draw.unit('-TB11'), 0, -40), await draw.at(draw.cable('-WH7')));
    await expect.poll(async () => (await draw.chains())[1]).toEqual(['-TB5', '-TB11', '-TB6', '-KE3', '-TB7']);
  });

  it('should copy and paste by the keys of the system’s clipboard', async () => {
    await draw.click(draw.unit('-KE3'));
    await draw.press('Control+c');
    await draw.click(draw.unit('-TB4'));
    await draw.press('Control+v');
    await expect.poll(async () => (await draw.chains())[0]).toEqual(['-TB1', '-TB2', '-TB3', '-KE2', '-TB4', '-KE4']);
  });
});
