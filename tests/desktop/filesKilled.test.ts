import { copyFile, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Random } from '../generators/random.ts';
import { enteredAt, killHard, readRecoveries, typeDisplay, waitUntilSaved, waitUntilUnsaved } from '../support/fileDriver.ts';
import { programFolder } from '../support/folders.ts';
import { findDesktop, type LaunchedDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
const kills = 52;
/** A unit of the sample, by its designation and its id. */
const designation = '-TB2';
const unit = 'TB2';

let folder: string;
let userData: string;
let file: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linkwright-killed-'));
  userData = join(folder, 'user');
  file = join(folder, 'grinder.case.json');
  await copyFile(join(programFolder, 'sample-cabinets', 'three-units.1.case.json'), file);
});
afterAll(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));

const onDisk = async () => enteredAt(await readFile(file), unit);
const inRecovery = async () =>
  (await readRecoveries(userData))
    .map((document) => enteredAt(document, unit))
    .sort()
    .pop() ?? '';

describe.skipIf(missing)('the program killed', () => {
  it(`should lose nothing in ${kills} kills, half of them while it saves`, { timeout: 900_000 }, async () => {
    const random = new Random(3);
    /** The newest entry that must not be lost any more: saved, or a second old. Times of one form compare as text. */
    let safe = await onDisk();
    let lastSaved = safe;
    let restored = 0;
    let cutSaves = 0;
    /** A save on a machine that is quick or busy in another way than this test ends sooner or later: the wait follows what was cut. */
    let longestWait = 30;

    for (let kill = 1; kill <= kills; kill += 1) {
      const desktop = await launchDesktop({ userData, files: [file] });
      const { page } = desktop;
      const saving = kill % 2 === 0;
      try {
        // What the window holds shows when it is saved.
        if ((await inRecovery()) > (await onDisk())) {
          await page.getByText('Restored: your unsaved work').waitFor();
          restored += 1;
          await page.keyboard.press('Control+s');
        }
        await waitUntilSaved(page);
        await page.getByText('grinder.case.json').first().waitFor();
        const found = await onDisk();
        expect(found >= safe, `kill ${kill - 1}: ${safe} was entered, ${found} is there`).toBe(true);
        safe = found;
        lastSaved = found;
        if (saving) {
          const cut = await killWhileSaving(desktop, random, longestWait, (at) => {
            safe = at;
            lastSaved = at;
          });
          cutSaves += cut ? 1 : 0;
          longestWait = cut ? Math.min(30, longestWait + 5) : Math.floor(longestWait / 2);
        } else safe = await killWhileUnsaved(desktop, kill);
      } finally {
        await killHard(desktop).catch(() => undefined);
      }
      // Whole at every moment, and never older than the last save that was told to be done.
      expect((await onDisk()) >= lastSaved, `kill ${kill}: ${lastSaved} was saved`).toBe(true);
    }
    expect(restored).toBeGreaterThanOrEqual(kills / 2 - 1);
    // Else the kills came too late to prove anything.
    expect(cutSaves).toBeGreaterThan(5);
    // What a cut save left behind is used up or taken away by the next start and save.
    const last = await launchDesktop({ userData, files: [file] });
    await last.page.keyboard.press('Control+s');
    await waitUntilSaved(last.page);
    await last.close();
    expect((await readdir(folder)).sort()).toEqual(['grinder.case.json', 'user']);
  });
});

/** Enters something, waits until it is kept, and kills. Answers what was entered. */
async function killWhileUnsaved(desktop: LaunchedDesktop, number: number): Promise<string> {
  const before = await inRecovery();
  await typeDisplay(desktop.page, designation, 1 + (number % 6));
  let kept = '';
  await expect
    .poll(
      async () => {
        kept = await inRecovery();
        return kept;
      },
      { timeout: 30_000, interval: 50 },
    )
    .not.toBe(before);
  await killHard(desktop);
  return kept;
}

/** Enters and saves again and again, and kills somewhere in one of the saves: whether that save was really cut. */
async function killWhileSaving(
  desktop: LaunchedDesktop,
  random: Random,
  longestWait: number,
  saved: (at: string) => void,
): Promise<boolean> {
  const { page } = desktop;
  const rounds = random.whole(1, 3);
  for (let round = 1; round <= rounds; round += 1) {
    await typeDisplay(page, designation, 1 + (round % 6));
    await waitUntilUnsaved(page);
    await page.keyboard.press('Control+s');
    await waitUntilSaved(page);
    saved(await onDisk());
  }
  const before = await onDisk();
  await typeDisplay(page, designation, 5);
  await waitUntilUnsaved(page);
  await page.keyboard.press('Control+s');
  await new Promise((resolve) => setTimeout(resolve, random.whole(0, longestWait)));
  await killHard(desktop);
  return (await onDisk()) === before;
}
