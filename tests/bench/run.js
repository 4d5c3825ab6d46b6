// `npm run bench`: bundles tests/bench/main.ts the way the bench itself is bundled and runs it in
// plain Node, so that what is measured is what a browser gets. Words after `--` are handed on.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const outDir = join(ROOT, 'node_modules/.cache/bench');

await build({
  root: ROOT,
  configFile: false,
  logLevel: 'warn',
  // The library measured against stays as its authors ship it: it writes its own code by eval,
  // which bundling would disturb.
  ssr: { noExternal: true, external: ['numeric'] },
  build: {
    ssr: join(ROOT, 'tests/bench/main.ts'),
    outDir,
    emptyOutDir: true,
    target: 'node20',
    minify: true,
    sourcemap: true,
    rolldownOptions: { output: { entryFileNames: 'main.js' } },
  },
});

const flags = ['--enable-source-maps', '--expose-gc'];
const words = [...flags, join(outDir, 'main.js'), ...process.argv.slice(2)];
const { status } = spawnSync(process.execPath, words, { stdio: 'inherit' });
process.exitCode = status ?? 1;
