// Whether the built bench in dist/ is that of the sources beside it.
// Plain JavaScript: `npm start` and the tests both read it, before anything is compiled.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';

const STAMP = 'build-stamp.txt';
const SOURCES = ['src', 'solver', 'models', 'vite.config.ts', 'tsconfig.json', 'package-lock.json'];

/**
 * Every file at or under a path, in a fixed order.
 * @param {string} path
 * @returns {string[]}
 */
function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}

/**
 * One hash over the names and contents of all that the build reads. Contents, not times: a fresh
 * clone, a deleted file and a changed branch all tell the truth.
 * @param {string} root the project's folder
 * @returns {string}
 */
export function hashSources(root) {
  const hash = createHash('sha256');
  for (const path of SOURCES.flatMap((name) => filesUnder(join(root, name)))) {
    hash.update(relative(root, path)).update('\0').update(readFileSync(path)).update('\0');
  }
  return hash.digest('hex');
}

/**
 * True if dist/ holds a finished build of the present sources.
 * @param {string} root the project's folder
 * @returns {boolean}
 */
export function isBuilt(root) {
  const stamp = join(root, 'dist', STAMP);
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === hashSources(root);
}

/**
 * Leaves the hash of the sources in dist/. It is taken before the first file is read, so that an
 * edit made while the build runs makes the build stale, not wrong.
 * @param {string} root the project's folder
 * @returns {import('vite').Plugin}
 */
export function buildStamp(root) {
  let hash = '';
  return {
    name: 'build-stamp',
    apply: (config, { command }) => command === 'build' && !config.build?.ssr,
    buildStart() {
      hash = hashSources(root);
    },
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: STAMP, source: hash });
    },
  };
}
