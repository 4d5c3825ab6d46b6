// The travel–lock map and the curves in the page, moved by real pointers and keys and compared with the solver.

import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createGapField } from '../../solver/clearance/gapField.ts';
import {
  assemble,
  createPose,
  createRodGap,
  type Model,
  placeParts,
  poseReport,
  rodGapInto,
  solve,
  writeModel,
} from '../../solver/index.ts';
import { createLockMap, FULL_GRID, mapInto } from '../../solver/map.ts';
import { rackRange } from '../../solver/model/defaults.ts';
import { withinStops, worstPlace } from '../../solver/worst.ts';
import { createMapFrame, xOfRack, yOfTravel } from '../../src/charts/mapFrame.ts';
import { travelRange } from '../../src/state/inputs.ts';
import { length, signed } from '../../src/words/format.ts';
import { type Bench, type BenchOptions, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

/** Software drawing can hold a frame up for seconds on a busy machine; nothing here is a matter of time. */
const PATIENCE = { timeout: 30_000 };
vi.setConfig({ testTimeout: 180_000 });

const FACTORY = shipped('half-ton-factory');
const LONG_TRAVEL = shipped('half-ton-long-travel');

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

const card = (page: Page): Locator => page.getByRole('region', { name: 'Travel–lock map' });
const part = (page: Page, name: string): Locator => card(page).locator(`[data-part="${name}"]`);

/** The full map of the present model is drawn. */
async function filled(page: Page): Promise<void> {
  await card(page).and(page.locator('[aria-busy="false"][data-full="1"]')).waitFor(PATIENCE);
}

/** On a slow machine a click may come between a new size and the page's next picture: here that picture never comes. */
async function withSizesHeldBack(page: Page): Promise<void> {
  await withoutPicture(page);
  await page.addInitScript(() => {
    const Observer = window.ResizeObserver;
    window.ResizeObserver = class extends Observer {
      constructor(heard: ResizeObserverCallback) {
        super((entries, observer) => {
          if (!(window as unknown as { holdSizes?: boolean }).holdSizes) heard(entries, observer);
        });
      }
    };
  });
}

async function open(options: BenchOptions = {}): Promise<Page> {
  bench = await openBench({ before: withoutPicture, ...options });
  await filled(bench.page);
  return bench.page;
}

async function openModel(page: Page, model: Model): Promise<void> {
  await page.getByRole('button', { name: /^Model: / }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file…' }).click();
  const buffer = Buffer.from(writeModel(model));
  await (await chooser).setFiles({ name: 'test.json', mimeType: 'application/json', buffer });
}

async function place(page: Page): Promise<{ travel: number; rack: number }> {
  return {
    travel: Number(await page.getByLabel('Travel, on the map').inputValue()),
    rack: Number(await page.getByLabel('Rack, on the map').inputValue()),
  };
}

function gapAt(model: Model, pair: 'wheel' | 'tyre', travel: number, rack: number): number {
  const corner = assemble(model);
  const pose = createPose();
  const rod = createRodGap(corner, pair);
  expect(solve(corner, pose, travel, rack)).toBe('reached');
  placeParts(corner, pose.data);
  rodGapInto(rod, pose);
  return rod.gap;
}

function worstOf(model: Model, pair: 'wheel' | 'tyre') {
  const corner = assemble(model);
  const field = createGapField(corner, `tieRod/${pair}`)!;
  const map = createLockMap(FULL_GRID.rows, FULL_GRID.columns);
  mapInto(corner, field, map, travelRange(model), rackRange(model.steering));
  return worstPlace(corner, map, field, undefined, withinStops(model, travelRange(model)))!;
}

/** Where a travel and a rack stand on the page, by the map's own paper; left lock on the left. */
async function spot(page: Page, model: Model, travel: number, rack: number) {
  const box = (await part(page, 'pad').boundingBox())!;
  const range = rackRange(model.steering);
  const frame = createMapFrame(box.width, box.height, travelRange(model), range, -1);
  return { x: box.x + xOfRack(frame, rack), y: box.y + yOfTravel(frame, travel) };
}

async function says(locator: Locator, text: string): Promise<void> {
  await expect.poll(() => locator.textContent(), PATIENCE).toBe(text);
}

describe('the dot', () => {
  it('is dragged anywhere, stops at the edges, and reads the solver’s gap where it stands', async () => {
    const page = await open();
    const from = await spot(page, FACTORY, 0, 0);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (const [travel, rack] of [
      [30, 20],
      [-62, -55],
      [88, -70],
    ] as const) {
      const to = await spot(page, FACTORY, travel, rack);
      await page.mouse.move(to.x, to.y, { steps: 6 });
      // One pixel is about a millimetre of travel.
      await expect.poll(async () => (await place(page)).travel, PATIENCE).toBeCloseTo(travel, -0.5);
      const now = await place(page);
      expect(Math.abs(now.travel - travel)).toBeLessThan(1);
      expect(Math.abs(now.rack - rack)).toBeLessThan(1);
      await says(part(page, 'gap'), length(gapAt(FACTORY, 'wheel', now.travel, now.rack), 'mm'));
      await says(part(page, 'travel'), signed(now.travel, 1));
      await says(part(page, 'rack'), signed(now.rack, 1));
    }
    await page.mouse.move(2, 100, { steps: 4 });
    await expect.poll(() => place(page), PATIENCE).toEqual({ travel: 105, rack: 72 });
    await page.mouse.up();
    await page.mouse.move(from.x, from.y);
    expect(await place(page)).toEqual({ travel: 105, rack: 72 });
    const report = poseReport(assemble(FACTORY), 105, 72) as unknown as { steerAngle: number };
    // The left edge is left lock.
    expect(report.steerAngle).toBeGreaterThan(20);
  });

  it('goes back to where it was taken by Escape, and the enlarged map stays', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'Enlarge the map' }).click();
    const first = await spot(page, FACTORY, 20, 10);
    await page.mouse.click(first.x, first.y);
    await expect.poll(async () => (await place(page)).travel, PATIENCE).not.toBe(0);
    const before = await place(page);
    const to = await spot(page, FACTORY, -50, -40);
    await page.mouse.move(to.x, to.y);
    await page.mouse.down();
    await expect.poll(async () => (await place(page)).travel, PATIENCE).toBeLessThan(-49);
    await page.keyboard.press('Escape');
    await expect.poll(() => place(page), PATIENCE).toEqual(before);
    const { x, y } = await spot(page, FACTORY, 70, 40);
    await page.mouse.move(x, y);
    await page.mouse.up();
    expect(await place(page)).toEqual(before);
    expect((await card(page).boundingBox())!.width).toBeGreaterThan(1300);
  });

  it('jumps to a click, and to a finger', async () => {
    const page = await open({ context: { hasTouch: true } });
    const click = await spot(page, FACTORY, 50, -40);
    await page.mouse.click(click.x, click.y);
    await expect
      .poll(async () => Math.abs((await place(page)).travel - 50), PATIENCE)
      .toBeLessThan(1);
    const tap = await spot(page, FACTORY, -70, 33);
    await page.touchscreen.tap(tap.x, tap.y);
    await expect
      .poll(async () => Math.abs((await place(page)).travel + 70), PATIENCE)
      .toBeLessThan(1);
    expect(Math.abs((await place(page)).rack - 33)).toBeLessThan(1);
  });

  it('obeys the keys from its sliders as the bench does elsewhere', async () => {
    const page = await open();
    const slider = page.getByLabel('Travel, on the map');
    await slider.focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => place(page), PATIENCE).toEqual({ travel: 10, rack: 0 });
    // Towards left lock, which for this corner is rack to the left.
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => place(page), PATIENCE).toEqual({ travel: 10, rack: 5 });
    await expect
      .poll(() => slider.getAttribute('aria-valuetext'), PATIENCE)
      .toBe('10.0 mm, wheel up');
    await page.keyboard.press('Home');
    await expect.poll(() => place(page), PATIENCE).toEqual({ travel: 0, rack: 0 });
  });
});

describe('the map', () => {
  it.each(['wheel', 'tyre'] as const)(
    'knows the worst place to the %s and goes there',
    async (pair) => {
      const page = await open();
      await openModel(page, LONG_TRAVEL);
      await card(page).getByLabel('Pair on the map').selectOption(`tieRod/${pair}`);
      const worst = worstOf(LONG_TRAVEL, pair);
      await says(card(page).locator('[data-worst-gap]'), `least ${length(worst.gap, 'mm')}`);
      expect(await card(page).locator('[data-worst-place]').textContent()).toContain(
        'within the stops',
      );
      await filled(page);
      await part(page, 'worst').click();
      await says(part(page, 'gap'), length(worst.gap, 'mm'));
      const now = await place(page);
      expect(gapAt(LONG_TRAVEL, pair, now.travel, now.rack)).toBeLessThan(worst.gap + 0.01);
      const state = { wheel: 'touch', tyre: 'clear' }[pair];
      expect(await part(page, 'dot').getAttribute('data-state')).toBe(state);
    },
  );

  it('follows the model, the newest of many winning', async () => {
    const page = await open();
    await openModel(page, LONG_TRAVEL);
    const figure = card(page).locator('[data-worst-gap]');
    const [first, second] = [FACTORY, LONG_TRAVEL].map(
      (model) => `least ${length(worstOf(model, 'wheel').gap, 'mm')}`,
    );
    await says(figure, second!);
    for (let i = 0; i < 8; i += 1) {
      await page.keyboard.press('Control+z');
      await page.keyboard.press('Control+Shift+z');
    }
    await page.keyboard.press('Control+z');
    await says(figure, first!);
    await filled(page);
    await says(figure, first!);
  });

  it('is one column with its curve where no steering limit is stated, and says so', async () => {
    const page = await open();
    const { steering: _, ...bare } = FACTORY;
    await openModel(page, bare);
    await says(part(page, 'note'), 'No steering limit in this model: straight ahead only.');
    await filled(page);
    const box = (await part(page, 'pad').boundingBox())!;
    await page.mouse.click(box.x + box.width - 40, box.y + 30);
    await expect.poll(async () => (await place(page)).travel, PATIENCE).toBeGreaterThan(40);
    const { travel, rack } = await place(page);
    expect(rack).toBe(0);
    await says(part(page, 'gap'), length(gapAt(bare, 'wheel', travel, 0), 'mm'));
  });

  it('is enlarged by its button and put back by Escape', async () => {
    const page = await open();
    const small = (await card(page).boundingBox())!;
    await page.getByRole('button', { name: 'Enlarge the map' }).click();
    await expect
      .poll(async () => (await card(page).boundingBox())!.width, PATIENCE)
      .toBeGreaterThan(1300);
    const to = await spot(page, FACTORY, 60, -60);
    await page.mouse.click(to.x, to.y);
    await expect
      .poll(async () => Math.abs((await place(page)).travel - 60), PATIENCE)
      .toBeLessThan(0.5);
    await page.keyboard.press('Escape');
    await expect
      .poll(async () => (await card(page).boundingBox())!.width, PATIENCE)
      .toBe(small.width);
  });

  it('takes a click for its present size before the page has painted it', async () => {
    const page = await open({ before: withSizesHeldBack });
    await page.evaluate(() => {
      (window as unknown as { holdSizes: boolean }).holdSizes = true;
    });
    await page.getByRole('button', { name: 'Enlarge the map' }).click();
    await expect
      .poll(async () => (await card(page).boundingBox())!.width, PATIENCE)
      .toBeGreaterThan(1300);
    const to = await spot(page, FACTORY, 60, -60);
    await page.mouse.click(to.x, to.y);
    await expect
      .poll(async () => Math.abs((await place(page)).travel - 60), PATIENCE)
      .toBeLessThan(0.5);
    expect(Math.abs((await place(page)).rack + 60)).toBeLessThan(0.5);
  });

  it('speaks inches when asked', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'in: inches, decimal' }).click();
    const worst = worstOf(FACTORY, 'wheel');
    await says(card(page).locator('[data-worst-gap]'), `least ${length(worst.gap, 'inch')}`);
    await says(part(page, 'gap'), length(gapAt(FACTORY, 'wheel', 0, 0), 'inch'));
  });
});

describe('the curves', () => {
  it('have their cursors where the travel is', async () => {
    const page = await open();
    const curve = page.locator('[data-curve="camber"]');
    const shift = (): Promise<number> =>
      curve
        .locator('.curve-cursor')
        .evaluate((cursor) => new DOMMatrix(getComputedStyle(cursor).transform).e);
    await page.getByLabel('Travel, on the map').focus();
    const { width } = (await curve.boundingBox())!;
    // From 1 px to 46 px short of the right edge, where the figures stand.
    const at = (travel: number): number => 1 + ((travel + 105) / 210) * (width - 47);
    await expect.poll(shift, PATIENCE).toBeCloseTo(at(0), 1);
    await page.keyboard.press('Shift+ArrowUp');
    await expect.poll(shift, PATIENCE).toBeCloseTo(at(25), 1);
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await expect.poll(shift, PATIENCE).toBeCloseTo(at(-25), 1);
  });

  it('open large, read the solver’s values, and are saved with units and signs', async () => {
    const page = await open();
    await card(page).getByRole('button', { name: 'Curves' }).click();
    const sheet = page.getByRole('dialog', { name: 'Curves' });
    await sheet.getByLabel('tie rod to wheel').check();
    await sheet.getByRole('radio', { name: 'rack' }).check();
    const charts = sheet.locator('.u-over');
    await expect.poll(() => charts.count(), PATIENCE).toBe(3);
    const gap = gapAt(FACTORY, 'wheel', 0, 0);
    await says(
      sheet.locator('[data-chart="wheelGap"] [data-part="readout"]'),
      `rack 0.0 mm: ${length(gap, 'mm')}`,
    );
    const saving = page.waitForEvent('download');
    await sheet.getByRole('button', { name: 'Save as CSV' }).click();
    const lines = readFileSync(await (await saving).path(), 'utf8')
      .trimEnd()
      .split('\n');
    expect(lines[0]).toContain('"camber [deg; + top leans out, - top leans in]"');
    const [rack, travel, camber, toe, wheel] = lines[40]!.split(',').map(Number);
    const report = poseReport(assemble(FACTORY), travel!, rack!) as unknown as Record<
      string,
      number
    >;
    expect(camber).toBeCloseTo(report['camber']!, 6);
    expect(toe).toBeCloseTo(report['toe']!, 6);
    expect(wheel).toBeCloseTo(gapAt(FACTORY, 'wheel', travel!, rack!), 6);
    const box = (await charts.first().boundingBox())!;
    await page.mouse.click(box.x + box.width * 0.9, box.y + box.height / 2);
    await expect.poll(async () => (await place(page)).rack, PATIENCE).toBeGreaterThan(50);
    await page.keyboard.press('Escape');
    await expect.poll(() => sheet.count(), PATIENCE).toBe(0);
  });
});
