import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { type Edges, insetsOf } from '../../src/panels/insets.ts';
import { DOCKED_SHEETS } from '../../src/panels/workSheets.ts';
import { type Bench, type BenchOptions, firstPicture, openBench } from '../support/launch.ts';
import { SHIPPED, shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

function eventually<T>(read: () => T | Promise<T>, message = '') {
  return expect.poll(read, { timeout: 20_000, message });
}

async function open(options: BenchOptions): Promise<Page> {
  bench = await openBench({ before: withoutPicture, ...options });
  const { page } = bench;
  await page.locator('.transport').waitFor();
  await eventually(() => page.locator('.gap-tile [data-part="figure"]').textContent()).toBe('40.4');
  return page;
}

/** What lies over the stage, part by part; none of it may lie over another. */
const PARTS = [
  '.place-top',
  '.place-points',
  '.place-map',
  '.gap-tile',
  '.transport',
  '.place-foot .caution-line',
  '.rail-left',
  '.rail-right',
  '.place-work',
  '.place-readings',
] as const;

/** What a tab of a small window shows, once it is loaded. */
const BODY = ['.readings', '.map-card', '.points', '[data-work] > *']
  .map((part) => `.phone-body > ${part}`)
  .join(', ');

/** What the browser tells of a shift of the layout. */
interface Shift {
  readonly value: number;
}

interface Box extends Edges {
  readonly name: string;
}

function boxesOf(page: Page, parts: readonly string[]): Promise<Box[]> {
  return page.evaluate(
    (names) =>
      names.flatMap((name) => {
        const element = document.querySelector(name);
        if (element === null) return [];
        const { left, right, top, bottom } = element.getBoundingClientRect();
        return [{ name, left, right, top, bottom }];
      }),
    parts,
  );
}

/** Overlaps and overhangs in words, none at best; what meets along a line does not overlap. */
function faults(boxes: readonly Box[], width: number, height: number): string[] {
  const found: string[] = [];
  boxes.forEach((a, i) => {
    if (a.left < -1 || a.top < -1 || a.right > width + 1 || a.bottom > height + 1)
      found.push(`${a.name} reaches out of the window`);
    for (const b of boxes.slice(i + 1)) {
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const upward = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (across > 1 && upward > 1) found.push(`${a.name} and ${b.name} overlap`);
    }
  });
  return found;
}

function tab(page: Page, name: string) {
  return page.locator('.rail').getByRole('button', { name, exact: true });
}

async function expectApart(page: Page, least: number): Promise<void> {
  const { width, height } = page.viewportSize()!;
  await eventually(async () => faults(await boxesOf(page, PARTS), width, height)).toEqual([]);
  const boxes = await boxesOf(page, PARTS);
  const { left, right, top, bottom } = insetsOf(width, height, boxes);
  expect(Math.min(width - left - right, height - top - bottom)).toBeGreaterThanOrEqual(least);
}

describe('the panels around the stage', () => {
  it.each([
    [1440, 900, 300],
    [1024, 768, 190],
    [1280, 720, 190],
    [1200, 600, 150],
    [1920, 1080, 300],
    [2560, 1440, 300],
  ])(
    'lie apart and leave the corner its place at %d × %d, whatever is open',
    async (width, height, least) => {
      const page = await open({ width, height });
      await page.locator('.map-card').waitFor();
      await expectApart(page, least);
      await tab(page, 'Points').click();
      await page.locator('.points').waitFor();
      await expectApart(page, least);
      for (const { key, label } of DOCKED_SHEETS) {
        await tab(page, label).click();
        await page.locator(`[data-work="${key}"] > *`).first().waitFor();
        await expectApart(page, least);
      }
      await page.getByRole('button', { name: 'Make the sheet wider' }).click();
      await expectApart(page, 150);
      const sheet = await page.locator('.place-work').boundingBox();
      expect(sheet?.width).toBeGreaterThan(540);
    },
  );

  it('are brought forward by their tabs, one in the place of another', async () => {
    const page = await open({ width: 1024, height: 768 });
    const shown = async (): Promise<string[]> =>
      (await boxesOf(page, ['.place-map', '.place-work', '.place-readings'])).map(
        ({ name }) => name,
      );
    await eventually(shown).toEqual(['.place-map', '.place-readings']);
    await tab(page, DOCKED_SHEETS[0]!.label).click();
    await eventually(shown).toEqual(['.place-work']);
    await tab(page, 'Map').click();
    await eventually(shown).toEqual(['.place-map', '.place-readings']);
    await tab(page, 'Readings').click();
    await eventually(shown).toEqual(['.place-map']);
    await tab(page, 'Readings').click();
    await eventually(shown).toEqual(['.place-map', '.place-readings']);
  });

  it('give a wide sheet the points’ place in a narrow window, and have it back by their tab', async () => {
    const page = await open({ width: 1024, height: 768 });
    await tab(page, 'Points').click();
    await tab(page, DOCKED_SHEETS[0]!.label).click();
    const shown = (): Promise<number> => page.locator('.place-points').count();
    await eventually(shown).toBe(1);
    await page.getByRole('button', { name: 'Make the sheet wider' }).click();
    await eventually(shown).toBe(0);
    await tab(page, 'Points').click();
    await eventually(shown).toBe(1);
    await page.getByRole('button', { name: 'Make the sheet wider' }).click();
    await eventually(shown).toBe(0);
    await page.keyboard.press('Escape');
    await eventually(shown).toBe(1);
    expect(await page.locator('.place-work').count()).toBe(0);
  });

  it('are put away by Escape, the last opened first, and never while a list lies over them', async () => {
    const page = await open({});
    const isOpen = async (): Promise<readonly number[]> => [
      await page.locator('.points').count(),
      await page.locator('.place-work').count(),
      await page.locator('.menu-sheet:popover-open').count(),
    ];
    await tab(page, DOCKED_SHEETS[0]!.label).click();
    await tab(page, 'Points').click();
    await page.getByRole('button', { name: 'Drawings in the scene' }).click();
    await eventually(isOpen).toEqual([1, 1, 1]);
    await page.keyboard.press('Escape');
    await eventually(isOpen).toEqual([1, 1, 0]);
    await page.keyboard.press('Escape');
    await eventually(isOpen).toEqual([0, 1, 0]);
    await page.keyboard.press('Escape');
    await eventually(isOpen).toEqual([0, 0, 0]);
    await page.keyboard.press('Escape');
    expect(await page.locator('.readings, .map-card').count()).toBe(2);
  });

  it('stay where they are while Escape leaves a field', async () => {
    const page = await open({});
    await tab(page, 'Points').click();
    const field = page.getByRole('textbox', { name: 'Travel', exact: true });
    await field.fill('50');
    await page.keyboard.press('Escape');
    await eventually(() => field.inputValue()).toBe('0.0');
    expect(await page.locator('.place-points').count()).toBe(1);
    await page.keyboard.press('Escape');
    await eventually(() => page.locator('.place-points').count()).toBe(0);
  });

  it.each([
    [1440, 900, 1],
    [1920, 1080, 1.15],
    [2560, 1440, 1.45],
  ])(
    'are drawn larger in a large window, and the map’s dot is where the hand is: %d × %d',
    async (width, height, zoom) => {
      const page = await open({ width, height });
      const pad = page.locator('[data-part="pad"]');
      await pad.waitFor();
      const figure = page.locator('[data-reading="camber"] [data-part="figure"]');
      const size = await figure.evaluate((element) => element.getBoundingClientRect().height);
      expect(size / 50).toBeCloseTo(zoom, 1);
      // The card settles while its first map is worked out: each press is compared with where the pad is then.
      const miss = async (): Promise<number> => {
        const box = await pad.boundingBox();
        if (box === null) return Number.NaN;
        const [x, y] = [box.x + 0.7 * box.width, box.y + 0.35 * box.height];
        await page.mouse.click(x, y);
        const dot = await page.locator('[data-part="dot"]').evaluate((element) => {
          const { left, right, top, bottom } = element.getBoundingClientRect();
          return [(left + right) / 2, (top + bottom) / 2] as const;
        });
        return Math.hypot(dot[0] - x, dot[1] - y);
      };
      await eventually(miss).toBeLessThan(2);
      await page.getByRole('button', { name: 'Drawings in the scene' }).click();
      const [list, button] = await boxesOf(page, ['.menu-sheet:popover-open', '.menu button']);
      if (list === undefined || button === undefined) throw new Error('There is no menu.');
      expect(list.top - button.bottom).toBeLessThan(12);
      expect(list.top).toBeGreaterThanOrEqual(button.bottom);
      expect(Math.abs(list.right - button.right)).toBeLessThan(2);
    },
  );

  it('are found again after a reload', async () => {
    const page = await open({});
    const { key, label } = DOCKED_SHEETS[0]!;
    await tab(page, label).click();
    await page.getByRole('button', { name: 'Make the sheet wider' }).click();
    await page.reload();
    await page.locator(`[data-work="${key}"]`).waitFor();
    await page.getByRole('button', { name: 'Make the sheet narrower' }).waitFor();
  });

  it.each([1440, 1024, 390])(
    'leave the whole name of every shipped model at %d px',
    async (width) => {
      const page = await open({ width, height: 844 });
      for (const name of SHIPPED) {
        const model = shipped(name);
        await page.evaluate(
          ([file, text]) => {
            const dataTransfer = new DataTransfer();
            dataTransfer.items.add(new File([text], file, { type: 'application/json' }));
            document.body.dispatchEvent(
              new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }),
            );
          },
          [`${name}.json`, JSON.stringify(model)] as const,
        );
        const button = page.locator('.files-button');
        await eventually(() => button.getAttribute('title')).toBe(model.name);
        const cut = await button
          .locator('span')
          .evaluate((element) => element.scrollHeight - element.clientHeight);
        if (width > 720) expect(cut, model.name).toBeLessThanOrEqual(1);
      }
    },
  );

  it('have a picture between them: the wheel stands in the free part, whatever is opened', async () => {
    const page = await open({ before: async () => undefined });
    await firstPicture(page);
    const stands = async (): Promise<boolean> => {
      const place = await page.locator('[data-stage][data-resting]').getAttribute('data-wheel');
      const [x = Number.NaN, y = Number.NaN] = (place ?? '').split(',').map(Number);
      const { left, right, top, bottom } = insetsOf(1440, 900, await boxesOf(page, PARTS));
      return x > left + 40 && x < 1440 - right - 40 && y > top + 40 && y < 900 - bottom - 40;
    };
    await eventually(stands).toBe(true);
    await tab(page, 'Points').click();
    await tab(page, DOCKED_SHEETS[0]!.label).click();
    await page.getByRole('button', { name: 'Make the sheet wider' }).click();
    await eventually(stands).toBe(true);
  });
});

describe('a small window', () => {
  it.each([
    [720, 450],
    [844, 390],
    [960, 540],
    [820, 600],
    [1100, 660],
    [390, 844],
    [768, 1024],
  ])('keeps everything readable and in reach at %d × %d', async (width, height) => {
    const page = await open({ width, height, context: { hasTouch: true } });
    const parts = ['.place-top', '.gap-tile', '.transport', '.phone-tabs', '.phone-body'];
    await eventually(async () => faults(await boxesOf(page, parts), width, height)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(
      false,
    );
    const free = insetsOf(
      width,
      height,
      await boxesOf(page, ['.place-top', '.gap-tile', '.place-sheet']),
    );
    expect(
      Math.min(width - free.left - free.right, height - free.top - free.bottom),
    ).toBeGreaterThan(200);
    const tabs = page.getByRole('tab');
    expect(await tabs.count()).toBe(3 + DOCKED_SHEETS.length);
    for (let i = 0; i < (await tabs.count()); i += 1) {
      await tabs.nth(i).tap();
      await eventually(() => tabs.nth(i).getAttribute('aria-selected')).toBe('true');
      // What is loaded when it is first asked for would push the last line away from under the finger.
      await page.locator(BODY).first().waitFor();
      const body = await page.locator('.phone-body').boundingBox();
      expect(body?.height).toBeGreaterThan(130);
      // The last line of the body can be brought into view and pressed.
      await page.locator('.phone-body > .caution-line').tap();
      await page.getByRole('dialog', { name: 'Cautions' }).waitFor();
      await page.keyboard.press('Escape');
      await page.getByRole('dialog', { name: 'Cautions' }).waitFor({ state: 'detached' });
    }
    await page.getByRole('button', { name: 'Lift, cycle and poses' }).tap();
    await page.getByRole('button', { name: 'Ride height' }).tap();
    await page.getByRole('button', { name: 'View', exact: true }).tap();
    await page.getByRole('button', { name: 'Keys and help' }).tap();
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
  });

  it('has its sheet drawn up and down by the grip, by a tap and by keys', async () => {
    const page = await open({ width: 390, height: 844 });
    const sheet = page.locator('.place-sheet');
    const step = (): Promise<string | null> => sheet.getAttribute('data-step');
    const grip = page.getByRole('slider', { name: 'Height of the sheet' });
    const heightOf = async (): Promise<number> => (await sheet.boundingBox())?.height ?? 0;
    async function drag(by: number): Promise<void> {
      const box = await grip.boundingBox();
      if (box === null) throw new Error('There is no grip.');
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await page.mouse.move(x, y);
      await page.mouse.down();
      for (const share of [0.3, 0.7, 1]) await page.mouse.move(x, y + share * by);
      await page.mouse.up();
    }
    expect(await step()).toBe('half');
    await drag(-160);
    await eventually(step).toBe('tall');
    await eventually(heightOf).toBeGreaterThan(600);
    await drag(430);
    await eventually(step).toBe('low');
    await eventually(heightOf).toBeLessThan(300);
    await page.getByRole('tab', { name: 'Map' }).click();
    await eventually(step).toBe('half');
    await grip.click();
    await eventually(step).toBe('tall');
    await grip.press('ArrowDown');
    await grip.press('ArrowDown');
    await eventually(step).toBe('low');
    // The keys of the grip move no wheel.
    expect(await page.locator('.transport').getAttribute('data-travel')).toBe('0');
  });

  it('says why there is no picture where it can be read, at every height of the sheet', async () => {
    const page = await open({ width: 390, height: 844 });
    const grip = page.getByRole('slider', { name: 'Height of the sheet' });
    for (const key of ['', 'ArrowUp', 'ArrowDown', 'ArrowDown']) {
      if (key !== '') await grip.press(key);
      await eventually(async () =>
        faults(await boxesOf(page, ['.place-top', '.stage-trouble', '.place-sheet']), 390, 844),
      ).toEqual([]);
      const isSeen = await page.locator('.stage-trouble').evaluate((element) => {
        const { left, top } = element.querySelector('p')!.getBoundingClientRect();
        const box = element.getBoundingClientRect();
        return left >= box.left && top >= box.top && box.height > 90;
      });
      expect(isSeen).toBe(true);
    }
  });
});

it('lays nothing out in another type first: what a hand aims at stays where it is', async () => {
  const page = await open({
    before: async (opened) => {
      await withoutPicture(opened);
      await opened.addInitScript(() => {
        const moved: number[] = [];
        Object.assign(window, { moved });
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) moved.push((entry as never as Shift).value);
        }).observe({ type: 'layout-shift', buffered: true });
      });
      await opened.route('**/*.woff2', async (route) => {
        await new Promise((resolve) => setTimeout(resolve, 100));
        await route.continue();
      });
    },
  });
  await page.evaluate(() => document.fonts.ready);
  await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn))));
  expect(await page.evaluate(() => (window as never as { moved: number[] }).moved)).toEqual([]);
});
