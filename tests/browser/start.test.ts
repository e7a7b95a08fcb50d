import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { contentPolicy } from '../../electron/serve/contentPolicy.ts';
import { type RunningStart, runStart, waitForPrint } from '../support/runStart.ts';

const addressPattern = /(http:\/\/127\.0\.0\.1:\d+\/)/;
const folder = mkdtempSync(join(tmpdir(), 'linkwright-start-'));
const started: RunningStart[] = [];
const start = (...args: Parameters<typeof runStart>) => {
  const run = runStart(...args);
  started.push(run);
  return run;
};

afterEach(() => {
  for (const run of started.splice(0)) run.child.kill('SIGKILL');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A desktop runtime of our own making: a program under the name the launcher looks for. */
function fakeRuntime(text: string): string {
  const path = join(folder, 'electron');
  writeFileSync(path, `#!/bin/sh\n${text}\n`);
  chmodSync(path, 0o755);
  return folder;
}

describe('npm start where no window is to be had', () => {
  it.each(['SIGINT', 'SIGTERM'] as const)('should serve the page when asked to, and end cleanly on %s', async (signal) => {
    const run = start(['--web']);
    const address = await waitForPrint(run, addressPattern);
    const answer = await fetch(address);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-security-policy')).toBe(contentPolicy);
    expect(run.printed()).toContain('--web was given');
    run.child.kill(signal);
    expect(await run.ended).toBe(0);
    await expect(fetch(address)).rejects.toThrow();
  });

  it('should say that there is no display', async () => {
    const run = start([], { DISPLAY: '', WAYLAND_DISPLAY: '' });
    await waitForPrint(run, addressPattern);
    expect(run.printed()).toContain('no display was found');
  });

  it('should serve the page when the runtime cannot open a window, with what the system said', async () => {
    const own = fakeRuntime("echo 'error while loading shared libraries: libexample.so' >&2; exit 127");
    const run = start(['--no-sandbox'], { DISPLAY: ':97', ELECTRON_OVERRIDE_DIST_PATH: own });
    await waitForPrint(run, addressPattern);
    expect(run.printed()).toContain('libexample.so');
  });

  it('should not hang on a fetch of the runtime that fails, and serve the page', async () => {
    // An own folder without a runtime: the package's fetcher then tries, and finds that it cannot.
    const run = start(['--no-sandbox'], {
      DISPLAY: ':97',
      ELECTRON_OVERRIDE_DIST_PATH: join(folder, 'empty'),
      ELECTRON_MIRROR: 'http://127.0.0.1:9/',
      electron_config_cache: join(folder, 'cache'),
    });
    await waitForPrint(run, addressPattern, 40_000);
    expect(run.printed()).toContain('Fetching it');
    expect(run.printed()).toContain('could not be fetched');
  });

  it('should take the port it is given, and say so when that is taken', async () => {
    const first = start(['--web']);
    const address = await waitForPrint(first, addressPattern);
    const second = start(['--web', '--port', new URL(address).port]);
    expect(await second.ended).toBe(1);
    expect(second.printed()).toContain(`could not be served on port ${new URL(address).port}`);
  });

  it('should name the files that a page cannot open by itself', async () => {
    const file = join(folder, 'mine.cabinet.json');
    writeFileSync(file, '{}');
    const run = start(['--web', file]);
    await waitForPrint(run, /Ctrl-C ends it/);
    expect(run.printed()).toContain(file);
  });

  it.each([
    [['--wbe'], 2, '--wbe'],
    [['--port', 'x'], 2, '"x" is no port'],
    [['no-such.cabinet.json'], 3, 'no-such.cabinet.json'],
    [['--help'], 0, 'Example: npm start'],
  ])('should answer %j with exit code %i', async (args, code, text) => {
    const run = start(args);
    expect(await run.ended).toBe(code);
    expect(run.printed()).toContain(text);
  });
});
