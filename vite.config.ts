import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { buildStamp } from './src/serve/build.js';

/** The solver does nothing by being imported: what only late parts need of it is loaded with them. */
const treeshake = { moduleSideEffects: [{ test: /\/solver\//, sideEffects: false }] };

/**
 * What every page needs at once of the solver, in one chunk: it is shared with so much that is loaded late that it would
 * fall into a dozen small ones, which pack worse.
 */
const core = {
  name: 'core',
  test: new RegExp(
    [
      '/solver/(linkage|math|model|measures)/(?!explanations)',
      '/solver/(units|corner)',
      '/solver/clearance/(meridian|depth|profile|placed|rod|strands|section|shapes|wheelPlace|required)',
    ].join('|'),
  ),
};

const root = fileURLToPath(new URL('.', import.meta.url));

export default defineConfig({
  root: 'src',
  base: './',
  // One page and no router: an address that names no file is a 404, never the page again.
  appType: 'mpa',
  plugins: [react(), buildStamp(root)],
  server: { host: 'localhost', fs: { allow: [root] } },
  preview: { host: 'localhost' },
  // No other hand-made chunks: a group would pull what is loaded late (leva, the charts) into the first
  // picture. Chunks follow the dynamic imports, and tests/browser/budget.test.ts weighs the result.
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1500,
    rolldownOptions: { treeshake, output: { codeSplitting: { groups: [core] } } },
  },
  worker: { format: 'es', rolldownOptions: { treeshake } },
  test: {
    root,
    projects: [
      {
        root,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**'],
          testTimeout: 30_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        root,
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.{ts,tsx}'],
          globalSetup: ['tests/support/serve.ts'],
          setupFiles: ['tests/support/browser.ts'],
          // The pages draw in software: two at a time would only slow each other down.
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 120_000,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
