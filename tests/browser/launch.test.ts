import { afterEach, expect, inject, it } from 'vitest';
import { packagedChromium, startChromium } from '../support/chromium.ts';
import { type Bench, expectQuiet, openBench } from '../support/launch.ts';

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

it('opens the built bench at the size, language and colour scheme asked for, quietly', async () => {
  bench = await openBench({ width: 390, height: 844, colorScheme: 'dark', query: { try: 'a b' } });
  const seen = await bench.page.evaluate(() => ({
    width: innerWidth,
    height: innerHeight,
    language: navigator.language,
    isDark: matchMedia('(prefers-color-scheme: dark)').matches,
    query: location.search,
    title: document.title,
  }));
  expect(seen).toEqual({
    width: 390,
    height: 844,
    language: 'en-US',
    isDark: true,
    query: '?try=a+b',
    title: expect.stringContaining('Armscribe'),
  });
  expect(bench.page.url().startsWith(inject('origin'))).toBe(true);
  expectQuiet(bench.errors);
});

it('hears warnings, errors, stray requests and missing files, and will not close over them', async () => {
  bench = await openBench();
  await bench.page.evaluate(async () => {
    console.warn('a warning');
    console.error('an error');
    setTimeout(() => {
      throw new Error('thrown in the page');
    });
    await fetch('http://stray.invalid/').catch(() => undefined);
    await fetch('./no-such-file.json');
  });
  await expect.poll(() => bench?.errors.join('\n')).toContain('thrown in the page');
  const heard = bench.errors.join('\n');
  expect(heard).toContain('console warning: a warning');
  expect(heard).toContain('console error: an error');
  expect(heard).toContain('request leaves the origin: http://stray.invalid/');
  expect(heard).toContain('answer 404');
  expect(() => expectQuiet(bench?.errors ?? [])).toThrow('a warning');
  await expect(bench.close()).rejects.toThrow('an error');
  bench = undefined;
});

it('lets the known notices pass, and only those', async () => {
  bench = await openBench();
  await bench.page.evaluate(() => {
    console.warn('THREE.Clock: This module has been deprecated. Please use THREE.Timer instead.');
    console.warn('THREE.Clock: something else.');
  });
  await expect.poll(() => bench?.errors).toEqual(['console warning: THREE.Clock: something else.']);
  bench.errors.length = 0;
});

// The packaged browser is what a machine without a Chromium gets: it must not rot where there is one.
it.runIf(process.platform === 'linux' && process.arch === 'x64')(
  'starts the packaged Chromium, which draws WebGL2',
  async () => {
    const packaged = packagedChromium();
    if (packaged === undefined) throw new Error('There is no packaged Chromium here.');
    const browser = await startChromium(packaged);
    try {
      const page = await browser.newPage({ locale: 'en-US' });
      const renderer = await page.evaluate(() => {
        const context = document.createElement('canvas').getContext('webgl2');
        return context?.getParameter(context.VERSION);
      });
      expect(renderer).toContain('WebGL 2.0');
    } finally {
      await browser.close();
    }
  },
);
