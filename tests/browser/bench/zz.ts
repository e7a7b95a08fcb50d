import { launchPage } from '/work/h/repair/tests/support/launchPage.ts';
import { papersWords as words, drawWords } from '/work/h/repair/engine/messages/index.ts';
import fs from 'node:fs';
const N = Number(process.argv[2] ?? 2000);
const per = 50;
const csv = ['Designation,Kind,Chain,Position', ...Array.from({length: N}, (_, i) => `-TAX${i+1},servo drive,${Math.floor(i/per)+11},${i%per+1}`)].join('\r\n');
const { page, close } = await launchPage({ width: 1440, height: 900, reducedMotion: true, at: '#draw' });
const s = await page.context().newCDPSession(page);
await s.send('Performance.enable'); await s.send('Profiler.enable');
await page.evaluate(() => { (window as any).longs = []; new PerformanceObserver((l) => l.getEntries().forEach((e) => (window as any).longs.push(Math.round(e.duration)))).observe({ type: 'longtask' }); });
const m = async () => { const { metrics } = await s.send('Performance.getMetrics'); const g = (n: string) => (metrics.find((x) => x.name === n)?.value ?? 0); return { script: g('ScriptDuration')*1000, layout: (g('LayoutDuration') + g('RecalcStyleDuration'))*1000, task: g('TaskDuration')*1000, heap: g('JSHeapUsedSize')/1e6, lay: g('LayoutCount'), sty: g('RecalcStyleCount'), layd: g('LayoutDuration')*1000 }; };
const step = async (name: string, f: () => Promise<any>, prof = false) => { const a = await m(); await page.evaluate(() => { (window as any).longs.length = 0; }); if (prof) await s.send('Profiler.start'); await f(); await page.evaluate(() => new Promise((r) => requestAnimationFrame(() => setTimeout(r, 50)))); if (prof) { const { profile } = await s.send('Profiler.stop'); fs.writeFileSync(`/tmp/rep/p-${name}.cpuprofile`, JSON.stringify(profile)); } const b = await m(); const longs = await page.evaluate(() => [...(window as any).longs].sort((x: number, y: number) => y - x).slice(0, 4)); console.log(name.padEnd(18), 'script', (b.script-a.script).toFixed(0), 'layout', (b.layout-a.layout).toFixed(0), 'task', (b.task-a.task).toFixed(0), 'n', b.lay-a.lay, b.sty-a.sty, 'lay', (b.layd-a.layd).toFixed(0), 'heap', b.heap.toFixed(0), 'long', longs.join()); };
await page.waitForTimeout(1500); if (process.argv[3]) await page.addStyleTag({ content: process.argv[3] });
await step('choose', async () => {
  await page.getByRole('button', { name: 'File', exact: true }).click();
  const coming = page.waitForEvent('filechooser');
  await page.getByRole('menuitem', { name: 'Import a list…' }).click();
  await (await coming).setFiles({ name: 'big.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
  await page.getByRole('dialog', { name: words.importTitle('big.csv') }).waitFor({ timeout: 120000 });
}, true);
await step('overwrite', async () => { await page.getByLabel(words.overwrite).check({ timeout: 120000 }); }, true);
await step('take', async () => {
  await page.getByRole('button', { name: /^Take over/ }).click({ timeout: 120000 });
  await page.waitForFunction(() => document.querySelectorAll('[role=dialog]').length === 0, undefined, { timeout: 120000 });
  await page.waitForTimeout(3000);
}, true);
await close([/./]);
