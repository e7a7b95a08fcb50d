import { resolve } from 'node:path';

/**
 * The files named on the program's command line, as absolute paths. Only what ends in `.json` counts: the runtime adds switches of
 * its own and, when run from source, the program's folder, in no fixed order.
 */
export function filesNamed(args: readonly string[], folder: string): readonly string[] {
  return args.filter((arg) => !arg.startsWith('-') && arg.toLowerCase().endsWith('.json')).map((arg) => resolve(folder, arg));
}
