import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { fullEvidence, plainCabinet, plainContent } from '../bench/cabinets.ts';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { bigCase, dropCase, lastDesignation } from './bigCabinet.ts';
import { driveFind, type FindDriver } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('The pattern grid', () => {
  let launched: LaunchedPage;
  let find: FindDriver;
  beforeAll(async () => {
    launched = await launchPage({ width: 1440, height: 900, reducedMotion: true });
  });
  afterAll(() => launched.close([/ERR_ABORTED/]));
  beforeEach(async () => {
    await launched.page.reload();
    find = driveFind(launched.page);
    await find.answer.getByText('likely').waitFor();
  });

  const grid = () => launched.page.getByRole('region', { name: 'Pattern grid' });
  const rows = () =>
    grid()
      .getByRole('button', { name: /^Lay over the cabinet: / })
      .evaluateAll((list) => list.map((one) => one.textContent ?? ''));
  const reason = () => launched.page.getByRole('tooltip');

  it('should explain a cell to pointer, click and focus, and hush on Escape', async () => {
    const cell = find.row(/-TB3 board, control fuse/).getByRole('button', { name: /predicted dark, seen upstream loss: against/ });
    await cell.hover();
    await expect
      .poll(() => reason().textContent())
      .toMatch(/^-TB3.*predicted dark, seen upstream loss: against.*(board is dead|fuse is open|contact)/);
    await launched.page.mouse.move(5, 5);
    await expect.poll(() => reason().count()).toBe(0);
    await cell.click();
    await launched.page.mouse.move(5, 5);
    await expect.poll(() => reason().count()).toBe(1);
    await launched.page.keyboard.press('Escape');
    await expect.poll(() => reason().count()).toBe(0);
    // From here the arrows go on.
    await launched.page.keyboard.press('ArrowUp');
    await expect.poll(() => reason().textContent()).toMatch(/^-TB3.*hears nothing from above/i);
    await launched.page.keyboard.press('ArrowLeft');
    await expect.poll(() => reason().textContent()).toMatch(/fault here|^-TB2/);
  });

  it('should bring what is chosen in it into sight in the list of suspects', async () => {
    await launched.page.setViewportSize({ width: 1280, height: 600 });
    await find.openSample('Mixed behaviours', 'unknown behaviour');
    await find.answer.getByText('-WH5').waitFor();
    await launched.page
      .getByRole('region', { name: 'Suspects' })
      .getByRole('button', { name: /^Show \d+ more$/ })
      .click();
    await grid()
      .getByRole('button', { name: /^Lay over the cabinet: / })
      .last()
      .click();
    const isInSight = () =>
      launched.page.evaluate(() => {
        const list = document.querySelector('.side')?.getBoundingClientRect();
        const row = document.querySelector('#suspects [aria-pressed="true"]')?.getBoundingClientRect();
        return list !== undefined && row !== undefined && row.top >= list.top && row.bottom <= list.bottom;
      });
    await expect.poll(isInSight).toBe(true);
    await expect.poll(() => launched.page.evaluate(() => document.querySelector('.side')?.scrollTop)).toBeGreaterThan(0);
    await launched.page.setViewportSize({ width: 1440, height: 900 });
  });

  it('should order its rows by probability, by agreement and along the chain', async () => {
    const byProbability = await rows();
    expect(byProbability[0]).toMatch(/^-WH3/);
    const order = grid().getByRole('combobox', { name: 'Order' });
    await order.selectOption('along the chain');
    const along = await rows();
    expect(along.slice(0, 3).map((name) => name.split(' ')[0])).toEqual(['-TB2', '-WH3', '-TB3']);
    await order.selectOption('by agreement');
    const agreed = await rows();
    expect([...agreed].sort()).toEqual([...byProbability].sort());
    const against = await grid()
      .getByRole('row')
      .evaluateAll((list) => list.slice(2).map((row) => row.querySelectorAll('.against').length));
    expect(against).toEqual([...against].sort((a, b) => a - b));
  });

  it.each([3, 60])('should hold %i units: a column for each, each cell with its reason', async (count) => {
    await dropCase(launched.page, bigCase(count));
    await find.unit(lastDesignation(count)).waitFor();
    await expect.poll(async () => (await rows()).length).toBeGreaterThan(2);
    // Drives and the supply; the report; and the names at the left.
    await expect.poll(() => grid().getByRole('columnheader').count()).toBe(count + 1 + 1 + 2);
    const cells = find
      .row(/cable or plugs/)
      .first()
      .getByRole('button', { name: /predicted / });
    await expect.poll(() => cells.count()).toBe(count + 1 + 1);
    await cells.nth(count - 1).focus();
    await launched.page.keyboard.press('ArrowLeft');
    await launched.page.keyboard.press('ArrowRight');
    await expect.poll(() => reason().textContent()).toContain(lastDesignation(count));
    // Every column is within the window: nothing has to be scrolled for.
    const over = await grid().evaluate((region) => {
      const scroll = region.querySelector('.grid-scroll');
      return scroll ? scroll.scrollWidth - scroll.clientWidth : -1;
    });
    expect(over).toBe(0);
  });

  it('should hold three chains of forty units and two of twelve beside the suspects at 1280, no report and no name cut off', async () => {
    await launched.page.setViewportSize({ width: 1280, height: 720 });
    const fault = { item: 'cable', link: 'w2.4', mode: 'cut' } as const;
    for (const [chains, perChain] of [
      [3, 13],
      [2, 6],
    ] as const) {
      const evidence = fullEvidence(plainCabinet(chains, perChain), fault);
      await dropCase(launched.page, { id: 'many', name: 'Many', cabinet: plainContent(chains, perChain), evidence });
      await find.unit(`-TB${chains}.${perChain}`).waitFor();
      await expect.poll(async () => (await rows()).length).toBeGreaterThan(2);
      const over = await grid().evaluate((region) =>
        [...region.querySelectorAll('.grid-scroll, thead .designation')].map((one) => one.scrollWidth - one.clientWidth),
      );
      expect(Math.max(...over)).toBe(0);
    }
    await launched.page.setViewportSize({ width: 1440, height: 900 });
  });
});
