// Designs compared in the page: three at once, their curves, ghosts and numbers; what is kept, refused and taken back.
import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  assemble,
  comparisonCsv,
  type Model,
  measureDesign,
  poseReport,
  STATION_LABELS,
  STATIONS,
  stationPlace,
  writeModel,
} from '../../solver/index.ts';
import { fixed } from '../../src/words/format.ts';
import { seriousForAxe } from '../support/axe.ts';
import { parseCsv } from '../support/csv.ts';
import { drop } from '../support/drop.ts';
import { type Bench, type BenchOptions, firstPicture, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const FACTORY = shipped('half-ton-factory');
const LONG = shipped('half-ton-long-travel');
const PLANAR = shipped('planar-equal-arms');

vi.setConfig({ testTimeout: 180_000 });

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

function eventually<T>(read: () => Promise<T>) {
  return expect.poll(read, { timeout: 20_000 });
}

/** By its tab: on a phone among the panels, else on the rail. */
async function openSheet(page: Page): Promise<void> {
  const tab = page.locator('[data-rail], [role="tab"]').filter({ hasText: /^Compare$/ });
  await tab.waitFor();
  // A sheet left open is open again after a reload, before its body has come.
  const isOpen = await tab.evaluate(
    (element) => (element.ariaPressed ?? element.ariaSelected) === 'true',
  );
  if (!isOpen) await tab.click();
  await page.locator('.compare').waitFor();
}

async function open(options: BenchOptions = {}): Promise<Page> {
  bench = await openBench({ before: withoutPicture, ...options });
  await openSheet(bench.page);
  return bench.page;
}

const button = (page: Page, name: string): Locator =>
  page.getByRole('button', { name, exact: true });
const design = (page: Page, key: string): Locator => page.locator(`[data-design="${key}"]`);
const cell = (page: Page, row: string, column: string): Locator =>
  page.locator(`.compare-table [data-row="${row}"] [data-column="${column}"]`);

async function addShipped(page: Page, file: string, place: string): Promise<void> {
  await page.getByLabel('Shipped model').selectOption(`${file}.json`);
  await button(page, 'Add this model').click();
  await design(page, place).waitFor();
}

/** The model on the bench, as the browser keeps it. */
async function present(page: Page): Promise<Model> {
  const text = await page.evaluate(() => localStorage.getItem('armscribe.work'));
  return (JSON.parse(text ?? '') as { model: Model }).model;
}

/** The long-travel kit, yesterday's factory state, and the present one lifted by 20 mm. */
async function threeDesigns(page: Page): Promise<Model> {
  await addShipped(page, 'half-ton-long-travel', 'B');
  await button(page, 'Hold the present design').click();
  const lift = page.getByRole('textbox', { name: 'Lift', exact: true });
  await lift.fill('20');
  await lift.press('Enter');
  await eventually(async () => (await present(page)).travel.ride).toBe(-20);
  return present(page);
}

/** Rows whose figure this test works out by itself, and how it is written. */
const FIGURES: Readonly<Record<string, (value: number) => string>> = {
  travel: (value) => `${fixed(value, 1)} mm`,
  rack: (value) => `${fixed(value, 1)} mm`,
  camber: (value) => `${fixed(value, 2)}°`,
  caster: (value) => `${fixed(value, 2)}°`,
  toe: (value) => `${fixed(value, 2)}°`,
  scrubRadius: (value) => `${fixed(value, 1)} mm`,
  halfTrack: (value) => `${fixed(value, 1)} mm`,
  damperLength: (value) => `${fixed(value, 1)} mm`,
  bumpSteer: (value) => `${fixed(100 * value, 2)}°/100 mm`,
  rollCentreHeight: (value) => `${fixed(value, 1)} mm`,
};

it('three designs: the table’s numbers are the solver’s at every station, differences in words', async () => {
  const page = await open();
  const lifted = await threeDesigns(page);
  const models = { present: lifted, yesterday: FACTORY, B: LONG };
  for (const station of STATIONS) {
    await page.getByRole('radio', { name: STATION_LABELS[station] }).check();
    for (const [column, model] of Object.entries(models)) {
      const corner = assemble(model);
      const { travel, rack } = stationPlace(corner, station)!;
      const report = poseReport(corner, travel, rack) as unknown as Record<string, number>;
      for (const [row, write] of Object.entries(FIGURES)) {
        const figure = cell(page, row, column).locator('b');
        await eventually(() => figure.textContent()).toBe(write(report[row]!));
      }
    }
  }
  await page.getByRole('radio', { name: 'full droop' }).check();
  await button(page, 'Put the bench there').click();
  const travel = page.getByRole('textbox', { name: 'Travel', exact: true });
  await eventually(() => travel.inputValue()).toBe(fixed(-lifted.travel.droop, 1));
  await page.getByRole('radio', { name: 'ride height' }).check();
  const camber = (model: Model, travel: number) =>
    (poseReport(assemble(model), travel, 0) as unknown as Record<string, number>)['camber']!;
  // The lift lowers the wheel in the body's frame: there the top leans out, and yesterday's leans in.
  const apart = Math.abs(camber(lifted, -20) - camber(FACTORY, 0));
  expect(camber(lifted, -20)).toBeGreaterThan(0);
  const words = cell(page, 'camber', 'yesterday').locator('small');
  expect(await words.textContent()).toBe(`leans in instead, ${fixed(apart, 2)}° apart`);
  expect(await cell(page, 'strapLength', 'yesterday').textContent()).toBe('no strap');
});

it('stays in its frame on a phone however far it is scrolled, and another tab begins at its top', async () => {
  const page = await open({ width: 390, height: 844 });
  await addShipped(page, 'planar-equal-arms', 'B');
  const body = page.locator('#tab-body');
  const topOf = (selector: string) => page.locator(selector).evaluate(({ scrollTop }) => scrollTop);
  const last = page.locator('.compare-table tr').last();
  await last.evaluate((row) => row.scrollIntoView());
  expect(await topOf('#tab-body')).toBeGreaterThan(500);
  expect(await topOf('.phone-sheet')).toBe(0);
  await page.getByRole('tab', { name: 'Trust', exact: true }).click();
  await body.getByText('What to measure again').waitFor();
  expect(await topOf('#tab-body')).toBe(0);
});

it('leaves out what reads the same, and takes differences from any design', async () => {
  const page = await open();
  await addShipped(page, 'half-ton-long-travel', 'B');
  const rows = page.locator('.compare-table [data-row]');
  const all = await rows.count();
  await page.getByLabel('only what differs').check();
  await eventually(() => cell(page, 'camber', 'B').count()).toBe(0);
  const differing = await rows.count();
  expect(differing).toBeGreaterThan(10);
  expect(differing).toBeLessThan(all);
  const more = await cell(page, 'halfTrack', 'B').locator('small').textContent();
  expect(more).toMatch(/ mm wider$/);
  await page.getByLabel('Differences from').selectOption('B');
  const less = cell(page, 'halfTrack', 'present').locator('small');
  await eventually(() => less.textContent()).toBe(more!.replace('wider', 'narrower'));
});

it('curves: one for each shown design, in its own dashes and colour, also on the large sheet', async () => {
  const page = await open();
  await threeDesigns(page);
  const curve = page.locator('.compare [data-curve="camber"]');
  await curve.scrollIntoViewIfNeeded();
  await eventually(() => curve.getAttribute('data-curves')).toBe('A Y B');
  /** Columns of the curve's paper that hold a colour of the given one's kind. */
  const inked = (rgb: readonly number[]) =>
    curve.locator('canvas').evaluate((canvas: HTMLCanvasElement, [r, g, b]) => {
      const { width, height } = canvas;
      // A copy is read, so that the page's own paper stays as it is.
      const copy = new OffscreenCanvas(width, height).getContext('2d', {
        willReadFrequently: true,
      })!;
      copy.drawImage(canvas, 0, 0);
      const { data } = copy.getImageData(0, 0, width, height);
      let columns = 0;
      for (let x = 0; x < width; x += 1) {
        for (let y = 0; y < height; y += 1) {
          const at = 4 * (y * width + x);
          const far =
            Math.abs(data[at]! - r!) + Math.abs(data[at + 1]! - g!) + Math.abs(data[at + 2]! - b!);
          if (far < 40 && data[at + 3]! > 200) {
            columns += 1;
            break;
          }
        }
      }
      return columns;
    }, rgb);
  const PURPLE = [0xa0, 0x38, 0x7a];
  const BLUE = [0x0a, 0x5f, 0x7d];
  const whole = await inked(BLUE);
  const dashed = await inked(PURPLE);
  expect(whole).toBeGreaterThan(100);
  // Dashes of 9 with gaps of 4, less where the present curve lies over them.
  expect(dashed).toBeGreaterThan(0.3 * whole);
  expect(dashed).toBeLessThan(0.85 * whole);
  await page.getByRole('checkbox', { name: /^Show B/ }).uncheck();
  await eventually(() => curve.getAttribute('data-curves')).toBe('A Y');
  expect(await inked(PURPLE)).toBe(0);
  expect(await cell(page, 'camber', 'B').count()).toBe(0);
  await page.getByRole('checkbox', { name: /^Show B/ }).check();
  await button(page, 'Any measure, large').click();
  const dialog = page.getByRole('dialog', { name: 'Curves' });
  const legend = dialog.getByRole('list', { name: 'Designs' }).getByRole('listitem');
  await eventually(() => legend.allTextContents()).toEqual([
    'Apresent',
    'Yyesterday',
    `B${LONG.name}`,
  ]);
  const readout = dialog.locator('[data-chart="camber"] output');
  const at = (model: Model) =>
    (poseReport(assemble(model), -20, 0) as unknown as Record<string, number>)['camber']!;
  await eventually(() => readout.textContent()).toContain(`yesterday ${fixed(at(FACTORY), 2)}°`);
  expect(await readout.textContent()).toContain(`B ${fixed(at(LONG), 2)}°`);
});

it('works on another design: they change places, undo changes them back, redo again', async () => {
  const page = await open();
  await addShipped(page, 'half-ton-long-travel', 'B');
  const name = page.getByLabel('Name of design B');
  const both = async () => [(await present(page)).name, await name.inputValue()];
  expect(await name.inputValue()).toBe(LONG.name);
  await page.getByRole('button', { name: /^Work on this one: B/ }).click();
  await eventually(both).toEqual([LONG.name, FACTORY.name]);
  await button(page, 'Undo').click();
  await eventually(both).toEqual([FACTORY.name, LONG.name]);
  await button(page, 'Redo').click();
  await eventually(both).toEqual([LONG.name, FACTORY.name]);
});

it('keeps designs, names and what is hidden over a reload, and puts back what was removed', async () => {
  const page = await open();
  await addShipped(page, 'half-ton-long-travel', 'B');
  await addShipped(page, 'planar-equal-arms', 'C');
  const name = page.getByLabel('Name of design C');
  await name.fill('teaching, "planar"');
  await name.press('Enter');
  await page.getByRole('checkbox', { name: /^Show B/ }).uncheck();
  await page.reload();
  await openSheet(page);
  await eventually(() => name.inputValue()).toBe('teaching, "planar"');
  expect(await page.getByRole('checkbox', { name: /^Show B/ }).isChecked()).toBe(false);
  await page.getByRole('button', { name: /^Remove: C/ }).click();
  await eventually(() => design(page, 'C').count()).toBe(0);
  await button(page, 'Put it back').click();
  await eventually(() => name.inputValue()).toBe('teaching, "planar"');
  const kept = await page.evaluate(() => localStorage.getItem('armscribe.designs'));
  const models = (JSON.parse(kept ?? '') as { model: Model }[]).map(({ model }) => model);
  expect(models.map(writeModel)).toEqual(
    [LONG, { ...PLANAR, name: 'teaching, "planar"' }].map(writeModel),
  );
});

it('takes a dropped file as a design, refuses one with an error or too many, and everything stays', async () => {
  const page = await open();
  const text = (model: unknown) => new TextEncoder().encode(JSON.stringify(model));
  await drop(page, 'kit.json', text({ ...LONG, name: 'kit' }));
  await eventually(() => page.getByLabel('Name of design B').inputValue()).toBe('kit');
  await drop(
    page,
    'bad.json',
    text({ ...LONG, lowerArm: { ...LONG.lowerArm, ballJoint: [1, 2] } }),
  );
  const notice = page.getByRole('alert');
  await eventually(() => notice.textContent()).toContain('bad.json: lowerArm.ballJoint: found ');
  expect(await page.locator('.compare-design').count()).toBe(2);
  await addShipped(page, 'planar-equal-arms', 'C');
  await button(page, 'Add the present design').click();
  await design(page, 'D').waitFor();
  expect(await button(page, 'Add the present design').isDisabled()).toBe(true);
  await drop(page, 'more.json', text(PLANAR));
  await eventually(() => notice.textContent()).toContain(
    'more.json was not taken. All four places',
  );
  expect(await page.locator('.compare-design').count()).toBe(4);
  expect(writeModel(FACTORY)).toContain((await page.locator('.files-button span').textContent())!);
  expect(await button(page, 'Undo').isDisabled()).toBe(true);
});

it('saves the comparison as CSV, differences from the chosen design', async () => {
  const page = await open();
  await addShipped(page, 'half-ton-long-travel', 'B');
  await page.getByLabel('Differences from').selectOption('B');
  const coming = page.waitForEvent('download');
  await page.locator('.compare').getByRole('button', { name: 'Save as CSV' }).click();
  const download = await coming;
  expect(download.suggestedFilename()).toBe('comparison.csv');
  const named = [
    { name: `A ${FACTORY.name}`, measured: measureDesign(FACTORY) },
    { name: `B ${LONG.name}`, measured: measureDesign(LONG) },
  ];
  const lines = parseCsv(readFileSync(await download.path(), 'utf8'));
  const expected = parseCsv(comparisonCsv(named, 1));
  expect(lines.map((line) => line.length)).toEqual(expected.map((line) => line.length));
  // Two engines may differ in the last digits of a sine.
  lines.flat().forEach((field, at) => {
    const own = expected.flat()[at]!;
    if (field === own) return;
    expect(Math.abs(Number(field) - Number(own))).toBeLessThan(
      1e-6 * Math.max(1, Math.abs(Number(own))),
    );
  });
});

it('keeps yesterday’s under a name, and lets it wait its turn where four are there', async () => {
  const page = await open();
  for (const place of ['B', 'C', 'D']) {
    await button(page, 'Add the present design').click();
    await design(page, place).waitFor();
  }
  await button(page, 'Hold as yesterday').click();
  await eventually(() => design(page, 'yesterday').textContent()).toContain('design D waits');
  const heads = page.locator('.compare-table thead th');
  expect(await heads.count()).toBe(4);
  await page.getByRole('button', { name: /^Remove: B/ }).click();
  await button(page, 'Keep as a named design').click();
  await eventually(() => design(page, 'yesterday').count()).toBe(0);
  await eventually(() => design(page, 'B').count()).toBe(1);
});

describe('with its picture', () => {
  it('names the ghosts in the scene, shown ones only, on a phone; nothing serious for axe', async () => {
    const page = await open({
      width: 390,
      height: 844,
      context: { hasTouch: true, isMobile: true, deviceScaleFactor: 1 },
      before: async () => undefined,
    });
    await firstPicture(page);
    await addShipped(page, 'half-ton-long-travel', 'B');
    const label = page.locator('.stage-label', {
      hasText: 'B Half-ton four-wheel drive, long travel',
    });
    await eventually(() => label.isVisible()).toBe(true);
    await page.getByRole('checkbox', { name: /^Show B/ }).uncheck();
    await eventually(() => label.isVisible()).toBe(false);
    await page.getByRole('checkbox', { name: /^Show B/ }).check();
    const wide = await page.locator('.compare').evaluate((sheet) => {
      const right = sheet.getBoundingClientRect().right;
      return [...sheet.querySelectorAll('*')].filter(
        (part) => part.getBoundingClientRect().right > right + 1,
      ).length;
    });
    expect(wide).toBe(0);
    expect(await seriousForAxe(page)).toEqual([]);
  });

  it('is as accessible on a dark desk with four designs', async () => {
    const page = await open({ colorScheme: 'dark' });
    await threeDesigns(page);
    await addShipped(page, 'planar-equal-arms', 'C');
    expect(await seriousForAxe(page)).toEqual([]);
  });
});
