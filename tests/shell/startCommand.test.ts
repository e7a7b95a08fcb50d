import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { runDesktop } from '../../electron/launch/desktop.ts';
import { parseStartOptions } from '../../electron/launch/options.ts';
import { fetchRuntime, firstLine, locateRuntime } from '../../electron/launch/runtime.ts';
import { findNoWindowReason } from '../../electron/launch/whyNoWindow.ts';
import { filesNamed } from '../../electron/shell/commandLine.ts';

const folder = mkdtempSync(join(tmpdir(), 'linkwright-start-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function script(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

describe('parseStartOptions', () => {
  const none = { help: false, web: false, port: 0, noSandbox: false, files: [] };

  it('should read flags and files in any order', () => {
    expect(parseStartOptions([])).toEqual(none);
    expect(parseStartOptions(['my.cabinet.json', '--web', '--port', '8080'])).toEqual({
      ...none,
      web: true,
      port: 8080,
      files: ['my.cabinet.json'],
    });
    expect(parseStartOptions(['--no-sandbox', '--port=0'])).toEqual({ ...none, noSandbox: true });
    expect(parseStartOptions(['-h'])).toEqual({ ...none, help: true });
  });

  it.each(['-1', '65536', '8080.5', 'http', '', '0x50', ' 80'])('should refuse the port "%s"', (port) => {
    expect(parseStartOptions([`--port=${port}`])).toEqual({ kind: 'port', given: port });
  });

  it.each(['--wbe', '--web=yes', '-x'])('should refuse %s', (flag) => {
    expect(parseStartOptions([flag])).toMatchObject({ kind: 'unknown', detail: expect.stringContaining(flag.slice(0, 5)) });
  });
});

describe('findNoWindowReason', () => {
  const machine = { platform: 'linux', environment: { DISPLAY: ':0' }, user: 1000, noSandbox: false } as const;

  it.each([
    [machine, undefined],
    [{ ...machine, environment: {} }, 'no-display'],
    [{ ...machine, environment: { DISPLAY: '' } }, 'no-display'],
    [{ ...machine, environment: { WAYLAND_DISPLAY: 'wayland-0' } }, undefined],
    [{ ...machine, user: 0 }, 'root'],
    [{ ...machine, user: 0, noSandbox: true }, undefined],
    [{ ...machine, platform: 'win32', environment: {}, user: undefined } as const, undefined],
    [{ ...machine, platform: 'darwin', environment: {}, user: 0 } as const, undefined],
  ])('should find for %j: %s', (given, reason) => {
    expect(findNoWindowReason(given)).toBe(reason);
  });
});

describe('the desktop runtime', () => {
  it('should be looked for where the package notes it, or where the user says', () => {
    const own = join(folder, 'package');
    mkdirSync(join(own, 'dist'), { recursive: true });
    expect(locateRuntime(own, {}).present).toBe(false);
    writeFileSync(join(own, 'path.txt'), 'the-runtime');
    writeFileSync(join(own, 'dist', 'the-runtime'), '');
    expect(locateRuntime(own, {})).toEqual({ program: join(own, 'dist', 'the-runtime'), present: true });
    expect(locateRuntime(own, { ELECTRON_OVERRIDE_DIST_PATH: folder })).toEqual({ program: join(folder, 'the-runtime'), present: false });
  });

  it('should not be waited for longer than the limit, even when the fetcher ignores signals', async () => {
    script('install.js', "process.on('SIGTERM', () => {}); setInterval(() => {}, 1000);");
    const from = Date.now();
    expect(await fetchRuntime(folder, 500)).toBe('time');
    expect(Date.now() - from).toBeLessThan(5000);
  });

  it('should say what the fetcher said', async () => {
    script('install.js', "console.error('\\nno way out\\nat somewhere'); process.exit(1);");
    expect(await fetchRuntime(folder, 5000)).toEqual({ said: 'no way out' });
    script('install.js', '');
    expect(await fetchRuntime(folder, 5000)).toBeUndefined();
  });

  it('should shorten what is said to one line', () => {
    expect(firstLine(`\n  ${'x'.repeat(500)}\nmore`)).toHaveLength(200);
    expect(firstLine('')).toBe('');
    expect(firstLine('[12:1125/094257.2:ERROR:x11.cc(240)] Missing X server')).toBe('Missing X server');
  });
});

describe('runDesktop', () => {
  const onOpen = vi.fn();
  beforeEach(() => onOpen.mockClear());

  const run = (text: string) => runDesktop(process.execPath, [script('program.js', text)], onOpen);

  it('should have run when a window opened, whatever the end', async () => {
    expect(await run("process.send('window open', () => process.exit(0));")).toEqual({ ran: true, code: 0 });
    expect(await run("process.send('window open', () => process.exit(7));")).toEqual({ ran: true, code: 7 });
    expect(onOpen).toHaveBeenCalledTimes(2);
  });

  it('should have run when it ended well without a window: it handed its file to the one that runs', async () => {
    expect(await run('process.exit(0);')).toEqual({ ran: true, code: 0 });
  });

  it('should not have run when it ended badly before a window', async () => {
    expect(await run("console.error('error while loading shared libraries: libx.so'); process.exit(127);")).toEqual({
      ran: false,
      said: 'error while loading shared libraries: libx.so\n',
    });
    expect(await run("process.kill(process.pid, 'SIGKILL');")).toEqual({ ran: false, said: '' });
    expect(onOpen).not.toHaveBeenCalled();
  });

  it('should not have run when there is no such program', async () => {
    expect(await runDesktop(join(folder, 'nowhere'), [], onOpen)).toMatchObject({ ran: false, said: expect.stringContaining('ENOENT') });
  });
});

describe('filesNamed', () => {
  it('should find the files among the switches and the folder that a runtime adds, from the folder of whoever asked', () => {
    const args = ['--inspect=notes.json', '/opt/linkwright', 'mine.cabinet.json', '/plant/OURS.JSON', 'notes.txt', '-x.json'];
    expect(filesNamed(args, '/home/us')).toEqual([resolve('/home/us/mine.cabinet.json'), resolve('/plant/OURS.JSON')]);
  });
});
