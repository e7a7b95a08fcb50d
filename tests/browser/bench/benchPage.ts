import type { Page } from 'playwright-core';
import { launchPage } from '../../support/launchPage.ts';
import { bigCase, dropCase, lastDesignation } from '../bigCabinet.ts';
import { driveFind } from '../findDriver.ts';
import { benchDraw } from './benchDraw.ts';

/*
 * `npm run bench:page`: how long the window takes, in the packed Chromium, on the built page. From a digit on a unit to the suspects
 * worked out anew, at 30 and 100 units, and to the steps after them; script per frame while 60 units are panned. Prints figures, judges nothing.
 */

const sizes = [10, 30, 60, 100] as const;
const rounds = 12;

const median = (times: readonly number[]) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;
const most = (times: readonly number[]) => Math.max(...times);

/** Milliseconds from the key, as the page received it, until suspects and steps that belong to it stand in the page. */
async function timeKey(page: Page, key: string): Promise<{ readonly suspects: number; readonly steps: number }> {
  // The runner names functions by a helper of its own, which the page does not have.
  await page.evaluate('globalThis.__name ??= (one) => one');
  await page.evaluate(() => {
    const until = (selector: string) =>
      new Promise<number>((resolve) => {
        const look = (begun: boolean) => {
          const busy = document.querySelector(selector)?.getAttribute('aria-busy') === 'true';
          if (begun && !busy) return resolve(performance.now());
          new MutationObserver((_changes, observer) => {
            observer.disconnect();
            look(begun || busy || document.querySelector(selector)?.getAttribute('aria-busy') === 'true');
          }).observe(document.body, { subtree: true, childList: true, attributes: true });
        };
        look(false);
      });
    const holder = window as unknown as { timed: Promise<{ suspects: number; steps: number }> }; // a place for what is measured
    holder.timed = new Promise((resolve) => {
      window.addEventListener(
        'keydown',
        async () => {
          const pressed = performance.now();
          const [suspects, steps] = await Promise.all([until('#suspects'), until('#step')]);
          resolve({ suspects: suspects - pressed, steps: steps - pressed });
        },
        { once: true, capture: true },
      );
    });
  });
  await page.keyboard.press(key);
  return page.evaluate(() => (window as unknown as { timed: Promise<{ suspects: number; steps: number }> }).timed);
}

async function benchKeys(perChain: number): Promise<void> {
  const { page, close } = await launchPage({ width: 1440, height: 900, reducedMotion: true });
  const find = driveFind(page);
  await find.answer.waitFor();
  await dropCase(page, bigCase(perChain));
  const unit = find.unit(lastDesignation(perChain));
  await unit.waitFor();
  await page.waitForTimeout(1_500);
  const suspects: number[] = [];
  const steps: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    await unit.focus();
    const times = await timeKey(page, round % 2 === 0 ? '2' : '3');
    // The first rounds warm the machine code up.
    if (round < 3) continue;
    suspects.push(times.suspects);
    steps.push(times.steps);
  }
  console.log(
    `${String(perChain).padStart(4)} units: key to suspects ${median(suspects).toFixed(0)} ms (most ${most(suspects).toFixed(0)}), to steps ${median(steps).toFixed(0)} ms (most ${most(steps).toFixed(0)})`,
  );
  await close([/./]);
}

async function benchPan(perChain: number): Promise<void> {
  const { page, close } = await launchPage({ width: 1440, height: 900, reducedMotion: true });
  const find = driveFind(page);
  await find.answer.waitFor();
  await dropCase(page, bigCase(perChain));
  await find.unit(lastDesignation(perChain)).waitFor();
  await page.waitForTimeout(1_500);
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const script = async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return (metrics.find(({ name }) => name === 'ScriptDuration')?.value ?? Number.NaN) * 1_000;
  };
  const frames = 60;
  for (const zoomed of [false, true]) {
    if (zoomed) for (let time = 0; time < 8; time += 1) await page.keyboard.press('Control+=');
    await page.waitForTimeout(500);
    await page.mouse.move(600, 400);
    const before = await script();
    for (let frame = 0; frame < frames; frame += 1) {
      await page.mouse.wheel(frame < frames / 2 ? 12 : -12, 0);
      await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(resolve)));
    }
    console.log(
      `${String(perChain).padStart(4)} units: panning ${zoomed ? 'full modules' : 'as shown'} ${((await script()) - before).toFixed(0)} ms script in ${frames} frames, ${(((await script()) - before) / frames).toFixed(1)} ms per frame`,
    );
  }
  await close([/./]);
}

for (const size of sizes) await benchKeys(size);
await benchPan(60);
await benchDraw();
