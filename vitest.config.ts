import { defineConfig } from 'vitest/config';

const notUnit = ['tests/browser/**', 'tests/desktop/**'];

// Three projects: `unit` needs nothing but Node; `browser` drives the built page in Chromium; `desktop` drives the built desktop
// program in a real runtime, which shares one screen, so its files run one after another. Where a whole window is driven on a loaded
// machine, a test that failed is tried once more, and the report names it. Limits are wide: on such a machine an automatic check of a
// whole window takes a minute and more, and what is right is not made wrong by it.
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: notUnit,
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          environment: 'node',
          expect: { poll: { timeout: 30_000 } },
          include: ['tests/browser/**/*.test.ts'],
          retry: 2,
          testTimeout: 240_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'desktop',
          environment: 'node',
          expect: { poll: { timeout: 30_000 } },
          include: ['tests/desktop/**/*.test.ts'],
          fileParallelism: false,
          retry: 2,
          testTimeout: 240_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
