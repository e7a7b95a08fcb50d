import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { termWords, wordTermValue, wordWaitingTime } from '../../engine/messages/index.ts';
import { changeFigures, computeSums, type FigureChange } from '../../engine/sums/index.ts';
import { fortyUnits } from '../samples/fortyUnits.ts';
import { twoChains } from '../samples/twoChains.ts';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { driveFind } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

/** The sums of the sample as the engine works them out, with figures changed. */
const engineSums = (...changes: readonly FigureChange[]) => computeSums(checkCabinet(changeFigures(twoChains.content, changes)).topology);

/** A number of the page by what a screen reader hears of it. */
const number = (page: Page, what: string) =>
  page.getByRole('button', { name: new RegExp(`^${what.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}: `) });
const shown = async (page: Page, what: string) => (await number(page, what).textContent())?.replace(`${what}: `, '');

async function openSums(options: Parameters<typeof launchPage>[0] = {}): Promise<LaunchedPage> {
  const launched = await launchPage({ width: 1440, height: 900, ...options });
  const find = driveFind(launched.page);
  await find.openSample('Two chains', 'nothing seen yet');
  // The file is read first; a page that is opened before belongs to the document that goes.
  await launched.page.getByText(/^New case · /).waitFor();
  await launched.page.keyboard.press('m');
  await launched.page.getByRole('heading', { name: 'Light on every fibre' }).waitFor();
  return launched;
}

describe.skipIf(missing)('the page of sums', () => {
  it('should show the numbers that the engine works out', async () => {
    const launched = await openSums();
    const { page } = launched;
    const sums = engineSums();
    for (const { link, direction, margin, overloadMargin } of sums.optical) {
      await expect.poll(() => shown(page, `${termWords['sensitivity-margin']}, cable -${link}, ${direction}`)).toBe(wordTermValue(margin));
      await expect
        .poll(() => shown(page, `${termWords['overload-margin']}, cable -${link}, ${direction}`))
        .toBe(wordTermValue(overloadMargin));
    }
    for (const { unit, voltage, headroom } of sums.feed.units) {
      await expect.poll(() => shown(page, `${termWords.voltage}, -${unit}`)).toBe(wordTermValue(voltage));
      await expect.poll(() => shown(page, `${termWords.headroom}, -${unit}`)).toBe(wordTermValue(headroom));
    }
    const [supply] = sums.feed.supplies;
    const [dcLink] = sums.dcLinks;
    if (supply === undefined || dcLink === undefined) throw new Error('the sample has a supply with a DC link');
    await expect.poll(() => shown(page, `${termWords.load}, -TB10, steady`)).toBe(wordTermValue(supply.steady.load));
    await expect.poll(() => shown(page, `${termWords.inrush}, -TB10, switching on`)).toBe(wordTermValue(supply.inrush.load));
    await expect.poll(() => shown(page, `${termWords['discharge-time']}, -TB10`)).toBe(wordTermValue(dcLink.discharge));
    for (const { chain, left } of sums.axes) {
      await expect.poll(() => shown(page, `${termWords['axes-left']}, ${chain.replace('chain', 'chain ')}`)).toBe(wordTermValue(left));
    }
    await expect.poll(() => page.getByText(wordWaitingTime(sums.waitingTimeS)).count()).toBe(1);
    await launched.close();
  });

  it('should open a number to its terms by the keyboard, and go back by Escape', async () => {
    const launched = await openSums();
    const { page } = launched;
    const what = 'margin, cable -WH1, outbound';
    await number(page, what).focus();
    await expect.poll(() => number(page, what).getAttribute('aria-expanded')).toBe('false');
    await page.keyboard.press('Enter');
    await expect.poll(() => number(page, what).getAttribute('aria-expanded')).toBe('true');
    const terms = page.getByRole('region', { name: `How it comes about: ${what}` });
    const text = (await terms.textContent()) ?? '';
    for (const words of [
      'Launch power, at least',
      'Sensitivity of the receiver',
      'attenuation × length',
      'documented',
      'computed',
      'invented',
    ]) {
      expect(text).toContain(words);
    }
    await page.keyboard.press('Space');
    await expect.poll(() => terms.count()).toBe(0);
    await page.keyboard.press('Escape');
    await page.getByRole('region', { name: 'Suspects' }).waitFor();
    await launched.close();
  });

  it('should answer what-if at once, write nothing, and take it over as one step that can be undone', async () => {
    const launched = await openSums();
    const { page } = launched;
    const what = 'margin, cable -WH1, outbound';
    const before = await shown(page, what);
    await page.getByLabel('Try: temperature in the cabinet').fill('60');
    await number(page, what).click();
    await page.getByLabel('Try: length of the cable, cable -WH1').fill('14,5');
    const changes: readonly FigureChange[] = [
      { figure: 'ambient', value: 60 },
      { figure: 'length', id: 'WH1', value: 14.5 },
    ];
    const tried = engineSums(...changes);
    const margin = tried.optical.find(({ link, direction }) => link === 'WH1' && direction === 'outbound')?.margin;
    if (margin === undefined) throw new Error('the sample has a link WH1');
    await expect.poll(() => shown(page, what)).toBe(`${wordTermValue(margin)}was ${before}`);
    await page.getByText('With tried figures. The document is as it was.').waitFor();
    await expect.poll(() => page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false);

    await page.getByRole('button', { name: 'Take over' }).click();
    await expect.poll(() => shown(page, what)).toBe(wordTermValue(margin));
    await expect.poll(() => page.getByText('With tried figures.').count()).toBe(0);
    await page.getByRole('button', { name: /^Undo: 2 figures taken over/ }).click();
    await expect.poll(() => shown(page, what)).toBe(before);
    await expect.poll(() => page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false);
    await launched.close();
  });

  it('should say what a tried figure would break, and refuse what is no number', async () => {
    const launched = await openSums();
    const { page } = launched;
    await page.getByRole('combobox', { name: 'Figure', exact: true }).selectOption({ label: 'cross-section' });
    await page.getByRole('combobox', { name: 'Of', exact: true }).selectOption({ label: 'lead -WD1' });
    const field = page.getByLabel('Try: cross-section, lead -WD1');
    await field.fill('0');
    await page.getByText('A number above zero is needed.').waitFor();
    await expect.poll(() => page.getByText('-TB4 fails first').count()).toBe(1);
    await field.fill('0.05');
    expect(engineSums({ figure: 'cross-section', id: 'WD1', value: 0.05 }).problems.map(({ code }) => code)).toContain('voltage-too-low');
    const problems = page.getByRole('region', { name: 'Problems' });
    await problems.getByText('-TB4 gets too little voltage').waitFor();
    await expect.poll(() => problems.getByText('only with the tried figures').count()).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'Put all back' }).click();
    await problems.getByText('Nothing wrong was found.').waitFor();
    await launched.close();
  });

  it('should take a missing figure where it says that it is missing', async () => {
    const launched = await openSums();
    const { page } = launched;
    const pane = page.getByRole('region', { name: 'Not written down' });
    const without = engineSums().feed.supplies[0]?.inrush.load;
    if (without === undefined) throw new Error('the sample has a supply');
    await expect.poll(() => shown(page, `${termWords.inrush}, -TB10, switching on`)).toBe(wordTermValue(without));
    await pane.getByLabel('24 V inrush, -KE3', { exact: true }).fill('1.2');
    await page.keyboard.press('Enter');
    await pane.getByText('Every figure that the sums need is written down.').waitFor();
    const sums = engineSums({ figure: 'inrush', id: 'KE3', value: 1.2 });
    const load = sums.feed.supplies[0]?.inrush.load;
    if (load === undefined) throw new Error('the sample has a supply');
    expect(load.value).not.toBe(without.value);
    await expect.poll(() => shown(page, `${termWords.inrush}, -TB10, switching on`)).toBe(wordTermValue(load));
    await page.getByRole('button', { name: /^Undo: 24 V inrush of -KE3: 1.2/ }).click();
    await expect.poll(() => pane.getByLabel('24 V inrush, -KE3', { exact: true }).count()).toBe(1);
    await launched.close();
  });

  it('should show every link and unit of a cabinet of forty, and never a waiting time that nobody wrote down', async () => {
    const launched = await launchPage({ width: 1280, height: 720 });
    const { page } = launched;
    await driveFind(page).openSample('Forty units', 'nothing seen yet');
    await page.getByText(/^New case · /).waitFor();
    await page.getByRole('button', { name: 'Cabinet', exact: true }).click();
    await page.getByRole('menuitem', { name: /^Sums/ }).click();
    await page.getByRole('heading', { name: 'Light on every fibre' }).waitFor();
    const { optical, feed, waitingTimeS } = computeSums(checkCabinet(fortyUnits.content).topology);
    await expect.poll(() => page.getByRole('button', { name: /^margin, / }).count()).toBe(optical.length);
    await expect.poll(() => page.getByRole('button', { name: /^voltage, / }).count()).toBe(feed.units.length);
    expect(waitingTimeS).toBeNull();
    await expect.poll(() => page.getByText(wordWaitingTime(null)).count()).toBe(1);
    await launched.close();
  });

  it.each(['light', 'dark', 'high-contrast'] as const)('should pass the automatic check in %s', async (theme) => {
    const launched = await openSums({ width: 1280, height: 720, theme });
    const { page } = launched;
    expect(await seriousFindings(launched.page)).toEqual([]);
    await page.getByLabel('Try: temperature in the cabinet').fill('60');
    await number(page, 'margin, cable -WH4, return').click();
    await number(page, `${termWords['discharge-time']}, -TB10`).click();
    expect(await seriousFindings(launched.page)).toEqual([]);
    await launched.close();
  });
});
