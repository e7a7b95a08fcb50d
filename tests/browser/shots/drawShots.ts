import { launchPage } from '../../support/launchPage.ts';
import { bigCase, dropCase, lastDesignation } from '../bigCabinet.ts';
import { driveDraw } from '../drawDriver.ts';
import { driveFind } from '../findDriver.ts';

interface Wanted {
  readonly sizes: readonly (readonly [number, number])[];
  readonly themes: readonly ('light' | 'dark' | 'high-contrast')[];
  /** Name of the picture, of the sample, and of its case. */
  readonly samples: readonly (readonly [string, string, string])[];
  /** Milliseconds until all stands still. */
  readonly settle: number;
}

/** Draw: three, nine, forty and sixty units, by chain and by mounting order, and what stands on it while one works. */
export async function shootDraw({ sizes, themes, samples, settle }: Wanted): Promise<void> {
  for (const [width, height] of sizes) {
    for (const theme of themes) {
      const { page, shoot, close } = await launchPage({ width, height, theme });
      const find = driveFind(page);
      await find.answer.waitFor();
      const take = async (name: string) => {
        await page.waitForTimeout(settle);
        await shoot(`draw-${name}-${width}-${theme}`);
      };
      for (const [name, sample, words] of samples) {
        await find.openSample(sample, words);
        const draw = await driveDraw(page);
        await page.mouse.move(0, 0);
        await take(name);
        await draw.press('o');
        await take(`${name}-mounting`);
        await draw.press('o', 'Alt+2');
      }
      await find.openSample('Two chains', 'nothing seen yet');
      const draw = await driveDraw(page);
      const held = (name: string) => ({ held: () => take(name), cancel: true });
      await draw.drag(await draw.at(draw.shelf('Servo drive')), await draw.at(draw.cable('-WH3')), held('insert'));
      await draw.drag(await draw.port('-TB7', 'down'), await draw.port('-TB2', 'up'), held('refused'));
      await draw.click(draw.unit('-TB2'));
      await draw.press('b');
      await take('feedback');
      await draw.press('w');
      await take('connect');
      await draw.press('Escape', 'Shift+F10');
      await take('context');
      await draw.press('Escape', 't');
      await take('lists');
      await draw.press('t');
      // A plug that hangs loose, several things chosen, and what all that changed.
      await draw.drag(await draw.port('-TB4', 'up'), await draw.at(draw.unit('-TB7'), 20, 140));
      await draw.unit('-TB2').click();
      await draw.unit('-TB6').click({ modifiers: ['Shift'] });
      await take('loose');
      await page.getByRole('button', { name: 'Cabinet', exact: true }).click();
      await page.getByRole('menuitem', { name: 'Compare with what was saved' }).click();
      await take('compare');
      await draw.press('Control+z');
      await page.getByRole('button', { name: 'Stop comparing' }).click();
      await dropCase(page, bigCase(60));
      await draw.unit(lastDesignation(60)).waitFor();
      await take('sixty');
      await draw.press('Control+-', 'Control+-', 'Control+-', 'Control+-');
      await take('sixty-small');
      await close();
    }
  }
}
