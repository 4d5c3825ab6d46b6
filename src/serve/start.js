// `npm start`: installs and builds what is missing, serves the built bench on this machine only,
// and opens a browser where there is one. No package is imported before they are installed.
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { isBuilt } from './build.js';
import { install, runNpm } from './install.js';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const HELP = `npm start -- [--port NUMBER] [--no-open]
  --port NUMBER   the port to serve on (else 4173, or the next free one)
  --no-open       print the address and open no browser`;

/**
 * What the words after `npm start --` ask for; ends the program if they say nothing known.
 * @returns {{ port: number | undefined, opens: boolean }}
 */
function readWords() {
  try {
    const { values } = parseArgs({
      options: {
        port: { type: 'string' },
        'no-open': { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    });
    if (values.help) {
      console.log(HELP);
      process.exit(0);
    }
    const port = values.port === undefined ? undefined : Number(values.port);
    if (port !== undefined && !(Number.isInteger(port) && port >= 0 && port <= 65535)) {
      throw new Error(`--port wants a whole number from 0 to 65535, not '${values.port}'`);
    }
    return { port, opens: !values['no-open'] && !process.env['CI'] };
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    console.error(HELP);
    process.exit(2);
  }
}

/**
 * The command that opens an address in the person's browser, or nothing where no screen is.
 * @param {string} address
 * @returns {[string, string[]] | undefined}
 */
function browserCommand(address) {
  if (process.platform === 'darwin') return ['open', [address]];
  if (process.platform === 'win32') return ['cmd', ['/c', 'start', '', address]];
  if (process.env['DISPLAY'] || process.env['WAYLAND_DISPLAY']) return ['xdg-open', [address]];
  return undefined;
}

/**
 * Opens the address in a browser. The address is printed anyway, so a failure is no news.
 * @param {string} address
 */
function openBrowser(address) {
  const command = browserCommand(address);
  if (command === undefined) return;
  const child = spawn(command[0], command[1], { detached: true, stdio: 'ignore' });
  child.on('error', () => {});
  child.unref();
}

const { port, opens } = readWords();
install(ROOT);
if (!isBuilt(ROOT)) {
  console.log('Building the bench ...');
  const status = runNpm(ROOT, ['run', '--silent', 'build', '--', '--logLevel', 'warn']);
  if (status !== 0) {
    console.error('The bench could not be built; the message is above.');
    process.exit(status);
  }
}

const { preview } = await import('vite');
const server = await preview({
  root: `${ROOT}/src`,
  configFile: `${ROOT}/vite.config.ts`,
  preview: port === undefined ? {} : { port, strictPort: port !== 0 },
}).catch((error) => {
  console.error(error.message);
  process.exit(1);
});
const address = server.resolvedUrls?.local[0] ?? '';
console.log(`Armscribe is at ${address}  (Ctrl+C stops it)`);
if (opens) openBrowser(address);

for (const signal of ['SIGINT', 'SIGTERM']) {
  process.on(signal, () => process.exit(0));
}
