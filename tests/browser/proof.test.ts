// Clearances, stops and the cycle in the page: proven gaps, a contact made by a dropped mesh, cells that are clicked.
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { pairKey } from '../../solver/clearance/gapField.ts';
import {
  assemble,
  certify,
  createMargins,
  cycleGrid,
  firstStops,
  type Model,
  watchedPairs,
  writeModel,
} from '../../solver/index.ts';
import { length, signedLength } from '../../src/words/format.ts';
import { drop } from '../support/drop.ts';
import { type Bench, openBench } from '../support/launch.ts';
import { boxShape, stlBinary } from '../support/meshFiles.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const PATIENCE = { timeout: 60_000 };
vi.setConfig({ testTimeout: 180_000 });

/** Without the mesh: the solver here is asked without one too. */
const { obstacles: _, required: __, ...MODEL }: Model = shipped('rear-steer-saloon');

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

async function open(model: Model): Promise<Page> {
  bench = await openBench({ before: withoutPicture });
  const { page } = bench;
  await drop(page, 'test.json', Buffer.from(writeModel(model)));
  await page.getByRole('button', { name: `Model: ${model.name}` }).waitFor(PATIENCE);
  return page;
}

async function openSheet(page: Page, tab: string): Promise<Locator> {
  await page.getByRole('button', { name: tab, exact: true }).click();
  const sheet = page.locator('[data-panel="work"]');
  await sheet.waitFor(PATIENCE);
  return sheet;
}

/** The bench stands at that travel, mm. */
async function isAt(page: Page, travel: number): Promise<void> {
  const now = async () =>
    Number(await page.getByLabel('Travel, on the map').inputValue()).toFixed(3);
  await expect.poll(now, PATIENCE).toBe(travel.toFixed(3));
}

const row = (sheet: Locator, key: string): Locator => sheet.locator(`tr[data-pair="${key}"]`);
const isProven = (sheet: Locator): Promise<void> =>
  sheet.getByText(/^Proven over travel/).waitFor(PATIENCE);

describe('the sheet of clearances', () => {
  it('lists every watched pair with the gap that the solver proves, and goes to its worst place', async () => {
    const page = await open(MODEL);
    const sheet = await openSheet(page, 'Clearance');
    await isProven(sheet);
    const corner = assemble(MODEL);
    const results = certify(corner, watchedPairs(corner));
    expect(await sheet.locator('tr[data-pair]').count()).toBe(results.length);
    for (const { names, least } of results) {
      const words = least <= 0 ? `${length(-least, 'mm')} deep` : length(least, 'mm');
      expect(await row(sheet, pairKey(names)).textContent()).toContain(words);
    }
    const worst = results.find(({ names }) => names.join('/') === 'tieRod/wheel')!;
    await row(sheet, 'tieRod/wheel')
      .getByRole('button', { name: /^Go to the worst place/ })
      .click();
    await expect
      .poll(() => page.getByTestId('map-gap').textContent(), PATIENCE)
      .toBe(length(worst.least, 'mm'));
    expect(await row(sheet, 'tieRod/wheel').getAttribute('data-chosen')).not.toBeNull();
  });

  it('sees a contact appear where a mesh is dropped into the tyre’s way, and says why others are not watched', async () => {
    const page = await open(MODEL);
    const sheet = await openSheet(page, 'Clearance');
    await isProven(sheet);
    const [x, y, z] = MODEL.hub.face;
    const plate = boxShape([x - 20, y - 40, z + 250], [x + 20, y + 40, z + 700]);
    await drop(page, 'plate.stl', stlBinary(plate));
    const asking = page.getByRole('dialog', { name: 'Place plate.stl' });
    await asking.waitFor(PATIENCE);
    await asking.getByRole('radio', { name: /millimetres/ }).check();
    await asking.getByRole('button', { name: 'Place it' }).click();
    const touching = sheet.locator('tr[data-pair*="plate"][data-state="touch"]');
    await touching.first().waitFor(PATIENCE);
    await isProven(sheet);
    expect(await touching.first().textContent()).toContain('deep');
    await sheet.getByText(/pairs are not watched, and why/).click();
    await sheet.getByText('Wheel to tyre: the tyre is mounted on the wheel.').waitFor();
  });

  it('takes the wanted gap in the sheet, and leaves out what touches by design', async () => {
    const touching: Model = {
      ...MODEL,
      obstacles: [{ name: 'fender', shape: 'box', min: [-50, 600, 200], max: [50, 900, 260] }],
    };
    const page = await open(touching);
    const sheet = await openSheet(page, 'Clearance');
    await isProven(sheet);
    const wanted = row(sheet, 'tieRod/wheel').getByRole('textbox');
    await wanted.fill('250');
    await wanted.press('Enter');
    await expect
      .poll(() => row(sheet, 'tieRod/wheel').getAttribute('data-state'), PATIENCE)
      .toBe('near');
    const contact = sheet.locator('tr[data-pair*="fender"][data-state="touch"]').first();
    const key = (await contact.getAttribute('data-pair'))!;
    await contact.getByRole('button', { name: /^Leave out/ }).click();
    await row(sheet, key).waitFor({ state: 'detached', ...PATIENCE });
    await sheet.getByText(/pairs are not watched, and why/).click();
    await sheet.getByRole('button', { name: 'Watch it again' }).click();
    await row(sheet, key).waitFor(PATIENCE);
  });

  it('stops a running proof by its button, keeps what was proven, and proves again', async () => {
    bench = await openBench({
      before: async (page) => {
        await withoutPicture(page);
        // A worker that hears late: the proof is still running when it is stopped.
        await page.addInitScript(() => {
          const { postMessage } = Worker.prototype;
          Worker.prototype.postMessage = function late(
            this: Worker,
            ...given: Parameters<Worker['postMessage']>
          ) {
            const [message] = given as unknown as [{ kind?: string }];
            if (message.kind === 'prove') setTimeout(() => postMessage.apply(this, given), 1500);
            else postMessage.apply(this, given);
          } as Worker['postMessage'];
        });
      },
    });
    const { page } = bench;
    const sheet = await openSheet(page, 'Clearance');
    await sheet.getByRole('button', { name: 'Stop' }).click();
    await sheet.getByText(/^Stopped: 0 of/).waitFor(PATIENCE);
    await sheet.getByRole('button', { name: 'Prove again' }).click();
    await isProven(sheet);
  });
});

describe('the sheet of stops', () => {
  it('says what the solver says stops it first each way, and moves the bench there', async () => {
    const page = await open(MODEL);
    const sheet = await openSheet(page, 'Stops');
    const margins = createMargins(assemble(MODEL));
    for (const way of ['bump', 'droop', 'left', 'right'] as const) {
      const found = firstStops(margins, { way, held: 0 });
      const ray = sheet.locator(`[data-way="${way}"]`);
      await ray.waitFor(PATIENCE);
      const { first } = found;
      if (first === null) continue;
      expect(await ray.textContent()).toContain(
        `stops at ${signedLength(first.at, 'mm')}: ${first.margin.met}`,
      );
    }
    const bump = firstStops(margins, { way: 'bump', held: 0 }).first!;
    await sheet
      .locator('[data-way="bump"]')
      .getByRole('button', { name: signedLength(bump.at, 'mm') })
      .first()
      .click();
    await isAt(page, Math.min(bump.at, MODEL.travel.bump));
  });
});

describe('the cycle', () => {
  it('has 15 cells with the solver’s standings, the worst marked; a click goes there and lists every margin', async () => {
    const page = await open(MODEL);
    const sheet = await openSheet(page, 'Cycle');
    const grid = cycleGrid(createMargins(assemble(MODEL)));
    const cells = sheet.locator('.cycle-cell');
    await cells.first().waitFor(PATIENCE);
    expect(await cells.count()).toBe(grid.cells.length);
    const states = await cells.evaluateAll((all) => all.map((cell) => cell.dataset['state']));
    expect(states).toEqual(grid.cells.map(({ standing }) => standing));
    expect(await sheet.locator('.cycle-cell[data-worst]').count()).toBe(1);
    const last = grid.cells.at(-1)!;
    await cells.last().click();
    await isAt(page, last.travel);
    expect(await sheet.locator('.cycle-margins tr').count()).toBe(last.margins.length);
  });
});
