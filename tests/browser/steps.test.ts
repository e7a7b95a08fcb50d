import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { bigCase, dropCase, lastDesignation } from './bigCabinet.ts';
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
    await settled();
  });

  const next = () => launched.page.getByRole('button', { name: /^Next: / });
  const card = () => launched.page.getByRole('region', { name: 'Next step' });
  const others = () => launched.page.getByRole('region', { name: 'Other steps' });
  const log = () => launched.page.getByRole('region', { name: 'Log' });
  /** The plan gets no better: what is listed stays where it is. */
  const settled = () =>
    card()
      .getByText(/^(looked \d+ steps? ahead|exact order)$/)
      .waitFor({ timeout: 60_000 });
  const outcome = (name: RegExp) => card().getByRole('button', { name });
  /** Shows a step of the list, wherever it stands in it. */
  const showStep = async (name: RegExp) => {
    const heading = card().getByRole('heading', { level: 3 });
    if (name.test((await heading.textContent()) ?? '')) return;
    const more = others().getByRole('button', { name: /^Show \d+ more$/ });
    if ((await more.count()) > 0) await more.click();
    await others().getByRole('button', { name }).click();
    await expect.poll(() => heading.textContent()).toMatch(name);
  };
  const litUnits = () =>
    launched.page.evaluate(() =>
      [...document.querySelectorAll('.unit.lit [data-unit]')].map((unit) => unit.getAttribute('aria-label') ?? ''),
    );

  it('should say the same on the black button and on the card, light the place, and go to the answers', async () => {
    await expect.poll(() => next().textContent()).toMatch(/^Next: (clean|reseat) -WH3 at both ends D *\d+ min/);
    const what = /^(Clean|Reseat) -WH3 at both ends$/;
    await expect.poll(() => card().getByRole('heading', { level: 3 }).textContent()).toMatch(what);
    await expect
      .poll(() => launched.page.getByRole('list', { name: 'What to do' }).getByRole('listitem').allTextContents())
      .toEqual([
        expect.stringMatching(
          /^Switch off every feed, lock out, tag; wait for the DC link, then measure \(\d+ min\); it erases displays and report\.$/,
        ),
        expect.stringMatching(/^(Clean|Reseat) -WH3 at both ends\.$/),
        expect.stringMatching(/^Close the doors, take the lock off, switch on \(\d+ min\)\.$/),
      ]);
    await expect.poll(() => litUnits()).toEqual([]);
    await next().click();
    await expect.poll(async () => (await litUnits()).join()).toMatch(/-TB[23], /);
    // The step is read before anything is recorded: a second press of the same key must not enter an outcome.
    await expect.poll(() => launched.page.evaluate(() => document.activeElement?.className)).toBe('step-title');
  });

  it('should list every step in one order with its minutes, and those of no use with the reason', async () => {
    await others()
      .getByRole('button', { name: /^Show \d+ more$/ })
      .click();
    const costs = await others()
      .getByRole('listitem')
      .evaluateAll((rows) => rows.map((row) => row.textContent?.match(/in all (?:(\d+) h)? ?(?:(\d+) min)?$/) ?? []));
    const minutes = costs.map(([, hours, rest]) => Number(hours ?? 0) * 60 + Number(rest ?? 0));
    expect(minutes.length).toBeGreaterThan(5);
    expect(minutes).toEqual([...minutes].sort((x, y) => x - y));
    await others()
      .getByRole('button', { name: /steps of no use$/ })
      .click();
    await expect
      .poll(() =>
        others()
          .getByText(/Tells nothing: whatever is wrong, it says “quiet”\.$/)
          .count(),
      )
      .toBeGreaterThan(0);
  });

  it('should take what was found as evidence in one step, with a line in the log, and undo it in one', async () => {
    const before = await find.answer.textContent();
    await showStep(/^check light at -WH3, lower plug/i);
    await outcome(/^none then /).click();
    const line = () => log().getByText(/^Light at the lower plug of cable -WH3: none$/);
    await expect.poll(() => line().count()).toBe(1);
    await launched.page.getByRole('button', { name: /^Undo: light at the lower plug of cable -WH3: none$/ }).click();
    await expect.poll(() => line().count()).toBe(0);
    await expect.poll(() => find.answer.textContent()).toBe(before);
  });

  it('should begin a new look at the machine with an act, and believe what it showed', async () => {
    const act = (await card().getByRole('heading', { level: 3 }).textContent()) ?? '';
    expect(act).toMatch(/ -WH3 at both ends$/);
    await expect
      .poll(() =>
        card()
          .getByText(/Not noted yet: .*-KE2/)
          .count(),
      )
      .toBe(1);
    await outcome(/^still halted/).click();
    await expect.poll(() => log().getByText('Look 2').count()).toBe(1);
    await expect
      .poll(() =>
        log()
          .getByText(/^(Reseated|Cleaned) -WH3 at both ends: still halted$/)
          .count(),
      )
      .toBe(1);
    // The plugs are less likely now, and no display of the new look has been read yet.
    await expect.poll(() => launched.page.getByText(/after 2 acts; look 2 at the machine/).count()).toBe(1);
    await expect.poll(() => find.unit('-TB2').getAttribute('aria-label')).toContain('Seen: not looked at.');
  });

  it('should take a restart with nothing touched as a new look, and let it be withdrawn in the log', async () => {
    const before = await find.answer.textContent();
    const seen = launched.page.getByRole('region', { name: 'What was seen' });
    const restart = seen.getByRole('button', { name: 'Restarted', exact: true });
    await restart.press('Enter');
    // Nothing is known of the new look: another restart would say nothing. The focus is where the next question stands.
    await expect.poll(() => restart.isDisabled()).toBe(true);
    await expect.poll(() => launched.page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('What was seen');
    await seen.getByRole('radio', { name: 'not halted', exact: true }).press(' ');
    const line = () => log().getByRole('listitem').filter({ hasText: 'Restarted, nothing touched: machine runs' });
    await expect.poll(() => line().count()).toBe(1);
    const head = launched.page.getByText(/look 2, after a restart/);
    await expect.poll(() => head.count()).toBe(1);
    await line()
      .getByRole('button', { name: /^Withdraw: / })
      .click();
    await expect.poll(() => line().count()).toBe(0);
    await expect.poll(() => head.count()).toBe(0);
    await expect.poll(() => find.answer.textContent()).toBe(before);
  });

  it('should take what was moved after a restart, and offer it as it offers the rest', async () => {
    const seen = launched.page.getByRole('region', { name: 'What was seen' });
    await seen.getByRole('button', { name: 'Restarted', exact: true }).press('Enter');
    await seen.getByRole('radio', { name: 'moved cables', exact: true }).press(' ');
    await seen.getByRole('combobox', { name: 'What was moved' }).selectOption('cable -WH3');
    await seen.getByRole('radio', { name: 'halted', exact: true }).press(' ');
    const line = () =>
      log()
        .getByRole('listitem')
        .filter({ hasText: /Restarted and moved the cables \(cable -WH3\): came again/ });
    await expect.poll(() => line().count()).toBe(1);
    await seen.getByRole('button', { name: 'Leave out cable -WH3' }).press('Enter');
    await expect.poll(() => line().count()).toBe(0);
    await seen.getByRole('radio', { name: 'nothing', exact: true }).press(' ');
    await expect.poll(() => log().getByRole('listitem').filter({ hasText: 'Restarted, nothing touched: still halted' }).count()).toBe(1);
  });

  it('should say what a case names and the cabinet does not have', async () => {
    const content = bigCase(3);
    const [first] = content.evidence.snapshots;
    const snapshots = [{ ...first, displays: [...(first?.displays ?? []), { unit: 'elsewhere', meanings: ['quiet' as const] }] }];
    await dropCase(launched.page, { ...content, evidence: { snapshots } });
    await find.unit(lastDesignation(3)).waitFor();
    await log()
      .getByText(/The case names what the cabinet does not have: unit “elsewhere”\./)
      .waitFor();
    await expect.poll(() => launched.page.getByRole('button', { name: 'Log something that the cabinet does not have' }).count()).toBe(1);
  });

  it('should let a look be corrected and withdrawn in the log, and keep both in the record of the case', async () => {
    await showStep(/^check light at -WH3, lower plug/i);
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
    await expect
      .poll(() =>
        log()
          .getByText(/^Corrected: light at the/i)
          .count(),
      )
      .toBe(1);
    await expect
      .poll(() =>
        log()
          .getByText(/^Withdrawn: light at the/i)
          .count(),
      )
      .toBe(1);
  });

  it('should go from the key to the outcome by keyboard alone, and pass the automatic check with all cautions open', async () => {
    await launched.page.locator('body').press('d');
    await find.tabToOutcome();
    await launched.page.keyboard.press('Tab');
    await launched.page.keyboard.press('Enter');
    await expect
      .poll(() =>
        log()
          .getByText(/-WH3 at both ends: still halted$/)
          .count(),
      )
      .toBe(1);
    await expect.poll(() => launched.page.evaluate(() => document.activeElement?.id)).toBe('step');
    await launched.page.getByRole('button', { name: 'In full' }).click();
    await expect
      .poll(() =>
        launched.page
          .getByRole('region', { name: 'Before you begin' })
          .getByText('Never look into a fibre end or an optical port.')
          .count(),
      )
      .toBe(1);
    expect(await seriousFindings(launched.page)).toEqual([]);
  });

  it('should take by keyboard what a light check showed and no button says, at the end where it was looked, and let the contradiction show', async () => {
    await showStep(/^check light at -WH3, lower plug/i);
    await card().getByRole('button', { name: 'Did it, saw something else' }).press('Enter');
    const dialog = launched.page.getByRole('dialog', { name: 'What a check showed' });
    await dialog.waitFor();
    await expect.poll(() => dialog.getByRole('button', { pressed: true }).getAttribute('aria-label')).toBe('Light at the lower plug');
    expect(await seriousFindings(launched.page)).toEqual([]);
    await launched.page.keyboard.press('ArrowUp');
    await dialog.getByRole('button', { name: 'Light at the upper plug', pressed: true }).waitFor();
    await launched.page.keyboard.press('4');
    await dialog.waitFor({ state: 'detached' });
    await expect.poll(() => launched.page.evaluate(() => document.activeElement?.id)).toBe('step');
    await expect
      .poll(() =>
        log()
          .getByText(/^Light at the upper plug of cable -WH3: in the wrong hole$/)
          .count(),
      )
      .toBe(1);
    await expect.poll(() => find.answer.textContent()).toBe('Does not fit, read again: light at the upper plug of cable -WH3.');
    // Opened anew it shows what was entered, and takes it back.
    await launched.page.locator('#log').focus();
    await launched.page.keyboard.press('c');
    await dialog.getByRole('combobox', { name: 'At' }).selectOption('cable -WH3');
    await dialog.getByRole('button', { name: 'in the wrong hole 4', pressed: true }).waitFor();
    await dialog.getByRole('button', { name: 'not looked at 0' }).press('Enter');
    await expect
      .poll(() =>
        log()
          .getByText(/^Light at the upper plug of cable -WH3: in the wrong hole$/)
          .count(),
      )
      .toBe(0);
  });

  it('should say what mends almost surely, with the cautions of switching off', async () => {
    await find.openSample('Two supplies', 'Supply and two drives dark');
    await settled();
    await showStep(/^check main switch, breaker and feed of supply -TB9/i);
    await expect.poll(() => launched.page.getByRole('region', { name: 'How' }).getByText('Mends 99 of 100 such cases.').count()).toBe(1);
    const cautions = launched.page.getByRole('region', { name: 'Cautions' });
    await expect.poll(() => cautions.getByText('Lock out, tag').count()).toBe(1);
    await expect.poll(() => cautions.getByText(/DC link/).count()).toBe(1);
  });
});
