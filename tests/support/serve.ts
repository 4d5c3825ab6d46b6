// Before the browser tests: a current build, a copy of it served on a free port, and a Chromium.
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { isBuilt } from '../../src/serve/build.js';
import { type Chromium, findChromium } from './chromium.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the built bench is served, with a slash at the end. */
    origin: string;
    /** The folder that is served there. */
    served: string;
    chromium: Chromium;
  }
}

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const CACHE = `${ROOT}/node_modules/.cache`;
const CONFIG = { root: `${ROOT}/src`, configFile: `${ROOT}/vite.config.ts` };

/** A built bench on a free port of this machine. */
export interface Served {
  readonly origin: string;
  readonly folder: string;
  close(): Promise<void>;
}

/** In a process of its own: the test runner's NODE_ENV would bundle React's development build. */
function buildBench(): void {
  const vite = `${ROOT}/node_modules/vite/bin/vite.js`;
  const env = { ...process.env, NODE_ENV: 'production' };
  execFileSync(process.execPath, [vite, 'build', '--logLevel', 'warn'], { cwd: ROOT, env });
}

/**
 * Builds if the sources have changed, and serves a copy of the result, so that a build made while
 * the tests run changes nothing under them.
 */
export async function serveBench(): Promise<Served> {
  if (!isBuilt(ROOT)) buildBench();
  mkdirSync(CACHE, { recursive: true });
  const folder = mkdtempSync(`${CACHE}/served-`);
  cpSync(`${ROOT}/dist`, folder, { recursive: true });
  const server = await preview({
    ...CONFIG,
    mode: 'production',
    build: { outDir: folder },
    preview: { port: 0, open: false },
  });
  const origin = server.resolvedUrls?.local[0];
  if (origin === undefined) throw new Error('The built bench is served at no address.');
  const close = async (): Promise<void> => {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  };
  return { origin, folder, close };
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const found = await findChromium();
  console.log(`Browser tests run in ${found.name}`);
  const served = await serveBench();
  project.provide('origin', served.origin);
  project.provide('served', served.folder);
  project.provide('chromium', found);
  return served.close;
}
