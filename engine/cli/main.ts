#!/usr/bin/env node
import { makeNodeIo } from './nodeIo.ts';
import { run } from './run.ts';

// A reader that goes away (`linkwright … | head`) ends the program quietly; the exit code is then nobody's concern.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });
}

// The exit code is set, not forced: what was written must reach its reader first.
process.exitCode = await run(process.argv.slice(2), makeNodeIo());
