// Where a point may go, in the page: plane and end chosen, the probe as the solver has it, best places tried and kept.
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  allSteps,
  bestsInSteps,
  type Fact,
  type Model,
  PLANE_AXES,
  placeOf,
  placeTold,
  type Question,
  type Subject,
  usualStretch,
  withPlaceWritten,
  writeModel,
} from '../../solver/index.ts';
import { angle, length } from '../../src/words/format.ts';
import { seriousForAxe } from '../support/axe.ts';
import { drop } from '../support/drop.ts';
import { type Bench, type BenchOptions, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const PATIENCE = { timeout: 60_000 };
const POLL = { timeout: 20_000 };
vi.setConfig({ testTimeout: 240_000 });

const MODEL: Model = shipped('half-ton-factory');
const TEN = { minus: 10, plus: 10 };

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

async function openSheet(options: BenchOptions = {}): Promise<[Page, Locator]> {
  bench = await openBench({ before: withoutPicture, ...options });
  const { page } = bench;
  const named = { name: 'Rod end', exact: true };
  await page.getByRole('button', named).or(page.getByRole('tab', named)).click();
  const sheet = page.locator('.where');
  await whole(sheet);
  return [page, sheet];
}

/** Waits for the finest picture and the best places of what is asked. */
async function whole(sheet: Locator): Promise<void> {
  await sheet.locator('.where-pad[aria-busy="false"][data-nodes="81"]').waitFor(PATIENCE);
  await sheet.locator('.where-bests[aria-busy="false"]').waitFor(PATIENCE);
}

function asked(subject: Subject, more: Partial<Question> = {}): Question {
  return {
    subject,
    plane: 'front',
    aim: 'overTravel',
    half: 20,
    stretch: usualStretch(MODEL),
    wanted: 0,
    reach: { first: TEN, second: TEN },
    ...more,
  };
}

/** The probe's column of a row. */
function probed(sheet: Locator, key: string): Locator {
  return sheet.locator(`.where-told tr[data-fact="${key}"] td`).nth(1);
}

function fact(facts: readonly Fact[], key: string): number {
  return facts.find((one) => one.key === key)!.value!;
}

describe('where the tie rod end may go', () => {
  it('tells of the place under the probe what the solver says, for either end and plane', async () => {
    const [page, sheet] = await openSheet();
    await sheet.getByRole('button', { name: /^Outer end/ }).click();
    await sheet.getByRole('button', { name: /^Picture seen from the side/ }).click();
    await whole(sheet);
    const across = sheet.getByRole('slider', { name: 'Probe, rearward or forward' });
    await across.focus();
    // Forward lies to the left as seen from the side; half is 20 mm and a step a twentieth of it.
    for (const key of ['ArrowLeft', 'ArrowLeft', 'ArrowUp', 'Alt+ArrowUp']) {
      await page.keyboard.press(key);
    }
    const question = asked('rodOuter', { plane: 'side' });
    const [x, , z] = placeOf(MODEL, 'rodOuter');
    const told = placeTold(MODEL, question, [x + 2, Number((z + 1.1).toFixed(1))]);
    await expect
      .poll(() => sheet.locator('.where-probe').textContent(), POLL)
      .toContain('1.10 mm up, 2.00 mm forward');
    await expect.poll(() => probed(sheet, 'value').textContent(), POLL).toBe(angle(told.value!, 3));
    const rod = length(fact(told.facts, 'rodLength'), 'mm');
    expect(await probed(sheet, 'rodLength').textContent()).toBe(rod);
    const gap = length(fact(told.facts, 'wheelGap'), 'mm');
    expect(await probed(sheet, 'wheelGap').textContent()).toBe(gap);
    expect(await seriousForAxe(page)).toEqual([]);
  });

  it('moves the probe where the picture is pressed, to scale', async () => {
    const [page, sheet] = await openSheet();
    const pad = sheet.locator('.where-pad');
    await pad.scrollIntoViewIfNeeded();
    const box = (await pad.boundingBox())!;
    const inner = placeOf(MODEL, 'rodInner');
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    const text = async () => (await sheet.locator('.where-probe').textContent()) ?? '';
    await expect.poll(text, POLL).toMatch(/Probe: /);
    const place = /y\s([\d.−]+)\smm, z\s([\d.−]+)\smm/.exec(await text())!;
    // The plot lies 54 px from the left of the pad, 10 from its right, 8 below its top, 40 above its foot.
    const perMm = (box.width - 64) / 40;
    const y = inner[1] + (box.width / 2 - 54) / perMm - 20;
    const z = inner[2] + 20 - (box.height / 2 - 8) / perMm;
    const [i, j] = PLANE_AXES.front;
    expect([i, j]).toEqual([1, 2]);
    expect(Math.abs(Number(place[1]) - y)).toBeLessThan(0.2);
    expect(Math.abs(Number(place[2]!.replace('−', '-')) - z)).toBeLessThan(0.2);
  });

  it('tries the best place as a ghost, keeps it, and undo leads back', async () => {
    const [page, sheet] = await openSheet();
    const question = asked('rodInner');
    const bests = allSteps(bestsInSteps(MODEL, question, null));
    const only = bests.find(({ room }) => room === 'second')!;
    const card = sheet.locator('.where-best[data-room="second"]');
    expect(await card.textContent()).toContain(angle(only.value!, 3));
    const cut = length(fact(only.facts, 'rodLength'), 'mm');
    expect(await card.locator('[data-cut="rodLength"]').textContent()).toContain(cut);
    await card.getByRole('button', { name: /^Try as ghost/ }).click();
    const now = sheet.locator('.where-told tr[data-fact="value"] td').first();
    await expect.poll(() => now.textContent(), POLL).toBe(angle(only.value!, 3));
    const bar = sheet.getByRole('region', { name: 'On trial' });
    await bar.getByRole('button', { name: 'Take back' }).click();
    const before = placeTold(MODEL, question, [390, -48]).value!;
    await expect.poll(() => now.textContent(), POLL).toBe(angle(before, 3));
    await whole(sheet);
    await card.getByRole('button', { name: /^Try as ghost/ }).click();
    await bar.getByRole('button', { name: 'Keep' }).click();
    await expect.poll(() => bar.count(), POLL).toBe(0);
    await expect.poll(() => now.textContent(), POLL).toBe(angle(only.value!, 3));
    await page.getByRole('button', { name: /^Undo/ }).first().click();
    await expect.poll(() => now.textContent(), POLL).toBe(angle(before, 3));
  });

  it('draws another region for another limit, and other bests for how far it may move', async () => {
    const [, sheet] = await openSheet();
    const region = sheet.locator('[data-part="region"]');
    const first = await region.textContent();
    const limit = sheet.getByRole('textbox', { name: 'Wanted limit' });
    await limit.fill('nonsense');
    await limit.press('Enter');
    await sheet.getByRole('alert').getByText('“nonsense” is not a number.').waitFor();
    expect(await limit.inputValue()).toBe('nonsense');
    await limit.fill('0.4');
    await limit.press('Enter');
    await expect.poll(() => region.textContent(), POLL).not.toBe(first);
    expect(await region.textContent()).toContain('0.400°');

    const up = sheet.getByRole('textbox', { name: 'May move up' });
    await up.fill('0.5 mm');
    await up.press('Enter');
    const reach = { first: TEN, second: { minus: 10, plus: 0.5 } };
    const bests = allSteps(bestsInSteps(MODEL, asked('rodInner', { reach }), null));
    const only = bests.find(({ room }) => room === 'second')!;
    const card = sheet.locator('.where-best[data-room="second"]');
    await expect.poll(() => card.textContent(), POLL).toContain(angle(only.value!, 3));
    expect(await card.textContent()).toContain('0.50 mm up');
  });
});

describe('where the upper arm’s pivots may go', () => {
  it('says what the uncertainty of a dropped model is worth, and stays inside a phone’s width', async () => {
    const { tolerance: _, ...bare } = MODEL;
    const moved = withPlaceWritten(bare, 'upperBoth', [0, 480, 200]);
    const [page, sheet] = await openSheet({ width: 390, height: 844, context: { hasTouch: true } });
    await sheet.getByText(/The point is known to ±2\.00 mm/).waitFor();
    await drop(page, 'bare.json', new TextEncoder().encode(writeModel(moved)));
    await sheet.getByText(/How well the point is known: not stated/).waitFor(PATIENCE);
    await sheet.getByRole('button', { name: /^Both pivots/ }).click();
    await whole(sheet);
    await sheet.locator('tr[data-fact="camberBump"]').first().waitFor();
    const beyond = await sheet.evaluate((element) => element.scrollWidth - element.clientWidth);
    expect(beyond).toBeLessThanOrEqual(0);
    expect(await seriousForAxe(page)).toEqual([]);
  });
});
