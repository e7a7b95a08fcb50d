import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseCabinetFile, parseCaseFile, serializeCase } from '../../engine/cabinet/index.ts';
import { windowTexts, handBackTexts as words } from '../../engine/messages/index.ts';
import type { Step } from '../../engine/steps/index.ts';
import { driveRepair } from '../browser/repairDriver.ts';
import { readPdf } from '../documents/pdfReader.ts';
import { RealMachine } from '../plan/realMachine.ts';
import { drivesContent, soundCabinet } from '../plan/smallCabinet.ts';
import { answerDialogs, proposedNames, waitUntilSaved } from '../support/fileDriver.ts';
import { findDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
let folder: string;

describe.skipIf(missing)('a whole repair in the desktop program', () => {
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'linkwright-repair-'));
  });
  afterAll(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));

  it('should go from the open case to the report on the disk and the new board in the cabinet file', async () => {
    const cabinet = soundCabinet(drivesContent(3));
    const machine = new RealMachine(cabinet, [{ item: 'board', unit: 'u2', mode: 'dead-dark', presence: 'steady' }]);
    const caseFile = join(folder, 'night.case.json');
    const cabinetFile = join(folder, 'drives.cabinet.json');
    await writeFile(caseFile, serializeCase({ id: 'night', name: 'Night shift', cabinet: cabinet.content, evidence: machine.firstLook() }));
    const desktop = await launchDesktop({ files: [caseFile] });
    const { page } = desktop;
    const repair = driveRepair(page, cabinet);
    const exchange: Step = { do: 'act', acts: [{ do: 'replace-board', unit: 'u2' }] };
    await repair.take(exchange, machine.take(exchange, []));
    expect(machine.isMended).toBe(true);
    await repair.find.answer.getByText(/^The machine runs: /).waitFor();

    await repair.finish();
    const { handBack } = repair;
    await handBack.getByRole('textbox', { name: words.serial }).fill('S-4711');
    await handBack.getByRole('button', { name: words.write }).click();
    await handBack.getByText(words.written).waitFor();
    await handBack.getByRole('textbox', { name: words.by }).fill('Night shift');
    const save = handBack.getByRole('button', { name: words.pdf });

    // Nowhere: nothing is written. Where it cannot be: told in the dialog, and the next place is taken.
    await answerDialogs(desktop, null);
    await save.click();
    await expect.poll(() => proposedNames(desktop)).toEqual([expect.stringMatching(/repair-report-night\.pdf$/)]);
    await answerDialogs(desktop, join(folder, 'no-such-folder', 'report.pdf'));
    await save.click();
    await handBack
      .getByRole('alert')
      .getByText(/report\.pdf/)
      .waitFor();
    const report = join(folder, 'report.pdf');
    await answerDialogs(desktop, report);
    await save.click();
    await handBack.getByText(words.saved('report.pdf')).waitFor();
    const text = (await readPdf(new Uint8Array(await readFile(report)))).pages.map((one) => one.text.replace(/\s+/g, ' ')).join(' ');
    expect(text).toMatch(/Replaced the board of -TB2: machine runs/);
    expect(text).toMatch(/Board of -TB2 AX-100 S-4711/);
    expect(text).toContain('Night shift');
    expect((await readdir(folder)).sort()).toEqual(['night.case.json', 'report.pdf']);

    await page.keyboard.press('Escape');
    await handBack.waitFor({ state: 'detached' });
    await page.keyboard.press('Control+s');
    await waitUntilSaved(page);
    const kept = parseCaseFile(await readFile(caseFile));
    if (!kept.ok) throw new Error('the case does not open');
    expect(kept.value.cabinet.units?.find(({ id }) => id === 'u2')?.board).toMatchObject({ serial: 'S-4711' });
    expect(kept.value.result).toMatchObject({ by: 'Night shift' });

    await answerDialogs(desktop, cabinetFile);
    await page.getByRole('button', { name: 'File', exact: true }).click();
    await page.getByRole('menuitem', { name: windowTexts.commands.saveCabinetAs }).click();
    await expect.poll(() => readdir(folder)).toContain('drives.cabinet.json');
    await waitUntilSaved(page);
    const written = parseCabinetFile(await readFile(cabinetFile));
    if (!written.ok) throw new Error('the cabinet does not open');
    expect(written.value.units?.find(({ id }) => id === 'u2')?.board).toMatchObject({ serial: 'S-4711' });
    await desktop.close();
  });
});
