// `node tests/support/program.js FILE.ts`: runs one of the repository's TypeScript programs, such as
// the one that takes the README's picture. Nothing is bundled: each file keeps its own address.
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const file = process.argv[2];
if (file === undefined) {
  console.error('node tests/support/program.js FILE.ts');
  process.exit(2);
}
await runnerImport(resolve(file), { root: ROOT, configFile: false, logLevel: 'warn' });
