import { afterEach, describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { whyMissing } from '../support/required.ts';
import { launchDraw } from './drawDriver.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('connecting in Draw, with a real mouse', () => {
  let draw: Awaited<ReturnType<typeof launchDraw>>;
  // The reload at the beginning may cut off a font that is being fetched; that is no complaint.
  afterEach(() => draw.launched.close([/ERR_ABORTED/]));

  it('should take a cable off the shelf onto a port, and lay a loose one by its letter', async () => {
    draw = await launchDraw();
    const loose = draw.page.getByRole('complementary', { name: 'Shelf' }).getByRole('button', { name: /^cable -WH/ });
    await draw.drag(await draw.at(draw.shelf('Optical cable')), await draw.port('-TB4', 'down'), {
      held: async () => await expect.poll(() => draw.bar.textContent()).toContain('Plug a new cable into -TB4 down'),
    });
    await draw.drawing.getByRole('button', { name: /^Cable -WH10, at -TB4 down, the other end is loose/ }).waitFor();
    await expect.poll(() => draw.lastStep()).toBe('new cable');
    await draw.press('Control+z', 'l');
    await loose.waitFor();
    await draw.drag(await draw.at(loose), await draw.port('-TB7', 'down'));
    await draw.drawing.getByRole('button', { name: /^Cable -WH10, at -TB7 down/ }).waitFor();
  });

  it('should join ports by a drag, by two clicks and by “Connect to…”, and say why a port is refused', async () => {
    draw = await launchDraw();
    // The last cable of chain 1 goes: -TB4 hangs on nothing.
    await draw.click(draw.cable('-WH5'));
    await draw.press('Delete');
    await expect.poll(async () => (await draw.chains())[0]).toEqual(['-TB1', '-TB2', '-TB3', '-KE2']);

    // Not onto a port that has its plug: the bar says why, and nothing is done.
    await draw.drag(await draw.port('-TB4', 'up'), await draw.port('-TB6', 'down'), {
      held: async () => await expect.poll(() => draw.bar.textContent()).toContain('This cannot go here'),
    });
    await expect.poll(async () => (await draw.chains())[1]).toEqual(['-TB5', '-TB6', '-KE3', '-TB7']);

    await draw.drag(await draw.port('-TB4', 'up'), await draw.port('-KE2', 'down'));
    await expect.poll(async () => (await draw.chains())[0]).toEqual(['-TB1', '-TB2', '-TB3', '-KE2', '-TB4']);
    await expect.poll(() => draw.lastStep()).toBe('join -TB4 up and -KE2 down');
    await draw.press('Control+z');

    // Click, and click.
    const [from, to] = [await draw.port('-TB7', 'down'), await draw.port('-TB4', 'up')];
    await draw.page.mouse.click(from.x, from.y);
    await draw.page.mouse.move(to.x, to.y, { steps: 4 });
    await draw.page.mouse.click(to.x, to.y);
    await expect.poll(async () => (await draw.chains())[1]).toEqual(['-TB5', '-TB6', '-KE3', '-TB7', '-TB4']);
    await draw.press('Control+z');

    // By keyboard.
    await draw.click(draw.unit('-TB4'));
    await draw.press('w');
    await draw.page.getByRole('dialog', { name: 'Connect to' }).waitFor();
    await draw.page.keyboard.type('KE2');
    await draw.press('Enter');
    await expect.poll(async () => (await draw.chains())[0]).toEqual(['-TB1', '-TB2', '-TB3', '-KE2', '-TB4']);
  });

  it('should pull a plug into another port, and feed a unit from a supply', async () => {
    draw = await launchDraw();
    // The upper plug of -WH7, out of -TB5 and into chain 1: no port takes it but its own; into -TB4, which is free.
    await draw.drag(await draw.port('-TB5', 'down'), await draw.port('-TB4', 'down'), {
      held: async () => await expect.poll(() => draw.bar.textContent()).toContain('Plug cable -WH7 into -TB4 down'),
    });
    await expect.poll(() => draw.chains()).toEqual([['-TB1', '-TB2', '-TB3', '-KE2', '-TB4', '-TB6', '-KE3', '-TB7'], ['-TB5']]);
    await draw.press('Control+z');
    await expect.poll(async () => (await draw.chains())[1]).toEqual(['-TB5', '-TB6', '-KE3', '-TB7']);

    await draw.click(draw.unit('-TB4'));
    await draw.press('s');
    await draw.unit('-TB11').waitFor();
    await expect.poll(() => draw.unit('-TB11').getAttribute('aria-label')).toContain('Chosen.');
    await draw.drag(await draw.feedPort('-TB10'), await draw.feedPort('-TB11'));
    await expect.poll(() => draw.lastStep()).toBe('feed -TB11 from -TB10');
    const cabinet = await draw.saved();
    const made = cabinet.units?.find(({ designation }) => designation === '-TB11');
    expect(cabinet.leads?.find(({ to }) => to?.unit === made?.id)?.from?.unit).toBe('TB10');
  });

  it('should choose with a box, with Shift, along the chain and all; cut, copy, paste and duplicate with inner cables kept', async () => {
    draw = await launchDraw();
    const [a, b] = [await draw.at(draw.unit('-TB5')), await draw.at(draw.unit('-TB6'))];
    await draw.drag({ x: a.x - 75, y: a.y - 105 }, { x: b.x + 10, y: b.y + 98 });
    await expect.poll(() => draw.unit('-TB6').getAttribute('aria-label')).toContain('Chosen.');
    await expect.poll(() => draw.unit('-TB5').getAttribute('aria-label')).toContain('Chosen.');
    await expect.poll(() => draw.unit('-KE3').getAttribute('aria-label')).not.toContain('Chosen.');

    await draw.press('Control+c');
    await draw.click(draw.unit('-TB4'));
    await draw.press('Control+v');
    await expect.poll(async () => (await draw.chains())[0]).toEqual(['-TB1', '-TB2', '-TB3', '-KE2', '-TB4', '-TB11', '-TB12']);
    await draw.press('Control+z');
    await expect.poll(async () => (await draw.chains())[0]).toHaveLength(5);

    await draw.click(draw.unit('-KE3'));
    await draw.press('Shift+End');
    await expect.poll(() => draw.unit('-TB7').getAttribute('aria-label')).toContain('Chosen.');
    await draw.press('Control+x');
    await expect
      .poll(() => draw.chains())
      .toEqual([
        ['-TB1', '-TB2', '-TB3', '-KE2', '-TB4'],
        ['-TB5', '-TB6'],
      ]);
    await draw.press('Control+z');

    await draw.press('Control+a', 'Escape');
    await expect.poll(() => draw.unit('-TB1').getAttribute('aria-label')).not.toContain('Chosen.');
    await draw.click(draw.unit('-TB2'));
    await draw.press('Control+d');
    await expect.poll(async () => (await draw.chains())[0]).toEqual(['-TB1', '-TB2', '-TB11', '-TB3', '-KE2', '-TB4']);

    // The same commands by the other button of the mouse.
    await draw.cable('-WH8').click({ button: 'right' });
    await draw.page.getByRole('menuitem', { name: 'Insert a spindle drive' }).click();
    await expect.poll(async () => (await draw.chains())[1]).toHaveLength(5);
    await draw.press('Shift+F10');
    await draw.page.getByRole('menuitem', { name: 'Choose the whole chain' }).waitFor();
  });

  it.each([
    ['nothing of ours', 'just some words'],
    ['damaged', '{"format":"linkwright-cabinet","version":1,'],
    ['of another kind', '{"format":"something-else","version":1,"content":{}}'],
    ['newer', '{"format":"linkwright-cabinet","version":99,"content":{}}'],
    ['with the keys of a prototype', '{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}'],
    ['very deep', '['.repeat(20_000)],
    ['with markup', '<img src=x onerror="window.hit=1"><script>window.hit=1</script>'],
    ['rows of nonsense', 'a\tb\tc\n\u0000\t\u202e\t=cmd()\n'],
  ])('should take hostile text of the clipboard for what it is, say so, and change nothing: %s', async (_what, text) => {
    draw = await launchDraw();
    const before = await draw.chains();
    await draw.click(draw.unit('-TB2'));
    await draw.page.evaluate((clip) => {
      const data = new DataTransfer();
      data.setData('text/plain', clip);
      document.activeElement?.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
    }, text);
    await draw.bar.waitFor();
    await expect.poll(async () => (await draw.bar.textContent())?.length).toBeGreaterThan(20);
    await expect.poll(() => draw.chains()).toEqual(before);
    await expect.poll(() => draw.lastStep()).toBe('');
    await expect
      .poll(() => draw.page.evaluate(() => [(window as unknown as { hit?: number }).hit, ({} as { polluted?: boolean }).polluted]))
      .toEqual([undefined, undefined]);
  });
});
