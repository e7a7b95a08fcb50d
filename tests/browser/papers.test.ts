import { readFile } from 'node:fs/promises';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { serializeCabinet } from '../../engine/cabinet/index.ts';
import { importWords, papersWords as words } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { readPdf } from '../documents/pdfReader.ts';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { readContent } from '../support/sampleCabinets.ts';
import { seriousFindings } from '../support/seriousFindings.ts';
import { driveFind } from './findDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

async function openDocuments(options: Parameters<typeof launchPage>[0] = {}): Promise<LaunchedPage> {
  const launched = await launchPage({ width: 1440, height: 900, ...options });
  // The browser's dialogs for files cannot be pressed from a test; without them saving is a download.
  await launched.page.addInitScript(() => Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined }));
  await launched.page.reload();
  await driveFind(launched.page).openSample('Two chains', 'nothing seen yet');
  await launched.page.getByText(/^New case · /).waitFor();
  await launched.page.keyboard.press('Control+p');
  await launched.page.getByRole('dialog').waitFor();
  return launched;
}

describe.skipIf(missing)('the documents in the window', () => {
  it('should show the pages as they will be, say how well the cabinet isolates, and save them as a PDF that says the same', async () => {
    const launched = await openDocuments();
    const { page } = launched;
    await page.getByRole('figure', { name: 'Door sheet, chain 1, page 1 of 2' }).waitFor();
    await page.getByRole('heading', { name: words.isolation }).waitFor();
    await launched.shoot('papers-1440x900-light');
    expect(await seriousFindings(launched.page)).toEqual([]);
    await page.getByRole('checkbox', { name: 'Cable schedule' }).check();
    await page.getByRole('figure', { name: /^Cable schedule, page 1/ }).waitFor();
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: words.savePdf }).press('Enter');
    const download = await coming;
    expect(download.suggestedFilename()).toMatch(/\.documents\.pdf$/);
    // The button that was pressed keeps the focus while the file is made, and after it is saved.
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe(words.savePdf);
    const read = await readPdf(new Uint8Array(await readFile(await download.path())));
    expect(read.outline).toEqual(['Cable schedule', 'Door sheet, chain 1', 'Door sheet, chain 2']);
    expect([...read.fonts.values()]).not.toContain(false);
    expect(read.pages.map(({ text }) => text).join()).toContain('-WH3');
    await launched.close();
  });

  it.each([
    [1280, 720, 'dark'],
    [1920, 1080, 'light'],
  ] as const)('should fit a window of %i × %i, %s', async (width, height, theme) => {
    const launched = await openDocuments({ width, height, theme });
    const { page } = launched;
    await page.getByRole('checkbox', { name: 'Cabinet drawing' }).check();
    await page.getByRole('figure', { name: /^Cabinet drawing, page 1/ }).waitFor();
    await launched.shoot(`papers-${width}x${height}-${theme}`);
    const box = await page.getByRole('dialog').boundingBox();
    expect((box?.y ?? -1) >= 0 && (box?.y ?? 0) + (box?.height ?? 0) <= height).toBe(true);
    expect(await seriousFindings(launched.page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    await launched.close();
  });

  it('should show photos as pictures or say why not, and print other machines of the design along', async () => {
    const launched = await openDocuments({ width: 1280, height: 720, theme: 'high-contrast' });
    const { page } = launched;
    const jpegAndWebp = await page.evaluate(() => {
      const canvas = document.createElement('canvas');
      canvas.width = 120;
      canvas.height = 80;
      const context = canvas.getContext('2d');
      if (context) {
        context.fillStyle = '#3a6ea5';
        context.fillRect(0, 0, 120, 80);
        context.fillStyle = '#ffd200';
        context.fillRect(20, 20, 80, 40);
      }
      return ['image/jpeg', 'image/webp'].map((type) => canvas.toDataURL(type).split(',')[1] ?? '');
    });
    const [jpeg = '', webp = ''] = jpegAndWebp;
    const content = readContent('two-chains');
    const withPhotos: CabinetContent = {
      ...content,
      photos: [
        { id: 'p1', caption: 'row 1', mediaType: 'image/jpeg', data: jpeg },
        { id: 'p2', caption: 'row 2', mediaType: 'image/webp', data: webp },
        { id: 'p3', caption: 'spoiled', mediaType: 'image/png', data: 'AAAA' },
      ],
    };
    const file = (name: string, cabinet: CabinetContent) => ({
      name,
      mimeType: 'application/json',
      buffer: Buffer.from(serializeCabinet(cabinet)),
    });
    await page.getByRole('button', { name: words.close }).click();
    await page.getByRole('button', { name: 'File', exact: true }).click();
    const opening = page.waitForEvent('filechooser');
    await page.getByRole('menuitem', { name: 'Open a cabinet or a case…' }).click();
    await (await opening).setFiles(file('photos.cabinet.json', withPhotos));
    await page
      .getByText(/photos\.cabinet\.json/)
      .first()
      .waitFor();
    await page.keyboard.press('Control+p');
    await page.getByRole('checkbox', { name: 'Door sheet' }).uncheck();
    await page.getByRole('checkbox', { name: 'Photos' }).check();
    for (const name of [/row 1/, /row 2/]) {
      const canvas = page.getByRole('img', { name });
      await canvas.waitFor();
      await expect.poll(() => canvas.evaluate((shown) => (shown as HTMLCanvasElement).width)).toBe(120);
    }
    await page.getByText('“spoiled” cannot be printed').waitFor();
    const choosing = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: words.addFiles }).click();
    await (await choosing).setFiles([
      file('b.cabinet.json', { ...withPhotos, id: 'qg7-15', machineNumber: 'QG7-15', photos: withPhotos.photos?.slice(1, 2) ?? [] }),
      file('same.cabinet.json', withPhotos),
      file('other.cabinet.json', readContent('three-units')),
    ]);
    await page.getByText('QG7-15 (b.cabinet.json)').waitFor();
    await page.getByText('other.cabinet.json').waitFor();
    await page.getByText(/and the same of 1 other machine/).waitFor();
    await launched.shoot('papers-photos-1280x720-high-contrast');
    expect(await seriousFindings(launched.page)).toEqual([]);
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: words.savePdfOf(2) }).click();
    const read = await readPdf(new Uint8Array(await readFile(await (await coming).path())));
    expect(read.outline).toHaveLength(2);
    expect(read.outline[1]).toBe('QG7-15: Photos');
    // The WebP became a picture that a PDF can hold.
    expect(read.pages.reduce((sum, { images }) => sum + images, 0)).toBe(3);
    await page.getByText(/Not printed, because they are damaged/).waitFor();
    // A file for each machine as well, by its number.
    const packing = page.waitForEvent('download');
    await page.getByRole('button', { name: words.saveZip }).click();
    const zip = await packing;
    expect(zip.suggestedFilename()).toMatch(/\.documents\.zip$/);
    const packed = unzipSync(new Uint8Array(await readFile(await zip.path())));
    expect(Object.keys(packed)).toEqual(['QG7-0117.documents.pdf', 'QG7-15.documents.pdf']);
    const second = await readPdf(packed['QG7-15.documents.pdf'] ?? new Uint8Array());
    expect(second.pages.map(({ text }) => text).join()).toContain('QG7-15');
    expect(second.pages.reduce((sum, { images }) => sum + images, 0)).toBe(1);
    await launched.close();
  });

  it('should show what a list would do, remember what its heads mean, take it over as one step, and undo it', async () => {
    const launched = await openDocuments();
    const { page } = launched;
    await page.getByRole('button', { name: words.close }).click();
    const choose = async (content: string) => {
      await page.getByRole('button', { name: 'File', exact: true }).click();
      const coming = page.waitForEvent('filechooser');
      await page.getByRole('menuitem', { name: 'Import a list…' }).click();
      await (await coming).setFiles({ name: 'serials.csv', mimeType: 'text/csv', buffer: Buffer.from(content) });
      await page.getByRole('dialog', { name: words.importTitle('serials.csv') }).waitFor();
    };
    await choose("Designation;S/N\r\n'-TB1;D-90001\r\n'-TB77;D-90002\r\n");
    await page.getByRole('combobox', { name: 'Serial number', exact: true }).selectOption('S/N');
    await page.getByLabel(words.overwrite).check();
    await page.getByText('D-90001 instead of D-55021').waitFor();
    await page.getByText(importWords.doubtful).waitFor();
    await launched.shoot('import-1440x900-light');
    expect(await seriousFindings(launched.page)).toEqual([]);
    await page.getByRole('button', { name: words.apply(1) }).click();
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    // The same list again: its heads are known, and there is nothing more to do.
    await choose("Designation;S/N\r\n'-TB1;D-90001\r\n");
    await expect.poll(() => page.getByRole('combobox', { name: 'Serial number', exact: true }).inputValue()).toBe('1');
    await page.getByRole('button', { name: words.apply(0) }).waitFor();
    await page.getByRole('button', { name: words.cancel }).click();
    await page.keyboard.press('Control+z');
    await choose("Designation;S/N\r\n'-TB1;D-55021\r\n");
    await page.getByRole('button', { name: words.apply(0) }).waitFor();
    await page.getByRole('button', { name: words.cancel }).click();
    await choose('<!DOCTYPE x [<!ENTITY a "b">]><graphml/>');
    await page.getByText('declares a document type').waitFor();
    await launched.close();
  });
});
