import { launchPage } from '../../support/launchPage.ts';
import { driveFind, type FindDriver } from '../findDriver.ts';
import { driveInject } from '../injectDriver.ts';

/*
 * `npm run shots`: pictures of the window for people to look at, into the git-ignored folder `.shots`. Needs `npm run build` to have
 * run. Every size, both themes, and cabinets of three, nine and forty units; then the window in its other states.
 */

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

/** The window in states that a size and a sample do not show. */
const scenes: readonly (readonly [name: string, prepare: (find: FindDriver) => Promise<void>])[] = [
  ['nothing-seen', (find) => find.openSample('Two chains', 'nothing seen yet')],
  ['off-chain', (find) => find.openSample('Drives off chain', 'Three dark drives')],
  ['two-supplies', (find) => find.openSample('Two supplies', 'Supply and two drives dark')],
  ['unknown-behaviour', (find) => find.openSample('Mixed behaviours', 'unknown behaviour')],
  ['contradiction', (find) => find.openSample('Two chains', 'one display read from the wrong row')],
  ['two-faults', (find) => find.openSample('Forty units', 'Two faults at once')],
  ['unfinished', (find) => find.openSample('Unfinished', 'nothing seen yet')],
  ['with-problems', (find) => find.openSample('With problems', 'nothing seen yet')],
  ['entry', async (find) => find.unit('-KE2').click()],
  ['walk', async (find) => find.page.keyboard.press('e')],
  ['report', async (find) => find.report('chain 1').click()],
  ['quick-chain', (find) => quickChain(find, '3 servo, spindle, encoder; 3spe; off 2 servo')],
  ['quick-chain-problem', (find) => quickChain(find, '3 servo, serbo, 3')],
  [
    'quick-chain-walk',
    async (find) => {
      await quickChain(find, '3 servo, spindle, encoder, servo');
      for (const key of ['Enter', '2', '2', '4']) await find.page.keyboard.press(key);
    },
  ],
  ['circumstances', async (find) => find.page.getByRole('button', { name: /^Circumstances/ }).click()],
  [
    'against',
    async (find) => {
      await find.page.getByRole('button', { name: /^Show \d+ more$/ }).click();
      await find
        .row(/-TB3 board, dead, display still lit/)
        .getByRole('button', { name: /^Lay over/ })
        .click();
    },
  ],
  [
    'samples-menu',
    async (find) => {
      await find.page.getByRole('button', { name: 'Samples' }).click();
      await find.page.getByRole('menuitem', { name: 'Two chains' }).click();
      await find.page.getByRole('menuitem', { name: 'stopped in the middle of a part' }).waitFor();
    },
  ],
  ['inject-choose', (find) => simulate(find, async (inject) => inject.thing('-TB3').click())],
  [
    'inject-several',
    (find) =>
      simulate(find, async (inject) => {
        await inject.inject('-TB10', 'output lost');
        await inject.inject('Cable -WH8', 'one fibre dim, return');
        await inject.injected.getByRole('combobox', { name: /^How steadily: supply/ }).selectOption('gone now');
      }),
  ],
  ['inject-into-the-case', (find) => simulate(find, async () => find.page.keyboard.press('p'))],
  [
    'keys',
    async (find) => {
      await find.page.getByRole('button', { name: 'Help' }).click();
      await find.page.getByRole('menuitem').first().click();
    },
  ],
];

/** The line of quick chain in an empty window. */
async function quickChain({ page }: FindDriver, line: string): Promise<void> {
  await page.keyboard.press('n');
  await page.getByRole('textbox', { name: 'Units' }).fill(line);
}

/** Simulates a cut fibre, and what else is asked for. */
async function simulate({ page }: FindDriver, more: (inject: ReturnType<typeof driveInject>) => Promise<void>): Promise<void> {
  const inject = driveInject(page);
  await page.keyboard.press('i');
  await inject.injected.waitFor();
  await inject.inject('Cable -WH3', 'one fibre cut, outbound');
  await more(inject);
  await page.mouse.move(0, 0);
}

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
await shootScenes();
