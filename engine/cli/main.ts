#!/usr/bin/env node
process.stderr.write('Not built yet.\n');
process.exitCode = 2;
