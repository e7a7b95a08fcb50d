import { chmod } from 'node:fs/promises';
import { builtinModules } from 'node:module';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type EnvironmentOptions, type Plugin } from 'vite';

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const nodeBuiltins = [...builtinModules, ...builtinModules.map((name) => `node:${name}`)];

/** One self-contained file for Node or the desktop runtime, with every package in it. */
function singleFile(
  entry: string,
  outFile: string,
  options: { readonly target: string; readonly format: 'cjs' | 'es' },
): EnvironmentOptions {
  const slash = outFile.lastIndexOf('/');
  return {
    consumer: 'server',
    resolve: { noExternal: true, external: ['electron', ...nodeBuiltins], conditions: ['node', 'module', 'import', 'default'] },
    // The sandboxed preload and the single files see no build-time switches but this one.
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      target: options.target,
      outDir: at(outFile.slice(0, slash)),
      emptyOutDir: true,
      copyPublicDir: false,
      minify: false,
      rolldownOptions: {
        input: at(entry),
        external: ['electron', ...nodeBuiltins],
        output: { format: options.format, entryFileNames: outFile.slice(slash + 1), codeSplitting: false },
      },
    },
  };
}

/** `dist/cli/linkwright.js` can be run by its name: the first line of the source says how, this sets the mode. */
function executable(environment: string, folder: string): Plugin {
  return {
    name: 'linkwright:executable',
    applyToEnvironment: (env) => env.name === environment,
    async writeBundle({ dir }, bundle) {
      // Wherever it was put: a test builds it into a folder of its own.
      for (const name of Object.keys(bundle)) await chmod(`${dir ?? at(folder)}/${name}`, 0o755);
    },
  };
}

export default defineConfig({
  root: at('renderer'),
  // The page is served from the root of `linkwright://app/` and of the loopback server alike.
  base: '/',
  plugins: [react(), executable('cli', 'dist/cli')],
  worker: { format: 'es' },
  environments: {
    client: {
      build: {
        target: 'chrome114',
        outDir: at('dist/page'),
        emptyOutDir: true,
        // The content policy allows no data: addresses, so nothing may be inlined.
        assetsInlineLimit: 0,
        chunkSizeWarningLimit: 2400,
        rolldownOptions: { input: at('renderer/index.html') },
      },
    },
    // Electron 25 runs Node 18; newer ones run these files too.
    main: singleFile('electron/main.ts', 'dist/main/main.cjs', { target: 'node18', format: 'cjs' }),
    preload: singleFile('electron/preload.ts', 'dist/preload/preload.cjs', { target: 'chrome114', format: 'cjs' }),
    start: singleFile('electron/start.ts', 'dist/start/start.js', { target: 'node20', format: 'es' }),
    cli: singleFile('engine/cli/main.ts', 'dist/cli/linkwright.js', { target: 'node20', format: 'es' }),
  },
  builder: {
    async buildApp(builder) {
      for (const environment of Object.values(builder.environments)) {
        if (environment.name !== 'ssr') await builder.build(environment);
      }
    },
  },
});
