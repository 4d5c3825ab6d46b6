// Papers: chosen, seen and saved on the page with the solver's numbers, and printed to PDF at the size they state.
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { assemble, createMargins, cycleGrid, type Model } from '../../solver/index.ts';
import { paperBody, paperDocument, paperStyle, type Sheet } from '../../src/paper/page.ts';
import { PAPER_SIZES, type PaperSize } from '../../src/paper/paperSize.ts';
import { fiveNumbers } from '../../src/paper/sheets/inspector.ts';
import { sheetsOf } from '../../src/paper/sheets.ts';
import { type PaperSettings, paperSource } from '../../src/paper/source.ts';
import { seriousForAxe } from '../support/axe.ts';
import { type Bench, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const PATIENCE = { timeout: 20_000 };
vi.setConfig({ testTimeout: 120_000 });

const FACTORY = shipped('half-ton-factory');

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

function papersOf(model: Model, settings: PaperSettings): Sheet[] {
  return sheetsOf(model, cycleGrid(createMargins(assemble(model))), settings);
}

/** Pages of a PDF as [width, height], mm. */
function pdfPages(pdf: Buffer): [number, number][] {
  const text = pdf.toString('latin1');
  const pages = text.match(/\/Type\s*\/Page[^s]/g) ?? [];
  const boxes = [...text.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)];
  expect(boxes.length).toBe(pages.length);
  return boxes.map(([, w, h]) => [(Number(w) / 72) * 25.4, (Number(h) / 72) * 25.4]);
}

function expectSizes(pages: readonly [number, number][], count: number, paper: PaperSize): void {
  expect(pages.length).toBe(count);
  for (const [width, height] of pages) {
    // A PDF's page is in whole points.
    expect(Math.abs(width - PAPER_SIZES[paper][0])).toBeLessThan(0.4);
    expect(Math.abs(height - PAPER_SIZES[paper][1])).toBeLessThan(0.4);
  }
}

async function openPapers(page: Page, isPhone = false): Promise<void> {
  if (isPhone) await page.getByRole('button', { name: 'View', exact: true }).click(PATIENCE);
  const name = isPhone ? 'Papers…' : 'Papers';
  await page.getByRole('button', { name, exact: true }).click(PATIENCE);
  await page.locator('.papers-sheet iframe').waitFor(PATIENCE);
}

/** Text of the frame, and the width its pages are laid out at, px. */
function seen(page: Page): Promise<{ text: string; width: number }> {
  return page.evaluate(() => {
    const frame = document.querySelector<HTMLIFrameElement>('.papers-sheet iframe')!;
    const { body } = frame.contentDocument!;
    const first = body.querySelector<HTMLElement>('.page');
    return { text: body.textContent ?? '', width: first?.offsetWidth ?? 0 };
  });
}

/** A page of its own, with nothing of the bench in it. */
async function emptyPage(): Promise<Page> {
  const body = '<!doctype html><title>Empty</title>';
  bench = await openBench({
    before: (page) =>
      page.route('**/*', (route) => route.fulfill({ contentType: 'text/html', body })),
  });
  return bench.page;
}

describe('printed to PDF', () => {
  it.each(['a4', 'letter'] as const)(
    '%s: as many pages as they say, none overfull',
    async (paper) => {
      const page = await emptyPage();
      const long: Model = {
        ...shipped('half-ton-long-travel'),
        name: 'Half-ton '.repeat(30),
      };
      for (const model of [shipped('rear-steer-saloon'), long]) {
        const settings = { paper, unit: 'sixteenth', date: '' } as const;
        const sheets = papersOf(model, settings);
        await page.setContent(paperDocument('Papers', sheets, settings));
        const heights = await page
          .locator('.page')
          .evaluateAll((pages) => pages.map((each) => each.getBoundingClientRect().height));
        const most = (PAPER_SIZES[paper][1] * 96) / 25.4;
        for (const height of heights) expect(height).toBeLessThanOrEqual(most);
        const pdf = await page.pdf({ preferCSSPageSize: true });
        const count = sheets.reduce((sum, { pages }) => sum + pages.length, 0);
        expectSizes(pdfPages(pdf), count, paper);
      }
    },
  );

  it('with the style that the preview adopts', async () => {
    const page = await emptyPage();
    const settings = { paper: 'letter', unit: 'mm', date: '2026-03-04' } as const;
    const sheets = papersOf(FACTORY, settings).filter(({ key }) => key === 'inspector');
    await page.setContent(`<!doctype html><body>${paperBody(sheets)}`);
    await page.evaluate((text) => {
      const style = new CSSStyleSheet();
      style.replaceSync(text);
      document.adoptedStyleSheets = [style];
    }, paperStyle(settings));
    expectSizes(pdfPages(await page.pdf({ preferCSSPageSize: true })), 1, 'letter');
  });
});

describe('the sheet of papers', () => {
  it('shows the solver’s numbers, prints its frame, and saves what the command line writes', async () => {
    bench = await openBench({ before: withoutPicture });
    const { page } = bench;
    await openPapers(page);
    await page.getByRole('button', { name: 'A4, 210 × 297 mm' }).click();
    await page.getByLabel('Date').fill('2026-03-04');
    await page.getByRole('button', { name: 'Inspector’s note' }).click();
    const settings = { paper: 'a4', unit: 'mm', date: '2026-03-04' } as const;
    const cycle = cycleGrid(createMargins(assemble(FACTORY)));
    const source = paperSource(FACTORY, cycle, settings);
    const numbers = fiveNumbers(source, source.set!);
    await expect.poll(async () => (await seen(page)).text, PATIENCE).toContain(numbers[0]!.words);
    const { text, width } = await seen(page);
    for (const { figure, words } of numbers) {
      expect(text).toContain(figure);
      expect(text).toContain(words);
    }
    // 210 mm at 96 px an inch.
    expect(Math.abs(width - 793.7)).toBeLessThan(1);

    await page.evaluate(() => {
      const frame = document.querySelector<HTMLIFrameElement>('.papers-sheet iframe')!;
      frame.contentWindow!.print = () => {
        document.body.dataset['printed'] = frame.contentDocument!.title;
      };
    });
    await page.getByRole('button', { name: 'Print…' }).click();
    const printed = await page.evaluate(() => document.body.dataset['printed']);
    expect(printed).toBe(`Inspector’s note: ${FACTORY.name}`);

    const download = page.waitForEvent('download', PATIENCE);
    await page.getByRole('button', { name: 'Save as HTML' }).click();
    const file = await download;
    expect(file.suggestedFilename()).toMatch(/-inspector\.html$/);
    const [sheet] = sheetsOf(FACTORY, cycle, settings).filter(({ key }) => key === 'inspector');
    expect(readFileSync(await file.path(), 'utf8')).toBe(
      paperDocument(`Inspector’s note: ${FACTORY.name}`, [sheet!], settings),
    );
    expect(await seriousForAxe(page)).toEqual([]);
  });

  it('saves the curves’ numbers, and changes with the unit', async () => {
    bench = await openBench({ before: withoutPicture });
    const { page } = bench;
    await openPapers(page);
    await page.getByRole('button', { name: 'Set-up sheet' }).click();
    const { lowerArm } = FACTORY;
    const long = Math.hypot(...lowerArm.frontPivot.map((at, i) => at - lowerArm.rearPivot[i]!));
    await expect
      .poll(async () => (await seen(page)).text, PATIENCE)
      .toContain(`${long.toFixed(1)} mm`);
    await page
      .locator('.papers-sheet')
      .getByRole('button', { name: 'in: inches, decimal' })
      .click();
    await expect
      .poll(async () => (await seen(page)).text, PATIENCE)
      .toContain(`${(long / 25.4).toFixed(2)} in`);
    await page.locator('.papers-list').getByRole('button', { name: 'Curves' }).click();
    const download = page.waitForEvent('download', PATIENCE);
    await page.getByRole('button', { name: 'CSV along travel' }).click();
    const file = await download;
    expect(readFileSync(await file.path(), 'utf8')).toMatch(/^"travel \[mm; \+ wheel up/);
  });

  it('on a phone: opened from the menu, nothing wider than the window, serious for nobody', async () => {
    bench = await openBench({ width: 390, height: 844, before: withoutPicture });
    const { page } = bench;
    await openPapers(page, true);
    await expect.poll(async () => (await seen(page)).text, PATIENCE).toContain('Set-up sheet');
    const over = await page
      .locator('.papers-sheet')
      .evaluate((sheet) => sheet.scrollWidth - sheet.clientWidth);
    expect(over).toBeLessThanOrEqual(0);
    const small = await page
      .locator('.papers-side button:not(.caution-line), .papers-side input')
      .evaluateAll((all) => all.filter((each) => each.getBoundingClientRect().height < 36).length);
    expect(small).toBe(0);
    expect(await seriousForAxe(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.papers-sheet').count(), PATIENCE).toBe(0);
  });
});
