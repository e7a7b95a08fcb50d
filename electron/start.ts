import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { startWords } from '../engine/messages/index.ts';
import { runDesktop } from './launch/desktop.ts';
import { parseStartOptions, type StartOptions } from './launch/options.ts';
import { fetchLimitMilliseconds, fetchRuntime, firstLine, locateRuntime } from './launch/runtime.ts';
import { findNoWindowReason } from './launch/whyNoWindow.ts';
import { type LoopbackServer, startLoopbackServer } from './serve/loopback.ts';

// dist/start/start.js lies two folders below the program's own.
const programFolder = fileURLToPath(new URL('../..', import.meta.url));
const say = (line: string) => process.stdout.write(`${line}\n`);
const complain = (line: string) => process.stderr.write(`${line}\n`);

/** Opens the desktop window, or answers why it cannot. */
async function tryDesktop(options: StartOptions): Promise<{ readonly code: number } | { readonly why: string }> {
  const machine = { platform: process.platform, environment: process.env, user: process.getuid?.(), noSandbox: options.noSandbox };
  const reason = findNoWindowReason(machine);
  if (reason) return { why: startWords.noWindow[reason] };
  const packageFolder = resolve(programFolder, 'node_modules', 'electron');
  if (!locateRuntime(packageFolder, process.env).present) {
    say(startWords.fetching(fetchLimitMilliseconds / 60_000));
    const failure = await fetchRuntime(packageFolder, fetchLimitMilliseconds);
    if (failure) return { why: failure === 'time' ? startWords.fetchTooSlow : startWords.fetchFailed(failure.said) };
  }
  const { program, present } = locateRuntime(packageFolder, process.env);
  if (!present) return { why: startWords.runtimeMissing(program) };
  const switches = options.noSandbox ? ['--no-sandbox'] : [];
  const run = await runDesktop(program, [...switches, programFolder, ...options.files], () => {
    say(startWords.windowOpen);
    say(startWords.howToEnd);
  });
  return run.ran ? { code: run.code } : { why: startWords.windowRefused(firstLine(run.said)) };
}

/** Serves the page until the user interrupts it. Answers the exit code. */
async function servePage(options: StartOptions, why: string): Promise<number> {
  let server: LoopbackServer;
  try {
    server = await startLoopbackServer({ root: resolve(programFolder, 'dist', 'page'), port: options.port });
  } catch (error) {
    complain(startWords.notServed(options.port, error instanceof Error ? error.message : ''));
    return 1;
  }
  say(startWords.servedBecause(why));
  say(startWords.address(server.address));
  if (options.files.length > 0) say(startWords.openFilesYourself(options.files));
  say(startWords.howToEnd);
  await new Promise<void>((end) => {
    process.once('SIGINT', () => end()).once('SIGTERM', () => end());
  });
  await server.close();
  return 0;
}

async function main(): Promise<number> {
  const options = parseStartOptions(process.argv.slice(2));
  if ('kind' in options) {
    complain(options.kind === 'port' ? startWords.badPort(options.given) : startWords.badUse(options.detail));
    complain(startWords.help);
    return 2;
  }
  if (options.help) {
    say(startWords.help);
    return 0;
  }
  const files = options.files.map((file) => resolve(process.env['INIT_CWD'] ?? process.cwd(), file));
  const missing = files.find((file) => !existsSync(file));
  if (missing) {
    complain(startWords.fileMissing(missing));
    return 3;
  }
  const settled = { ...options, files };
  if (options.web) return servePage(settled, startWords.askedForWeb);
  const desktop = await tryDesktop(settled);
  return 'code' in desktop ? desktop.code : servePage(settled, desktop.why);
}

process.exitCode = await main();
