// Points fitted to readings in the page: a toe table of five heights, an outlier, kept, found again after a reload.
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { type Fit, fitInSteps } from '../../solver/fit/fit.ts';
import type { Reading } from '../../solver/fit/reading.ts';
import { allSteps, inWords, measureRow, writeModel } from '../../solver/index.ts';
import { figureNumber, figureSteps, figureStyle } from '../../src/words/figures.ts';
import { knownFigure, spreadWords } from '../../src/words/known.ts';
import { seriousForAxe } from '../support/axe.ts';
import { drop } from '../support/drop.ts';
import { type Bench, type BenchOptions, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const PATIENCE = { timeout: 60_000 };
vi.setConfig({ testTimeout: 240_000 });

/** The model the bench opens with. */
const MODEL = shipped('half-ton-factory');

const { tolerance: _, ...BARE } = MODEL;

/** Invented: a toe table as it might be read. */
const TABLE: readonly (readonly [number, number])[] = [
  [-60, 0.31],
  [-30, 0.22],
  [0, 0.11],
  [30, 0.06],
  [60, -0.02],
];
/** What the page offers to begin with, degrees and mm. */
const PLUS_MINUS = 0.05;
const HEIGHTS = 1;

function solved(table: readonly (readonly [number, number])[]): Fit {
  const readings = table.map(
    ([travel, value]): Reading => ({
      quantity: 'toe',
      travel,
      rack: 0,
      value,
      plusMinus: PLUS_MINUS,
    }),
  );
  const found = allSteps(fitInSteps(MODEL, readings, HEIGHTS));
  if (!found.ok) throw new Error(found.why);
  return found;
}

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

/** The sheet once it lies open. */
async function sheetOf(page: Page): Promise<Locator> {
  const sheet = page.locator('[data-panel="work"], #tab-body');
  await sheet.getByText('Add a reading of').waitFor(PATIENCE);
  return sheet;
}

async function openSheet(options: BenchOptions = {}): Promise<[Page, Locator]> {
  bench = await openBench({ before: withoutPicture, ...options });
  const { page } = bench;
  const named = { name: 'Fit', exact: true };
  await page.getByRole('button', named).or(page.getByRole('tab', named)).click(PATIENCE);
  return [page, await sheetOf(page)];
}

async function paste(sheet: Locator, text: string): Promise<void> {
  const field = sheet.getByLabel('Table of heights');
  if (!(await field.isVisible())) await sheet.getByText('Paste or type a table of heights').click();
  await field.fill(text);
  await sheet.getByRole('button', { name: 'Add these readings' }).click();
}

function written(table: readonly (readonly [number, number])[]): string {
  return `travel\ttoe\n${table.map((line) => line.join('\t')).join('\n')}`;
}

/** Waits until the fit of so many readings stands, and no newer one is being made. */
async function standing(sheet: Locator, count: number): Promise<void> {
  const bar = sheet.locator('.fit-bar');
  const outcome = sheet.getByRole('region', { name: 'The fit' });
  await expect
    .poll(
      async () => `${await bar.textContent()} ${await outcome.getAttribute('aria-busy')}`,
      PATIENCE,
    )
    .toMatch(new RegExp(`: ${count} readings?.*false$`));
}

describe('the fit', () => {
  it('of a toe table says what the solver says, is tried, kept, and found again', async () => {
    const [page, sheet] = await openSheet();
    await paste(sheet, written(TABLE));
    await standing(sheet, 5);
    const found = solved(TABLE);
    expect(await sheet.locator('[data-verdict]').getAttribute('data-verdict')).toBe(found.verdict);

    // Bump steer before and after, each with its ±.
    const { before, after, plusMinusBefore, plusMinusAfter } = found.answers.find(
      ({ key }) => key === 'bumpSteer',
    )!;
    const plain = figureStyle(measureRow('bumpSteer').kind, 'mm');
    const words = (value: number, plusMinus: number): string => {
      const { figure } = knownFigure(plain, plusMinus)!;
      return figureNumber(figureSteps(value, figure), figure) + spreadWords(plain, plusMinus);
    };
    const cells = sheet.locator('[data-answer="bumpSteer"] td');
    expect(await cells.allTextContents()).toEqual([
      words(before, plusMinusBefore),
      words(after, plusMinusAfter),
    ]);
    const first = found.moves[0]!;
    const moves = sheet.locator('.fit-moves [data-input]');
    expect(await moves.first().getAttribute('data-input')).toBe(first.input.key);
    expect(await moves.first().textContent()).toContain(Math.abs(first.moved).toFixed(2));

    // Five readings with bars on the chart, the curve drawn within their reach.
    const chart = sheet.locator('[data-curve="toe"]');
    expect(await chart.locator('.fit-read').count()).toBe(5);
    expect(await chart.locator('.fit-line-after').getAttribute('d')).toMatch(/^M[\d.]+ [\d.]+L/);
    expect(await seriousForAxe(page)).toEqual([]);

    await sheet.getByRole('button', { name: 'Try as ghost' }).click();
    await sheet.getByRole('button', { name: 'Take back' }).click();
    await sheet.getByRole('button', { name: 'Try as ghost' }).click();
    await sheet.getByRole('button', { name: 'Keep the fitted points' }).click();
    await sheet.getByText('starts from the points as they were measured').waitFor(PATIENCE);

    // The sheet lies open again, and what was typed is there, wrong entries and all, and the fit with it.
    await sheet.getByRole('button', { name: 'camber', exact: true }).click();
    const value = sheet.getByLabel('Reading 6, camber: what was read');
    await value.fill('half a degree');
    await value.blur();
    await sheet.getByText('“half a degree” is not a number.').waitFor();
    await page.reload();
    const again = await sheetOf(page);
    await standing(again, 5);
    expect(await again.getByLabel('Reading 6, camber: what was read').inputValue()).toBe(
      'half a degree',
    );
    expect(await again.locator('.fit-row').count()).toBe(6);
    expect(await again.locator('[data-answer="bumpSteer"] td').allTextContents()).toEqual([
      words(before, plusMinusBefore),
      words(after, plusMinusAfter),
    ]);
  });

  it('names the one reading that disagrees with the rest, and is whole without it', async () => {
    const off = TABLE.map(([travel, toe]): [number, number] => [
      travel,
      travel === 30 ? 0.55 : toe,
    ]);
    const found = solved(off);
    expect(found.suspects).toEqual([3]);
    const [, sheet] = await openSheet();
    await paste(sheet, `${written(off)}\n45 forty`);
    await sheet.getByText('“forty” is not a number.').waitFor();
    expect(await sheet.getByLabel('Table of heights').inputValue()).toBe('45 forty');
    await standing(sheet, 5);
    await sheet.getByText('Without one of them the rest agrees: toe at +30.0 mm.').waitFor();
    const suspects = sheet.locator('.fit-row[data-suspect]');
    expect(await suspects.count()).toBe(1);
    expect(await suspects.textContent()).toContain('Read it again.');
    expect(await sheet.locator('.fit-read[data-suspect]').getAttribute('data-travel')).toBe('30');
    await sheet.getByRole('button', { name: 'Take reading 4 away: toe' }).click();
    await standing(sheet, 4);
    expect(await sheet.locator('[data-verdict]').getAttribute('data-verdict')).toBe('agree');
    await sheet.getByRole('button', { name: 'Put back the reading taken away' }).click();
    await standing(sheet, 5);
    await sheet.getByRole('button', { name: 'Leave it out: reading 4, toe' }).click();
    await standing(sheet, 4);
    await sheet.getByRole('button', { name: 'Take it in again: reading 4, toe' }).waitFor();
    await sheet.getByRole('button', { name: 'Keep as a second design' }).click();
    await sheet.getByText(`Kept beside the present design as “${MODEL.name}, fitted”`).waitFor();
  });

  it('gives no sign to a number that reads 0', async () => {
    const [page, sheet] = await openSheet();
    const planar = { ...shipped('planar-equal-arms'), tolerance: { default: 2.5 } };
    await drop(page, 'planar.json', new TextEncoder().encode(writeModel(planar)));
    await paste(sheet, 'travel\ttoe\n50\t0.4');
    await standing(sheet, 1);
    const camber = sheet.locator('[data-answer="camber"]');
    await expect.poll(() => camber.locator('strong').textContent(), PATIENCE).toBe('0.00');
    expect(await camber.locator('th small').textContent()).toBe(inWords(measureRow('camber'), 0));
  });

  it('of one reading in inches stays inside a phone’s width', async () => {
    const [page, sheet] = await openSheet({ width: 390, height: 844, colorScheme: 'dark' });
    await sheet.getByRole('button', { name: 'length between points' }).click();
    // The new reading is gone to: what is typed lands in it.
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.ariaLabel))
      .toContain('what was read');
    await page.keyboard.type('16 1/8 in');
    await standing(sheet, 1);
    const row = sheet.locator('.fit-row');
    await expect.poll(() => row.textContent(), PATIENCE).toContain('points 410.3 mm →');
    const beyond = await sheet.evaluate((element) => element.scrollWidth - element.clientWidth);
    expect(beyond).toBeLessThanOrEqual(0);
    expect(await seriousForAxe(page)).toEqual([]);

    // The same reading on a design that states no ±: nothing may move until one is chosen.
    await drop(page, 'bare.json', new TextEncoder().encode(writeModel(BARE)));
    await sheet.getByText('so none may move').waitFor(PATIENCE);
    await sheet
      .getByText('No point may move: state how well they were measured.')
      .waitFor(PATIENCE);
    await sheet.getByRole('button', { name: /plumb bob/ }).click();
    await sheet.locator('.fit-moves').waitFor(PATIENCE);
  });
});
