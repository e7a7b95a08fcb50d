import { launchPage } from '../../support/launchPage.ts';
import { bigCase, dropCase, lastDesignation } from '../bigCabinet.ts';
import { driveFind, type FindDriver } from '../findDriver.ts';
import { shootDraw } from './drawShots.ts';
import { openSums, scenes, simulate } from './scenes.ts';

/*
 * `npm run shots`: pictures of the window for people to look at, into the git-ignored folder `.shots`. Needs `npm run build` to have
 * run. Every size, both themes, and chains of three, twelve and sixty units and two chains; then the window in its other states. With
 * a text behind it, `npm run shots -- report` or `npm run shots -- find-sixty`, it makes the pictures whose names hold that text.
 */

const only = process.argv[2];
const isWanted = (name: string) => only === undefined || name.includes(only);

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

/** What Find and its companions are shown with, and the cable that is broken in the simulation: a sample as Draw has it, or a chain of so many drives. */
const shown: readonly (readonly [name: string, cable: string, show: (find: FindDriver) => Promise<void>])[] = [
  ...samples
    .slice(0, 2)
    .map(([name, sample, words]) => [name, 'Cable -WH3', (find: FindDriver) => find.openSample(sample, words)] as const),
  ['twelve', 'Cable between -TB1.5 and -TB1.6', (find) => showChain(find, 12)],
  ['sixty', 'Cable between -TB1.37 and -TB1.38', (find) => showChain(find, 60)],
];

async function showChain(find: FindDriver, units: number): Promise<void> {
  await dropCase(find.page, bigCase(units));
  await find.unit(lastDesignation(units)).waitFor();
}

/** How many steps of the light lie behind the picture of a sample. */
const stepsTaken = 4;

/** Long enough for a search on sixty units and the glide of the drawing. */
const settle = 900;

async function shootSamples(): Promise<void> {
  for (const [width, height] of sizes) {
    for (const theme of themes) {
      const names = (name: string) => ['find', 'inject', 'inject-step', 'sums'].map((of) => `${of}-${name}-${width}-${theme}`);
      const wanted = shown.filter(([name]) => names(name).some(isWanted));
      if (wanted.length === 0) continue;
      const { page, shoot, close } = await launchPage({ width, height, theme });
      const find = driveFind(page);
      await find.answer.waitFor();
      for (const [name, cable, show] of wanted) {
        const [plain = '', inject = '', step = '', sums = ''] = names(name);
        const take = async (picture: string) => {
          await page.waitForTimeout(settle);
          await shoot(picture);
        };
        await show(find);
        await page.mouse.move(0, 0);
        if (isWanted(plain)) await take(plain);
        if (isWanted(inject) || isWanted(step)) {
          await simulate(find, async () => undefined, cable);
          await take(inject);
          for (let taken = 0; taken < stepsTaken; taken += 1) await page.keyboard.press('f');
          await take(step);
          await page.keyboard.press('Escape');
        }
        if (isWanted(sums)) {
          await openSums(find);
          await take(sums);
          await page.keyboard.press('m');
          await find.answer.waitFor();
        }
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
    const wanted = scenes.filter(([name]) => isWanted(`scene-${name}-${width}-${theme}`));
    if (wanted.length === 0) continue;
    const { page, shoot, close } = await launchPage({ width, height, theme });
    for (const [name, prepare] of wanted) {
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

await shootSamples();
if (only === undefined || only === 'draw') await shootDraw({ sizes, themes: [...themes, 'high-contrast'], samples, settle });
await shootScenes();
