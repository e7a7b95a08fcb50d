import { spawn } from 'node:child_process';

/** How a try to run the desktop program ended: it ran (and ended with `code`), or no window ever opened. */
export type DesktopRun = { readonly ran: true; readonly code: number } | { readonly ran: false; readonly said: string };

/**
 * Runs the desktop program and waits for its end; `onOpen` is called once its window is there. Interrupts are passed on to it. A program that ends badly before it said that its
 * window is open has not run: the system refused it, for example for a missing library.
 */
export function runDesktop(program: string, args: readonly string[], onOpen: () => void): Promise<DesktopRun> {
  return new Promise((resolve) => {
    const child = spawn(program, args, { stdio: ['inherit', 'inherit', 'pipe', 'ipc'], windowsHide: false });
    let opened = false;
    let said = '';
    child.on('message', (message) => {
      if (message !== 'window open' || opened) return;
      opened = true;
      onOpen();
    });
    child.stderr?.setEncoding('utf8').on('data', (text: string) => {
      if (opened) process.stderr.write(text);
      else said += text;
    });
    let interrupted = false;
    const passOn = (signal: NodeJS.Signals) => {
      interrupted = true;
      child.kill(signal);
    };
    process.on('SIGINT', passOn).on('SIGTERM', passOn);
    const finish = (run: DesktopRun) => {
      process.off('SIGINT', passOn).off('SIGTERM', passOn);
      resolve(run);
    };
    child.on('error', (error) => finish({ ran: false, said: error.message }));
    child.on('close', (code) => {
      if (interrupted) finish({ ran: true, code: 0 });
      else if (opened || code === 0) finish({ ran: true, code: code ?? 1 });
      else finish({ ran: false, said });
    });
  });
}
