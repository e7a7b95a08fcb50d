import { spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createBuilder } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { programFolder } from '../support/folders.ts';

/* The command line as it is delivered: built into one file, started as a process of its own. */

const sample = 'sample-cabinets/two-chains.cabinet.json';
let folder = '';
let program = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linkwright cli '));
  // The same settings as the delivered file; only the folder differs, so that a test never depends on an older build.
  const builder = await createBuilder({
    root: programFolder,
    configFile: join(programFolder, 'vite.config.ts'),
    logLevel: 'error',
    environments: { cli: { build: { outDir: folder } } },
    plugins: [],
  });
  const environment = builder.environments['cli'];
  if (!environment) throw new Error('vite.config.ts has no environment cli');
  await builder.build(environment);
  program = join(folder, 'linkwright.js');
}, 60_000);

afterAll(async () => {
  if (folder) await rm(folder, { recursive: true, force: true });
});

interface Ended {
  readonly exit: number | null;
  readonly out: string;
  readonly err: string;
}

/** Starts the program; `closeAfter` closes its standard output after so many bytes, as `head` would. */
function start(args: readonly string[], { input = '', closeAfter = Number.POSITIVE_INFINITY, cwd = programFolder } = {}): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program, ...args], { cwd, stdio: 'pipe' });
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk: Buffer) => {
      out += chunk.toString();
      if (out.length > closeAfter) child.stdout.destroy();
    });
    child.stderr.on('data', (chunk: Buffer) => {
      err += chunk.toString();
    });
    child.on('error', reject);
    child.on('close', (exit) => resolve({ exit, out, err }));
    child.stdin.on('error', () => {
      // The program may have ended before it read everything; what it says then is what is tested.
    });
    child.stdin.end(input);
  });
}

describe('the built command line', () => {
  it('should run from any folder, a folder with spaces included, with nothing beside it', async () => {
    const ran = await start(['--version'], { cwd: folder });
    expect(ran).toEqual({ exit: 0, out: expect.stringMatching(/^linkwright \d/), err: '' });
  });

  it('should hand on its exit codes', async () => {
    const codes = [];
    for (const args of [
      ['check', sample],
      ['check', 'sample-cabinets/with-problems.cabinet.json'],
      ['check', '--nonsense'],
      ['check', 'nowhere.json'],
    ]) {
      codes.push((await start(args)).exit);
    }
    expect(codes).toEqual([0, 1, 2, 3]);
  });

  it('should write whole answers to a pipe, without colours and with its usual width', async () => {
    const { out, err, exit } = await start([
      'simulate',
      'sample-cabinets/forty-units.cabinet.json',
      '--fault',
      'cable:-WH5:cut',
      '--explain',
      '--light',
    ]);
    expect([exit, err]).toEqual([0, '']);
    expect(out.length).toBeGreaterThan(10_000);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences are looked for.
    expect(out).not.toMatch(/\u001b/);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
    const json = await start(['simulate', 'sample-cabinets/forty-units.cabinet.json', '--explain', '--light', '--json']);
    expect(JSON.parse(json.out)).toMatchObject({ interface: 1, ok: true });
  });

  it('should end quietly when its reader goes away', async () => {
    const line = `${JSON.stringify({ faults: [] })}\n`;
    const ran = await start(['simulate', sample, '--batch', '-'], { input: line.repeat(3_000), closeAfter: 1_000 });
    expect(ran.err).toBe('');
    expect(ran.exit).toBe(0);
  });

  it('should read a batch from standard input and from a file, and answer every line', async () => {
    const lines = Array.from(
      { length: 500 },
      (_, i) => `${JSON.stringify({ id: i, faults: [{ item: 'cable', link: `WH${(i % 9) + 1}`, mode: 'cut' }] })}\r\n`,
    ).join('');
    const file = join(folder, 'lines with spaces.jsonl');
    await writeFile(file, lines);
    const piped = await start(['simulate', sample, '--batch', '-'], { input: lines });
    const filed = await start(['simulate', sample, '--batch', file]);
    expect([piped.exit, piped.err]).toEqual([0, '']);
    expect(filed.out).toBe(piped.out);
    const ids = piped.out
      .trim()
      .split('\n')
      .map((line) => (JSON.parse(line) as { id: number }).id); // a wrong shape fails below
    expect(ids).toEqual(Array.from({ length: 500 }, (_, i) => i));
  });

  it('should say what is wrong with a folder, or a file that is none, and not crash', async () => {
    for (const file of [folder, join(folder, 'missing.json'), `${folder}/\u0007odd`]) {
      const ran = await start(['check', file]);
      expect(ran).toMatchObject({ exit: 3, out: '' });
      expect(ran.err).toMatch(/cannot be read/);
      expect(ran.err).not.toMatch(/ {4}at /);
    }
    expect(await start(['simulate', sample, '--batch', folder])).toMatchObject({ exit: 3, out: '' });
  });
});
