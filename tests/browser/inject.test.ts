import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { makeNames, meaningWords, startSentence, wordItem, wordMode } from '../../engine/messages/index.ts';
import { modeKey, simulate } from '../../engine/simulation/index.ts';
import { listChoices, listTargets } from '../../renderer/inject/faultChoices.ts';
import type { InjectTarget } from '../../renderer/inject/injectState.ts';
import { soundSamples } from '../samples/index.ts';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { driveFind, type FindDriver } from './findDriver.ts';
import { driveInject, type InjectDriver } from './injectDriver.ts';

const missing = await whyMissing('Chromium', findChromium);
const { cabinet } = checkCabinet(soundSamples.find(({ name }) => name === 'two-chains')?.content ?? { id: 'none', name: 'none' });

describe.skipIf(missing)('Inject', () => {
  let launched: LaunchedPage;
  let find: FindDriver;
  let inject: InjectDriver;
  beforeAll(async () => {
    launched = await launchPage({ width: 1440, height: 900, reducedMotion: true });
  });
  // Each scene begins with a reload, which may cut off a font that is being fetched; that is no complaint.
  afterAll(() => launched.close([/ERR_ABORTED/]));
  beforeEach(async () => {
    await launched.page.reload();
    find = driveFind(launched.page);
    inject = driveInject(launched.page);
    await find.answer.getByText('likely').waitFor();
  });

  const begin = async () => {
    await launched.page.keyboard.press('i');
    await inject.injected.waitFor();
  };
  const label = async (name: string) => (await inject.thing(name).first().getAttribute('aria-label')) ?? '';

  it('should say everywhere that it is a simulation, show no glass at all, and end without a trace', async () => {
    const { page } = launched;
    const titleBefore = await page.title();
    await page.getByRole('button', { name: /^Simulate/ }).click();
    await inject.injected.waitFor();
    await expect.poll(() => page.title()).toMatch(/^Simulation: /);
    await expect.poll(() => page.getByText('nothing here was seen on the machine', { exact: true }).isVisible()).toBe(true);
    await expect.poll(() => inject.said.textContent()).toMatch(/^Simulation\. Nothing here was seen on the machine\./);
    await expect.poll(() => page.getByRole('region', { name: 'Cabinet, simulated' }).isVisible()).toBe(true);
    await expect.poll(() => label('-TB2')).toMatch(/Simulated: quiet\./);
    await expect.poll(() => label('-TB2')).not.toMatch(/Seen|Predicted/);
    // Facts are dark glass: there is none while nothing was seen.
    await expect.poll(() => page.locator('.window.seen').count()).toBe(0);
    await expect.poll(() => page.getByRole('region', { name: 'Suspects' }).count()).toBe(0);
    await page.keyboard.press('Escape');
    await find.answer.getByText('likely').waitFor();
    await expect.poll(() => page.title()).toBe(titleBefore);
    await expect.poll(() => find.unit('-TB2').getAttribute('aria-label')).toMatch(/Seen: downstream loss/);
    await expect.poll(() => inject.said.textContent()).toMatch(/^Simulation ended\./);
  });

  it('should offer every fault of every kind of thing, and show for each what the engine simulates', async () => {
    if (!cabinet) throw new Error('the sample is not sound');
    const names = makeNames(cabinet);
    await begin();
    const targets = listTargets(cabinet);
    const link = targets.find((one) => one.kind === 'link' && names.link(one.link) === 'cable -WH3');
    const unit = targets.find((one) => one.kind === 'unit' && names.unit(one.unit) === '-TB3');
    const supply = targets.find((one) => one.kind === 'unit' && names.unit(one.unit) === '-TB10');
    const chain = targets.find((one) => one.kind === 'chain');
    const nameOf = (target: InjectTarget) =>
      target.kind === 'link' ? startSentence(names.link(target.link)) : target.kind === 'unit' ? names.unit(target.unit) : 'chain 1';
    for (const target of [link, unit, supply, chain]) {
      if (!target) throw new Error('the sample has changed');
      for (const { faults } of listChoices(cabinet, target)) {
        for (const fault of faults) {
          await inject.inject(nameOf(target), wordMode(fault.item, fault.mode), startSentence(wordItem(names, fault)));
          const { displays } = simulate({ cabinet, faults: [fault], onset: 'while-running' });
          const shown = await launched.page
            .locator('[data-unit]')
            .evaluateAll((units) => units.map((one) => one.getAttribute('aria-label') ?? ''));
          for (const [id, { meaning }] of displays) {
            const said = shown.find((text) => text.startsWith(`${names.unit(id)}, `)) ?? '';
            expect(said, `${modeKey(fault)} at ${id}`).toContain(`Simulated: ${meaningWords[meaning].label}.`);
          }
          await launched.page.getByRole('button', { name: /^Take out: / }).click();
        }
      }
    }
  });

  it('should hold several faults at once, one mode for each item, and take them out one by one', async () => {
    await begin();
    await inject.inject('Cable -WH3', 'one fibre cut, outbound');
    await inject.inject('-TB7', 'open', 'Control fuse of -TB7');
    await expect.poll(() => label('-TB2')).toContain('Simulated: downstream loss.');
    await expect.poll(() => label('-TB7')).toMatch(/Simulated fault: the control fuse of -TB7 is open\. Simulated: dark\./);
    await expect.poll(() => inject.thing('Cable -WH3').getAttribute('aria-label')).toMatch(/Outbound not heard, return not heard\.$/);
    // The other fibre may have its own; the whole cable takes the place of both.
    await inject.inject('Cable -WH3', 'one fibre dim, return');
    await expect.poll(() => inject.injected.getByRole('listitem').count()).toBe(3);
    await inject.inject('Cable -WH3', 'cut, both fibres');
    await expect.poll(() => inject.injected.getByRole('listitem').count()).toBe(2);
    await expect.poll(() => inject.head.textContent()).toContain('If the control fuse of -TB7 is open and cable -WH3 is cut');
    await inject.injected.getByRole('button', { name: 'Take out: cable -WH3: cut, both fibres' }).click();
    await expect.poll(() => label('-TB2')).toContain('Simulated: quiet.');
    // Chosen again in the list it is taken out as well.
    await inject.inject('-TB7', 'open', 'Control fuse of -TB7');
    await expect.poll(() => inject.injected.getByText('Nothing is broken yet.').count()).toBe(1);
  });

  it('should put a fault on a lead that is clicked', async () => {
    await begin();
    await inject.inject('Lead -WD3', 'open');
    await expect.poll(() => label('-TB3')).toMatch(/Simulated: dark\. Gets no 24 V: lead -WD3 is open\./);
  });

  it('should tell an intermittent fault that is gone from one that is there, and the trip from now', async () => {
    await begin();
    await inject.inject('Cable -WH3', 'loose', 'Upper plug of cable -WH3');
    const how = inject.injected.getByRole('combobox', { name: /^How steadily: / });
    await how.selectOption('gone now');
    // Held displays stay; the light is back, and the report is that of the trip.
    await expect.poll(() => inject.thing('Cable -WH3').getAttribute('aria-label')).toMatch(/Outbound heard, return heard\.$/);
    await expect.poll(() => label('-TB2')).toContain('Simulated: downstream loss. Keeps showing what it showed at the trip.');
    await inject.way.getByRole('button', { name: 'at the trip' }).click();
    await expect.poll(() => inject.thing('Cable -WH3').getAttribute('aria-label')).toMatch(/Outbound not heard, return not heard\.$/);
    // Not yet up since it was switched on: then nobody complains, only the report speaks.
    await inject.injected.getByRole('combobox', { name: 'Fault came' }).selectOption('when switched on');
    await expect.poll(() => label('-TB2')).toContain('Simulated: quiet.');
    await expect.poll(() => inject.head.textContent()).toContain('Chain 1 is lost between drive 2 (-TB2) and drive 3 (-TB3)');
  });

  it('should step along the light with buttons and arrows, out and back, with a reason at each unit', async () => {
    await begin();
    await inject.inject('Cable -WH3', 'one fibre cut, outbound');
    const next = inject.way.getByRole('button', { name: /^(First|Next) step/ });
    await next.click();
    await expect.poll(() => label('-TB1')).toContain('Simulated: not yet known.');
    await expect.poll(() => inject.light.getByText('after step 1 of 12').count()).toBe(1);
    const step = async () => (await inject.way.locator('[aria-current="step"]').textContent()) ?? '';
    await expect.poll(() => step()).toMatch(/-KE1 sends light out on chain 1\./);
    for (let i = 0; i < 3; i += 1) await launched.page.keyboard.press('ArrowRight');
    await expect
      .poll(() => step())
      .toMatch(/The outbound fibre of cable -WH3 is cut, so -TB3 hears nothing at up\. It therefore falls silent/);
    await launched.page.keyboard.press('ArrowLeft');
    await expect.poll(() => step()).toMatch(/-TB2 hears -TB1 at up, by cable -WH2\./);
    await inject.way.getByRole('button', { name: 'Next stop' }).click();
    await inject.way.getByRole('button', { name: 'Next stop' }).click();
    await expect
      .poll(() => step())
      .toMatch(/-TB3 hears nothing on this link and so sends nothing on it, although the return fibre is whole/);
    await expect.poll(() => step()).toMatch(/-TB2 shows downstream loss\. Hears nothing from below/);
    await expect.poll(() => label('-TB2')).toContain('Simulated: downstream loss.');
    await expect.poll(() => label('-TB1')).toContain('not yet known');
    await expect.poll(() => inject.said.textContent()).toMatch(/^Step 9 of 12\. /);
    // A step is chosen by itself, too.
    await inject.way.getByRole('button', { name: /^12/ }).click();
    await expect.poll(() => step()).toMatch(/Chain 1 is lost between drive 2 \(-TB2\) and drive 3 \(-TB3\)\. Nothing passed cable -WH3/);
    await inject.way.getByRole('button', { name: 'All at once' }).click();
    await expect.poll(() => inject.way.locator('[aria-current="step"]').count()).toBe(0);
  });

  it('should take a pattern into the case, and undo it in one step', async () => {
    const { page } = launched;
    await begin();
    await inject.inject('Cable -WH8', 'cut, both fibres');
    await page.getByRole('button', { name: /^Take this pattern into the case/ }).click();
    const dialog = page.getByRole('dialog', { name: 'Take this pattern into the case' });
    await dialog.getByText(/They take the place of what the case holds: .* Undo brings that back\./).waitFor();
    await dialog.getByRole('button', { name: 'Only what is not quiet' }).click();
    await dialog.getByText('2 displays, 2 reports').waitFor();
    await dialog.getByRole('button', { name: 'Take into the case' }).click();
    await dialog.waitFor({ state: 'detached' });
    await find.answer.getByText('cable -WH8', { exact: false }).waitFor();
    await expect.poll(() => find.unit('-TB6').getAttribute('aria-label')).toContain('Seen: downstream loss.');
    await expect.poll(() => find.unit('-TB2').getAttribute('aria-label')).toContain('Seen: not looked at.');
    await expect.poll(() => find.report('chain 2').getAttribute('aria-label')).toMatch(/Seen: lost/);
    await page.keyboard.press('Control+z');
    await expect.poll(() => find.unit('-TB2').getAttribute('aria-label')).toMatch(/Seen: downstream loss\b/);
  });
});
