#!/usr/bin/env node
/**
 * Starts the command line. Node 20 cannot run TypeScript, so the sources are bundled once into
 * node_modules/.cache/armscribe and bundled again whenever one of them has changed. Plain JavaScript, for it runs first.
 * `--build` only makes the bundle (npm's prepare step calls it) and never fails an installation.
 */
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const cache = join(root, 'node_modules', '.cache', 'armscribe');

/** One text that changes when any source file is added, removed or edited, in either direction of time. */
function fingerprint() {
  const hash = createHash('sha256').update(process.version);
  const own = ['mesh', 'cli', 'paper', 'words', 'charts'].map((name) => join('src', name));
  for (const folder of ['solver', ...own]) {
    const names = readdirSync(join(root, folder), { recursive: true }).map(String).sort();
    for (const name of names) {
      const { mtimeMs, size } = statSync(join(root, folder, name));
      hash.update(`${folder}/${name} ${mtimeMs} ${size}\n`);
    }
  }
  return hash.digest('hex').slice(0, 16);
}

/** @returns {Promise<string>} the command line as one module */
async function bundle() {
  const { rolldown } = await import('rolldown');
  const build = await rolldown({
    input: join(root, 'src', 'cli', 'main.ts'),
    platform: 'node',
    // Nothing of the type checker's settings bears on what runs.
    tsconfig: false,
    logLevel: 'silent',
  });
  const { output } = await build.generate({ format: 'esm', codeSplitting: false });
  await build.close();
  return output[0].code;
}

/**
 * Writes beside the final name and renames, so that two starts at once never read half a file.
 * @param {string} code
 * @param {string} file
 */
function keep(code, file) {
  mkdirSync(cache, { recursive: true });
  const draft = `${file}.${process.pid}`;
  writeFileSync(draft, code);
  renameSync(draft, file);
  for (const name of readdirSync(cache)) {
    if (/^cli-.*\.mjs$/.test(name) && join(cache, name) !== file)
      rmSync(join(cache, name), { force: true });
  }
}

/** The address of an up-to-date bundle; one held in memory where the cache folder cannot be written. */
async function ready() {
  const file = join(cache, `cli-${fingerprint()}.mjs`);
  if (existsSync(file)) return pathToFileURL(file).href;
  const code = await bundle();
  try {
    keep(code, file);
    return pathToFileURL(file).href;
  } catch {
    return `data:text/javascript;base64,${Buffer.from(code).toString('base64')}`;
  }
}

/** What is told when there is no command line to start: before `npm ci`, or with sources that do not build. */
function explain(/** @type {unknown} */ cause) {
  const reason = cause instanceof Error ? cause.message.split('\n', 1)[0] : String(cause);
  process.stderr.write(`armscribe: cannot build the command line (${reason}); run npm ci first\n`);
  process.exitCode = 2;
}

if (process.argv[2] === '--build') {
  await ready().catch(() => undefined);
} else {
  const address = await ready().catch(explain);
  if (address !== undefined) (await import(address)).run(process.argv.slice(2));
}
