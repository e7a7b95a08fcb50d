import { parseArgs } from 'node:util';

/** What the start command was asked for. */
export interface StartOptions {
  readonly help: boolean;
  /** Serve the page even where a desktop window could be opened. */
  readonly web: boolean;
  /** Port of the loopback server; 0 takes any free one. */
  readonly port: number;
  /** Open the window without the system's sandbox: only for test machines that run everything as root. */
  readonly noSandbox: boolean;
  /** Files to open, as written. */
  readonly files: readonly string[];
}

/** Why the arguments were not understood, as data. */
export type StartMisuse = { readonly kind: 'unknown'; readonly detail: string } | { readonly kind: 'port'; readonly given: string };

/** Reads the arguments after `npm start --`. */
export function parseStartOptions(args: readonly string[]): StartOptions | StartMisuse {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        help: { type: 'boolean', short: 'h', default: false },
        web: { type: 'boolean', default: false },
        port: { type: 'string', default: '0' },
        'no-sandbox': { type: 'boolean', default: false },
      },
    });
    const port = parsePort(values.port);
    if (port === undefined) return { kind: 'port', given: values.port };
    return { help: values.help, web: values.web, port, noSandbox: values['no-sandbox'], files: positionals };
  } catch (error) {
    return { kind: 'unknown', detail: error instanceof Error ? (error.message.split('. ')[0] ?? '') : '' };
  }
}

function parsePort(text: string): number | undefined {
  return /^\d{1,5}$/.test(text) && Number(text) <= 65_535 ? Number(text) : undefined;
}
