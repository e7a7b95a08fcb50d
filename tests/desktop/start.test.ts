import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';
import { type RunningStart, runStart, waitForPrint } from '../support/runStart.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);

describe.skipIf(missing)('npm start where a window is to be had', () => {
  let home: string;
  let started: RunningStart[];

  beforeEach(async () => {
    home = await mkdtemp(join(tmpdir(), 'linkwright-home-'));
    started = [];
  });
  afterEach(async () => {
    for (const run of started) run.child.kill('SIGKILL');
    await rm(home, { recursive: true, force: true, maxRetries: 5 });
  });

  const start = (...args: readonly string[]) => {
    const asRoot = process.getuid?.() === 0;
    const run = runStart([...(asRoot ? ['--no-sandbox'] : []), ...args], { XDG_CONFIG_HOME: home, HOME: home });
    started.push(run);
    return run;
  };
  const stillRuns = async (run: RunningStart, milliseconds: number) =>
    (await Promise.race([run.ended, new Promise((resolve) => setTimeout(resolve, milliseconds, 'runs'))])) === 'runs';

  it('should open the window, serve no page, and end cleanly when interrupted', async () => {
    const run = start();
    await waitForPrint(run, /in a window of its own/);
    expect(await stillRuns(run, 500)).toBe(true);
    expect(run.printed()).not.toContain('http://');
    run.child.kill('SIGINT');
    expect(await run.ended).toBe(0);
  });

  it('should hand the file of a second start to the first, and end', async () => {
    const first = start();
    await waitForPrint(first, /in a window of its own/);
    const file = join(home, 'second.cabinet.json');
    await writeFile(file, '{}');
    const second = start(file);
    expect(await second.ended).toBe(0);
    expect(second.printed()).not.toContain('http://');
    expect(await stillRuns(first, 500)).toBe(true);
    first.child.kill('SIGTERM');
    expect(await first.ended).toBe(0);
  });
});
