// Smallest cures in the page: looked for, tried as a ghost, seen to clear the pair, taken back.
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { allSteps, curesInSteps, cureWords, type Model, writeModel } from '../../solver/index.ts';
import { length } from '../../src/words/format.ts';
import { seriousForAxe } from '../support/axe.ts';
import { type Bench, type BenchOptions, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const PATIENCE = { timeout: 60_000 };
vi.setConfig({ testTimeout: 240_000 });

const MODEL: Model = shipped('half-ton-long-travel');

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

async function openSheet(tab: string, options: BenchOptions = {}): Promise<[Page, Locator]> {
  bench = await openBench({ before: withoutPicture, ...options });
  const { page } = bench;
  const data = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], 'test.json'));
    return transfer;
  }, writeModel(MODEL));
  await page.dispatchEvent('body', 'dragenter', { dataTransfer: data });
  await page.dispatchEvent('body', 'drop', { dataTransfer: data });
  await page.getByRole('button', { name: `Model: ${MODEL.name}` }).waitFor(PATIENCE);
  const named = { name: tab, exact: true };
  await page.getByRole('button', named).or(page.getByRole('tab', named)).click();
  const sheet = page.locator('[data-panel="work"], #tab-body');
  await sheet.waitFor(PATIENCE);
  return [page, sheet];
}

describe('the smallest cure', () => {
  it('of a tie rod that meets the wheel is found as solved, clears it on trial, and is taken back', async () => {
    const [page, sheet] = await openSheet('Clearance');
    const row = sheet.locator('tr[data-pair="tieRod/wheel"]');
    await row.waitFor(PATIENCE);
    await row.getByRole('button', { name: 'Tie rod to wheel', exact: true }).click();
    const section = sheet.getByRole('region', { name: 'What would cure it: Tie rod to wheel' });
    await section.getByRole('button', { name: 'Look for the smallest cure' }).click();
    await section.getByRole('button', { name: 'Stop' }).click();
    await section.getByRole('button', { name: 'Look for the smallest cure' }).click();

    const found = allSteps(curesInSteps(MODEL, 'tieRod/wheel', undefined, ['spacer']))!;
    const words = cureWords(found.cures[0]!, (mm) => length(mm, 'mm'));
    const card = section.locator('[data-cure="spacer"]');
    await card.waitFor(PATIENCE);
    const text = (await card.textContent())!;
    expect(text.toLowerCase()).toContain(words);
    expect(text).toContain('scrub radius');
    expect(text).toContain('proven');
    expect(await seriousForAxe(page)).toEqual([]);

    await card.getByRole('button', { name: /^Try as ghost/ }).click();
    await expect.poll(() => row.getAttribute('data-state'), PATIENCE).toBe('clear');
    expect(await row.textContent()).toContain(length(found.cures[0]!.least, 'mm'));
    await card.getByRole('button', { name: /^Take back/ }).click();
    await expect.poll(() => row.getAttribute('data-state'), PATIENCE).toBe('touch');
    await card.getByRole('button', { name: /^Try as ghost/ }).waitFor();
  });

  it('of a limit is looked for from the stops, and stays inside a phone’s width', async () => {
    const [page, sheet] = await openSheet('Stops', { width: 390, height: 844 });
    await sheet
      .getByRole('button', { name: /^Look for the smallest cure/ })
      .first()
      .click();
    const section = sheet.getByRole('region', { name: /^What would cure it/ });
    await section.locator('[data-cure]').first().waitFor(PATIENCE);
    const beyond = await section.evaluate((element) => element.scrollWidth - element.clientWidth);
    expect(beyond).toBeLessThanOrEqual(0);
    expect(await seriousForAxe(page)).toEqual([]);
  });
});
