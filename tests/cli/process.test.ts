import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { copyFile, mkdtemp, readdir, readFile, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
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

/** Starts the program by a shell that runs `script`, where "$@" is the program with its arguments. */
function startIn(script: string, args: readonly string[]): Promise<Ended> {
  return ended(spawn('bash', ['-c', script, 'bash', process.execPath, program, ...args], { cwd: programFolder, stdio: 'pipe' }));
}

/** Starts the program; `closeAfter` closes its standard output after so many bytes, as `head` would. */
function start(args: readonly string[], { input = '', closeAfter = Number.POSITIVE_INFINITY, cwd = programFolder } = {}): Promise<Ended> {
  return ended(spawn(process.execPath, [program, ...args], { cwd, stdio: 'pipe' }), input, closeAfter);
}

function ended(child: ChildProcessWithoutNullStreams, input = '', closeAfter = Number.POSITIVE_INFINITY): Promise<Ended> {
  return new Promise((resolve, reject) => {
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

  // The limit on a file's size stands for a full disk: the system refuses in the middle of writing, too.
  it.skipIf(process.platform === 'win32')(
    'should leave the old file whole and nothing half written when the disk takes no more',
    async () => {
      const place = await mkdtemp(join(folder, 'full-'));
      const old = join(place, 'old.cabinet.json');
      await copyFile(join(programFolder, sample), old);
      const graph = join(place, 'graph.csv');
      await writeFile(graph, (await start(['export', sample])).out);
      const before = await readFile(old);
      const imported = await startIn(`ulimit -f 1; exec "$@"`, ['import', sample, graph, '--to', old, '--replace']);
      expect(imported.exit).toBe(3);
      expect(imported.err.replace(/\s+/g, ' ')).toContain('no file of that size is allowed there');
      expect(await readFile(old)).toEqual(before);

      const printed = await startIn(`ulimit -f 30; exec "$@"`, ['print', sample, '--as', 'svg', '--into', place, '--json']);
      const { documents } = JSON.parse(printed.out) as { documents: { written: string[] }[] }; // a wrong shape fails below
      const written = documents.flatMap((one) => one.written.map((name) => basename(name)));
      expect(printed.exit).toBe(3);
      expect(written.length).toBeGreaterThan(0);
      expect(printed.err).toContain('cannot be written');
      expect((await readdir(place)).sort()).toEqual(['graph.csv', 'old.cabinet.json', ...written].sort());
    },
  );

  it('should replace a file through its link, keep who may read it, and take away nothing that is no file', async () => {
    const place = await mkdtemp(join(folder, 'place-'));
    const target = join(place, 'target.csv');
    await writeFile(target, 'old', { mode: 0o640 });
    await symlink(target, join(place, 'link.csv'));
    expect(await start(['export', sample, '--to', join(place, 'link.csv')])).toMatchObject({ exit: 3 });
    expect(await readFile(target, 'utf8')).toBe('old');
    expect(await start(['export', sample, '--to', join(place, 'link.csv'), '--replace'])).toMatchObject({ exit: 0 });
    expect(await readFile(target, 'utf8')).toContain('TB1');
    expect((await stat(target)).mode & 0o777).toBe(0o640);
    expect((await readdir(place)).sort()).toEqual(['link.csv', 'target.csv']);
    expect(await start(['export', sample, '--to', '/dev/null', '--replace'])).toMatchObject({ exit: 0 });
    expect((await stat('/dev/null')).isCharacterDevice()).toBe(true);
  });

  it.each([
    [`${sample}/deeper/list.csv`, 'a part of its path is no folder'],
    ['/proc/linkwright/list.csv', 'its folder cannot be made there'],
  ])('should say why nothing can be written to %s', async (to, reason) => {
    const ran = await start(['export', sample, '--to', to]);
    expect(ran.exit).toBe(3);
    expect(ran.err.replace(/\s+/g, ' ')).toContain(reason);
  });

  it('should say in one sentence that its answer was not written, and end as no answer does', async () => {
    const ran = await startIn('exec "$@" > /dev/full', ['check', sample]);
    expect(ran.err.replace(/\s+/g, ' ')).toContain('The answer could not be written to the end: the disk is full');
    expect(ran.err).not.toMatch(/ {4}at /);
    expect(ran.exit).toBe(3);
    expect(await startIn('exec "$@" 2> /dev/full', ['check', 'nowhere.json'])).toEqual({ exit: 3, out: '', err: '' });
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
