import type { CDPSession, Page } from 'playwright-core';
import { serializeCase } from '../../../engine/cabinet/index.ts';
import { launchPage } from '../../support/launchPage.ts';
import { bigCase, dropCase, lastDesignation } from '../bigCabinet.ts';
import { driveDraw } from '../drawDriver.ts';

/*
 * The part of `npm run bench:page` about Draw: until 200 units are drawn that were opened, script per frame while they are panned and
 * while one is dragged, and undo of a paste of 100. Prints figures, judges nothing.
 */

const opened = 200;
const frames = 60;
const nextFrame = (page: Page) => page.evaluate(() => new Promise((resolve) => requestAnimationFrame(resolve)));

async function scriptOf(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return (metrics.find(({ name }) => name === 'ScriptDuration')?.value ?? Number.NaN) * 1_000;
}

/** Milliseconds from the drop of a case file until one of its units is drawn. */
function timeOpening(page: Page, text: string, unit: string): Promise<number> {
  return page.evaluate(
    async ([clip = '', id = '']) => {
      const begun = performance.now();
      const data = new DataTransfer();
      data.items.add(new File([clip], 'dropped.case.json', { type: 'application/json' }));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
      while (!document.querySelector(`[data-unit="${id}"]`)) await new Promise((resolve) => requestAnimationFrame(resolve));
      return performance.now() - begun;
    },
    [text, unit],
  );
}

/** Milliseconds in which the key of undo is answered: the document is the one before, checked anew, and all that follows it was told. */
function timeUndo(page: Page): Promise<number> {
  return page.evaluate(() => {
    const begun = performance.now();
    document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'z', ctrlKey: true, bubbles: true, cancelable: true }));
    return performance.now() - begun;
  });
}

export async function benchDraw(): Promise<void> {
  const { page, close } = await launchPage({ width: 1440, height: 900, reducedMotion: true });
  const draw = await driveDraw(page);
  await draw.unit('-TB1').waitFor();
  const open = await timeOpening(page, serializeCase(bigCase(opened)), `u1.${opened}`);
  console.log(`${String(opened).padStart(4)} units: opened and drawn in ${open.toFixed(0)} ms`);
  await page.waitForTimeout(2_000);

  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  await page.mouse.move(700, 500);
  let before = await scriptOf(session);
  for (let frame = 0; frame < frames; frame += 1) {
    await page.mouse.wheel(frame < frames / 2 ? 12 : -12, 0);
    await nextFrame(page);
  }
  console.log(
    `${String(opened).padStart(4)} units: panning ${(((await scriptOf(session)) - before) / frames).toFixed(1)} ms script per frame`,
  );

  const from = await draw.at(draw.unit('-TB1.1'));
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x - 20, from.y - 20, { steps: 4 });
  before = await scriptOf(session);
  for (let frame = 0; frame < frames; frame += 1) {
    await page.mouse.move(from.x - 20 - frame * 3, from.y - 20);
    await nextFrame(page);
  }
  console.log(
    `${String(opened).padStart(4)} units: dragging ${(((await scriptOf(session)) - before) / frames).toFixed(1)} ms script per frame`,
  );
  await page.keyboard.press('Escape');
  await page.mouse.up();

  // A paste of a hundred, taken back again: until the store has it, and until it is drawn.
  await dropCase(page, bigCase(100));
  await draw.unit(lastDesignation(100)).waitFor();
  await page.waitForTimeout(1_500);
  await draw.press('Control+a', 'Control+c', 'Control+v');
  await page.getByRole('button', { name: /^Undo: paste/ }).waitFor();
  await page.waitForTimeout(2_000);
  before = await scriptOf(session);
  const answered = await timeUndo(page);
  await page.getByRole('button', { name: /^Undo: paste/ }).waitFor({ state: 'detached' });
  await nextFrame(page);
  const all = (await scriptOf(session)) - before;
  console.log(` 100 units: undo of their paste answered in ${answered.toFixed(0)} ms; with drawing ${all.toFixed(0)} ms script`);
  await close([/./]);
}
