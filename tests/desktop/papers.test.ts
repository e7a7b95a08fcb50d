import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serializeCabinet } from '../../engine/cabinet/index.ts';
import { papersWords as words } from '../../engine/messages/index.ts';
import { readPdf } from '../documents/pdfReader.ts';
import { answerDialogs, proposedNames } from '../support/fileDriver.ts';
import { findDesktop, type LaunchedDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';
import { readContent } from '../support/sampleCabinets.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linkwright-papers-'));
});
afterAll(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));

async function openWithDocuments(): Promise<LaunchedDesktop> {
  const content = readContent('two-chains');
  const file = join(folder, 'two.cabinet.json');
  await writeFile(file, serializeCabinet(content));
  const desktop = await launchDesktop({ files: [file] });
  await desktop.page.getByText('two.cabinet.json').first().waitFor();
  await desktop.page.keyboard.press('Control+p');
  await desktop.page.getByRole('figure', { name: /^Door sheet, chain 1, page 1/ }).waitFor();
  return desktop;
}

async function importList({ page }: LaunchedDesktop): Promise<void> {
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Import a list…' }).click();
}

describe.skipIf(missing)('documents and lists through the system’s dialogs', () => {
  it('should be saved under the name that the user gave, refused where that cannot be, and left where he gives none', async () => {
    const desktop = await openWithDocuments();
    const { page } = desktop;
    const save = page.getByRole('button', { name: words.savePdf });
    await answerDialogs(desktop, null);
    await save.click();
    await expect.poll(() => proposedNames(desktop)).toEqual([expect.stringMatching(/\.documents\.pdf$/)]);
    expect((await readdir(folder)).filter((name) => name.endsWith('.pdf'))).toEqual([]);
    // A folder that is not there: told, and the program goes on.
    await answerDialogs(desktop, join(folder, 'no-such-folder', 'a.pdf'));
    await save.click();
    await page
      .getByText(/a\.pdf/)
      .first()
      .waitFor();
    await page.getByRole('dialog').last().getByRole('button', { name: 'Close' }).last().click();
    const target = join(folder, 'sheets.pdf');
    await answerDialogs(desktop, target);
    await save.click();
    await expect.poll(async () => (await readFile(target).catch(() => Buffer.alloc(0))).length).toBeGreaterThan(1_000);
    const read = await readPdf(new Uint8Array(await readFile(target)));
    expect(read.outline).toEqual(['Door sheet, chain 1', 'Door sheet, chain 2']);
    expect([...read.fonts.values()]).not.toContain(false);
    const list = join(folder, 'units.csv');
    await answerDialogs(desktop, list);
    await page.getByRole('button', { name: words.saveList }).click();
    await expect.poll(() => readFile(list, 'utf8').catch(() => '')).toContain("'-TB1");
    // What was exported comes back with nothing to do; what is no list, or a folder, is refused in words.
    await page.getByRole('button', { name: words.close }).click();
    await importList(desktop);
    await page.getByRole('dialog', { name: words.importTitle('units.csv') }).waitFor();
    await page.getByRole('button', { name: words.apply(0) }).waitFor();
    await page.getByRole('button', { name: words.cancel }).click();
    await answerDialogs(desktop, folder);
    await importList(desktop);
    await page.getByText('It is a folder').first().waitFor();
    await desktop.close();
  });

  it('should print the machines of a folder along, and name what is left out', async () => {
    const machines = join(folder, 'machines');
    await mkdir(machines);
    const content = readContent('two-chains');
    for (const number of ['0201', '0202']) {
      const machine = { ...content, id: `qg7-${number}`, machineNumber: `QG7-${number}` };
      await writeFile(join(machines, `${number}.cabinet.json`), serializeCabinet(machine));
    }
    await writeFile(join(machines, 'other.cabinet.json'), serializeCabinet(readContent('three-units')));
    await writeFile(join(machines, 'broken.json'), '{');
    const desktop = await openWithDocuments();
    const { page } = desktop;
    await answerDialogs(desktop, machines);
    await page.getByRole('button', { name: words.addFolder }).click();
    await page.getByText(words.machineOf('QG7-0202', '0202.cabinet.json')).waitFor();
    await page.getByText(words.leftOut(2, 'broken.json, other.cabinet.json')).waitFor();
    const target = join(folder, 'all.pdf');
    await answerDialogs(desktop, target);
    await page.getByRole('button', { name: words.savePdfOf(3) }).click();
    await expect.poll(async () => (await readFile(target).catch(() => Buffer.alloc(0))).length).toBeGreaterThan(1_000);
    const read = await readPdf(new Uint8Array(await readFile(target)));
    expect(read.outline.filter((title) => title.startsWith('QG7-0201: '))).toHaveLength(2);
    expect(read.outline).toHaveLength(6);
    await desktop.close();
  });
});
