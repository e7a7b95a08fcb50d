import type { FindDriver } from '../findDriver.ts';
import { driveInject } from '../injectDriver.ts';

/** The window in states that a size and a sample do not show. */
export const scenes: readonly (readonly [name: string, prepare: (find: FindDriver) => Promise<void>])[] = [
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
  ['working', neverAnswered],
  ['machine-runs', mended],
  [
    'hand-back',
    async (find) => {
      await mended(find);
      await find.page.keyboard.press('h');
    },
  ],
  [
    'fault-rates',
    async (find) => {
      await find.page.getByRole('button', { name: 'Cabinet', exact: true }).click();
      await find.page.getByRole('menuitem', { name: 'Fault rates…' }).click();
    },
  ],
  [
    'repair-table',
    async (find) => {
      await find.page.getByRole('button', { name: 'Cabinet', exact: true }).click();
      await find.page.getByRole('menuitem', { name: 'Repair table…' }).click();
    },
  ],
  ['practice', (find) => find.page.keyboard.press('Alt+3')],
  [
    'practice-make',
    async ({ page }) => {
      await page.keyboard.press('Alt+3');
      await page.getByRole('button', { name: 'Make', exact: true }).click();
      await page.getByRole('button', { name: 'Hide it' }).click();
      await page.getByRole('heading', { name: 'It can be decided' }).waitFor();
    },
  ],
  [
    'practice-generate',
    async ({ page }) => {
      await page.keyboard.press('Alt+3');
      await page.getByRole('button', { name: 'Generate', exact: true }).click();
      await page.locator('form').getByRole('button', { name: 'Generate', exact: true }).click();
      await page.getByText('10 exercises').waitFor();
    },
  ],
  ['circumstances', async (find) => find.page.getByRole('button', { name: /^Circumstances/ }).click()],
  [
    'against',
    async (find) => {
      await find.suspect(/^Show \d+ more$/).click();
      await find
        .row(/-TB3 board, dead, display still lit/)
        .getByRole('button', { name: /^Lay over/ })
        .click();
    },
  ],
  ['cautions-in-full', async (find) => find.page.getByRole('button', { name: 'In full' }).click()],
  ['is-it-halted', (find) => askHalted(find)],
  [
    'equipment',
    async (find) => {
      await find.page.getByRole('button', { name: 'Cabinet', exact: true }).click();
      await find.page.getByRole('menuitem', { name: 'Equipment types' }).click();
    },
  ],
  ['sums', (find) => openSums(find)],
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

/** A case in which nothing but quiet displays were seen, and nobody said whether the control is halted. */
async function askHalted(find: FindDriver): Promise<void> {
  await find.openSample('Two chains', 'nothing seen yet');
  for (const unit of ['-TB1', '-TB2', '-TB3']) await find.unit(unit).press('2');
}

/** A search that takes long: the question never comes to the worker. */
async function neverAnswered({ page, unit }: FindDriver): Promise<void> {
  await page.evaluate(() => {
    Worker.prototype.postMessage = () => undefined;
  });
  await unit('-TB4').press('2');
}

/** The page of sums. */
export async function openSums({ page }: FindDriver): Promise<void> {
  await page.keyboard.press('m');
  await page.getByRole('heading', { name: 'Light on every fibre' }).waitFor();
}

/** The line of quick chain in an empty window. */
async function quickChain({ page }: FindDriver, line: string): Promise<void> {
  await page.keyboard.press('n');
  await page.getByRole('textbox', { name: 'Units' }).fill(line);
}

/** Simulates a cut fibre, and what else is asked for. */
export async function simulate(
  { page }: FindDriver,
  more: (inject: ReturnType<typeof driveInject>) => Promise<void>,
  cable = 'Cable -WH3',
): Promise<void> {
  const inject = driveInject(page);
  await page.keyboard.press('i');
  await inject.injected.waitFor();
  await inject.inject(cable, 'one fibre cut, outbound');
  await more(inject);
  await page.mouse.move(0, 0);
}

/** The step that is shown first was done, and the machine runs. */
async function mended({ page, answer }: FindDriver): Promise<void> {
  await page
    .getByRole('region', { name: 'Next step' })
    .getByRole('button', { name: /^machine runs/ })
    .click();
  await answer.getByText(/^The machine runs: /).waitFor();
}
