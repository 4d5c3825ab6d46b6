// Better points through the page: a ready-made start, the answer as the solver has it, stopped, tried, kept, undone.
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { improveInSteps } from '../../solver/improve/answers.ts';
import { questionInSteps } from '../../solver/improve/question.ts';
import { startersOf } from '../../solver/improve/starters.ts';
import { allSteps, assemble } from '../../solver/index.ts';
import { seriousForAxe } from '../support/axe.ts';
import { type Bench, type BenchOptions, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const PATIENCE = { timeout: 20_000 };
const SEARCH = { timeout: 120_000 };
vi.setConfig({ testTimeout: 300_000 });

const MODEL = shipped('half-ton-factory');
const START = 'Less toe change: move the rack end';

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

async function openSheet(options: BenchOptions = {}): Promise<[Page, Locator]> {
  bench = await openBench({ before: withoutPicture, ...options });
  const { page } = bench;
  const named = { name: 'Improve', exact: true };
  await page.getByRole('button', named).or(page.getByRole('tab', named)).click();
  const sheet = page.locator('[data-panel="work"], #tab-body');
  await sheet.getByRole('heading', { name: 'May move' }).waitFor(PATIENCE);
  return [page, sheet];
}

/** The document as the page keeps it. */
async function keptModel(page: Page): Promise<string> {
  const text = await page.evaluate(() => localStorage.getItem('armscribe.work'));
  return text ?? '';
}

describe('the sheet of better points', () => {
  it('answers as the solver does, tries with a ghost, keeps, and is undone', async () => {
    const [page, sheet] = await openSheet();
    await sheet.getByRole('button', { name: START }).click();
    await sheet.getByRole('button', { name: 'Look for better points' }).click();
    const card = sheet.locator('[data-answer="1"]');
    await card.waitFor(SEARCH);

    const { plan } = startersOf(assemble(MODEL)).find(({ label }) => label === START)!;
    const [best] = allSteps(
      improveInSteps(allSteps(questionInSteps(MODEL, plan, undefined))!),
    ).answers;
    const text = (await card.textContent())!;
    expect(text).toContain(`cost ${best!.cost.before.toFixed(2)} → ${best!.cost.after.toFixed(2)}`);
    const [, y, z] = best!.model.tieRod.inner;
    expect(text).toContain(`${y.toFixed(1)} mm: ${(390 - y).toFixed(2)} mm inboard`);
    expect(text).toContain(`${z.toFixed(1).replace('-', '−')} mm: ${(z + 48).toFixed(2)} mm up`);
    expect(text).toContain(`${best!.wishes[0]!.after.figure.toFixed(2)}°`);
    expect(text).toMatch(/All \d+ that must hold do: proven/);
    expect(await seriousForAxe(page)).toEqual([]);

    await card.getByRole('button', { name: /^Try as ghost/ }).click();
    const inner = JSON.stringify(best!.model.tieRod.inner);
    await expect.poll(() => keptModel(page), PATIENCE).toContain(inner);
    await card.getByRole('button', { name: /^Take back/ }).click();
    await expect.poll(() => keptModel(page), PATIENCE).not.toContain(inner);
    await card.getByRole('button', { name: /^Keep as a second design/ }).click();
    await expect
      .poll(() => card.textContent(), PATIENCE)
      .toContain('Kept beside the present design');
    await card.getByRole('button', { name: /^Try as ghost/ }).click();
    await card.getByRole('button', { name: /^Keep: / }).click();
    await expect.poll(() => sheet.locator('[data-answer]').count(), PATIENCE).toBe(0);
    await expect.poll(() => keptModel(page), PATIENCE).toContain(inner);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => keptModel(page), PATIENCE).not.toContain(inner);
  });

  it('is stopped, keeps what is typed from one visit to the next, and says what it does not take', async () => {
    const [page, sheet] = await openSheet();
    await sheet.getByRole('button', { name: START }).click();
    const from = sheet.getByLabel('Tie rod, inner joint, height: from, mm');
    await from.fill('-50,5');
    await from.press('Enter');
    await expect.poll(() => from.inputValue(), PATIENCE).toBe('−50.5');
    const within = sheet.getByLabel(
      'Toe change from ride, full droop to full bump: give or take, °',
    );
    await within.fill('0');
    await within.press('Enter');
    await sheet.getByText('Found 0, wanted a number above 0.').waitFor(PATIENCE);
    const weight = sheet.getByLabel('Toe change from ride, full droop to full bump: weight');
    await weight.fill('about 3');
    await weight.press('Enter');
    await sheet.getByText('“about 3” is not a number.').waitFor(PATIENCE);
    await sheet.getByLabel('Add what is wanted').selectOption('measure caster');
    await sheet.getByRole('heading', { name: 'Caster, ride height' }).waitFor(PATIENCE);
    await sheet.getByLabel('Every gap as wanted, over travel and lock').uncheck();
    await sheet.getByLabel('Add what may move').selectOption('lowerArm.length');
    await sheet.getByRole('heading', { name: 'Lower arm, length' }).waitFor(PATIENCE);

    await sheet.getByRole('button', { name: 'Look for better points' }).click();
    await sheet.getByRole('button', { name: 'Stop' }).click();
    await sheet.getByRole('button', { name: 'Look for better points' }).waitFor(PATIENCE);
    expect(await sheet.locator('[data-answer]').count()).toBe(0);

    await page.reload();
    const again = page.locator('[data-panel="work"]');
    await again.getByRole('heading', { name: 'Caster, ride height' }).waitFor(PATIENCE);
    expect(await again.getByLabel('Tie rod, inner joint, height: from, mm').inputValue()).toBe(
      '−50.5',
    );
    expect(
      await again.getByLabel('Toe change from ride, full droop to full bump: weight').inputValue(),
    ).toBe('about 3');
    expect(await again.getByLabel('Every gap as wanted, over travel and lock').isChecked()).toBe(
      false,
    );

    await again.getByText('Ready-made starts').click();
    await again
      .getByRole('button', { name: 'One degree more caster: upper ball joint back' })
      .click();
    await again
      .getByRole('heading', { name: 'Upper arm, ball joint, fore and aft' })
      .waitFor(PATIENCE);
    await again.getByRole('button', { name: 'Put back my lists' }).click();
    await again.getByRole('heading', { name: 'Caster, ride height' }).waitFor(PATIENCE);
    expect(
      await again.getByLabel('Toe change from ride, full droop to full bump: weight').inputValue(),
    ).toBe('about 3');
  });

  it('stays inside a phone’s width, and says what nothing on the list changes', async () => {
    const [page, sheet] = await openSheet({ width: 390, height: 844, context: { hasTouch: true } });
    await sheet.getByRole('button', { name: START }).click();
    await sheet.getByLabel('Add what is wanted').selectOption('measure camber');
    await sheet.getByRole('button', { name: 'Look for better points' }).click();
    await sheet.locator('[data-answer="1"]').waitFor(SEARCH);
    await sheet
      .getByText('Nothing that may move changes this: Camber, ride height.')
      .waitFor(PATIENCE);
    const beyond = await sheet.evaluate((element) => element.scrollWidth - element.clientWidth);
    expect(beyond).toBeLessThanOrEqual(0);
    expect(await seriousForAxe(page)).toEqual([]);
  });
});
