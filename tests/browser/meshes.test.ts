// Mesh obstacles in the page: a file dropped, its unit asked for, drawn, kept, moved and missed.
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { drop } from '../support/drop.ts';
import { type Bench, firstPicture, openBench } from '../support/launch.ts';
import { boxShape, stlBinary } from '../support/meshFiles.ts';

const PATIENCE = { timeout: 30_000 };

vi.setConfig({ testTimeout: 180_000 });

/** A plate beside the tyre's tread, in inches: 200 × 100 × 20 mm. */
const PLATE = stlBinary(
  boxShape([-100 / 25.4, 600 / 25.4, 300 / 25.4], [100 / 25.4, 700 / 25.4, 320 / 25.4]),
);

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

async function open(): Promise<Page> {
  bench = await openBench({ context: { deviceScaleFactor: 0.5 } });
  await firstPicture(bench.page);
  return bench.page;
}

const drawer = (page: Page): Locator =>
  page.getByRole('complementary', { name: 'Points and parts' });
const asking = (page: Page): Locator => page.getByRole('dialog', { name: 'Place plate.stl' });

async function openObstacles(page: Page): Promise<void> {
  const tab = page.getByRole('button', { name: 'Points', exact: true });
  if ((await tab.getAttribute('aria-pressed')) === 'false') await tab.click();
  const folder = drawer(page).getByRole('button', { name: /^Obstacles/ });
  await folder.waitFor(PATIENCE);
  if ((await folder.getAttribute('aria-expanded')) === 'false') await folder.click();
}

/** What the picture shows, once it has come to rest. */
async function picture(page: Page): Promise<string> {
  const shot = async () => (await page.locator('canvas').first().screenshot()).toString('base64');
  let before = '';
  let now = await shot();
  while (now !== before) {
    before = now;
    now = await shot();
  }
  return now;
}

async function place(page: Page): Promise<void> {
  await drop(page, 'plate.stl', PLATE);
  await asking(page).waitFor(PATIENCE);
  await asking(page)
    .getByRole('radio', { name: /inches/ })
    .check();
  await asking(page).getByRole('button', { name: 'Place it' }).click();
  await asking(page).waitFor({ state: 'detached' });
}

describe('a mesh file', () => {
  it('that is dropped is asked for its unit, drawn, kept over a reload, and undone', async () => {
    const page = await open();
    await openObstacles(page);
    const bare = await picture(page);
    await drop(page, 'plate.stl', PLATE);
    await asking(page).waitFor(PATIENCE);
    // Nothing is taken for granted of a file that does not say.
    await asking(page).getByRole('button', { name: 'Choose the unit first' }).waitFor();
    expect(await asking(page).getByRole('radio', { checked: true }).count()).toBe(1);
    await asking(page).getByText('200 × 100 × 20 mm').waitFor();
    await asking(page)
      .getByRole('radio', { name: /inches/ })
      .check();
    await asking(page).getByRole('button', { name: 'Place it' }).click();

    await drawer(page).getByText('plate.stl: 12 triangles, 200 × 100 × 20 mm').waitFor(PATIENCE);
    await expect.poll(async () => (await picture(page)) === bare, PATIENCE).toBe(false);

    await page.reload();
    await firstPicture(page);
    await openObstacles(page);
    await drawer(page).getByText('plate.stl: 12 triangles, 200 × 100 × 20 mm').waitFor(PATIENCE);

    await page.getByRole('button', { name: 'Undo' }).click();
    await drawer(page).getByText('plate.stl', { exact: false }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Redo' }).click();
    await drawer(page).getByText('plate.stl: 12 triangles, 200 × 100 × 20 mm').waitFor(PATIENCE);
  });

  it('is moved and turned by numbers, and its box follows', async () => {
    const page = await open();
    await openObstacles(page);
    await place(page);
    await drawer(page).getByText('200 × 100 × 20 mm').waitFor(PATIENCE);
    const turn = drawer(page)
      .getByLabel(/turned.*z/i)
      .first();
    await turn.fill('90');
    await turn.press('Enter');
    await drawer(page).getByText('100 × 200 × 20 mm').waitFor(PATIENCE);
  });

  it('that is broken is refused in words, and the bench stays as it was', async () => {
    const page = await open();
    await drop(page, 'half.stl', PLATE.slice(0, -70));
    await page
      .getByRole('alert')
      .getByText('half.stl: found a file cut off or damaged: it says 12 triangles and holds 10')
      .waitFor(PATIENCE);
    await drop(page, 'part.step', new TextEncoder().encode('ISO-10303-21;'));
    await page
      .getByRole('alert')
      .getByText('part.step: found another kind of file, wanted an STL, PLY, OBJ or GLB file.')
      .waitFor(PATIENCE);
    expect(await page.getByRole('dialog', { name: /^Place / }).count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  it('that a shipped model names comes with it', async () => {
    const page = await open();
    await page.getByRole('button', { name: /^Model: / }).click();
    await page.getByRole('button', { name: /saloon/i }).click();
    await openObstacles(page);
    await drawer(page)
      .getByText(/^inner-guard\.stl: 24 triangles/)
      .waitFor(PATIENCE);
  });
});
