#!/usr/bin/env node
import { makeNodeIo } from './nodeIo.ts';
import { formatOutputFailure, run } from './run.ts';

// What cannot be said ends the program: a run nobody could read must not end with a code that stands for an answer.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    // A reader that goes away (`linkwright … | head`) had what it wanted.
    if (error.code === 'EPIPE') process.exit(0);
    if (stream === process.stdout) process.stderr.write(formatOutputFailure(error, io.columns));
    process.exit(3);
  });
}

const io = makeNodeIo();
// The exit code is set, not forced: what was written must reach its reader first.
process.exitCode = await run(process.argv.slice(2), io);
