import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import {
  makeNames,
  stepCardTexts,
  stepTexts,
  touchedTexts,
  windowTexts,
  wordStep,
  wordStepOutcome,
  wordStepTitle,
  handBackTexts as words,
} from '../../engine/messages/index.ts';
import type { Evidence } from '../../engine/schema/index.ts';
import type { Step } from '../../engine/steps/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { entryChoices } from '../../renderer/find/entryChoices.ts';
import { dropCase } from './bigCabinet.ts';
import { driveFind, type FindDriver } from './findDriver.ts';

/** Repairs a machine through the window: opens its case, takes steps of the list, reads displays, hands it back. */
export interface RepairDriver {
  readonly find: FindDriver;
  readonly card: Locator;
  readonly touched: Locator;
  readonly handBack: Locator;
  /** What is suspected, and what to do, is worked out for what was entered last. */
  readonly worked: () => Promise<void>;
  /** Looks a step up in the list and shows its card. */
  readonly show: (step: Step) => Promise<void>;
  /** Shows the card of a step and presses what came of it; null: something that no button says. */
  readonly take: (step: Step, outcome: string | null) => Promise<void>;
  /** Enters what every display shows, as it stands in the last snapshot of evidence. */
  readonly read: (evidence: Evidence) => Promise<void>;
  /** Opens the hand-back by its key. */
  readonly finish: () => Promise<void>;
}

/** Drops a case onto the window, as from the desktop. */
export async function openRepair(page: Page, cabinet: Cabinet, evidence: Evidence): Promise<RepairDriver> {
  await dropCase(page, { id: 'repair', name: 'Repair', cabinet: cabinet.content, evidence });
  const discard = page.getByRole('alertdialog').getByRole('button', { name: 'Do not save' });
  const opened = page.getByText(cabinet.content.name).first();
  await opened.or(discard).first().waitFor();
  if (await discard.isVisible()) await discard.click();
  await opened.waitFor();
  return driveRepair(page, cabinet);
}

/** Speaks to a window in which a case of this cabinet is open. */
export function driveRepair(page: Page, cabinet: Cabinet): RepairDriver {
  const names = makeNames(cabinet);
  const find = driveFind(page);
  const card = page.getByRole('region', { name: stepTexts.region });
  const heading = card.getByRole('heading', { level: 3 });
  const worked = async () => {
    await page.locator('#suspects[aria-busy="false"]').waitFor({ timeout: 60_000 });
    await page.locator('#step[aria-busy="false"]').waitFor({ timeout: 60_000 });
    await card.locator('.planning').waitFor({ timeout: 60_000 });
  };
  const show = async (step: Step) => {
    await worked();
    const title = wordStepTitle(names, step);
    if ((await heading.textContent()) === title) return;
    const others = page.getByRole('region', { name: stepTexts.others });
    const more = others.getByRole('button', { name: /^Show \d+ more$/ });
    if ((await more.count()) > 0) await more.press('Enter');
    const name = new RegExp(`^${wordStep(names, step).replace(/[.*+?^${}()|[\]\\]/g, '\\$&')} \\d`);
    await others.getByRole('button', { name }).press('Enter');
    await expect.poll(() => heading.textContent()).toBe(title);
  };
  return {
    find,
    card,
    touched: page.getByRole('region', { name: touchedTexts.region }),
    handBack: page.getByRole('dialog', { name: words.title }),
    worked,
    show,
    async take(step, outcome) {
      await show(step);
      const saying = outcome === null ? stepCardTexts.sawElse : wordStepOutcome(names, step, outcome);
      const group = card.getByRole('group', { name: stepTexts.found });
      await group.getByRole('button').filter({ hasText: saying }).first().press('Enter');
      if (outcome !== null) await worked();
    },
    async read({ snapshots }) {
      const last = snapshots[snapshots.length - 1];
      for (const { unit, meanings } of last?.displays ?? []) {
        const kind = cabinet.content.units?.find(({ id }) => id === unit)?.kind ?? 'servo-drive';
        const choice = entryChoices(kind).find((one) => one.meanings.join() === meanings.join());
        await find.unit(names.unit(unit)).press(choice?.key ?? '');
      }
      await worked();
    },
    async finish() {
      await page.locator('body').press('h');
      await page.getByRole('dialog', { name: words.title }).waitFor();
    },
  };
}

/** The pane in which onset, halted and circumstances are said. */
export const seenPaneOf = (page: Page) => page.getByRole('region', { name: windowTexts.seenPane.region });
