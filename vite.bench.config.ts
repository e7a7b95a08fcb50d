import { defineConfig } from 'vite';

// The bench runs what ships: bundled modules, as in the built program. Module loaders of the tests cost time at every call.
export default defineConfig({
  build: {
    ssr: 'tests/bench/main.ts',
    outDir: 'dist/bench',
    target: 'node20',
    minify: false,
    emptyOutDir: true,
  },
  ssr: { noExternal: true, external: ['clingo-wasm'] },
});
