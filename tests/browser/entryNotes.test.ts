import { afterEach, describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { driveEntry, type EntryDriver } from './entryDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

/** A picture as a camera makes it: large, and full of detail that does not pack well. */
async function makePicture({ page }: EntryDriver, width: number, height: number): Promise<Buffer> {
  const base64 = await page.evaluate(
    async ([wide, high]) => {
      const canvas = document.createElement('canvas');
      canvas.width = wide;
      canvas.height = high;
      const context = canvas.getContext('2d');
      if (!context) throw new Error('no context');
      for (let i = 0; i < 4000; i++) {
        context.fillStyle = `hsl(${(i * 47) % 360} 70% ${(i * 13) % 100}%)`;
        context.fillRect((i * 211) % wide, (i * 97) % high, 60, 40);
      }
      return canvas.toDataURL('image/png').split(',')[1] ?? '';
    },
    [width, height] as const,
  );
  return Buffer.from(base64, 'base64');
}

/** Width and height of a JPEG, from its frame header (ITU-T T.81). */
function sizeOfJpeg(data: string): readonly [number, number] {
  const bytes = Buffer.from(data, 'base64');
  expect(bytes.readUInt16BE(0)).toBe(0xffd8);
  for (let at = 2; at < bytes.length; at += 2 + bytes.readUInt16BE(at + 2)) {
    const marker = bytes[at + 1] ?? 0;
    if (marker >= 0xc0 && marker <= 0xc2) return [bytes.readUInt16BE(at + 7), bytes.readUInt16BE(at + 5)];
  }
  throw new Error('no frame in the picture');
}

describe.skipIf(missing)('notes, photos and what came before', () => {
  let entry: EntryDriver;
  afterEach(() => entry.launched.close([/ERR_ABORTED/]));
  const seen = async (designation: string) =>
    /Seen: ([^.]*)\./.exec((await entry.find.unit(designation).getAttribute('aria-label')) ?? '')?.[1];

  it('should keep a photo made smaller with the case, show it, and let it be removed and brought back', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.open('Three units', 'nothing seen yet');
    await entry.find.unit('-TB2').click();
    const dialog = entry.asks('-TB2');
    const file = dialog.locator('input[type=file]');
    await file.setInputFiles({ name: 'a.png', mimeType: 'image/png', buffer: await makePicture(entry, 2400, 1500) });
    const photo = dialog.getByRole('button', { name: 'Photo of -TB2' });
    await photo.waitFor();
    await expect.poll(() => photo.locator('canvas').evaluate((canvas) => (canvas as HTMLCanvasElement).width)).toBeLessThanOrEqual(96);
    // Nobody has said yet what it shows: that is kept, and speaks for nothing.
    await expect.poll(() => seen('-TB2')).toBe('not read yet');
    await photo.click();
    await expect.poll(() => photo.locator('canvas').evaluate((canvas) => (canvas as HTMLCanvasElement).width)).toBeGreaterThan(600);
    await photo.click();
    await dialog.getByRole('textbox', { name: 'Note' }).fill('flickers');
    await dialog.getByRole('button', { name: /^upstream loss/ }).click();
    await expect.poll(() => seen('-TB2')).toBe('upstream loss');

    const saved = await entry.save();
    const [kept] = saved.cabinet.photos ?? [];
    expect(saved.evidence.snapshots[0]?.displays).toMatchObject([
      { unit: 'TB2', meanings: ['upstream-loss'], note: 'flickers', photo: kept?.id },
    ]);
    expect(kept?.mediaType).toBe('image/jpeg');
    expect(sizeOfJpeg(kept?.data ?? '')).toEqual([1600, 1000]);
    expect(kept?.data.length).toBeLessThan(2_000_000);

    await entry.find.unit('-TB2').click();
    await dialog.getByRole('button', { name: 'Remove the photo' }).click();
    await photo.waitFor({ state: 'detached' });
    expect((await entry.save()).cabinet.photos).toBeUndefined();
    await entry.page.keyboard.press('Escape');
    await entry.press('Control+z');
    await expect.poll(() => entry.find.said.textContent()).toBe('Undone: photo of -TB2.'.replace('photo', 'no photo'));
    expect((await entry.save()).cabinet.photos?.length).toBe(1);
  });

  it('should say what is wrong with a file that is no picture, and keep nothing of it', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.find.unit('-KE3').click();
    const dialog = entry.asks('-KE3');
    await dialog.locator('input[type=file]').setInputFiles({ name: 'a.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') });
    await dialog.getByText('This file is not a picture that can be read here.').waitFor();
    await expect.poll(() => entry.page.getByRole('button', { name: /^Photo of/ }).count()).toBe(0);
  });

  it('should note something of a report, and only of one that is entered', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.open('Three units', 'nothing seen yet');
    await entry.press('r');
    const note = entry.asksReport('chain 1').getByRole('textbox', { name: 'Note' });
    await expect.poll(() => note.isDisabled()).toBe(true);
    await entry.press('1');
    await note.fill('after the third start: neither n nor 0 are keys here');
    await entry.press('Enter', 'Escape');
    expect((await entry.save()).evidence.snapshots[0]?.reports).toMatchObject([
      { chain: 'chain1', gaps: [2], note: 'after the third start: neither n nor 0 are keys here' },
    ]);
  });

  it('should take every circumstance, what it concerns, the onset, whether it is halted, and the days, and reckon with them', async () => {
    entry = await driveEntry({ reducedMotion: true });
    await entry.open('Three units', 'Two neighbours complain');
    const share = async () => Number(/([\d.]+) %/.exec((await entry.find.suspect(/^-TB2 board, up port/).textContent()) ?? '')?.[1]);
    await expect.poll(share).toBeGreaterThan(0);
    const before = await share();
    await entry.page.getByRole('button', { name: /^Circumstances: nothing ticked/ }).click();
    const dialog = entry.page.getByRole('dialog', { name: 'What makes some faults likelier' });
    expect(await seriousFindings(entry.page)).toEqual([]);
    const ticks = dialog.getByRole('checkbox');
    await expect.poll(() => ticks.count()).toBe(7);
    await dialog.getByRole('checkbox', { name: /^heat/ }).check();
    await expect.poll(share).toBeGreaterThan(before * 1.5);
    await dialog.getByRole('combobox', { name: /^heat/ }).selectOption({ label: '-TB3' });
    await expect.poll(share).toBe(before);
    for (const tick of await ticks.all()) await tick.check();
    await dialog.getByRole('textbox', { name: /^Days since/ }).fill('2,5');
    await entry.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await entry.page.getByRole('radiogroup', { name: 'Fault came' }).getByText('when switched on').click();
    await entry.page.getByRole('radiogroup', { name: 'Control is' }).getByText('not halted').click();
    const { evidence } = await entry.save();
    expect(evidence.daysSinceWhole).toBe(2.5);
    expect(evidence.circumstances?.length).toBe(7);
    expect(evidence.circumstances?.find(({ kind }) => kind === 'heat')?.subjects).toEqual(['TB3']);
    expect(evidence.snapshots[0]).toMatchObject({ onset: 'at-power-up', halted: false });
  });
});
