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
        await expect.poll(() => draw.bar.textContent()).toContain('Insert servo drive between -TB2 and -TB3');
        await expect.poll(() => draw.bar.textContent()).toContain('-TB3 and -TB4 become drive 4 and drive 5.');
        await expect.poll(() => draw.page.locator('.open-slot').count()).toBe(1);
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

  it('should take a drive off its chain, and copy it with Alt', async () => {
    draw = await launchDraw();
    const below = { x: (await draw.at(draw.unit('-TB5'))).x, y: (await draw.at(draw.unit('-TB5'), 0, 150)).y };
    await draw.drag(await draw.at(draw.unit('-TB2'), 0, -50), below, {
      held: async () => {
        await expect.poll(() => draw.bar.textContent()).toContain('Take -TB2 off the chain');
        await expect.poll(() => draw.said.textContent()).toContain('Take -TB2 off the chain.');
      },
    });
    await expect.poll(() => draw.chains()).toEqual([['-TB1', '-TB3', '-KE2', '-TB4'], second]);
    await expect.poll(() => draw.lastStep()).toBe('take -TB2 off the chain');
    await expect.poll(() => draw.said.textContent()).toBe('Done: take -TB2 off the chain.');
    // The same by the menu of the thing; an encoder interface is on a chain or nowhere, and the bar says so.
    await draw.unit('-KE2').click({ button: 'right' });
    await draw.page.getByRole('menuitem', { name: 'Take off the chain' }).click();
    await draw.bar.getByText('An encoder interface is always on a chain').waitFor();
    await draw.press('Control+z');
    await expect.poll(() => draw.chains()).toEqual([first, second]);

    await draw.drag(await draw.at(draw.unit('-TB6'), 0, -50), await draw.at(draw.cable('-WH2')), {
      key: 'Alt',
      held: async () => await expect.poll(() => draw.bar.textContent()).toContain('Insert a copy of -TB6 between -TB1 and -TB2'),
    });
    await expect.poll(() => draw.chains()).toEqual([['-TB1', '-TB11', '-TB2', '-TB3', '-KE2', '-TB4'], second]);
    await expect.poll(() => draw.lastStep()).toBe('duplicate -TB6');
  });

  it('should let a pulled plug hang loose, draw it, and plug it in again; and offer new units for a new cable', async () => {
    draw = await launchDraw();
    const ground = await draw.at(draw.unit('-TB7'), 20, 140);
    await draw.drag(await draw.port('-TB4', 'up'), ground, {
      held: async () => await expect.poll(() => draw.bar.textContent()).toContain('Let this end of cable -WH5 hang loose'),
    });
    const loose = draw.drawing.getByRole('button', { name: 'Cable -WH5, at -KE2 down, the other end is loose.' });
    await loose.waitFor();
    await expect.poll(async () => (await draw.chains())[0]).toEqual(['-TB1', '-TB2', '-TB3', '-KE2']);
    await draw.drag(await draw.at(loose), await draw.port('-TB4', 'up'));
    await expect.poll(async () => (await draw.chains())[0]).toEqual(first);

    // Both ends out: it stands in the shelf, and is plugged in from there.
    await draw.drag(await draw.port('-TB4', 'up'), ground);
    await loose.waitFor();
    await draw.drag(await draw.port('-KE2', 'down'), ground);
    const inShelf = draw.page.getByRole('complementary', { name: 'Shelf' }).getByRole('button', { name: 'cable -WH5' });
    await draw.drag(await draw.at(inShelf), await draw.port('-KE2', 'down'));
    await loose.waitFor();
    await draw.press('Control+z', 'Control+z', 'Control+z');

    await draw.drag(await draw.port('-TB7', 'down'), ground);
    await draw.page.getByRole('menuitem', { name: 'Insert a spindle drive' }).click();
    await expect.poll(async () => (await draw.chains())[1]).toEqual([...second, '-TB11']);
  });

  it('should hear letters and Delete on the drawing alone', async () => {
    draw = await launchDraw();
    await draw.click(draw.unit('-TB2'));
    await draw.page.getByRole('button', { name: 'mounting order' }).focus();
    await draw.press('s');
    await expect.poll(async () => (await draw.chains())[0]).toHaveLength(6);
    await draw.press('Control+z');
    await draw.click(draw.unit('-TB2'));
    await draw.page.getByRole('complementary', { name: 'Inspector' }).getByRole('button', { name: 'Open the type' }).focus();
    await draw.press('s', 'Delete', 'c');
    await expect.poll(() => draw.lastStep()).toBe('');
    await expect.poll(() => draw.chains()).toEqual([first, second]);
  });

  it('should open what to do on a finger that rests, and do nothing that the touch began', async () => {
    draw = await launchDraw({ touch: true });
    const at = await draw.at(draw.unit('-TB3'), 0, -40);
    const session = await draw.page.context().newCDPSession(draw.page);
    await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [at] });
    await draw.page.getByRole('menuitem', { name: 'Take off the chain' }).waitFor();
    await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await draw.page.getByRole('menuitem', { name: 'Duplicate' }).waitFor();
    await expect.poll(() => draw.unit('-TB3').getAttribute('aria-label')).toContain('Chosen.');
    await expect.poll(() => draw.lastStep()).toBe('');
  });
});
