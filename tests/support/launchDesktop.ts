import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
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

/** Starts the built desktop program in the real runtime. */
export async function launchDesktop(options: DesktopOptions = {}): Promise<LaunchedDesktop> {
  const userData = options.userData ?? (await mkdtemp(join(tmpdir(), 'linkwright-user-')));
  const app = await _electron.launch({
    executablePath: await findDesktop(),
    args: [...testSwitches(userData), options.program ?? programFolder, ...(options.files ?? [])],
    timeout: 30_000,
  });
  const page = await app.firstWindow();
  const complaints = collectComplaints(page);
  await page.waitForLoadState('load');
  return {
    app,
    page,
    userData,
    complaints,
    shoot: async (name) => {
      await page.screenshot({ path: await shotPath(name) });
    },
    close: async (allowed) => {
      await app.close();
      if (!options.userData) await rm(userData, { recursive: true, force: true, maxRetries: 5 });
      complaints.assertNone(allowed);
    },
  };
}
