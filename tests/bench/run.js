// `npm run bench`: bundles tests/bench/main.ts the way the bench itself is bundled and runs it in
// plain Node, so that what is measured is what a browser gets. A first word that ends in .ts names
// another program of this repository to be run so; the other words are handed on.
import { spawnSync } from 'node:child_process';
import { basename, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const words = process.argv.slice(2);
const entry = resolve(
  words[0]?.endsWith('.ts') ? (words.shift() ?? '') : join(ROOT, 'tests/bench/main.ts'),
);
const name = basename(entry, '.ts');
const outDir = join(ROOT, 'node_modules/.cache/run', name);

await build({
  root: ROOT,
  configFile: false,
  logLevel: 'warn',
  // Whatever can be is bundled; these start programs or read files beside their own.
  ssr: { noExternal: true, external: ['vite', 'vitest', 'playwright-core', 'rolldown'] },
  build: {
    ssr: entry,
    outDir,
    emptyOutDir: true,
    target: 'node20',
    minify: true,
    sourcemap: true,
    rolldownOptions: { output: { entryFileNames: `${name}.js` } },
  },
});

const flags = ['--enable-source-maps', '--expose-gc'];
const { status } = spawnSync(process.execPath, [...flags, join(outDir, `${name}.js`), ...words], {
  stdio: 'inherit',
});
process.exitCode = status ?? 1;
