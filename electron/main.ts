import { join } from 'node:path';
import { app } from 'electron';
import { runProgram } from './shell/program.ts';

// dist/main/main.cjs: the page and the preload lie beside it in dist.
const built = join(app.getAppPath(), 'dist');
runProgram({ page: join(built, 'page'), preload: join(built, 'preload', 'preload.cjs') });
