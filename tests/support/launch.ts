// Opens the built bench in a real Chromium and hears everything it complains of.
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { type Chromium, startChromium } from './chromium.ts';

/** What may be heard without a test failing: exact, dated, each with its reason. */
const ALLOWED: readonly { since: string; text: RegExp; why: string }[] = [
  {
    since: '2026-11',
    text: /THREE\.Clock: This module has been deprecated\. Please use THREE\.Timer instead\./,
    why: '@react-three/fiber 9.8.2 makes a Clock itself.',
  },
  {
    since: '2026-11',
    text: /GL Driver Message \(OpenGL, Performance, GL_CLOSE_PATH_NV, High\): GPU stall due to ReadPixels/,
    why: 'Software rendering, when a screenshot is taken.',
  },
];

export interface BenchOptions {
  /** CSS pixels; 1440 × 900 if not given. */
  readonly width?: number;
  readonly height?: number;
  /** Path under the origin, without a slash before it. */
  readonly path?: string;
  readonly query?: Readonly<Record<string, string>>;
  readonly locale?: string;
  readonly colorScheme?: 'light' | 'dark';
  /** More of the browser context: touch, reduced motion, pixel ratio, stored work. */
  readonly context?: BrowserContextOptions;
  /** True: readings and curves show their ± where the model states one; else they keep all their digits. */
  readonly plusMinus?: boolean;
  /** Run before the page's own scripts load: init scripts, routes, clocks. */
  readonly before?: (page: Page) => Promise<unknown>;
  /** Where the bench is served and by what it is opened, outside the test runner. */
  readonly origin?: string;
  readonly chromium?: Chromium;
}

export interface Bench {
  readonly page: Page;
  /** All that was complained of so far. A test that provokes a complaint empties it. */
  readonly errors: string[];
  readonly origin: string;
  /** Closes the page; throws if a complaint is left in `errors`. */
  close(): Promise<void>;
}

let browser: Promise<Browser> | undefined;

/** Closes the browser of this file of tests, if one was started. */
export async function closeBrowser(): Promise<void> {
  const started = browser;
  browser = undefined;
  await (await started)?.close();
}

/** Throws, naming them all, if the page has complained of anything. */
export function expectQuiet(errors: readonly string[]): void {
  if (errors.length === 0) return;
  throw new Error(`The page was not quiet:\n${errors.map((error) => `  ${error}`).join('\n')}`);
}

/** Puts every console warning and error, page error and stray or failed request into `errors`. */
function listen(context: BrowserContext, origin: string, errors: string[]): void {
  context.on('console', (message) => {
    if (message.type() !== 'error' && message.type() !== 'warning') return;
    const text = message.text();
    if (ALLOWED.some((entry) => entry.text.test(text))) return;
    errors.push(`console ${message.type()}: ${text}`);
  });
  context.on('weberror', (event) => {
    errors.push(`page error: ${event.error().stack ?? event.error().message}`);
  });
  context.on('request', (request) => {
    const { protocol, origin: asked } = new URL(request.url());
    if (protocol === 'data:' || protocol === 'blob:' || asked === new URL(origin).origin) return;
    errors.push(`request leaves the origin: ${request.url()}`);
  });
  context.on('response', (response) => {
    if (response.status() >= 400) errors.push(`answer ${response.status()}: ${response.url()}`);
  });
  context.on('page', (page) => {
    page.on('crash', () => errors.push('the page crashed'));
  });
}

async function surroundings(options: BenchOptions): Promise<{ origin: string; found: Chromium }> {
  if (options.origin !== undefined && options.chromium !== undefined) {
    return { origin: options.origin, found: options.chromium };
  }
  // Only inside the test runner: the picture of the README is taken without it.
  const { inject } = await import('vitest');
  return {
    origin: options.origin ?? inject('origin'),
    found: options.chromium ?? inject('chromium'),
  };
}

function hidePlusMinus(): void {
  try {
    localStorage.setItem('armscribe.plusMinus', 'hidden');
  } catch {
    // A page that may keep nothing: an empty one, or one whose storage is switched off.
  }
}

/**
 * Opens the built bench in a fresh context (nothing stored) and waits for its load event. The
 * browser is shared by the tests of one file.
 */
export async function openBench(options: BenchOptions = {}): Promise<Bench> {
  const { origin, found } = await surroundings(options);
  browser ??= startChromium(found);
  const context = await (await browser).newContext({
    viewport: { width: options.width ?? 1440, height: options.height ?? 900 },
    // Without one the packaged Chromium names a locale that Intl refuses.
    locale: options.locale ?? 'en-US',
    colorScheme: options.colorScheme ?? 'light',
    ...options.context,
  });
  const errors: string[] = [];
  listen(context, origin, errors);
  const page = await context.newPage();
  if (options.plusMinus !== true) await page.addInitScript(hidePlusMinus);
  await options.before?.(page);
  const address = new URL(options.path ?? '', origin);
  address.search = new URLSearchParams(options.query ?? {}).toString();
  await page.goto(address.href);
  const close = async (): Promise<void> => {
    await context.close();
    expectQuiet(errors);
  };
  return { page, errors, origin, close };
}

/** Waits until the bench says that its first frame was drawn. */
export async function firstPicture(page: Page): Promise<void> {
  await page.waitForFunction(() => document.documentElement.dataset['firstPicture'] === '1');
}
