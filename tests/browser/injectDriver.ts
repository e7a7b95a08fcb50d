import type { Locator, Page } from 'playwright-core';

/** Speaks to the simulation as a user does. */
export interface InjectDriver {
  readonly page: Page;
  /** Anything on the picture that faults can be put on, by the start of its name. */
  readonly thing: (name: string) => Locator;
  /** Clicks a thing of the picture, and in the list that opens a fault; `group` where several items have it. */
  readonly inject: (thing: string, fault: string, group?: string) => Promise<void>;
  readonly injected: Locator;
  readonly way: Locator;
  readonly light: Locator;
  /** The first line. */
  readonly head: Locator;
  readonly said: Locator;
}

export function driveInject(page: Page): InjectDriver {
  const thing = (name: string) => page.getByRole('button', { name: new RegExp(`^${name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}[,.]`) });
  return {
    page,
    thing,
    async inject(name, fault, group) {
      await thing(name).first().click();
      const dialog = page.getByRole('dialog');
      await dialog.waitFor();
      const within = group === undefined ? dialog : dialog.getByRole('group', { name: group });
      await within.getByRole('button', { name: fault, exact: true }).first().click();
      await dialog.waitFor({ state: 'detached' });
    },
    injected: page.getByRole('region', { name: 'Simulated faults' }),
    way: page.getByRole('region', { name: 'Along the light' }),
    light: page.getByRole('region', { name: 'Light', exact: true }),
    head: page.getByRole('region', { name: 'What would happen' }),
    said: page.getByRole('status').first(),
  };
}
