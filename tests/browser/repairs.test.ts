import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { endStateWords, startSentence, stepCardTexts, stepTexts, windowTexts } from '../../engine/messages/index.ts';
import type { CaseEnd, Evidence, Fault, Intervention } from '../../engine/schema/index.ts';
import type { Step } from '../../engine/steps/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { Random } from '../generators/random.ts';
import { RealMachine, type World } from '../plan/realMachine.ts';
import { drivesContent, soundCabinet } from '../plan/smallCabinet.ts';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { openRepair, type RepairDriver, seenPaneOf } from './repairDriver.ts';

/*
 * Repairs in the window, to their end: what comes of each step the simulation says, by faults that the window does not know.
 */

const missing = await whyMissing('Chromium', findChromium);
const cabinet = soundCabinet(drivesContent(3));

const act = (...acts: readonly Intervention[]): Step => ({ do: 'act', acts });
const clean = (link: string): Step => act({ do: 'clean-plug', link, end: 'upper' }, { do: 'clean-plug', link, end: 'lower' });
const swap = act({ do: 'exchange-boards', unit: 'u2', other: 'u3' });
const steady = { presence: 'steady' } as const;

describe.skipIf(missing)('repairs in the window', () => {
  let launched: LaunchedPage;
  beforeAll(async () => {
    launched = await launchPage({ width: 1440, height: 900, reducedMotion: true });
  });
  afterAll(() => launched.close([/ERR_ABORTED/]));

  /** Opens the case of a machine with these faults, everything read that it shows. */
  async function begin(faults: readonly Fault[], of: Cabinet = cabinet, change: (seen: Evidence) => Evidence = (seen) => seen) {
    const machine = new RealMachine(of, faults);
    const repair = await openRepair(launched.page, of, change(machine.firstLook()));
    await repair.worked();
    /** Takes a step, with what comes of it on this machine. */
    const take = async (step: Step, on: Pick<RealMachine, 'take'> = machine) => repair.take(step, on.take(step, []));
    /** Takes a step after which something is seen that no button says. */
    const takeOddly = (step: Step) => repair.take(step, null);
    return { ...repair, machine, take, takeOddly, reread: () => repair.read(machine.firstLook()) };
  }

  /** Hands back, says how far the cause is proved, and closes again. */
  async function expectEnd(
    { finish, handBack }: Pick<RepairDriver, 'finish' | 'handBack'>,
    end: CaseEnd,
    ...also: readonly (string | RegExp)[]
  ): Promise<void> {
    await finish();
    await handBack.getByRole('heading', { level: 3, name: startSentence(endStateWords[end].label) }).waitFor();
    for (const text of also) await expect.poll(() => handBack.getByText(text).count(), { message: String(text) }).toBeGreaterThan(0);
    await launched.page.keyboard.press('Escape');
    await handBack.waitFor({ state: 'detached' });
  }

  it('should mend two faults, one after the other', async () => {
    const repair = await begin([
      { item: 'plug', link: 'w2', end: 'upper', mode: 'fouled', ...steady },
      { item: 'fuse', unit: 'u3', mode: 'open', ...steady },
    ]);
    await repair.take(act({ do: 'replace-fuse', unit: 'u3' }));
    await repair.reread();
    await repair.take(clean('w2'));
    expect(repair.machine.isMended).toBe(true);
    await repair.find.answer.getByText(/^The machine runs: /).waitFor();
  });

  it('should hand back after reseating a plug without a proof, with what to watch', async () => {
    const repair = await begin([{ item: 'plug', link: 'w2', end: 'lower', mode: 'loose', ...steady }]);
    await repair.take(act({ do: 'reseat-plug', link: 'w2', end: 'lower' }));
    await expectEnd(repair, 'not-proved', /All 4 displays quiet\./, 'Watch what was touched', /^Reseated the lower plug of /);
  });

  it('should follow a fault that moved with its board, and remind of the other board until it is back', async () => {
    const repair = await begin([{ item: 'board', unit: 'u2', mode: 'dead-lit', ...steady }]);
    await repair.take(swap);
    await repair.reread();
    const exchanged = repair.touched.getByText('The boards of -TB2 and -TB3 are exchanged');
    await expect.poll(() => exchanged.count()).toBe(1);
    await expect.poll(() => repair.find.suspect(/board/).first().textContent()).toMatch(/-TB3|-TB2/);
    await repair.take(act({ do: 'replace-board', unit: 'u3' }));
    const cautions = await launched.page.getByRole('region', { name: 'Cautions' }).getByRole('listitem').allTextContents();
    expect(cautions).toEqual([...new Set(cautions)]);
    await expectEnd(repair, 'running-provisionally', 'The board of -TB3 stands in -TB2');
    await repair.touched.getByRole('button', { name: 'Put back' }).click();
    await repair.touched.getByRole('button', { name: 'Machine runs' }).click();
    await repair.worked();
    await expect.poll(() => repair.touched.getByRole('list', { name: 'Not in its place' }).count()).toBe(0);
  });

  it('should turn to the place when the fault stays after an exchange of boards', async () => {
    const repair = await begin([{ item: 'place', unit: 'u2', mode: 'contact-bad', ...steady }]);
    await repair.take(swap);
    await repair.reread();
    await repair.show({ do: 'look', look: { look: 'voltage', unit: 'u2' as never } });
    await repair.take(act({ do: 'reseat-unit', unit: 'u2' }));
    expect(repair.machine.isMended).toBe(true);
    await expectEnd(repair, 'running-provisionally', 'The boards of -TB2 and -TB3 are exchanged');
  });

  it('should think of a bad part when a sure exchange did not help, and end with the second one', async () => {
    const faults: readonly Fault[] = [{ item: 'cable', link: 'w2', mode: 'cut', ...steady }];
    const repair = await begin(faults);
    const world: World = { badPart: 1 };
    const exchange = act({ do: 'replace-cable', link: 'w2' });
    await repair.take({ do: 'look', look: { look: 'lamp', link: 'w2' as never, fibre: 'outbound' } });
    await repair.take({ do: 'look', look: { look: 'lamp', link: 'w2' as never, fibre: 'return' } });
    await repair.take(exchange, new RealMachine(cabinet, faults, new Random(1), world));
    await repair.reread();
    await repair.touched.getByRole('button', { name: 'It got worse' }).click();
    await expect
      .poll(() => repair.touched.getByRole('status').textContent())
      .toMatch(/Last: replaced cable -WH2\..*a part put in is bad: \d+ %/);
    await repair.take(exchange);
    await repair.find.answer.getByText(/^The machine runs: /).waitFor();
  });

  it('should change its mind when a misread display is put right in the log', async () => {
    const repair = await begin([{ item: 'fuse', unit: 'u2', mode: 'open', ...steady }], cabinet, ({ snapshots: [first = {}] }) => ({
      snapshots: [{ ...first, displays: (first.displays ?? []).map((one) => (one.unit === 'u2' ? { ...one, meanings: ['quiet'] } : one)) }],
    }));
    const before = await repair.find.answer.textContent();
    const line = launched.page.getByRole('region', { name: 'Log' }).getByRole('listitem').filter({ hasText: '-TB2 quiet' });
    await line.getByRole('button', { name: /^Correct: / }).click();
    await launched.page
      .getByRole('dialog', { name: 'What -TB2 shows' })
      .getByRole('button', { name: /^dark \d$/ })
      .click();
    await expect.poll(() => repair.find.answer.textContent()).not.toBe(before);
    await repair.take(act({ do: 'replace-fuse', unit: 'u2' }));
    expect(repair.machine.isMended).toBe(true);
  });

  it('should watch a fault that has vanished: a restart that runs proves nothing, and bringing it out is offered', async () => {
    const repair = await begin([{ item: 'plug', link: 'w2', end: 'upper', mode: 'loose', presence: 'intermittent' }]);
    const pane = seenPaneOf(launched.page);
    await pane.getByRole('button', { name: windowTexts.seenPane.restart, exact: true }).click();
    await pane.getByRole('radio', { name: windowTexts.seenPane.halts.no, exact: true }).press(' ');
    await repair.worked();
    await repair.take({ do: 'provoke', how: 'flex', subjects: ['w2'] }, { take: () => 'halts' });
    await repair.take(clean('w2'));
    await expectEnd(repair, 'not-proved', /comes and goes/);
  });

  it('should reckon with a figure of the repair table that was typed over, say where it comes from, and undo it by its name', async () => {
    const repair = await begin([{ item: 'plug', link: 'w2', end: 'lower', mode: 'loose', ...steady }]);
    const { page } = launched;
    const first = await repair.card.getByRole('heading', { level: 3 }).textContent();
    await page.getByRole('button', { name: 'Cabinet', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Repair table…' }).click();
    const table = page.getByRole('dialog', { name: 'Repair table' });
    const row = table.getByRole('row', { name: /^Clean a plug and its port/ });
    await expect.poll(() => row.textContent()).toMatch(/assumed.*Plug.*Light from fibres/);
    await row.getByRole('textbox').first().fill('300');
    await page.keyboard.press('Enter');
    await expect.poll(() => row.textContent()).toMatch(/this cabinet/);
    expect(await seriousFindings(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await table.waitFor({ state: 'detached' });
    await repair.worked();
    expect(first).toMatch(/^Clean/);
    await expect.poll(() => repair.card.getByRole('heading', { level: 3 }).textContent()).not.toMatch(/clean/i);
    await page.getByRole('button', { name: /^Undo: repair table: minutes: clean a plug and its port$/i }).click();
    await expect.poll(() => repair.card.getByRole('heading', { level: 3 }).textContent()).toBe(first);
  });

  it('should say when nothing that is left is worth doing', async () => {
    const one = soundCabinet(drivesContent(1, { name: 'One drive', repair: { weights: { outsideHelp: 30 } } }));
    const repair = await begin([{ item: 'controller', mode: 'all-ports-dead' }], one);
    await repair.card.getByText(stepCardTexts.exhausted['get-help'](false).slice(0, 40)).waitFor();
    await expect.poll(() => repair.card.getByRole('group', { name: stepTexts.found }).count()).toBe(0);
  });

  it('should warn of the reference position and begin with something safer', async () => {
    const repair = await begin([{ item: 'board', unit: 'u2', mode: 'dead-dark', ...steady }]);
    await expect.poll(() => repair.card.locator('.step-marks').textContent()).not.toMatch(/reference position/);
    await repair.show(act({ do: 'replace-board', unit: 'u2' }));
    await expect.poll(() => repair.card.locator('.step-marks').textContent()).toMatch(/reference position/);
    await expect
      .poll(() =>
        launched.page
          .getByRole('region', { name: 'Cautions' })
          .getByText(/reference position/i)
          .count(),
      )
      .toBeGreaterThan(0);
  });

  it('should look for lost power, not for light, where displays are dark', async () => {
    const repair = await begin([{ item: 'supply', unit: 's1', mode: 'output-lost', ...steady }]);
    await expect.poll(() => repair.card.getByRole('heading', { level: 3 }).textContent()).not.toMatch(/light/i);
    await repair.take(act({ do: 'replace-supply', unit: 's1' }));
    await repair.find.answer.getByText(/^The machine runs: /).waitFor();
  });

  it('should keep what was done where something else was seen, and point at it when it got worse', async () => {
    const repair = await begin([{ item: 'plug', link: 'w2', end: 'upper', mode: 'fouled', ...steady }]);
    await repair.takeOddly(act({ do: 'reseat-plug', link: 'w2', end: 'upper' }));
    await launched.page.getByRole('dialog', { name: /^What -TB1 shows/ }).waitFor();
    await launched.page.keyboard.press('Escape');
    await repair.worked();
    const log = launched.page.getByRole('region', { name: 'Log' });
    await expect.poll(() => log.getByText(/^Reseated the upper plug of cable -WH2$/).count()).toBe(1);
    await repair.touched.getByRole('button', { name: 'It got worse' }).click();
    await expect.poll(() => repair.touched.getByRole('status').textContent()).toMatch(/Last: reseated the upper plug of cable -WH2/);
  });
});
