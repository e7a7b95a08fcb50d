import type { Locator, Page } from 'playwright-core';

/** Speaks to the window as a user does: by what stands on it and what a screen reader hears, never by its markup. */
export interface FindDriver {
  readonly page: Page;
  /** A unit of the cabinet by its designation. */
  readonly unit: (designation: string) => Locator;
  /** The controller's window for a chain. */
  readonly report: (chain: string) => Locator;
  /** Opens a sample: its name in the menu, and the words of the case (or "nothing seen yet"). */
  readonly openSample: (sample: string, words: string) => Promise<void>;
  /** Clicks a display and the answer. */
  readonly enter: (designation: string, words: string) => Promise<void>;
  /** The first line. */
  readonly answer: Locator;
  /** A suspect in the list at the right. */
  readonly suspect: (name: string | RegExp) => Locator;
  /** The suspects of the first ambiguity group, or the first one where it stands alone. */
  readonly firstGroup: () => Promise<readonly string[]>;
  /** A row of the pattern grid. */
  readonly row: (name: string | RegExp) => Locator;
  /** What the live region said last. */
  readonly said: Locator;
  /** From the step, to which its key leads, with Tab to the first of its outcomes. */
  readonly tabToOutcome: () => Promise<void>;
}

export function driveFind(page: Page): FindDriver {
  const suspects = page.getByRole('region', { name: 'Suspects' });
  const unit = (designation: string) => page.getByRole('button', { name: new RegExp(`^${literally(designation)}, `) });
  return {
    page,
    unit,
    report: (chain) => page.getByRole('button', { name: new RegExp(`^${literally(chain)}, report`) }),
    async tabToOutcome() {
      const focused = () => page.evaluate(() => document.activeElement?.className ?? '');
      for (let waited = 0; (await focused()) !== 'step-title'; waited += 1) {
        if (waited > 100) throw new Error(`the focus is at ${await focused()}, not at the step`);
        await page.waitForTimeout(20);
      }
      for (let pressed = 0; (await focused()) !== 'outcome'; pressed += 1) {
        if (pressed > 5) throw new Error(`the focus is at ${await focused()}, not at an outcome`);
        await page.keyboard.press('Tab');
      }
    },
    async openSample(sample, words) {
      const before = await page.locator('[data-announcement]').getAttribute('data-announcement');
      await page.getByRole('button', { name: 'Samples' }).click();
      await page.getByRole('menuitem', { name: sample, exact: true }).click();
      await page.getByRole('menuitem', { name: words }).click();
      // Its file is fetched first: until it stands in the window, the next key would meet the document before it.
      const opened = page.locator(`[data-announcement]:not([data-announcement="${before}"])`).filter({ hasText: / is open\.$/ });
      const discard = page.getByRole('alertdialog').getByRole('button', { name: 'Do not save' });
      await opened.or(discard).first().waitFor({ state: 'attached' });
      if (await discard.isVisible()) await discard.click();
      await opened.waitFor({ state: 'attached' });
      await page.getByRole('menu').first().waitFor({ state: 'detached' });
    },
    async enter(designation, words) {
      await unit(designation).click();
      const dialog = page.getByRole('dialog', { name: `What ${designation} shows` });
      await dialog.getByRole('button', { name: new RegExp(`^${literally(words)} \\d$`) }).click();
      await dialog.waitFor({ state: 'detached' });
    },
    answer: page.getByRole('region', { name: 'Answer' }).getByRole('heading'),
    suspect: (name) => suspects.getByRole('button', { name }),
    async firstGroup() {
      // A later group is not the first one: what counts is where the first suspect stands.
      const first = suspects.locator('.suspect-list').getByRole('button').first();
      if ((await first.count()) === 0) return [];
      return first.evaluate((button) => {
        const group = button.closest('fieldset');
        const rows = group ? [...group.querySelectorAll('button')] : [button];
        return rows.map((row) => row.textContent ?? '');
      });
    },
    row: (name) =>
      page
        .getByRole('region', { name: 'Pattern grid' })
        .getByRole('row')
        .filter({ has: page.getByRole('button', { name }) }),
    said: page.getByRole('status').first(),
  };
}

function literally(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
