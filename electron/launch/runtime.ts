import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Fetching the runtime ends after this, whatever it is waiting for. */
export const fetchLimitMilliseconds = 180_000;

/** Where the desktop runtime's program would lie, and whether it does. `folder` is that of the npm package `electron`. */
export function locateRuntime(folder: string, environment: NodeJS.ProcessEnv): { readonly program: string; readonly present: boolean } {
  const name = programName(folder);
  const own = environment['ELECTRON_OVERRIDE_DIST_PATH'];
  const program = join(own ? own : join(folder, 'dist'), name);
  return { program, present: existsSync(program) };
}

function programName(folder: string): string {
  // Written by the package once the runtime is there.
  const note = join(folder, 'path.txt');
  if (existsSync(note)) return readFileSync(note, 'utf8');
  if (process.platform === 'win32') return 'electron.exe';
  return process.platform === 'darwin' ? 'Electron.app/Contents/MacOS/Electron' : 'electron';
}

/**
 * Lets the package fetch its runtime, for at most `limit` milliseconds. Answers undefined when it is there, else why not: `time` or
 * the fetcher's own words.
 */
export function fetchRuntime(folder: string, limit: number): Promise<undefined | 'time' | { readonly said: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(folder, 'install.js')], {
      stdio: ['ignore', 'ignore', 'pipe'],
      timeout: limit,
      killSignal: 'SIGKILL',
    });
    let said = '';
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
    child.on('error', (error) => resolve({ said: error.message }));
    child.on('close', (code, signal) => {
      if (code === 0) resolve(undefined);
      else if (signal !== null) resolve('time');
      else resolve({ said: firstLine(said) });
    });
  });
}

/** The first line that says something, without the runtime's stamp of process and time, shortened for one line of a terminal. */
export function firstLine(text: string): string {
  const line = text.split('\n').find((candidate) => candidate.trim() !== '') ?? '';
  return line
    .replace(/^\[\d[^\]]*\]/, '')
    .trim()
    .slice(0, 200);
}
