import axe from 'axe-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { driveFind, type FindDriver } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('What to do next', () => {
  let launched: LaunchedPage;
  let find: FindDriver;
  beforeAll(async () => {
    launched = await launchPage({ width: 1440, height: 900, reducedMotion: true });
  });
  // Each scene begins with a reload, which may cut off a font that is being fetched; that is no complaint.
  afterAll(() => launched.close([/ERR_ABORTED/]));
  beforeEach(async () => {
    await launched.page.reload();
    find = driveFind(launched.page);
    await find.answer.getByText('likely').waitFor();
    await next().waitFor();
  });

  const next = () => launched.page.getByRole('button', { name: /^Next: / });
  const card = () => launched.page.getByRole('region', { name: 'Next step' });
  const log = () => launched.page.getByRole('region', { name: 'Log' });
  const outcome = (name: RegExp) => card().getByRole('button', { name });
  const litUnits = () =>
    launched.page.evaluate(() =>
      [...document.querySelectorAll('.unit.lit [data-unit]')].map((unit) => unit.getAttribute('aria-label') ?? ''),
    );

  it('should say the same on the black button and on the card, light the place, and go to the answers', async () => {
    expect(await next().textContent()).toMatch(/^Next: check light at -WH3, (upper|lower) plug/);
    expect(await card().getByRole('heading', { level: 3 }).textContent()).toMatch(/^Check light at -WH3, (upper|lower) plug$/);
    expect(await litUnits()).toEqual([]);
    await next().click();
    await expect.poll(async () => (await litUnits()).join()).toMatch(/^-TB[23], /);
    await expect.poll(() => launched.page.evaluate(() => document.activeElement?.className)).toBe('outcome');
  });

  it('should take what was found as evidence in one step, with a line in the log, and undo it in one', async () => {
    const before = await find.answer.textContent();
    await outcome(/^none then /).click();
    await expect
      .poll(() =>
        log()
          .getByText(/^Light at the (upper|lower) plug of cable -WH3: none$/)
          .count(),
      )
      .toBe(1);
    await expect.poll(async () => (await next().textContent()) ?? '').not.toMatch(/check light at -WH3, lower plug/);
    await launched.page.getByRole('button', { name: /^Undo: light at the (upper|lower) plug of cable -WH3: none$/ }).click();
    await expect
      .poll(() =>
        log()
          .getByText(/plug of cable -WH3: none/)
          .count(),
      )
      .toBe(0);
    await expect.poll(() => find.answer.textContent()).toBe(before);
  });

  it('should begin a new look at the machine with an act, and believe what it showed', async () => {
    await card()
      .getByRole('button', { name: /^Reseat -WH3 at both ends/i })
      .click();
    expect(
      await card()
        .getByText(/Not noted yet: .*-KE2/)
        .count(),
    ).toBe(1);
    await outcome(/^still halted/).click();
    await expect.poll(() => log().getByText('Look 2').count()).toBe(1);
    expect(await log().getByText('Reseated -WH3 at both ends: still halted').count()).toBe(1);
    // The plugs are less likely now, and no display of the new look has been read yet.
    await expect.poll(() => launched.page.getByText(/after 2 acts; look 2 at the machine/).count()).toBe(1);
    expect(await find.unit('-TB2').getAttribute('aria-label')).toContain('Seen: not looked at.');
  });

  it('should let a look be corrected and withdrawn in the log, and keep both in the record of the case', async () => {
    await outcome(/^none then /).click();
    const line = log().getByRole('listitem').filter({ hasText: 'Light at the' });
    await line.getByRole('button', { name: /^Correct: / }).click();
    await launched.page.getByRole('menuitem', { name: 'bright' }).click();
    await expect
      .poll(() =>
        log()
          .getByText(/plug of cable -WH3: bright$/)
          .count(),
      )
      .toBe(1);
    await line.getByRole('button', { name: /^Withdraw: / }).click();
    await expect.poll(() => line.count()).toBe(0);
    await log()
      .getByRole('button', { name: /^Everything entered and taken back/ })
      .click();
    expect(
      await log()
        .getByText(/^Corrected: light at the/i)
        .count(),
    ).toBe(1);
    expect(
      await log()
        .getByText(/^Withdrawn: light at the/i)
        .count(),
    ).toBe(1);
  });

  it('should go from the key to the outcome by keyboard alone, and pass the automatic check with all cautions open', async () => {
    await launched.page.locator('body').press('d');
    await expect.poll(() => launched.page.evaluate(() => document.activeElement?.className)).toBe('outcome');
    await launched.page.keyboard.press('Enter');
    await expect
      .poll(() =>
        log()
          .getByText(/plug of cable -WH3: bright$/)
          .count(),
      )
      .toBe(1);
    await expect.poll(() => launched.page.evaluate(() => document.activeElement?.id)).toBe('step');
    await launched.page.getByRole('button', { name: 'In full' }).click();
    expect(
      await launched.page
        .getByRole('region', { name: 'Before you begin' })
        .getByText('Never look into a fibre end or an optical port.')
        .count(),
    ).toBe(1);
    await launched.page.evaluate(axe.source);
    const { violations } = await launched.page.evaluate(() => (globalThis as unknown as { axe: typeof axe }).axe.run()); // put there by the line before
    const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
    expect(serious.map(({ id, nodes }) => `${id} ${nodes[0]?.html.slice(0, 200)}`)).toEqual([]);
  });

  it('should say what mends almost surely, with the cautions of switching off', async () => {
    await find.openSample('Two supplies', 'Supply and two drives dark');
    await expect.poll(async () => (await next().textContent()) ?? '').toMatch(/^Next: replace supply -TB9/);
    const cautions = launched.page.getByRole('region', { name: 'Cautions' });
    expect(await cautions.getByText('Lock out, tag').count()).toBe(1);
    expect(await cautions.getByText(/DC link/).count()).toBe(1);
  });
});
