import { cp, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileWords, practiceWords } from '../../engine/messages/index.ts';
import { hiddenWords } from '../browser/practiceSecrets.ts';
import { readyGame } from '../exercise/readyGames.ts';
import { killHard } from '../support/fileDriver.ts';
import { findDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);

describe.skipIf(missing)('an exercise in the desktop program', () => {
  it('should be opened as a file, survive a kill with its answer unread, and stand among the recent files', async () => {
    const ready = readyGame('neighbours');
    const userData = await mkdtemp(join(tmpdir(), 'linkwright-play-'));
    const file = join(userData, 'own.exercise.json');
    await cp('sample-cabinets/ready-02-neighbours.exercise.json', file);
    const first = await launchDesktop({ files: [file], userData });
    const { page } = first;
    await page.getByRole('group', { name: practiceWords.steps }).waitFor({ timeout: 60_000 });
    await page.getByRole('group', { name: practiceWords.suspects }).getByRole('checkbox').first().check();
    await page.getByRole('group', { name: practiceWords.steps }).getByRole('radio').first().check();
    await page.getByRole('group', { name: practiceWords.predict }).getByRole('radio').first().check();
    await page.getByRole('button', { name: practiceWords.doIt }).click();
    await expect.poll(() => page.locator('.practice-done li').count()).toBe(1);
    const kept = async () => {
      // What is being written is not kept yet.
      const names = (await readdir(join(userData, 'recovery')).catch(() => [])).filter((name) => name.endsWith('.recovery.json'));
      return (await Promise.all(names.map((name) => readFile(join(userData, 'recovery', name), 'utf8').catch(() => '')))).join('\n');
    };
    await expect.poll(async () => (await kept()).includes('heeded')).toBe(true);
    const text = await kept();
    for (const hidden of hiddenWords(ready)) expect(text).not.toContain(hidden);
    await killHard(first);

    const second = await launchDesktop({ userData });
    await expect.poll(() => second.page.locator('.practice-done li').count()).toBe(1);
    await second.page.getByRole('button', { name: practiceWords.back }).click();
    await second.page.getByRole('button', { name: practiceWords.forgetLeft(ready.exercise.name) }).click();
    await expect.poll(async () => (await kept()).includes('heeded')).toBe(false);
    await second.page.getByRole('button', { name: 'File', exact: true }).click();
    await second.page.getByRole('menuitem', { name: fileWords.recent }).press('ArrowRight');
    await second.page.getByRole('menuitem', { name: /^own\.exercise\.json/ }).press('Enter');
    await second.page.getByRole('group', { name: practiceWords.steps }).waitFor({ timeout: 60_000 });
    await second.close();
    await rm(userData, { recursive: true, force: true, maxRetries: 5 });
  }, 120_000);
});
