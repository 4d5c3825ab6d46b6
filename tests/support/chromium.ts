// Finds a Chromium that can draw WebGL2: the one named, the one installed, or the packaged one.
import { execFileSync } from 'node:child_process';
import {
  accessSync,
  constants,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium } from 'playwright-core';

/** A browser binary and what its environment must add. Plain data, so that it can be handed on. */
export interface Chromium {
  readonly name: string;
  readonly path: string;
  readonly environment: Readonly<Record<string, string>>;
}

const CACHE = fileURLToPath(new URL('../../node_modules/.cache/chromium', import.meta.url));
const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
/** Where installers put it without touching PATH. */
const PLACES = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:/Program Files/Google/Chrome/Application/chrome.exe',
];

const ARGUMENTS = [
  '--enable-unsafe-swiftshader',
  '--use-angle=swiftshader',
  '--ignore-gpu-blocklist',
  '--force-color-profile=srgb',
  // Chromium refuses to sandbox itself for root, as containers run.
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
];

/** Starts a Chromium, headless, drawing in software the same way everywhere. */
export function startChromium(candidate: Chromium): Promise<Browser> {
  const inherited = Object.entries(process.env).filter(([, value]) => value !== undefined);
  return chromium.launch({
    executablePath: candidate.path,
    args: ARGUMENTS,
    env: { ...(Object.fromEntries(inherited) as Record<string, string>), ...candidate.environment },
  });
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function installed(): Chromium[] {
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...onPath, ...PLACES]
    .filter(isExecutable)
    .map((path) => ({ name: path, path, environment: {} }));
}

/**
 * Unpacks the packaged Chromium into a folder. It is done in a child process and with a TMPDIR of
 * its own, because the package trusts any older copy it finds there and changes its process's
 * environment; the variable it is given makes it unpack the shared libraries of a bare machine.
 */
function unpack(entry: string, folder: string): void {
  mkdirSync(CACHE, { recursive: true });
  const fresh = mkdtempSync(join(CACHE, 'unpack-'));
  const program = `const it = require(${JSON.stringify(entry)});
    (it.default ?? it).executablePath().catch((error) => { console.error(error); process.exit(1); });`;
  execFileSync(process.execPath, ['-e', program], {
    env: { ...process.env, TMPDIR: fresh, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  // Its own font list names a fixed folder; with no font at all its renderer crashes.
  writeFileSync(
    join(fresh, 'fonts.conf'),
    `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${folder}/fonts</dir><dir>/usr/share/fonts</dir><cachedir>${folder}/fonts-cache</cachedir></fontconfig>`,
  );
  try {
    renameSync(fresh, folder);
  } catch (error) {
    // Another run may have been first; then its copy is as good.
    rmSync(fresh, { recursive: true, force: true });
    if (!existsSync(join(folder, 'chromium'))) throw error;
  }
}

/** The Chromium that comes as a package, unpacked; nothing where it does not run. */
export function packagedChromium(): Chromium | undefined {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  const require = createRequire(import.meta.url);
  const entry = require.resolve('@sparticuz/chromium');
  const description = readFileSync(join(dirname(entry), '../../package.json'), 'utf8');
  const { version } = JSON.parse(description) as { version: string };
  const folder = join(CACHE, version);
  if (!existsSync(join(folder, 'chromium'))) unpack(entry, folder);
  const libraries = [join(folder, 'al2023/lib'), process.env['LD_LIBRARY_PATH'] ?? ''];
  return {
    name: `@sparticuz/chromium ${version}`,
    path: join(folder, 'chromium'),
    environment: {
      LD_LIBRARY_PATH: libraries.filter((path) => path !== '').join(delimiter),
      FONTCONFIG_FILE: join(folder, 'fonts.conf'),
    },
  };
}

/** Says why a Chromium can't be used, or nothing if it starts and gives a WebGL2 context. */
async function objection(candidate: Chromium): Promise<string | undefined> {
  let browser: Browser | undefined;
  try {
    browser = await startChromium(candidate);
    const page = await browser.newPage();
    const hasWebGL2 = await page.evaluate(
      () => document.createElement('canvas').getContext('webgl2') !== null,
    );
    return hasWebGL2 ? undefined : 'starts, but gives no WebGL2 context';
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  } finally {
    await browser?.close();
  }
}

/** Makers of candidates, in order: the packaged one is unpacked only when its turn comes. */
function candidates(): (() => Chromium | undefined)[] {
  const named = process.env['E2E_CHROMIUM'];
  if (named === 'packaged') return [packagedChromium];
  if (named) return [() => ({ name: named, path: named, environment: {} })];
  return [...installed().map((candidate) => () => candidate), packagedChromium];
}

/**
 * The first Chromium that starts and draws WebGL2. `E2E_CHROMIUM` names a binary, or `packaged`;
 * what it names is the only one tried.
 *
 * @throws with the objection to every candidate, if none will do. Browser tests are never skipped.
 */
export async function findChromium(): Promise<Chromium> {
  const objections: string[] = [];
  for (const make of candidates()) {
    const candidate = make();
    if (candidate === undefined) continue;
    const reason = await objection(candidate);
    if (reason === undefined) return candidate;
    objections.push(`${candidate.name}: ${reason}`);
  }
  throw new Error(
    `No Chromium with WebGL2 was found. Install one, or name one by E2E_CHROMIUM.\n${objections.join('\n')}`,
  );
}
