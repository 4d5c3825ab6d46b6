import type { Page } from 'playwright-core';

/** Takes the picture away: numbers, map and keys do not wait for a scene drawn in software, and need none. */
export async function withoutPicture(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const { getContext } = HTMLCanvasElement.prototype;
    HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, ...words: never[]) {
      return String(words[0]).startsWith('webgl')
        ? null
        : (getContext as (...words: never[]) => unknown).apply(this, words);
    } as typeof getContext;
  });
}
