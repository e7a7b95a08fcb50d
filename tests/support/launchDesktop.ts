import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron, type ElectronApplication, type Page } from 'playwright-core';
import { locateRuntime } from '../../electron/launch/runtime.ts';
import { type Complaints, collectComplaints } from './complaints.ts';
import { programFolder, shotPath } from './folders.ts';

export interface DesktopOptions {
  /** Files named on the command line. */
  readonly files?: readonly string[];
  /** Folder of settings and recovery files; default: a fresh one, removed at the end. */
  readonly userData?: string;
  /** The folder that holds package.json and dist; default: this one. */
  readonly program?: string;
}

export interface LaunchedDesktop {
  readonly app: ElectronApplication;
  /** The first window. */
  readonly page: Page;
  readonly userData: string;
  readonly complaints: Complaints;
  readonly shoot: (name: string) => Promise<void>;
  /** Ends the program, and fails when its page complained. */
  readonly close: (allowed?: readonly RegExp[]) => Promise<void>;
}

/** Finds a desktop runtime and a display; throws when one of them is missing. */
export async function findDesktop(): Promise<string> {
  const { program, present } = locateRuntime(join(programFolder, 'node_modules', 'electron'), process.env);
  if (!present) throw new Error(`no desktop runtime at ${program}`);
  if (process.platform === 'linux' && !process.env['DISPLAY']) throw new Error('no display (run under xvfb-run)');
  if (!existsSync(join(programFolder, 'dist', 'main', 'main.cjs'))) throw new Error('not built (npm run build)');
  return program;
}

/** Switches of the runtime for tests alone: root cannot have the system's sandbox. */
export function testSwitches(userData: string): readonly string[] {
  return [...(process.getuid?.() === 0 ? ['--no-sandbox'] : []), `--user-data-dir=${userData}`, '--lang=en-GB'];
}

/**
 * What the runtime loads in place of the program's folder: it holds the program's "ready" back until the test driver is connected and
 * calls `__playwright_run` (which it does at every start), then runs the built program as it stands. Without that the driver now and
 * then misses the window, because it opens while the driver is still connecting. The driver's own means for this needs a runtime
 * whose default application knows the switch `-r`.
 */
const heldEntry = (program: string) => `
const { app } = require('electron');
const { name, productName, version, main } = require(${JSON.stringify(join(program, 'package.json'))});
app.setAppPath(${JSON.stringify(program)});
app.setName(productName ?? name);
app.setVersion(version);
const ready = app.whenReady();
const connected = new Promise((resolve) => { globalThis.__playwright_run = resolve; });
app.whenReady = () => Promise.all([ready, connected]).then(() => undefined);
require(require('node:path').join(${JSON.stringify(program)}, main));
`;

/** Starts the built desktop program in the real runtime. */
export async function launchDesktop(options: DesktopOptions = {}): Promise<LaunchedDesktop> {
  const userData = options.userData ?? (await mkdtemp(join(tmpdir(), 'linkwright-user-')));
  await mkdir(userData, { recursive: true });
  const entry = join(userData, 'held-entry.cjs');
  await writeFile(entry, heldEntry(options.program ?? programFolder));
  const app = await _electron.launch({
    executablePath: await findDesktop(),
    args: [...testSwitches(userData), entry, ...(options.files ?? [])],
    timeout: 60_000,
  });
  const page = await app.firstWindow();
  const complaints = collectComplaints(page);
  // The page has put itself together, or what stands in its place says why not.
  await page.waitForSelector('#root:not(:empty), [role=alert]');
  return {
    app,
    page,
    userData,
    complaints,
    shoot: async (name) => {
      await page.screenshot({ path: await shotPath(name) });
    },
    close: async (allowed) => {
      complaints.stop();
      await app.close();
      if (!options.userData) await rm(userData, { recursive: true, force: true, maxRetries: 5 });
      complaints.assertNone(allowed);
    },
  };
}
