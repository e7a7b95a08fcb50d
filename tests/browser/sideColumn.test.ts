import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeQuickCabinet, parseQuickLine } from '../../engine/quick/index.ts';
import { fullEvidence, plainCabinet, plainContent } from '../bench/cabinets.ts';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { dropCase } from './bigCabinet.ts';
import { driveFind, type FindDriver } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('a small window, 1280 × 720', () => {
  let launched: LaunchedPage;
  let find: FindDriver;
  beforeAll(async () => {
    launched = await launchPage({ width: 1280, height: 720, reducedMotion: true });
    find = driveFind(launched.page);
    await find.answer.getByText('likely').waitFor();
  });
  afterAll(() => launched.close());

  /** Every piece lies whole inside the window, above the cautions. */
  const areInSight = async (pieces: string) =>
    launched.page.evaluate((selector) => {
      const floor = document.querySelector('.side')?.getBoundingClientRect().bottom ?? 0;
      const found = [...document.querySelectorAll(selector)].map((one) => one.getBoundingClientRect());
      return found.length > 1 && found.every(({ top, bottom }) => top >= 0 && bottom <= floor + 1);
    }, pieces);
  /** Elements in the column at the right that can be scrolled. */
  const scrollers = () =>
    launched.page.evaluate(
      () =>
        [...document.querySelectorAll('.side, .side *')].filter(
          (one) => one.scrollHeight > one.clientHeight + 1 && ['auto', 'scroll'].includes(getComputedStyle(one).overflowY),
        ).length,
    );
  const worked = async () => {
    await launched.page.locator('#step[aria-busy="false"] .planning').waitFor({ timeout: 60_000 });
  };

  it.each([
    ['Two chains', 'stopped in the middle of a part'],
    ['Three units', 'Two neighbours complain'],
    ['Two supplies', 'Supply and two drives dark'],
    ['Two chains', 'one display read from the wrong row'],
  ])('should have suspects, step and outcomes in sight, and one scroller beside the cabinet: %s, %s', async (sample, words) => {
    await find.openSample(sample, words);
    await worked();
    await expect.poll(() => areInSight('.suspect-row, .step-title, .outcome')).toBe(true);
    await expect.poll(scrollers).toBeLessThanOrEqual(1);
  });

  it('should ask first what may feed two dark units, and have step and outcomes in sight, also below a long contradiction', async () => {
    const line = parseQuickLine('ssspes');
    if (!line.ok) throw new Error('unreadable line');
    const shown = ['quiet', 'quiet', 'downstream-loss', 'dark', 'dark', 'upstream-loss'] as const;
    const units = ['TB1', 'TB2', 'TB3', 'TB4', 'KE2', 'TB5'];
    await dropCase(launched.page, {
      id: 'fed',
      name: 'Fed',
      cabinet: { id: 'q', name: 'q', ...makeQuickCabinet(line.value, { typeName: 'as found' }) },
      evidence: {
        snapshots: [
          {
            onset: 'while-running',
            halted: true,
            displays: units.map((unit, index) => ({ unit, meanings: [shown[index] ?? 'quiet'] })),
          },
        ],
      },
    });
    await expect.poll(() => find.answer.textContent()).toBe('Does one lead or fuse feed -TB4 and -KE2?');
    await worked();
    const aboveIndex = () =>
      launched.page.evaluate(() => {
        const index = document.querySelector('.side-index')?.getBoundingClientRect().top ?? 0;
        const pieces = [...document.querySelectorAll('.step-title, .outcome')].map((one) => one.getBoundingClientRect().bottom);
        return pieces.length > 1 && pieces.every((bottom) => bottom <= index);
      });
    await expect.poll(aboveIndex).toBe(true);
    await launched.page.getByRole('button', { name: 'Each its own' }).press('Enter');
    await expect.poll(() => find.answer.textContent()).toMatch(/^Does not fit, read again: displays of /);
    await worked();
    await expect.poll(aboveIndex).toBe(true);
    const pane = launched.page.getByRole('region', { name: 'Suspects' });
    await pane.getByRole('button', { name: 'What if misread?' }).press('Enter');
    await expect.poll(() => pane.getByText(/^Display of .* misread\?/).count()).toBeGreaterThan(0);
  });

  it('should stand at its top again once what stands still has room', async () => {
    await find.openSample('Mixed behaviours', 'unknown behaviour');
    await worked();
    const more = launched.page.getByRole('region', { name: 'Suspects' }).getByRole('button', { name: /^Show / });
    await more.click();
    await launched.page.locator('.side').evaluate((column) => column.scrollTo(0, 200));
    await launched.page.getByRole('region', { name: 'Suspects' }).getByRole('button', { name: 'Show fewer' }).press('Enter');
    const top = () => launched.page.locator('.side').evaluate((column) => column.scrollTop);
    await expect.poll(top).toBe(0);
    await expect.poll(() => areInSight('.suspects h2, .suspect-row, .step-title, .outcome')).toBe(true);
  });

  it('should lead to what stands further down with a press, suspects and outcomes staying where they are', async () => {
    await find.openSample('Two chains', 'stopped in the middle of a part');
    await worked();
    const down = launched.page.getByRole('navigation', { name: 'Further down' });
    await down.getByRole('button', { name: 'Log' }).press('Enter');
    await expect.poll(() => launched.page.evaluate(() => document.activeElement?.id)).toBe('log');
    const first = launched.page.getByRole('region', { name: 'Log' }).getByRole('listitem').first();
    await expect.poll(async () => (await first.boundingBox())?.y ?? 999).toBeLessThan(685);
    await expect.poll(() => areInSight('.suspect-row, .step-title, .outcome')).toBe(true);
    expect(await seriousFindings(launched.page)).toEqual([]);
  });

  it('should have the whole picture in sight again after a walk that moved it, none of it under its head', async () => {
    await find.openSample('Two chains', 'stopped in the middle of a part');
    await worked();
    const topOf = async () => (await find.unit('-TB1').boundingBox())?.y ?? 0;
    const before = await topOf();
    await find.unit('-TB6').click();
    await launched.page.keyboard.press('Escape');
    await launched.page.locator('body').press('e');
    for (let skipped = 0; skipped < 3; skipped += 1) await launched.page.keyboard.press('0');
    await expect.poll(topOf).toBeLessThan(before);
    await launched.page.keyboard.press('Escape');
    await expect.poll(topOf).toBe(before);
  });

  it('should say where a drawing goes on beyond the window, and go there', async () => {
    const evidence = fullEvidence(plainCabinet(6, 12), { item: 'cable', link: 'w3.5', mode: 'cut' });
    await dropCase(launched.page, { id: 'six', name: 'Six chains', cabinet: plainContent(6, 12), evidence });
    const last = find.unit('-TB6.12');
    const below = launched.page.getByRole('button', { name: 'More below' });
    const picture = () => launched.page.locator('#cabinet .react-flow__viewport').getAttribute('style');
    await below.waitFor();
    const floor = (await launched.page.locator('#cabinet').boundingBox())?.height ?? 0;
    for (let pressed = 0; (await below.count()) > 0; pressed += 1) {
      expect(pressed).toBeLessThan(6);
      const before = await picture();
      await below.press('Enter');
      await expect.poll(picture).not.toBe(before);
    }
    const box = await last.boundingBox();
    expect((box?.y ?? 9999) + (box?.height ?? 0)).toBeLessThan(106 + floor);
    await expect.poll(() => launched.page.getByRole('button', { name: 'More above' }).count()).toBe(1);
  });

  it('should cut no word of a long step, suspect or row', async () => {
    const cut = await launched.page.evaluate(() =>
      [...document.querySelectorAll('.act-what, .act-what > span, .suspect-row .name, .row-name, .tag.big > span, .outcome-picture .place')]
        .filter((one) => one.scrollWidth > one.clientWidth + 1 || one.scrollHeight > one.clientHeight + 2)
        .map((one) => one.textContent),
    );
    expect(cut).toEqual([]);
  });
});
