// Drawings and cut list: seen, saved, printed at full size.
import { readFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';
import type { Page } from 'playwright-core';
import { afterEach, expect, it } from 'vitest';
import { armFigure, cutList } from '../../solver/index.ts';
import { drawingsOf } from '../../src/paper/drawing/drawings.ts';
import { tiledDocument, tilesOf } from '../../src/paper/drawing/tiles.ts';
import { PAPER_SIZES } from '../../src/paper/paperSize.ts';
import { seriousForAxe } from '../support/axe.ts';
import { type Bench, type BenchOptions, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const MODEL = shipped('half-ton-factory');
const PER_INCH = 96;

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

function eventually<T>(read: () => T | Promise<T>) {
  return expect.poll(read, { timeout: 20_000 });
}

async function open(role: 'button' | 'tab' = 'button', options: BenchOptions = {}): Promise<Page> {
  bench = await openBench({ before: withoutPicture, ...options });
  const { page } = bench;
  await page.getByRole(role, { name: 'Plans', exact: true }).click({ timeout: 20_000 });
  await page.locator('.drawing-preview img').waitFor({ timeout: 20_000 });
  return page;
}

async function saved(page: Page, button: string): Promise<{ name: string; text: string }> {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  const file = await coming;
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), 'utf8') };
}

function preview(page: Page): Promise<readonly [boolean, number, number]> {
  return page.locator('.drawing-preview img').evaluate((image) => {
    const { complete, naturalWidth, naturalHeight } = image as HTMLImageElement;
    return [complete, naturalWidth, naturalHeight] as const;
  });
}

it('draws each part and hand, and saves what is seen as SVG and DXF at full size', async () => {
  const page = await open();
  const size = (part: string, hand: 'left' | 'right') => {
    const drawings = drawingsOf(MODEL, { unit: 'mm', hand, date: '2026-01-01' });
    const { width, height } = drawings.find(({ key }) => key === `${part}-${hand}`)!;
    return [true, Math.round((width * PER_INCH) / 25.4), Math.round((height * PER_INCH) / 25.4)];
  };
  const shown = async () => (await preview(page)).map((of) => (typeof of === 'number' ? of : of));
  await eventually(shown).toEqual(size('lower-arm', 'left'));
  await page.getByRole('button', { name: 'Upper arm', exact: true }).click();
  await page.getByRole('button', { name: 'Right hand' }).click();
  await eventually(shown).toEqual(size('upper-arm', 'right'));
  const svg = await saved(page, 'Save SVG');
  expect(svg.name).toBe('half-ton-four-wheel-drive-factory-height-upper-arm-right.svg');
  expect(svg.text).toContain('Upper arm, right hand');
  expect(svg.text).toContain(armFigure(MODEL, 'upperArm').reach.toFixed(1));
  const dxf = await saved(page, 'Save DXF');
  expect(new DxfParser().parseSync(dxf.text)!.entities.length).toBeGreaterThan(30);
});

it('lists what is to be cut, less what is typed, and refuses what is no length', async () => {
  const page = await open();
  const cut = () => page.locator('.cut-list tbody tr td:nth-child(3)').allTextContents();
  const expected = (pivot: number) =>
    cutList(MODEL, { pivot, ball: 0, rodEnd: 0 }).map((piece) => piece.cut.toFixed(1));
  expect(await cut()).toEqual(expected(0));
  const field = page.getByRole('textbox', { name: 'at a pivot' });
  await field.fill('1 1/2 in');
  await field.press('Enter');
  await eventually(cut).toEqual(expected(38.1));
  await field.fill('-4');
  await field.press('Enter');
  await eventually(() => page.locator('.cut-list [role="alert"]').textContent()).toContain(
    'below 0',
  );
  expect(await field.inputValue()).toBe('-4');
  expect(await cut()).toEqual(expected(38.1));
  const csv = await saved(page, 'Save as CSV');
  expect(csv.text.split('\r\n')[0]).toContain('cut length [mm]');
  expect(csv.text).toContain(expected(38.1)[0]!);
});

it('prints over pages of the right size, with a check bar of 100 mm on each to 0.1 mm', async () => {
  const page = await open();
  const drawing = drawingsOf(MODEL, { unit: 'mm', hand: 'left', date: '2026-01-01' })[1]!;
  const { tiles } = tilesOf(drawing, 'letter');
  await page.getByRole('button', { name: 'Letter paper' }).click();
  const button = page.getByRole('button', { name: `Print at full size: ${tiles.length} pages` });
  await button.click();
  await eventually(() => page.locator('iframe[data-print]').getAttribute('srcdoc')).toContain(
    'full size',
  );
  // The same document on its own, as it comes out of a printer.
  const paper = await page.context().newPage();
  await paper.setContent(tiledDocument(drawing, 'letter'));
  await paper.emulateMedia({ media: 'print' });
  const bars = await paper
    .locator('.check')
    .evaluateAll((paths) =>
      paths.map((path) => (path as SVGGraphicsElement).getBoundingClientRect().width),
    );
  expect(bars.length).toBe(tiles.length);
  for (const bar of bars) expect(Math.abs((bar * 25.4) / PER_INCH - 100)).toBeLessThan(0.1);
  const pdf = (await paper.pdf({ preferCSSPageSize: true })).toString('latin1');
  await paper.close();
  expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length).toBe(tiles.length);
  const [, , wide, high] = /\/MediaBox\s*\[([^\]]+)\]/
    .exec(pdf)![1]!
    .trim()
    .split(/\s+/)
    .map(Number);
  const [short, long] = PAPER_SIZES.letter.map((mm) => (mm * 72) / 25.4);
  expect([wide!, high!].sort((a, b) => a - b)).toEqual([
    expect.closeTo(short!, 0),
    expect.closeTo(long!, 0),
  ]);
});

it('fits a phone, and axe finds nothing serious', async () => {
  const page = await open('tab', { width: 390, height: 844, colorScheme: 'dark' });
  const wide = await page.locator('.drawings-sheet').evaluate((sheet) => sheet.scrollWidth);
  expect(wide).toBeLessThanOrEqual(390);
  expect(await seriousForAxe(page)).toEqual([]);
});
