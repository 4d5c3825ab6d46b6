import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { firstPicture, openBench } from '../support/launch.ts';

/** What may stand between a person and the first picture, in bytes of gzip. */
const BUDGET = 350_000;

/** Notes, on the page's own clock, when the bench says that its first frame was drawn. */
function watchFirstPicture(): void {
  const note = (): void => {
    if (document.documentElement?.dataset['firstPicture'] !== '1') return;
    if (performance.getEntriesByName('first-picture').length > 0) return;
    performance.mark('first-picture');
  };
  new MutationObserver(note).observe(document, {
    attributes: true,
    attributeFilter: ['data-first-picture'],
    subtree: true,
  });
}

it('asks for at most 350 kB of JavaScript, gzipped, before the first picture', async () => {
  const bench = await openBench({ before: (page) => page.addInitScript(watchFirstPicture) });
  try {
    await firstPicture(bench.page);
    await bench.page.waitForLoadState('networkidle');
    const asked = await bench.page.evaluate(() => {
      const drawn = performance.getEntriesByName('first-picture')[0];
      if (drawn === undefined) throw new Error('The first picture was not marked.');
      return performance
        .getEntriesByType('resource')
        .filter((entry) => entry.startTime <= drawn.startTime && /\.js($|\?)/.test(entry.name))
        .map((entry) => entry.name);
    });
    const sizes = await Promise.all(
      [...new Set(asked)].map(async (url): Promise<[string, number]> => {
        const body = await (await fetch(url)).arrayBuffer();
        return [new URL(url).pathname, gzipSync(new Uint8Array(body), { level: 9 }).length];
      }),
    );
    const total = sizes.reduce((sum, [, size]) => sum + size, 0);
    expect(sizes.length).toBeGreaterThan(0);
    expect(total, JSON.stringify(sizes)).toBeLessThanOrEqual(BUDGET);
  } finally {
    await bench.close();
  }
});
