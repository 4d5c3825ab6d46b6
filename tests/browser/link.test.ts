// Designs by link through the page: made, opened, asked about, refused, and never more than text.
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Model } from '../../solver/index.ts';
import { fragmentIn, linkOf, openLink } from '../../src/files/link.ts';
import { seriousForAxe } from '../support/axe.ts';
import { type Bench, type BenchOptions, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const PATIENCE = { timeout: 20_000 };
vi.setConfig({ testTimeout: 180_000 });

const FACTORY = shipped('half-ton-factory');
const MINE: Model = { ...FACTORY, name: 'Sent by a friend', notes: 'Tie rod 5 mm shorter.' };

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

async function linkTo(model: Model): Promise<string> {
  const making = await linkOf(model);
  if (!making.ok) throw new Error(making.message);
  return making.fragment;
}

async function open(options: BenchOptions = {}): Promise<Page> {
  bench = await openBench({ before: withoutPicture, ...options });
  await modelButton(bench.page).waitFor(PATIENCE);
  return bench.page;
}

const modelButton = (page: Page): Locator => page.getByRole('button', { name: /^Model: / });
const sheet = (page: Page): Locator => page.getByRole('dialog', { name: 'Model' });
const notice = (page: Page, text: string): Locator =>
  page.locator('.notice').filter({ hasText: text });
const undo = (page: Page): Locator => page.getByRole('button', { name: 'Undo', exact: true });

/** Waits until the bench holds a model of this name. */
async function isCalled(page: Page, name: string): Promise<void> {
  await expect.poll(() => modelButton(page).textContent(), PATIENCE).toBe(name);
}

async function openSheet(page: Page): Promise<Locator> {
  await modelButton(page).click();
  await sheet(page).getByRole('heading', { name: 'Share by link' }).waitFor(PATIENCE);
  return sheet(page);
}

async function rename(page: Page, name: string): Promise<void> {
  const files = await openSheet(page);
  await files.getByLabel('Name', { exact: true }).fill(name);
  await files.getByLabel('Name', { exact: true }).press('Enter');
  await isCalled(page, name);
}

/** What another link in the address of an open page does. */
async function arrive(page: Page, fragment: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, fragment);
}

describe('a link', () => {
  it('is copied, holds the work as it is, and says how long it is', async () => {
    const permissions = ['clipboard-read', 'clipboard-write'];
    const page = await open({ context: { permissions } });
    await rename(page, 'Mine & yours');
    await sheet(page).getByRole('button', { name: 'Copy a link' }).click();
    const box = sheet(page).getByLabel('Link to this design');
    await box.waitFor(PATIENCE);
    const link = await page.evaluate(() => navigator.clipboard.readText());
    expect(await box.inputValue()).toBe(link);
    expect(await sheet(page).getByRole('status').textContent()).toContain(
      `Copied: ${link.length.toLocaleString('en-US')} characters`,
    );
    expect(new URL(link).origin).toBe(new URL(bench!.origin).origin);
    const opening = await openLink(fragmentIn(link)!);
    expect(opening).toMatchObject({ ok: true, model: { ...FACTORY, name: 'Mine & yours' } });
    expect(await seriousForAxe(page)).toEqual([]);
    // It was a link to what the design was then.
    await sheet(page).getByLabel('Name', { exact: true }).fill('Later');
    await sheet(page).getByLabel('Name', { exact: true }).press('Enter');
    await box.waitFor({ state: 'detached' });
  });

  it('is shown to copy by hand on a phone whose clipboard refuses', async () => {
    const page = await open({
      width: 390,
      height: 844,
      before: async (fresh) => {
        await withoutPicture(fresh);
        await fresh.addInitScript(() => {
          navigator.clipboard.writeText = () => Promise.reject(new Error('refused'));
        });
      },
    });
    const files = await openSheet(page);
    await files.getByRole('button', { name: 'Copy a link' }).click();
    const box = files.getByLabel('Link to this design');
    await box.waitFor(PATIENCE);
    expect(await files.getByRole('status').textContent()).toContain('take the link from here');
    await expect
      .poll(() => page.evaluate(() => getSelection()?.toString()), PATIENCE)
      .toBe(await box.inputValue());
    expect(await files.evaluate((at) => at.scrollWidth - at.clientWidth)).toBe(0);
    expect(await seriousForAxe(page)).toEqual([]);
  });

  it('in the address is opened, said, undone, and gone after a reload', async () => {
    const page = await open({ path: await linkTo(MINE) });
    await isCalled(page, MINE.name);
    await notice(page, '“Sent by a friend” was opened from a link.').waitFor(PATIENCE);
    expect(new URL(page.url()).hash).toBe('');
    await undo(page).click();
    await isCalled(page, FACTORY.name);
    await page.reload();
    await isCalled(page, FACTORY.name);
  });

  it('that comes later asks before it takes the place of work saved nowhere else', async () => {
    const page = await open();
    await rename(page, 'Unsaved work');
    await page.keyboard.press('Escape');
    const link = await linkTo(MINE);
    await arrive(page, link);
    const question = notice(page, 'A link brings “Sent by a friend”.');
    await question.getByRole('button', { name: 'Put this notice away' }).click();
    // Answered: a reload does not bring it back.
    expect(new URL(page.url()).hash).toBe('');
    await arrive(page, link);
    await question.waitFor(PATIENCE);
    await isCalled(page, 'Unsaved work');
    expect(await seriousForAxe(page)).toEqual([]);
    // Asked again after a reload, as it was not answered.
    await page.reload();
    await question.waitFor(PATIENCE);
    await isCalled(page, 'Unsaved work');
    await question.getByRole('button', { name: 'Open the link' }).click();
    await isCalled(page, MINE.name);
    expect(new URL(page.url()).hash).toBe('');
    await undo(page).click();
    await isCalled(page, 'Unsaved work');
  });

  it('that is damaged is refused in words; pasted, it stays to be mended', async () => {
    const whole = await linkTo(MINE);
    const page = await open({ path: whole.slice(0, -7) });
    await notice(page, 'This link is damaged').waitFor(PATIENCE);
    await isCalled(page, FACTORY.name);
    const files = await openSheet(page);
    const box = files.getByLabel('Open a link');
    await box.fill('https://bench.example/');
    await box.press('Enter');
    await expect.poll(() => files.getByRole('alert').textContent()).toContain('Found no link');
    const address = `https://bench.example/${whole}`;
    await box.fill(`${address}.`);
    await files.getByRole('button', { name: 'Open', exact: true }).click();
    await expect.poll(() => files.getByRole('alert').textContent()).toContain('“.” at its letter');
    expect(await box.inputValue()).toBe(`${address}.`);
    expect(await seriousForAxe(page)).toEqual([]);
    await box.press('End');
    await box.press('Backspace');
    await box.press('Enter');
    await isCalled(page, MINE.name);
    await expect.poll(() => notice(page, 'was opened from a link').count(), PATIENCE).toBe(1);
    expect(await notice(page, 'This link is damaged').count()).toBe(0);
  });

  it('brings text and nothing that runs, whatever the design is called', async () => {
    const hostile = '"><img src=x onerror="document.title=\'taken\'"><script>taken()</script>';
    const model = { ...FACTORY, name: hostile, notes: `${hostile}\njavascript:taken()` };
    const page = await open({ path: await linkTo(model) });
    const title = await page.title();
    await isCalled(page, hostile);
    await notice(page, hostile).waitFor(PATIENCE);
    const files = await openSheet(page);
    expect(await files.getByLabel('Notes').inputValue()).toBe(model.notes);
    expect(await page.locator('img[src="x"]').count()).toBe(0);
    expect(await page.title()).toBe(title);
  });
});
