import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { programFolder } from './folders.ts';

export interface RunningStart {
  readonly child: ChildProcess;
  /** Everything printed so far, both ways. */
  readonly printed: () => string;
  /** Resolves with the exit code; -1 when it was killed. */
  readonly ended: Promise<number>;
}

/** Runs the built start command as `npm start` does after its build. */
export function runStart(args: readonly string[], environment: NodeJS.ProcessEnv = {}): RunningStart {
  const child = spawn(process.execPath, [join(programFolder, 'dist', 'start', 'start.js'), ...args], {
    cwd: programFolder,
    env: { ...process.env, INIT_CWD: programFolder, ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let printed = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8').on('data', (text: string) => {
      printed += text;
    });
  }
  const ended = new Promise<number>((resolve) => child.on('close', (code) => resolve(code ?? -1)));
  return { child, printed: () => printed, ended };
}

/** Waits until something was printed that fits, and answers what the pattern caught first. */
export async function waitForPrint(run: RunningStart, pattern: RegExp, limitMilliseconds = 45_000): Promise<string> {
  const until = Date.now() + limitMilliseconds;
  let over = false;
  void run.ended.then(() => {
    over = true;
  });
  for (;;) {
    const match = pattern.exec(run.printed());
    if (match) return match[1] ?? match[0];
    if (over || Date.now() > until) throw new Error(`nothing like ${pattern} was printed, but:\n${run.printed()}`);
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}
