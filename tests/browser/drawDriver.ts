import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { parseCaseFile } from '../../engine/cabinet/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { type LaunchedPage, launchPage, type PageOptions } from '../support/launchPage.ts';

/** Speaks to Draw as a user does: by what stands on it and what a screen reader hears. Counts what was done. */
export interface DrawDriver {
  readonly page: Page;
  readonly drawing: Locator;
  /** A unit on the drawing by its designation. */
  readonly unit: (designation: string) => Locator;
  readonly cable: (designation: string) => Locator;
  readonly shelf: (kind: string) => Locator;
  /** Strikes keys one after another; each is one action. */
  readonly press: (...keys: readonly string[]) => Promise<void>;
  readonly click: (thing: Locator) => Promise<void>;
  /** Takes hold of the middle of a thing, goes on to a place, and lets go. */
  readonly drag: (from: Spot, to: Spot, options?: DragOptions) => Promise<void>;
  /** The middle of a thing, moved by some pixels. */
  readonly at: (thing: Locator, dx?: number, dy?: number) => Promise<Spot>;
  /** Where a port of a unit is taken hold of. */
  readonly port: (designation: string, side: 'up' | 'down') => Promise<Spot>;
  readonly feedPort: (designation: string) => Promise<Spot>;
  /** Designations of the units of each chain, as a screen reader hears them. */
  readonly chains: () => Promise<readonly (readonly string[])[]>;
  /** What the last step is called in the menu. */
  readonly lastStep: () => Promise<string>;
  /** Saves the case, as a download, and reads the cabinet in it. */
  readonly saved: () => Promise<CabinetContent>;
  /** How many actions were done since it was last asked. */
  readonly actions: () => number;
  /** What the live region said last. */
  readonly said: Locator;
  readonly bar: Locator;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

interface DragOptions {
  /** Looked at while it is still held. */
  readonly held?: () => Promise<void>;
  readonly key?: 'Alt';
  /** Escape instead of letting go. */
  readonly cancel?: boolean;
}

/** Drives a window that is open; Draw is shown first. */
export async function driveDraw(page: Page): Promise<DrawDriver> {
  await page.keyboard.press('Alt+1');
  const drawing = page.getByRole('region', { name: 'Cabinet, drawing' });
  await drawing.waitFor();
  let done = 0;
  const unit = (designation: string) => drawing.getByRole('button', { name: new RegExp(`^${literally(designation)}, `) });
  const at = async (thing: Locator, dx = 0, dy = 0) => {
    const box = await thing.boundingBox();
    if (!box) throw new Error('it is not on the drawing');
    return { x: box.x + box.width / 2 + dx, y: box.y + box.height / 2 + dy };
  };
  const edgeOf = async (designation: string, selector: string) => {
    const id = await unit(designation).getAttribute('data-unit');
    return at(page.locator(selector.replace('ID', id ?? '')));
  };
  const nameOf = (label: string | null) => label?.split(',')[0] ?? '';
  return {
    page,
    drawing,
    unit,
    cable: (designation) => drawing.getByRole('button', { name: new RegExp(`^Cable ${literally(designation)}, from`) }),
    shelf: (kind) => page.getByRole('complementary', { name: 'Shelf' }).getByRole('button', { name: new RegExp(`^${kind}`) }),
    async press(...keys) {
      for (const key of keys) {
        await page.keyboard.press(key);
        done += 1;
      }
    },
    async click(thing) {
      await thing.click();
      done += 1;
    },
    async drag(from, to, { held, key, cancel } = {}) {
      await page.mouse.move(from.x, from.y);
      await page.mouse.down();
      if (key) await page.keyboard.down(key);
      await page.mouse.move(to.x, to.y, { steps: 8 });
      await held?.();
      if (cancel) await page.keyboard.press('Escape');
      await page.mouse.up();
      if (key) await page.keyboard.up(key);
      done += 1;
    },
    at,
    port: (designation, side) => edgeOf(designation, `[data-port="unit ID ${side}"]`),
    feedPort: (designation) => edgeOf(designation, '[data-feed="ID"]'),
    async chains() {
      const labels = await drawing.getByRole('button').evaluateAll((buttons) => buttons.map((one) => one.getAttribute('aria-label')));
      const placed = labels.flatMap((label) => {
        const found = /, (chain \d+), position (\d+), /.exec(label ?? '');
        return found ? [{ name: nameOf(label), chain: found[1] ?? '', position: Number(found[2]) }] : [];
      });
      const names = [...new Set(placed.map(({ chain }) => chain))].sort();
      return names.map((chain) =>
        placed
          .filter((one) => one.chain === chain)
          .sort((a, b) => a.position - b.position)
          .map(({ name }) => name),
      );
    },
    async lastStep() {
      const label = await page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label');
      return label?.replace(/^Undo:? ?/, '') ?? '';
    },
    async saved() {
      const coming = page.waitForEvent('download');
      await page.keyboard.press('Control+s');
      done += 1;
      const parsed = parseCaseFile(await readFile(await (await coming).path()));
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
      return parsed.value.cabinet;
    },
    actions() {
      const count = done;
      done = 0;
      return count;
    },
    said: page.getByRole('status').first(),
    bar: drawing.locator('.draw-bar'),
  };
}

/** Opens the window in Draw, with its first sample, without the browser's dialogs for files: saving is a download. */
export async function launchDraw(options: PageOptions = {}): Promise<DrawDriver & { readonly launched: LaunchedPage }> {
  const launched = await launchPage({ width: 1440, height: 900, reducedMotion: true, ...options });
  const { page } = launched;
  await page.addInitScript(() => Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined }));
  await page.reload();
  await page.getByRole('region', { name: 'Answer' }).waitFor();
  return { ...(await driveDraw(page)), launched };
}

function literally(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
