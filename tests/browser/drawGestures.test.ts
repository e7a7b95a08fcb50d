import { afterEach, describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { whyMissing } from '../support/required.ts';
import { launchDraw } from './drawDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

const first = ['-TB1', '-TB2', '-TB3', '-KE2', '-TB4'];
const second = ['-TB5', '-TB6', '-KE3', '-TB7'];

describe.skipIf(missing)('gestures of Draw, with a real mouse', () => {
  let draw: Awaited<ReturnType<typeof launchDraw>>;
  // The reload at the beginning may cut off a font that is being fetched; that is no complaint.
  afterEach(() => draw.launched.close([/ERR_ABORTED/]));

  it('should insert what is dragged from the shelf onto a cable: the chain parts, and the bar says what is renumbered', async () => {
    draw = await launchDraw();
    await draw.drag(await draw.at(draw.shelf('Servo drive')), await draw.at(draw.cable('-WH3')), {
      held: async () => {
        expect(await draw.bar.textContent()).toContain('Insert servo drive between -TB2 and -TB3');
        expect(await draw.bar.textContent()).toContain('-TB3 and -TB4 become drive 4 and drive 5.');
        expect(await draw.page.locator('.open-slot').count()).toBe(1);
        await draw.launched.shoot('draw-held');
      },
    });
    await expect.poll(() => draw.chains()).toEqual([['-TB1', '-TB2', '-TB11', '-TB3', '-KE2', '-TB4'], second]);
    await expect.poll(() => draw.lastStep()).toBe('new servo drive');
    await draw.press('Control+z');
    await expect.poll(() => draw.chains()).toEqual([first, second]);
  });

  it('should reorder within a row and between rows by dragging, and leave everything alone on Escape', async () => {
    draw = await launchDraw();
    const cable = await draw.at(draw.cable('-WH2'));
    await draw.drag(await draw.at(draw.unit('-TB4'), 0, -50), { x: cable.x, y: cable.y }, { cancel: true });
    await expect.poll(() => draw.chains()).toEqual([first, second]);
    await draw.drag(await draw.at(draw.unit('-TB4'), 0, -50), cable);
    await expect.poll(() => draw.chains()).toEqual([['-TB1', '-TB4', '-TB2', '-TB3', '-KE2'], second]);
    await draw.drag(await draw.at(draw.unit('-TB4'), 0, -50), await draw.at(draw.cable('-WH7')));
    await expect
      .poll(() => draw.chains())
      .toEqual([
        ['-TB1', '-TB2', '-TB3', '-KE2'],
        ['-TB5', '-TB4', '-TB6', '-KE3', '-TB7'],
      ]);
    await expect.poll(() => draw.lastStep()).toBe('move -TB4');
    await draw.press('Control+z', 'Control+z');
    await expect.poll(() => draw.chains()).toEqual([first, second]);
  });
});
