import { existsSync } from 'node:fs';
import { mkdtemp, rename, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import packedChromium from '@sparticuz/chromium';
import { type Browser, chromium } from 'playwright-core';

/** Lays out the Chromium that a package carries, once per machine and version, and answers its path. */
export async function findChromium(): Promise<string> {
  const own = process.env['LINKWRIGHT_CHROMIUM'];
  if (own) return own;
  const folder = join(tmpdir(), `linkwright-chromium-${packedVersion()}`);
  const program = join(folder, 'chromium');
  if (existsSync(program)) return program;
  // The package unpacks into the temporary folder of any version, and two test runs may do so at once: unpack aside, then rename.
  const aside = await mkdtemp(join(tmpdir(), 'linkwright-unpacking-'));
  const before = process.env['TMPDIR'];
  process.env['TMPDIR'] = aside;
  try {
    await packedChromium.executablePath();
  } finally {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
  }
  await rename(aside, folder).catch(async (error: unknown) => {
    await rm(aside, { recursive: true, force: true });
    if (!existsSync(program)) throw error;
  });
  return program;
}

/** Starts it without a window, and without the emulated graphics card that costs more time than all else on a small machine. */
export async function launchChromium(): Promise<Browser> {
  const asRoot = process.getuid?.() === 0;
  return chromium.launch({
    executablePath: await findChromium(),
    chromiumSandbox: !asRoot,
    args: ['--font-render-hinting=none', '--disable-gpu'],
    timeout: 60_000,
  });
}

function packedVersion(): string {
  const load = createRequire(import.meta.url);
  // The package forbids reading its package.json by name, so it is found beside its entry file.
  const entry = load.resolve('@sparticuz/chromium');
  const { version } = load(join(entry.slice(0, entry.lastIndexOf('build')), 'package.json')) as { version: string }; // a package.json has one
  return version;
}
