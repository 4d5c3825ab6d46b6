import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { assemble, poseReport } from '../../solver/index.ts';
import { designWheelCentre } from '../../solver/linkage/frames.ts';
import { type Bench, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';

const MODEL = shipped('half-ton-factory');
const CORNER = assemble(MODEL);

/** Drawn in software, by however busy a machine. */
const PATIENCE = { timeout: 30_000 };

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

interface Seen {
  readonly frames: number;
  readonly renders: number;
  readonly travel: number;
  readonly rack: number;
  readonly x: number;
  readonly y: number;
}

/** What the stage says of itself once it rests. */
async function atRest(page: Page): Promise<Seen> {
  await page.waitForFunction(() => {
    const stage = document.querySelector<HTMLElement>('[data-stage]');
    return stage?.dataset['resting'] !== undefined;
  });
  return page.evaluate(() => {
    const { dataset } = document.querySelector<HTMLElement>('[data-stage]')!;
    const [x, y] = (dataset['wheel'] ?? '').split(',').map(Number);
    return {
      frames: Number(dataset['frames']),
      renders: Number(dataset['renders']),
      travel: Number(dataset['travel']),
      rack: Number(dataset['rack']),
      x: x ?? Number.NaN,
      y: y ?? Number.NaN,
    };
  });
}

/** Waits for the stage to rest at a place where `name` differs from `value`. */
async function movedFrom(page: Page, name: 'travel' | 'rack', value: number): Promise<Seen> {
  await page.waitForFunction(
    ([key, before]) => {
      const stage = document.querySelector<HTMLElement>('[data-stage]');
      const isElsewhere = Number(stage?.dataset[key as string]) !== before;
      return stage?.dataset['resting'] !== undefined && isElsewhere;
    },
    [name, value] as const,
  );
  return atRest(page);
}

/** Opens the bench seen from straight ahead, at rest. */
async function openFront(plusMinus = false): Promise<{ page: Page; start: Seen }> {
  const context = { reducedMotion: 'reduce' } as const;
  bench = await openBench({ width: 1024, height: 768, context, plusMinus });
  const { page } = bench;
  const before = await atRest(page);
  await page.keyboard.press('2');
  await page.waitForFunction(
    (x) => document.querySelector<HTMLElement>('[data-stage]')?.dataset['wheel'] !== x,
    `${before.x.toFixed(1)},${before.y.toFixed(1)}`,
  );
  return { page, start: await atRest(page) };
}

/** Waits until so many frames were asked for and drawn: two turns of the page's own clock. */
async function turn(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
  );
}

async function drag(
  page: Page,
  fromX: number,
  fromY: number,
  toX: number,
  toY: number,
  steps = 20,
) {
  await page.mouse.move(fromX, fromY);
  await page.mouse.down();
  for (let i = 1; i <= steps; i += 1) {
    const t = i / steps;
    await page.mouse.move(fromX + t * (toX - fromX), fromY + t * (toY - fromY));
    await turn(page);
  }
}

/** A number of the solver's own report of a place it reaches. */
function solved(key: string, travel: number, rack: number): number {
  const answer = poseReport(CORNER, travel, rack);
  if (answer.reached === false) throw new Error(`Not reached: ${travel}, ${rack}`);
  return Number(answer[key]);
}

async function reading(page: Page, key: string): Promise<string | null> {
  return page.locator(`[data-reading="${key}"] [data-part="number"]`).textContent();
}

/** A number as the readings show it. */
function shown(value: number): string {
  return value.toFixed(2).replace('-', '−');
}

describe('the wheel', () => {
  it('follows the hand up and down, and the readings are the solver’s at that travel', async () => {
    const { page, start } = await openFront();
    expect(start.travel).toBe(0);
    await drag(page, start.x, start.y, start.x + 3, start.y - 36);
    const held = await movedFrom(page, 'travel', 0);
    // Seen straight ahead the wheel's centre goes up as far as the hand, to a pixel.
    expect(start.y - held.y).toBeGreaterThan(35.3);
    expect(start.y - held.y).toBeLessThan(36.7);
    expect(held.rack).toBe(0);
    expect(held.travel).toBeGreaterThan(30);
    expect(await reading(page, 'camber')).toBe(shown(solved('camber', held.travel, 0)));
    expect(await reading(page, 'toe')).toBe(shown(solved('toe', held.travel, 0)));
    await page.mouse.up();
    expect((await atRest(page)).travel).toBe(held.travel);
  });

  it('steers under the hand sideways, and Escape puts it back', async () => {
    const { page, start } = await openFront();
    await drag(page, start.x, start.y, start.x + 50, start.y + 4);
    const held = await movedFrom(page, 'rack', 0);
    expect(held.travel).toBe(0);
    expect(await reading(page, 'camber')).toBe(shown(solved('camber', 0, held.rack)));
    // The front of the tread went to the vehicle's left, to the right of the picture.
    expect(solved('steerAngle', 0, held.rack)).toBeGreaterThan(3);
    await page.keyboard.press('Escape');
    expect((await movedFrom(page, 'rack', held.rack)).rack).toBe(0);
    await page.mouse.move(start.x + 90, start.y);
    await page.mouse.up();
    expect((await atRest(page)).rack).toBe(0);
  });

  it('draws at most a frame a move, renders no component, and draws nothing at rest', async () => {
    // With the ± of every reading worked out beside the drag.
    const { page, start } = await openFront(true);
    await page.mouse.move(start.x, start.y);
    await page.waitForSelector('[data-stage][data-grip="wheel"][data-resting]');
    await page.mouse.down();
    await page.mouse.move(start.x, start.y - 10);
    const before = await movedFrom(page, 'travel', 0);
    const moves = 30;
    for (let i = 1; i <= moves; i += 1) {
      await page.mouse.move(start.x, start.y - 10 - i);
      await turn(page);
    }
    const after = await movedFrom(page, 'travel', before.travel);
    // One more where the moving picture was coarser: the sharp one, once it rests.
    expect(after.frames - before.frames).toBeLessThanOrEqual(moves + 1);
    expect(after.frames - before.frames).toBeGreaterThan(moves / 3);
    expect(after.renders).toBe(before.renders);
    await page.mouse.up();
    await turn(page);
    const rested = await atRest(page);
    for (let i = 0; i < 30; i += 1) await turn(page);
    expect((await atRest(page)).frames).toBe(rested.frames);
  });
});

describe('a hard point', () => {
  it('is dragged in the design, as one step of the history, and Escape takes it back', async () => {
    const { page, start } = await openFront();
    // The scale of the picture: what 40 mm of travel look like.
    await drag(page, start.x, start.y, start.x, start.y - 40);
    const up = await movedFrom(page, 'travel', 0);
    const perMm = (start.y - up.y) / up.travel;
    await page.keyboard.press('Escape');
    await movedFrom(page, 'travel', up.travel);
    await page.mouse.up();

    await page.getByRole('button', { name: 'View', exact: true }).click();
    await page.getByLabel('Handles on the hard points').check();
    await page.keyboard.press('Escape');
    const [, wheelY, wheelZ] = designWheelCentre(MODEL);
    const [, y, z] = MODEL.coilover?.top ?? [0, 0, 0];
    const x = start.x + (y - wheelY) * perMm;
    const top = start.y - (z - wheelZ) * perMm;
    await drag(page, x, top, x + 30, top);
    const labels = page.locator('.stage-label:visible');
    await page.waitForFunction(() =>
      [...document.querySelectorAll('.stage-label')].some((one) =>
        one.textContent?.startsWith('design y'),
      ),
    );
    await atRest(page);
    const said = (await labels.allInnerTexts()).find((text) => text.startsWith('design y')) ?? '';
    const moved = Number(said.replace(/[^\d.]/g, ''));
    expect(moved).toBe(Math.round(2 * moved) / 2);
    expect(Math.abs(moved - (y + 30 / perMm))).toBeLessThan(2);
    const undo = page.getByRole('button', { name: /^Undo/ });
    await page.mouse.up();
    await expect.poll(() => undo.isEnabled()).toBe(true);
    await undo.click();
    await expect.poll(() => undo.isEnabled()).toBe(false);

    await drag(page, x, top, x - 25, top + 10);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await atRest(page);
    expect(await undo.isEnabled()).toBe(false);
  });
});

/** Part of the picture that differs between two screenshots, 0 to 1. */
function difference(page: Page, a: Buffer, b: Buffer): Promise<number> {
  return page.evaluate(
    async ([first, second]) => {
      const pixels = async (text: string): Promise<Uint8ClampedArray> => {
        const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
        const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
        const canvas = new OffscreenCanvas(picture.width, picture.height);
        const context = canvas.getContext('2d');
        if (context === null) throw new Error('No canvas.');
        context.drawImage(picture, 0, 0);
        return context.getImageData(0, 0, picture.width, picture.height).data;
      };
      const [one, two] = await Promise.all([pixels(first!), pixels(second!)]);
      let off = 0;
      for (let i = 0; i < one!.length; i += 4) if (Math.abs(one![i]! - two![i]!) > 24) off += 1;
      return off / (one!.length / 4);
    },
    [a.toString('base64'), b.toString('base64')] as const,
  );
}

describe('the picture', () => {
  it('comes back after the graphics were lost, and the bench works meanwhile', async () => {
    const { page, start } = await openFront();
    const clip = { x: start.x - 300, y: start.y - 200, width: 450, height: 400 };
    const before = await page.screenshot({ clip });
    await page.evaluate(() => {
      const canvas = document.querySelector<HTMLCanvasElement>('[data-stage] canvas');
      const lose = canvas?.getContext('webgl2')?.getExtension('WEBGL_lose_context');
      if (!lose) throw new Error('The context cannot be lost.');
      Object.assign(window, { lose });
      lose.loseContext();
    });
    const sentence = page.getByText('The graphics driver took the picture away');
    await sentence.waitFor();
    expect(await difference(page, before, await page.screenshot({ clip }))).toBeGreaterThan(0.1);
    await page.evaluate(() => {
      (window as unknown as { lose: WEBGL_lose_context }).lose.restoreContext();
    });
    await sentence.waitFor({ state: 'detached' });
    await turn(page);
    await atRest(page);
    expect(await difference(page, before, await page.screenshot({ clip }))).toBeLessThan(0.002);
    await drag(page, start.x, start.y, start.x, start.y - 40);
    expect((await movedFrom(page, 'travel', 0)).travel).toBeGreaterThan(20);
    await page.mouse.up();
  });

  it('is not covered by the words that explain it, nor is the gap', async () => {
    bench = await openBench({ context: { reducedMotion: 'reduce' } });
    const { page } = bench;
    await atRest(page);
    for (const key of ['camber', 'caster', 'toe']) {
      await page.locator(`[data-reading="${key}"] .name`).hover();
      const stage = page.locator('[data-stage]');
      await expect
        .poll(async () => JSON.parse((await stage.getAttribute('data-lit')) ?? '{}').key, PATIENCE)
        .toBe(key);
      await atRest(page);
      const lit = JSON.parse((await stage.getAttribute('data-lit')) ?? '{}');
      const words = (await page.getByRole('tooltip').boundingBox())!;
      const gap = (await page.locator('[data-panel="gap"]').boundingBox())!;
      const tile = {
        left: gap.x,
        top: gap.y,
        right: gap.x + gap.width,
        bottom: gap.y + gap.height,
      };
      for (const box of [lit, tile]) {
        const isApart =
          words.x >= box.right ||
          words.x + words.width <= box.left ||
          words.y >= box.bottom ||
          words.y + words.height <= box.top;
        expect(isApart, `${key}: ${JSON.stringify({ words, box })}`).toBe(true);
      }
    }
  });

  it('says why it is missing where there is no WebGL, while the numbers go on', async () => {
    bench = await openBench({
      before: (page) =>
        page.addInitScript(() => {
          const { getContext } = HTMLCanvasElement.prototype;
          Object.assign(HTMLCanvasElement.prototype, {
            getContext(this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
              if (kind.startsWith('webgl')) return null;
              return (getContext as (...words: unknown[]) => unknown).call(this, kind, ...rest);
            },
          });
        }),
    });
    const { page } = bench;
    await page.getByText('This browser gives no WebGL 2').waitFor();
    const before = await reading(page, 'camber');
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => reading(page, 'camber')).not.toBe(before);
  });

  it('plays a cycle until a hand stops it', async () => {
    const { page, start } = await openFront();
    const transport = page.locator('[data-panel="transport"]');
    const travel = (): Promise<number> =>
      transport.evaluate((one) => Number((one as HTMLElement).dataset['travel']));
    await transport.getByRole('button', { name: /play/i }).click();
    await expect.poll(travel).not.toBe(0);
    const first = await travel();
    await expect.poll(travel).not.toBe(first);
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    const stopped = await travel();
    for (let i = 0; i < 5; i += 1) await turn(page);
    expect(await travel()).toBe(stopped);
    await page.mouse.up();
  });
});
