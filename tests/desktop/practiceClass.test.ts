import { copyFile, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serializeResult } from '../../engine/cabinet/index.ts';
import { debrief, makeResult } from '../../engine/exercise/index.ts';
import { classWords, makeWords } from '../../engine/messages/index.ts';
import { readyGame } from '../exercise/readyGames.ts';
import { answerDialogs } from '../support/fileDriver.ts';
import { programFolder } from '../support/folders.ts';
import { findDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linkwright-class-'));
});
afterAll(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));

describe.skipIf(missing)('the table of a class in the desktop program', () => {
  it('should come from a folder, and delete its results only, after a question', async () => {
    const { game, answer, exercise } = readyGame('neighbours');
    const looked = debrief(game, answer, [{ do: 'give-up' }]);
    if (looked === null) throw new Error('not ended');
    for (const code of ['kiln 1', 'kiln 2'])
      await writeFile(join(folder, `${code}.result.json`), serializeResult(makeResult(exercise, [{ do: 'give-up' }], looked, { code })));
    await copyFile(join(programFolder, 'sample-cabinets', 'three-units.cabinet.json'), join(folder, 'plant.cabinet.json'));
    await writeFile(join(folder, 'cut.json'), '{"format":');
    await writeFile(join(folder, 'notes.txt'), 'not ours');
    const desktop = await launchDesktop();
    const { page } = desktop;
    await page.keyboard.press('Alt+3');
    await page.getByRole('navigation', { name: makeWords.screens }).getByRole('button', { name: 'Class' }).click();
    await answerDialogs(desktop, folder);
    await page.getByRole('button', { name: classWords.folder }).click();
    await page.getByText(classWords.count(2)).waitFor();
    await page.getByText('cut.json').waitFor();
    await page.getByText(classWords.foreign(1)).waitFor();
    await page.getByRole('checkbox', { name: classWords.choose('kiln 2', exercise.name) }).check();
    await page.getByRole('button', { name: classWords.delete }).click();
    const question = page.getByRole('alertdialog', { name: classWords.deleteTitle(1) });
    await question.getByRole('button', { name: classWords.cancel }).click();
    expect(await readdir(folder)).toHaveLength(5);
    await page.getByRole('button', { name: classWords.delete }).click();
    await question.getByRole('button', { name: classWords.deleteYes }).click();
    await page.getByText(classWords.deleted(1)).waitFor();
    expect((await readdir(folder)).sort()).toEqual(['cut.json', 'kiln 1.result.json', 'notes.txt', 'plant.cabinet.json']);
    expect(await page.locator('tbody th').allTextContents()).toEqual(['kiln 1']);
    await desktop.shoot('desktop-class');
    await desktop.close();
  });
});
