import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseCaseFile, serializeCabinet, serializeCase } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { gatherExperience, ratesFor } from '../../engine/experience/index.ts';
import { rateTableWords, wordProbability, confirmedWords as words } from '../../engine/messages/index.ts';
import type { Evidence, Fault } from '../../engine/schema/index.ts';
import { driveRepair } from '../browser/repairDriver.ts';
import { provedCase } from '../experience/provedCase.ts';
import { RealMachine } from '../plan/realMachine.ts';
import { drivesContent, soundCabinet } from '../plan/smallCabinet.ts';
import { answerDialogs, waitUntilSaved } from '../support/fileDriver.ts';
import { findDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
const fouled: Fault = { item: 'plug', link: 'w2', end: 'lower', mode: 'fouled', presence: 'steady' };
let folder: string;

describe.skipIf(missing)('confirmed cases in the desktop program', () => {
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'linkwright-confirmed-'));
  });
  afterAll(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));

  it('should sharpen, after a restart, the suspects in another cabinet of the same equipment, and say where from', async () => {
    const userData = join(folder, 'user');
    const first = soundCabinet(drivesContent(3));
    const caseFile = join(folder, 'first.case.json');
    const { result: _, ...proved } = provedCase(first.content, { fault: fouled, act: { do: 'replace-cable', link: 'w2' } });
    await writeFile(caseFile, serializeCase(proved));
    const before = await launchDesktop({ files: [caseFile], userData });
    const handing = driveRepair(before.page, first);
    await handing.worked();
    await handing.finish();
    await handing.handBack.getByRole('combobox').selectOption({ label: 'Lower plug of cable -WH2: fouled' });
    await handing.handBack.getByRole('button', { name: words.keep }).press('Enter');
    await handing.handBack.getByText(words.keptAlready).waitFor();
    await handing.handBack.getByRole('button', { name: words.show }).press('Enter');
    const dialogBefore = before.page.getByRole('dialog', { name: words.title });
    await dialogBefore.getByRole('textbox', { name: words.strength }).fill('0.2');
    await before.shoot('confirmed-kept');
    await before.page.keyboard.press('Escape');
    await before.page.keyboard.press('Control+s');
    await waitUntilSaved(before.page);
    await before.close();

    const names = await readdir(join(userData, 'cases'));
    expect(names).toHaveLength(1);
    const kept = parseCaseFile(await readFile(join(userData, 'cases', names[0] ?? '')));
    if (!kept.ok) throw new Error('the kept case does not open');
    expect(kept.value.result).toMatchObject({ end: 'proved', item: 'plug/w2/lower', mode: 'fouled' });
    const rates = ratesFor(gatherExperience([kept.value], 0.2));
    if (rates === undefined) throw new Error('the kept case is not confirmed');

    const other = soundCabinet(drivesContent(4, { id: 'other', name: 'Other drives' }));
    const cabinetFile = join(folder, 'other.cabinet.json');
    await writeFile(cabinetFile, serializeCabinet(other.content));
    const after = await launchDesktop({ files: [cabinetFile], userData });
    const { page } = after;
    const repair = driveRepair(page, other);
    await page.getByText('Other drives').first().waitFor();
    const seen = new RealMachine(other, [{ item: 'cable', link: 'w3', mode: 'cut', presence: 'steady' }]).firstLook();
    const displays = seen.snapshots[0]?.displays ?? [];
    await repair.read(seen);
    const basis = page.locator('#suspects .rates-basis');
    await expect.poll(() => basis.textContent(), { timeout: 30_000 }).toBe(words.sharpenedAll(1));
    const evidence: Evidence = { snapshots: [{ displays }] };
    const boards = (given: Evidence) => {
      const { items } = diagnose(other, given);
      return wordProbability(items.find(({ item }) => item.key === 'board/u2')?.probability ?? 0);
    };
    const [sharpened, assumed] = [boards({ ...evidence, rates }), boards(evidence)];
    expect(sharpened).not.toBe(assumed);
    const board = page.locator('#suspects').getByRole('button', { name: /^-TB2/ }).first();
    await expect.poll(() => board.textContent()).toContain(sharpened);
    await after.shoot('confirmed-other');

    await basis.press('Enter');
    await page.getByRole('dialog', { name: rateTableWords.title }).getByRole('button', { name: rateTableWords.confirmed }).press('Enter');
    const dialog = page.getByRole('dialog', { name: words.title });
    await dialog.getByText('Plug: fouled 100 %').waitFor();
    expect(await dialog.getByRole('radio', { name: words.choices.asKept(1) }).isChecked()).toBe(true);
    expect(await dialog.getByRole('textbox', { name: words.strength }).inputValue()).toBe('0.2');
    await after.shoot('confirmed-dialog');
    await dialog.getByRole('radio', { name: words.choices.assumed }).press(' ');
    await page.keyboard.press('Escape');
    await expect.poll(() => board.textContent(), { timeout: 30_000 }).toContain(assumed);
    await answerDialogs(after, join(folder, 'other.case.json'));
    await page.keyboard.press('Control+s');
    await waitUntilSaved(page);
    await after.close();
  });
});
