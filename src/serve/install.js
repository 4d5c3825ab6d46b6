// Installs what is missing, needing nothing but Node and the npm that comes with it.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** @typedef {{ version?: string, optional?: boolean }} Entry */

/**
 * The packages that a lock file lists, by their folder.
 * @param {string} path
 * @returns {Record<string, Entry>}
 */
function readPackages(path) {
  return JSON.parse(readFileSync(path, 'utf8')).packages;
}

/**
 * True if node_modules holds what package-lock.json asks for. Optional packages, those of other
 * platforms, may be absent.
 * @param {string} root the project's folder
 * @returns {boolean}
 */
export function isInstalled(root) {
  const record = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(record)) return false;
  const present = readPackages(record);
  return Object.entries(readPackages(join(root, 'package-lock.json'))).every(([folder, wanted]) => {
    if (folder === '') return true;
    const found = present[folder];
    if (found === undefined) return wanted.optional === true;
    return found.version === wanted.version && existsSync(join(root, folder, 'package.json'));
  });
}

/**
 * Runs npm in the project's folder and gives its exit status.
 * @param {string} root the project's folder
 * @param {string[]} words
 * @returns {number}
 */
export function runNpm(root, words) {
  const cli = process.env['npm_execpath'];
  const options = /** @type {const} */ ({ cwd: root, stdio: 'inherit' });
  // Under `npm start` npm says where it is; outside it the one on PATH is taken.
  const { status } = cli?.endsWith('.js')
    ? spawnSync(process.execPath, [cli, ...words], options)
    : spawnSync('npm', words, { ...options, shell: process.platform === 'win32' });
  return status ?? 1;
}

/**
 * Ends the program with a sentence if this Node is too old for the tools.
 * @param {string} root the project's folder
 */
function requireNode(root) {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > 22 || (major === 22 && minor >= 12) || (major === 20 && minor >= 19)) return;
  const { engines } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  console.error(`Armscribe needs Node ${engines.node}; this is ${process.versions.node}.`);
  process.exit(1);
}

/**
 * Makes node_modules what package-lock.json says, or ends the program saying why it can't.
 * @param {string} root the project's folder
 */
export function install(root) {
  requireNode(root);
  if (isInstalled(root)) return;
  console.log('Installing the packages of package-lock.json (npm ci) ...');
  // The build tools are development packages: they are wanted even where NODE_ENV is production.
  // The log level is set because a silent npm outside would silence the reason for a failure here.
  const words = ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=notice'];
  const status = runNpm(root, words);
  if (status === 0) return;
  console.error('The packages could not be installed: npm ci failed with the message above.');
  process.exit(status);
}
