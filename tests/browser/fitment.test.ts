// The sheet of wheel and tyre: what it says of a candidate is what the solver says; a trial is reversible; a contour is drawn by hand.
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { certify } from '../../solver/certify/proof.ts';
import { type Candidate, candidateOf } from '../../solver/fitment/candidate.ts';
import { fitmentFigures } from '../../solver/fitment/figures.ts';
import { fitCandidate } from '../../solver/fitment/fit.ts';
import { sectionView } from '../../solver/fitment/sectionView.ts';
import { assemble, type Model } from '../../solver/index.ts';
import { fixed, signed } from '../../src/words/format.ts';
import { fitmentPairs } from '../../src/worker/fitmentJob.ts';
import { seriousForAxe } from '../support/axe.ts';
import { type Bench, type BenchOptions, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const FACTORY = shipped('half-ton-factory');

vi.setConfig({ testTimeout: 120_000 });

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

/** Asserts on what the page comes to within a while. */
function eventually<T>(read: () => T | Promise<T>, message = '') {
  return expect.poll(read, { timeout: 20_000, message });
}

function fitted(change: Partial<Candidate>): Model {
  const result = fitCandidate(FACTORY, { ...candidateOf(FACTORY), ...change });
  if (!result.ok) throw new Error(result.message);
  return result.model;
}

/** By the tab at the page's side, or on a phone by the menu. */
async function openSheet(page: Page): Promise<void> {
  const tab = page.getByRole('button', { name: 'Fitment', exact: true });
  if ((await tab.count()) > 0) await tab.click();
  else {
    await page.getByRole('button', { name: 'View', exact: true }).click();
    await page.getByRole('button', { name: 'Wheel and tyre…' }).click();
  }
  await sheet(page).waitFor();
}

async function open(options: BenchOptions = {}): Promise<Page> {
  bench = await openBench({ before: withoutPicture, ...options });
  const { page } = bench;
  await eventually(() =>
    page.locator('[data-reading="camber"] [data-part="figure"]').textContent(),
  ).toBe('−0.20°');
  await openSheet(page);
  return page;
}

function sheet(page: Page): Locator {
  return page.getByRole('dialog', { name: 'Wheel and tyre' });
}

function field(page: Page, name: string): Locator {
  return sheet(page).getByRole('textbox', { name, exact: true });
}

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
}

function cell(page: Page, figure: string, column: string): Locator {
  return sheet(page).locator(`[data-figure="${figure}"] [data-column="${column}"]`);
}

function gapCell(page: Page, part: string, column: string): Locator {
  return sheet(page).locator(`[data-gap="${part}"] [data-column="${column}"]`);
}

function button(page: Page, name: string | RegExp): Locator {
  return sheet(page).getByRole('button', { name, exact: true });
}

/** The figures of a column are a model's own, and the differences those from the factory's. */
async function agrees(page: Page, column: string, model: Model): Promise<void> {
  const [own, present] = [fitmentFigures(model), fitmentFigures(FACTORY)];
  const lengths: readonly (readonly [string, number | null, number | null])[] = [
    ['overallDiameter', own.overallDiameter, present.overallDiameter],
    ['sectionWidth', own.sectionWidth, present.sectionWidth],
    ['loadedRadius', own.loadedRadius, present.loadedRadius],
    ['poke', own.places.outermost, present.places.outermost],
    ['innerLip', -own.places.innerLip.fromFace, -present.places.innerLip.fromFace],
    ['track', own.track, present.track],
    ['scrubRadius', own.scrubRadius, present.scrubRadius],
  ];
  for (const [key, value, base] of lengths) {
    const text = cell(page, key, column);
    await eventually(() => text.textContent(), key).toContain(`${fixed(value!, 1)} mm`);
    const change = value! - base!;
    const wanted = Math.abs(change) < 0.05 ? 'as now' : `${signed(change, 1)} mm`;
    expect(await text.textContent(), key).toContain(wanted);
  }
  await eventually(() => cell(page, 'revolutionsPerKm', column).textContent()).toContain(
    fixed(own.revolutionsPerKm, 1),
  );
}

describe('a candidate', () => {
  it('typed wrong says why, is read right, and its figures are the solver’s', async () => {
    const page = await open();
    await button(page, 'Add a candidate').click();
    await agrees(page, 'A', FACTORY);
    await type(page, 'Candidate A: Tyre size', '35x12.5x17');
    const alert = sheet(page).getByRole('alert');
    await eventually(() => alert.textContent()).toContain(
      'There is no size written “35x12.5x17”: R stands before the rim’s code.',
    );
    // Nothing is lost and nothing is guessed: the text stays, the figures are still those of the size that was taken.
    expect(await field(page, 'Candidate A: Tyre size').inputValue()).toBe('35x12.5x17');
    await agrees(page, 'A', FACTORY);
    await button(page, 'Take 35x12.50R17').click();
    await eventually(() => alert.count()).toBe(0);
    expect(await field(page, 'Candidate A: Tyre size').inputValue()).toBe('35x12.50R17');
    const taller = fitted({ tyre: { size: '35x12.50R17' } });
    await agrees(page, 'A', taller);
    await eventually(() => cell(page, 'speedometer', 'A').textContent()).toContain('−9.7 %');

    await type(page, 'Candidate A: Rim width', '8.5');
    await type(page, 'Candidate A: Backspacing', '4 1/4 in');
    const model = fitted({
      tyre: { size: '35x12.50R17' },
      rimWidth: 8.5,
      mounting: { by: 'backspacing', value: 107.95 },
    });
    await agrees(page, 'A', model);
    // 4.25 in = (8.5 + 1)/2 in + offset: trade practice, from memory.
    expect(await field(page, 'Candidate A: Offset').inputValue()).toBe('−12.7');
    const pairs = fitmentPairs(assemble(model)).slice(0, 2);
    for (const { names, least } of certify(assemble(model), pairs)) {
      await eventually(() => gapCell(page, names.join('/'), 'A').textContent()).toContain(
        `${fixed(least, 1)} mm`,
      );
    }
  });

  it('has every gap of its wheel and tyre proven behind the page, which can be stopped', async () => {
    // The worker is let start only when it has been stopped once: no proof is too quick to be stopped.
    let go: () => void = () => undefined;
    const gate = new Promise<void>((resolve) => {
      go = resolve;
    });
    const page = await open({
      before: async (opened) => {
        await withoutPicture(opened);
        await opened.route(/fitmentWorker/, async (route) => {
          await gate;
          await route.continue().catch(() => undefined);
        });
      },
    });
    await button(page, 'Stop proving').click();
    await button(page, 'Go on proving').waitFor();
    go();
    await button(page, 'Go on proving').click();
    const pairs = fitmentPairs(assemble(FACTORY)).filter(({ names }) => names.includes('tyre'));
    const least = certify(assemble(FACTORY), pairs).reduce((a, b) => (a.least < b.least ? a : b));
    await eventually(() => gapCell(page, 'tyre', 'present').textContent()).toContain(
      `${fixed(least.least, 1)} mm`,
    );
    const [one, other] = least.names;
    expect(await gapCell(page, `${one}/${other}`, 'present').textContent()).toContain('proven');
    expect(await button(page, 'Stop proving').count()).toBe(0);
  });

  it('keeps what is half typed while the sheet is closed, and gives it up with Escape alone', async () => {
    const page = await open();
    await button(page, 'Add a candidate').click();
    await type(page, 'Candidate A: Offset', 'about 20');
    await eventually(() => sheet(page).getByRole('alert').textContent()).toContain('not a number');
    await field(page, 'Candidate A: Spacer').fill('12');
    await button(page, 'Close wheel and tyre').click();
    await sheet(page).waitFor({ state: 'detached' });
    await openSheet(page);
    expect(await field(page, 'Candidate A: Offset').inputValue()).toBe('about 20');
    expect(await field(page, 'Candidate A: Spacer').inputValue()).toBe('12');
    await field(page, 'Candidate A: Offset').press('Escape');
    await eventually(() => field(page, 'Candidate A: Offset').inputValue()).toBe('45');
    expect(await sheet(page).isVisible()).toBe(true);
  });
});

describe('a trial', () => {
  it('puts the candidate on the bench against a ghost, and is taken back by undo', async () => {
    const page = await open();
    await button(page, 'Add a candidate').click();
    await type(page, 'Candidate A: Spacer', '30');
    await button(page, 'Try as a ghost: candidate A').click();
    await sheet(page).getByText('Candidate A is on the bench').waitFor();
    // The columns still compare with the design before the trial.
    const model = fitted({ spacer: 30 });
    await agrees(page, 'A', model);
    await button(page, 'See it on the bench').click();
    await sheet(page).waitFor({ state: 'detached' });
    const scrub = page.locator('[data-reading="scrubRadius"] [data-part="figure"]');
    const group = page.getByRole('button', { name: 'Steering axis', exact: true });
    if ((await group.getAttribute('aria-expanded')) === 'false') await group.click();
    await eventually(() => scrub.textContent()).toBe(
      `${fixed(fitmentFigures(model).scrubRadius!, 1)} mm`,
    );
    const hold = page.getByRole('button', { name: /yesterday/ });
    expect(await hold.getAttribute('aria-pressed')).toBe('true');
    await page.getByText('Candidate A is on the bench').waitFor();
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await eventually(() => scrub.textContent()).toBe(
      `${fixed(fitmentFigures(FACTORY).scrubRadius!, 1)} mm`,
    );
    await eventually(() => hold.getAttribute('aria-pressed')).toBe('false');
    await eventually(() => page.getByText('Candidate A is on the bench').count()).toBe(0);
  });

  it('kept is one step of the history', async () => {
    const page = await open();
    await button(page, 'Add a candidate').click();
    await type(page, 'Candidate A: Tyre size', '285/70r17');
    await button(page, 'Keep: candidate A').click();
    const present = sheet(page).locator('[data-field="tyre"] [data-column="present"]');
    await eventually(() => present.textContent()).toContain('285/70r17');
    await button(page, 'Undo').click();
    await eventually(() => present.textContent()).toContain('265/70R17');
    expect(await button(page, 'Undo').isDisabled()).toBe(true);
  });
});

describe('the section', () => {
  it('draws the gap of the pose it says, and its contour is moved by hand, by key and by number', async () => {
    const page = await open();
    const gap = sheet(page).locator('.section-gap text');
    const drawn = sectionView(assemble(FACTORY), 0, 0)!;
    await eventually(() => gap.textContent()).toBe(`${fixed(drawn.wheelGap.gap, 1)} mm`);
    await sheet(page).getByLabel('Rim contour').check();
    const first = sheet(page).getByRole('button', { name: /^Contour point 4: / });
    const s = field(page, 'Outboard of the centre plane, contour point 4');
    const radius = field(page, 'Radius, contour point 4');
    const from = Number(await radius.inputValue());
    // To scale: so many pixels are so many millimetres, by the picture's own measure.
    const perMm = await sheet(page)
      .locator('.section-picture')
      .evaluate((svg) => {
        const matrix = (svg as unknown as SVGGraphicsElement).getScreenCTM();
        return matrix?.a ?? 0;
      });
    const box = await first.locator('.section-dot').boundingBox();
    const [x, y] = [box!.x + box!.width / 2, box!.y + box!.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y + 10 * perMm, { steps: 4 });
    await page.mouse.up();
    await eventually(async () =>
      Math.abs(Number(await radius.inputValue()) - (from - 10)),
    ).toBeLessThan(0.2);
    await eventually(() => gap.textContent()).not.toBe(`${fixed(drawn.wheelGap.gap, 1)} mm`);
    const dragged = await radius.inputValue();

    await first.press('ArrowUp');
    await eventually(async () => Number(await radius.inputValue())).toBeCloseTo(
      Number(dragged) + 1,
      6,
    );
    await s.fill('-66');
    await s.press('Enter');
    await eventually(() => s.inputValue()).toBe('−66');
    // Three gestures, three steps back; Ctrl+Z works where nothing is typed.
    await first.focus();
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await eventually(() => radius.inputValue()).toBe(dragged);
    await page.keyboard.press('Control+z');
    await eventually(async () => Number(await radius.inputValue())).toBe(from);
    await eventually(() => gap.textContent()).toBe(`${fixed(drawn.wheelGap.gap, 1)} mm`);
  });
});

describe('the sheet', () => {
  it.each([
    ['light', 1440, 900],
    ['dark', 1024, 768],
    ['light', 390, 844],
    ['dark', 390, 844],
  ] as const)(
    'has nothing serious for axe and stays inside: %s, %d × %d',
    async (colorScheme, width, height) => {
      const page = await open({ colorScheme, width, height });
      await button(page, 'Add a candidate').click();
      await type(page, 'Candidate A: Tyre size', '70/265R17');
      await sheet(page).getByRole('alert').waitFor();
      await sheet(page).getByText('Sources', { exact: true }).first().click();
      await sheet(page).getByLabel('Rim contour').check();
      expect(await seriousForAxe(page)).toEqual([]);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(wide).toBeLessThanOrEqual(0);
      const body = await sheet(page).evaluate((dialog) => dialog.scrollWidth - dialog.clientWidth);
      expect(body).toBeLessThanOrEqual(0);
    },
  );

  it('shows every length in the unit chosen', async () => {
    const page = await open();
    await page.locator('.fitment-sheet').getByRole('button', { name: /^in: / }).click();
    const own = fitmentFigures(FACTORY);
    await eventually(() => cell(page, 'overallDiameter', 'present').textContent()).toBe(
      `${fixed(own.overallDiameter / 25.4, 2)} in`,
    );
    await page
      .locator('.fitment-sheet')
      .getByRole('button', { name: /^1\/16 in: / })
      .click();
    // 802.8 mm is 31 39/64 in: to the nearest sixteenth 31 5/8. Own arithmetic.
    await eventually(() => cell(page, 'overallDiameter', 'present').textContent()).toBe(
      '31 5/8 in',
    );
  });
});
