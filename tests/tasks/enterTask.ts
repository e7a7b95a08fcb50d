import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { ChainId } from '../../engine/base/index.ts';
import {
  circumstanceWords,
  groupWords,
  stepCardTexts,
  stepTexts,
  windowTexts,
  wordStep,
  wordStepOutcome,
  wordStepTitle,
} from '../../engine/messages/index.ts';
import type { Snapshot } from '../../engine/schema/index.ts';
import type { Step } from '../../engine/steps/index.ts';
import { entryChoices } from '../../renderer/find/entryChoices.ts';
import { driveFind, type FindDriver } from '../browser/findDriver.ts';
import { spotName, type TaskCase } from './taskCases.ts';

/*
 * A sample case entered as somebody would who stands before the machine: the cabinet is opened with nothing seen, then everything is
 * entered by keys.
 */

type RestartStep = Extract<Step, { do: 'act' | 'provoke' }>;

/** Opens the cabinet of a task; what was entered before is not kept. */
export async function openTask(page: Page, { sample }: TaskCase): Promise<FindDriver> {
  const find = driveFind(page);
  await find.openSample(sample, windowTexts.samplesWithoutCase);
  await find.answer.getByText('Note what every display shows.').waitFor();
  return find;
}

/** Enters everything that was seen at first. */
export async function enterFirstLook(page: Page, task: TaskCase): Promise<void> {
  const [first] = task.looks;
  await enterMoment(page, first);
  await enterCircumstances(page, task);
  await enterSeen(page, task, first);
}

/** Enters what was done to the machine, that it was started again, and everything that was seen then. */
export async function enterLaterLook(page: Page, task: TaskCase, look: Snapshot): Promise<void> {
  const { interventions = [], provoked, halted } = look;
  if (provoked) await enterOutcome(page, task, { do: 'provoke', how: provoked.how, subjects: provoked.subjects ?? [] }, halted);
  else if (interventions.length > 0) await enterOutcome(page, task, { do: 'act', acts: interventions }, halted);
  else {
    const pane = page.getByRole('region', { name: windowTexts.seenPane.region });
    await pane.getByRole('button', { name: windowTexts.seenPane.restart, exact: true }).press('Enter');
    await enterMoment(page, { halted });
  }
  await enterSeen(page, task, look);
}

async function enterSeen(page: Page, task: TaskCase, { displays, reports }: Snapshot): Promise<void> {
  const find = driveFind(page);
  for (const { unit, meanings, code } of displays ?? []) {
    const name = task.names.unit(unit);
    const kind = task.cabinet.content.units?.find(({ id }) => id === unit)?.kind ?? 'servo-drive';
    const choice = entryChoices(kind).find((one) => [...one.meanings].sort().join() === [...meanings].sort().join());
    if (code === undefined && choice) {
      await find.unit(name).press(choice.key);
      continue;
    }
    await find.unit(name).press('Enter');
    const dialog = page.getByRole('dialog', { name: `What ${name} shows` });
    await dialog.getByRole('textbox', { name: windowTexts.entry.codeShown }).fill(code ?? '');
    await page.keyboard.press('Enter');
    await dialog.waitFor({ state: 'detached' });
  }
  for (const { chain, gaps } of reports ?? []) await enterReport(page, task, find, chain as ChainId, gaps); // a case's chains are its cabinet's
  await page.locator('#suspects[aria-busy="false"]').waitFor();
}

async function enterMoment(page: Page, { onset, halted }: Snapshot): Promise<void> {
  const pane = page.getByRole('region', { name: windowTexts.seenPane.region });
  if (onset !== undefined) await pane.getByRole('radio', { name: windowTexts.seenPane.onsets[onset], exact: true }).press(' ');
  if (halted !== undefined) {
    await pane.getByRole('radio', { name: windowTexts.seenPane.halts[halted ? 'yes' : 'no'], exact: true }).press(' ');
  }
}

/** Looks a step up in the list of what to do next, and presses what came of it. */
async function enterOutcome(page: Page, { names }: TaskCase, step: RestartStep, halted: boolean | undefined): Promise<void> {
  const card = page.getByRole('region', { name: stepTexts.region });
  const title = wordStepTitle(names, step);
  const heading = card.getByRole('heading', { level: 3 });
  await card.getByText(/^(looked \d+ steps? ahead|exact order)$/).waitFor({ timeout: 60_000 });
  if ((await heading.textContent()) !== title) {
    const others = page.getByRole('region', { name: stepTexts.others });
    const more = others.getByRole('button', { name: /^Show \d+ more$/ });
    if ((await more.count()) > 0) await more.press('Enter');
    // Alone, not as the first of several acts: what it takes follows.
    await others.getByRole('button', { name: new RegExp(`^${wordStep(names, step)} \\d`) }).press('Enter');
    await expect.poll(() => heading.textContent()).toBe(title);
  }
  const saying = halted === undefined ? stepCardTexts.sawElse : wordStepOutcome(names, step, halted ? 'halts' : 'runs');
  await card.getByRole('group', { name: stepTexts.found }).getByRole('button').filter({ hasText: saying }).press('Enter');
}

async function enterCircumstances(page: Page, { circumstances, names }: TaskCase): Promise<void> {
  const pane = page.getByRole('region', { name: windowTexts.seenPane.region });
  for (const { kind, subjects } of circumstances) {
    const { label } = circumstanceWords[kind];
    await pane.locator('.circumstances-button').press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('checkbox', { name: new RegExp(`^${label}`) }).press(' ');
    for (const id of subjects ?? []) {
      await dialog
        .getByRole('listitem')
        .filter({ hasText: label })
        .getByRole('combobox')
        .selectOption({ label: names.thing(id) });
    }
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
  }
}

async function enterReport(
  page: Page,
  task: TaskCase,
  find: FindDriver,
  chain: ChainId,
  gaps: readonly (number | 'none')[],
): Promise<void> {
  const name = task.names.chain(chain);
  const [gap, ...others] = gaps;
  expect(others, 'a report of the samples names one gap').toEqual([]);
  await find.report(name).press('Enter');
  const dialog = page.getByRole('dialog', { name: `What the controller reports of ${name}` });
  await dialog.waitFor();
  if (gap === 'none') {
    await page.keyboard.press('n');
  } else {
    const unit = task.cabinet.chainById.get(chain)?.units[(gap ?? 1) - 1];
    const place = unit && task.cabinet.placeOf.get(unit);
    if (!place) throw new Error(`no gap ${gap} on ${name}`);
    const group = dialog.getByRole('combobox', { name: windowTexts.report.missing });
    if ((await group.count()) > 0) await group.selectOption(groupWords[place.group]);
    await dialog.getByRole('textbox', { name: `${windowTexts.report.missing}, number` }).fill(String(place.ordinal));
    await page.keyboard.press('Enter');
  }
  await dialog.waitFor({ state: 'detached' });
}

/** The first group holds the true cause, and no more than cannot be told from it by as many looks as were entered. */
export async function expectAnswer(page: Page, task: TaskCase, looks: number): Promise<void> {
  const find = driveFind(page);
  const truth = [...new Set(task.truth.map((fault) => spotName(task, fault)))];
  const isNamed = (row: string) => truth.every((name) => row.includes(name));
  await expect
    .poll(async () => (await find.firstGroup()).some(isNamed), {
      message: `${task.name}, look ${looks}: ${truth.join(' + ')}`,
      timeout: 15_000,
    })
    .toBe(true);
  const rows = await find.firstGroup();
  const places = new Set(
    task.alikeAfter(looks).map((faults) => [...new Set(faults.map((fault) => spotName(task, fault)))].sort().join(' + ')),
  );
  expect(rows.length, `${task.name}, look ${looks}: ${rows.join(' / ')} against ${[...places].join(' / ')}`).toBeLessThanOrEqual(
    places.size,
  );
  for (const row of rows) {
    expect(
      [...places].some((place) => place.split(' + ').every((name) => row.includes(name))),
      `${task.name}, look ${looks}: ${row}`,
    ).toBe(true);
  }
}
