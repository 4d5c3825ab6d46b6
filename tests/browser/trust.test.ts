// How good the numbers are: ± edited, readings rounded, what to measure again, corners drawn; and one thing moved.
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  ANSWER_KEYS,
  assemble,
  createSensitivities,
  effectsOf,
  inputSigmas,
  type Knowledge,
  knowledgeOf,
  type Model,
  measureAgain,
  moved,
  sensitivityAt,
  uncertaintiesOf,
  writeModel,
} from '../../solver/index.ts';
import { figureDifference, figureSteps, figureStyle } from '../../src/words/figures.ts';
import { knownFigure, spreadWords } from '../../src/words/known.ts';
import { seriousForAxe } from '../support/axe.ts';
import { drop } from '../support/drop.ts';
import { type Bench, type BenchOptions, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const PATIENCE = { timeout: 60_000 };
vi.setConfig({ testTimeout: 240_000 });

const MODEL: Model = shipped('half-ton-factory');
/** What the plumb bob's grade states: mm and degrees, common practice without a source. */
const PLUMB_BOB = { default: 1.5, 'hub.camber': 0.1, 'hub.toe': 0.1 };
const RATE = figureStyle('degreePerMm', 'mm');

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

function eventually<T>(read: () => T | Promise<T>, message = '') {
  return expect.poll(read, { timeout: 20_000, message });
}

async function open(options: BenchOptions = {}): Promise<Page> {
  bench = await openBench({ before: withoutPicture, plusMinus: true, ...options });
  return bench.page;
}

async function openSheet(tab: string, options: BenchOptions = {}): Promise<[Page, Locator]> {
  const page = await open(options);
  const named = { name: tab, exact: true };
  await page.getByRole('button', named).or(page.getByRole('tab', named)).click();
  const sheet = page.locator('[data-panel="work"], #tab-body');
  await sheet.waitFor(PATIENCE);
  return [page, sheet];
}

function stating(tolerance: Readonly<Record<string, number>>): Model {
  return { ...MODEL, tolerance };
}

function spreadOf(known: Knowledge): string {
  return `${knownFigure(RATE, known.answers!.bumpSteer!.uncertainty)!.spread}${RATE.unit}`;
}

/** The ± of toe at a rack as it is shown, without its unit. */
function toeSpread(rack: number): string {
  const made = createSensitivities(assemble(MODEL));
  const pose = sensitivityAt(made, 0, rack);
  if (typeof pose === 'string') throw new Error(pose);
  const found = uncertaintiesOf(pose, inputSigmas(MODEL, made.inputs));
  return knownFigure(figureStyle('degree', 'mm'), found[ANSWER_KEYS.indexOf('toe')]!)!.spread;
}

describe('trust', () => {
  it('says of bump steer what the solver says, and follows the ± of all points and of one', async () => {
    const [page, sheet] = await openSheet('Trust');
    const sentence = sheet.locator('[data-known="bumpSteer"]');
    await eventually(() => sentence.textContent()).toContain(spreadOf(knowledgeOf(MODEL)));
    expect(await sentence.textContent()).toContain('Even its sign is not sure');

    await sheet.getByText('Points and numbers one by one').click();
    const field = sheet.getByRole('textbox', { name: '± of Tie rod, inner joint', exact: true });
    await field.fill('fifty');
    await field.press('Enter');
    await eventually(() => sheet.getByRole('alert').textContent()).toBe('“fifty” is not a number.');
    expect(await field.inputValue()).toBe('fifty');
    await field.fill('12');
    await field.press('Enter');
    const worse = stating({ default: 2, 'tieRod.inner': 12 });
    await eventually(() => sentence.textContent()).toContain(spreadOf(knowledgeOf(worse)));

    const all = sheet.getByRole('combobox', { name: 'How it was measured: every coordinate' });
    await all.selectOption({ label: 'bench, 0.75 mm' });
    const better = stating({ default: 0.75, 'tieRod.inner': 12 });
    await eventually(() => sentence.textContent()).toContain(spreadOf(knowledgeOf(better)));
    expect(await seriousForAxe(page)).toEqual([]);

    await page.getByRole('button', { name: /^Undo/ }).click();
    await page.getByRole('button', { name: /^Undo/ }).click();
    await eventually(() => sentence.textContent()).toContain(spreadOf(knowledgeOf(MODEL)));
    await eventually(() => field.inputValue()).toBe('');
  });

  it('rounds readings to what is known, and gives all digits back', async () => {
    const page = await open({ width: 1800, height: 1000 });
    const figure = page.locator('[data-reading="caster"] [data-part="figure"]');
    const { value, uncertainty } = knowledgeOf(MODEL).answers!.caster!;
    const known = knownFigure(figureStyle('degree', 'mm'), uncertainty)!;
    const text = `${value.toFixed(known.figure.digits)}${known.spread}°`;
    expect(known.figure.digits).toBe(1);
    await eventually(() => figure.textContent()).toBe(text);
    await page.getByRole('button', { name: 'Trust', exact: true }).click();
    await page.getByRole('checkbox', { name: /^Readings and curves show/ }).uncheck();
    await eventually(() => figure.textContent()).toBe(`${value.toFixed(2)}°`);
    await page.reload();
    await eventually(() => figure.textContent()).toBe(`${value.toFixed(2)}°`);
  });

  it.each([
    [1440, 900],
    [1024, 768],
  ])(
    'keeps a figure with its ± clear of its curve at %d × %d, at any lock',
    async (width, height) => {
      const page = await open({ width, height });
      const field = page.getByRole('textbox', { name: 'Rack', exact: true });
      for (const rack of ['-72', '-31', '25', '30.4', '46', '72']) {
        await field.fill(rack);
        await field.press('Enter');
        await eventually(() =>
          page.locator('.main-reading[data-reading="toe"] .reading-spread').textContent(),
        ).toContain(toeSpread(Number(rack)));
        const overhangs = await page.locator('.main-reading').evaluateAll((readings) =>
          readings.map((reading) => {
            const range = document.createRange();
            range.selectNodeContents(reading.querySelector('.main-reading-figure')!);
            const curve = reading.querySelector('.main-reading-curve')!;
            return range.getBoundingClientRect().right - curve.getBoundingClientRect().left;
          }),
        );
        expect(Math.max(...overhangs), `rack ${rack}`).toBeLessThanOrEqual(0);
      }
    },
  );

  it('offers the grades of common practice where the model states nothing, and takes one as stated', async () => {
    const { tolerance: _, ...silent } = MODEL;
    const [page, sheet] = await openSheet('Trust');
    await drop(page, 'silent.json', new TextEncoder().encode(writeModel(silent)));
    const sentence = sheet.locator('[data-known="caster"]');
    await eventually(() => sentence.textContent()).toContain(
      'nothing that goes into it states a ±',
    );
    expect(await page.getByRole('checkbox', { name: /^Readings and curves/ }).isChecked()).toBe(
      false,
    );
    await sheet.getByRole('button', { name: 'plumb bob, ±1.5 mm' }).click();
    const { uncertainty } = knowledgeOf(stating(PLUMB_BOB)).answers!.caster!;
    const { spread } = knownFigure(figureStyle('degree', 'mm'), uncertainty)!;
    await eventually(() => sentence.textContent()).toContain(`${spread}° from these points`);
    expect(await page.getByRole('checkbox', { name: /^Readings and curves/ }).isChecked()).toBe(
      true,
    );
  });

  it('ranks what to measure again as the solver does, and says what it would help', async () => {
    const [, sheet] = await openSheet('Trust');
    const section = sheet.getByRole('region', { name: 'What to measure again' });
    await section.getByLabel('Measured again to ±').fill('0,25');
    await section.getByLabel('Measured again to ±').press('Enter');
    const known = knowledgeOf(MODEL);
    for (const [key, label, figure] of [
      ['bumpSteer', 'bump steer', RATE],
      ['scrubRadius', 'scrub radius', figureStyle('millimetre', 'mm')],
    ] as const) {
      await eventually(() => section.getByRole('option', { name: label }).count()).toBe(1);
      await section.getByLabel('Answer that matters').selectOption({ label });
      const { spoilers, steps } = measureAgain(known, known.answers![key]!, 0.25);
      const wanted = spoilers.slice(0, 5).map(({ input }) => input.key);
      const rows = section.locator('[data-input]');
      await eventually(async () =>
        (await rows.evaluateAll((all) => all.map((one) => one.getAttribute('data-input')))).slice(
          0,
          5,
        ),
      ).toEqual(wanted);
      const shown = await section.locator('[data-step] td').allTextContents();
      expect(shown).toEqual(steps.map((step) => spreadWords(figure, step)));
    }
  });

  it('draws corners, stops when asked, and says whether the law agrees', async () => {
    const [, sheet] = await openSheet('Trust');
    const section = sheet.getByRole('region', { name: 'Check it by drawing corners at random' });
    await section.getByRole('button', { name: 'Draw 10,000 corners' }).click();
    await section.getByRole('progressbar').waitFor(PATIENCE);
    await section.getByRole('button', { name: 'Stop' }).click();
    await section.getByRole('button', { name: 'Draw 10,000 corners' }).click();
    const row = section.locator('[data-drawn="caster"]');
    await row.waitFor(PATIENCE);
    const { uncertainty } = knowledgeOf(MODEL).answers!.caster!;
    const degree = figureStyle('degree', 'mm');
    expect(await row.locator('[data-part="linear"]').textContent()).toBe(
      spreadWords(degree, uncertainty),
    );
    // Ten thousand draws know a standard deviation to 0.7 % (JCGM 100, E.4.3): one unit of the second digit covers it.
    const drawn = await row.locator('[data-part="drawn"]').textContent();
    expect(Math.abs(Number(drawn?.match(/[\d.]+/)?.[0]) - uncertainty)).toBeLessThan(0.02);
    expect(await row.getAttribute('data-agrees')).toBe('true');
    expect(await section.getByRole('status').textContent()).toContain('10,000 corners drawn');
  });
});

describe('move', () => {
  it('lists what moves as the solver does, is tried as a ghost and taken back', async () => {
    const [page, sheet] = await openSheet('Move');
    await sheet.getByLabel('What is moved').selectOption({ label: 'Upper arm, front pivot' });
    await sheet.getByRole('combobox', { name: 'Which way' }).selectOption({ label: 'down' });
    await sheet.getByLabel('by', { exact: true }).fill('7.5');
    await sheet.getByLabel('by', { exact: true }).press('Enter');
    const what = { kind: 'point', path: 'upperArm.frontPivot', axis: 2 } as const;
    const next = moved(MODEL, what, -7.5);
    const { effects } = effectsOf(MODEL, next);
    const dive = effects.find(({ key }) => key === 'antiDive')!.at.set!;
    const percent = figureStyle('percent', 'mm');
    const change = figureDifference(figureSteps(dive.after - dive.before, percent), percent);
    const row = sheet.locator('[data-effect="antiDive"]');
    await eventually(() => row.locator('[data-part="change"]').textContent()).toBe(`${change} %`);
    const keys = await sheet
      .locator('[data-effect]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('data-effect')));
    const order = effects.map(({ key }) => key as string).filter((key) => keys.includes(key));
    expect(keys).toEqual(order);
    expect(await seriousForAxe(page)).toEqual([]);

    await sheet.getByRole('button', { name: 'Try as ghost' }).click();
    await sheet
      .getByText('Upper arm, front pivot: 7.5 mm down', { exact: false })
      .waitFor(PATIENCE);
    // The table goes on telling the change against the design before.
    expect(await row.locator('[data-part="change"]').textContent()).toBe(`${change} %`);
    await page.getByRole('button', { name: 'Points', exact: true }).waitFor(PATIENCE);
    await sheet.getByRole('button', { name: 'Take back' }).click();
    await sheet.getByRole('button', { name: 'Try as ghost' }).waitFor(PATIENCE);
    expect(await page.getByRole('button', { name: /^Undo/ }).isDisabled()).toBe(true);
  });
});

it('stays inside a phone’s width, and is sound for axe there', async () => {
  const [page, sheet] = await openSheet('Trust', { width: 390, height: 844 });
  await sheet.locator('[data-known="bumpSteer"]').waitFor(PATIENCE);
  await sheet.getByText('Points and numbers one by one').click();
  const beyond = () => sheet.evaluate((element) => element.scrollWidth - element.clientWidth);
  expect(await beyond()).toBeLessThanOrEqual(0);
  expect(await seriousForAxe(page)).toEqual([]);
  await page.getByRole('tab', { name: 'Move', exact: true }).click();
  await sheet.locator('[data-effect]').first().waitFor(PATIENCE);
  expect(await beyond()).toBeLessThanOrEqual(0);
  expect(await seriousForAxe(page)).toEqual([]);
});
