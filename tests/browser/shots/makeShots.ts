import { launchPage } from '../../support/launchPage.ts';
import { driveFind } from '../findDriver.ts';
import { shootDraw } from './drawShots.ts';
import { openSums, scenes, simulate } from './scenes.ts';

/*
 * `npm run shots`: pictures of the window for people to look at, into the git-ignored folder `.shots`. Needs `npm run build` to have
 * run. Every size, both themes, and cabinets of three, nine and forty units; then the window in its other states. With a text behind
 * it, `npm run shots -- report`, it makes the scenes whose names hold that text, and nothing else.
 */

const only = process.argv[2];

const sizes = [
  [1280, 720],
  [1440, 900],
  [1920, 1080],
] as const;
const themes = ['light', 'dark'] as const;

const samples = [
  ['three', 'Three units', 'Two neighbours complain'],
  ['default', 'Two chains', 'stopped in the middle of a part'],
  ['forty', 'Forty units', 'One break far down'],
] as const;

/** How many steps of the light lie behind the picture of a sample. */
const stepsTaken = 4;

/** Long enough for a search on forty units and the glide of the drawing. */
const settle = 900;

async function shootSamples(): Promise<void> {
  for (const [width, height] of sizes) {
    for (const theme of themes) {
      const { page, shoot, close } = await launchPage({ width, height, theme });
      const find = driveFind(page);
      await find.answer.waitFor();
      for (const [name, sample, words] of samples) {
        await find.openSample(sample, words);
        await page.mouse.move(0, 0);
        await page.waitForTimeout(settle);
        await shoot(`find-${name}-${width}-${theme}`);
        await simulate(find, async () => undefined);
        await page.waitForTimeout(settle);
        await shoot(`inject-${name}-${width}-${theme}`);
        for (let step = 0; step < stepsTaken; step += 1) await page.keyboard.press('f');
        await page.waitForTimeout(settle);
        await shoot(`inject-step-${name}-${width}-${theme}`);
        await page.keyboard.press('Escape');
        await openSums(find);
        await page.waitForTimeout(settle);
        await shoot(`sums-${name}-${width}-${theme}`);
        await page.keyboard.press('m');
        await find.answer.waitFor();
      }
      await close();
    }
  }
}

async function shootScenes(): Promise<void> {
  for (const [theme, width, height] of [
    ['light', 1440, 900],
    ['dark', 1280, 720],
    ['high-contrast', 1280, 720],
  ] as const) {
    const { page, shoot, close } = await launchPage({ width, height, theme });
    for (const [name, prepare] of scenes) {
      if (only !== undefined && !name.includes(only)) continue;
      await page.reload();
      const find = driveFind(page);
      await find.answer.getByText('likely').waitFor();
      await prepare(find);
      await page.waitForTimeout(settle);
      await shoot(`scene-${name}-${width}-${theme}`);
    }
    // Reloading may cut off a font that is being fetched; that is no complaint.
    await close([/ERR_ABORTED/]);
  }
}

if (only === undefined) await shootSamples();
if (only === undefined || only === 'draw') await shootDraw({ sizes, themes, samples, settle });
await shootScenes();
