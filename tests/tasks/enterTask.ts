import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { ChainId } from '../../engine/base/index.ts';
import { circumstanceWords, groupWords, windowTexts } from '../../engine/messages/index.ts';
import { entryChoices } from '../../renderer/find/entryChoices.ts';
import { driveFind, type FindDriver } from '../browser/findDriver.ts';
import { spotName, type TaskCase } from './taskCases.ts';

/*
 * A sample case entered as somebody would who stands before the machine: the cabinet is opened with nothing seen, then everything is
 * entered by keys.
 */

/** Opens the cabinet of a task; what was entered before is not kept. */
export async function openTask(page: Page, { sample }: TaskCase): Promise<FindDriver> {
  const find = driveFind(page);
  await page.getByRole('button', { name: 'Samples' }).click();
  await page.getByRole('menuitem', { name: sample, exact: true }).click();
  await page.getByRole('menuitem', { name: windowTexts.samplesWithoutCase }).click();
  const discard = page.getByRole('alertdialog').getByRole('button', { name: 'Do not save' });
  const opened = find.answer.getByText('Note what every display shows.');
  await opened.or(discard).first().waitFor();
  if (await discard.isVisible()) await discard.click();
  await opened.waitFor();
  await page.getByRole('menu').first().waitFor({ state: 'detached' });
  return find;
}

/** Enters everything that was seen at first. */
export async function enterTask(page: Page, task: TaskCase): Promise<void> {
  const find = driveFind(page);
  await enterMoment(page, task);
  for (const { unit, meanings, code } of task.seen.displays ?? []) {
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
  for (const { chain, gaps } of task.seen.reports ?? []) await enterReport(page, task, find, chain as ChainId, gaps); // a case's chains are its cabinet's
  await page.locator('#suspects[aria-busy="false"]').waitFor();
}

async function enterMoment(page: Page, { seen, circumstances, names }: TaskCase): Promise<void> {
  const pane = page.getByRole('region', { name: windowTexts.seenPane.region });
  if (seen.onset !== undefined) await pane.getByRole('radio', { name: windowTexts.seenPane.onsets[seen.onset], exact: true }).press(' ');
  if (seen.halted !== undefined) {
    await pane.getByRole('radio', { name: windowTexts.seenPane.halts[seen.halted ? 'yes' : 'no'], exact: true }).press(' ');
  }
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

/** The first group holds the true cause, and no more than cannot be told from it. */
export async function expectAnswer(page: Page, task: TaskCase): Promise<void> {
  const find = driveFind(page);
  const truth = [...new Set(task.truth.map((fault) => spotName(task, fault)))];
  const isNamed = (row: string) => truth.every((name) => row.includes(name));
  await expect
    .poll(async () => (await find.firstGroup()).some(isNamed), { message: `${task.name}: ${truth.join(' + ')}`, timeout: 15_000 })
    .toBe(true);
  const rows = await find.firstGroup();
  const places = new Set(task.alike.map((faults) => [...new Set(faults.map((fault) => spotName(task, fault)))].sort().join(' + ')));
  expect(rows.length, `${task.name}: ${rows.join(' / ')} against ${[...places].join(' / ')}`).toBeLessThanOrEqual(places.size);
  for (const row of rows) {
    expect(
      [...places].some((place) => place.split(' + ').every((name) => row.includes(name))),
      `${task.name}: ${row}`,
    ).toBe(true);
  }
}
