// The document in the page: editing, opening, saving, keeping. What the page says is compared with the solver.
import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  assemble,
  createMeasures,
  createPose,
  Measure,
  type Model,
  measureInto,
  parseModel,
  solve,
  writeModel,
} from '../../solver/index.ts';
import { fixed } from '../../src/words/format.ts';
import { type Bench, type BenchOptions, firstPicture, openBench } from '../support/launch.ts';

const FACTORY_TEXT = readFileSync('models/half-ton-factory.json', 'utf8');
const FACTORY = modelOf(FACTORY_TEXT);

/** Software drawing can hold a frame up for seconds on a busy machine; nothing here is a matter of time. */
const PATIENCE = { timeout: 30_000 };

vi.setConfig({ testTimeout: 180_000 });

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

function modelOf(text: string): Model {
  const read = parseModel(text, 'test');
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.model;
}

/** Caster at the design pose, as the page writes it. */
function casterOf(model: Model): string {
  const [corner, pose, measures] = [assemble(model), createPose(), createMeasures()];
  expect(solve(corner, pose, 0, 0)).toBe('reached');
  measureInto(corner, pose, measures);
  return `${fixed(measures[Measure.caster]!, 2)}°`;
}

function withUpperX(x: number): Model {
  const [, y, z] = FACTORY.upperArm.ballJoint;
  return { ...FACTORY, upperArm: { ...FACTORY.upperArm, ballJoint: [x, y, z] } };
}

async function open(options: BenchOptions = {}): Promise<Page> {
  // What is drawn does not matter here: half the pixels each way.
  bench = await openBench({ context: { deviceScaleFactor: 0.5 }, ...options });
  await firstPicture(bench.page);
  return bench.page;
}

const caster = (page: Page): Locator =>
  page.locator('[data-reading="caster"] [data-part="figure"]');
const drawer = (page: Page): Locator =>
  page.getByRole('complementary', { name: 'Points and parts' });

async function shows(locator: Locator, text: string): Promise<void> {
  await expect.poll(() => locator.textContent(), PATIENCE).toContain(text);
}

async function holds(locator: Locator, value: string): Promise<void> {
  await expect.poll(() => locator.inputValue(), PATIENCE).toBe(value);
}

/** Opens the drawer by its tab, and a folder in it. */
async function openFolder(page: Page, folder: string): Promise<void> {
  if ((await drawer(page).count()) === 0) {
    await page.getByRole('button', { name: 'Points', exact: true }).click();
  }
  await drawer(page).getByRole('button', { name: folder, exact: true }).click();
}

function field(page: Page, name: string): Locator {
  return drawer(page).getByLabel(name, { exact: true });
}

async function type(target: Locator, text: string): Promise<void> {
  await target.fill(text);
  await target.press('Enter');
}

async function openFiles(page: Page, files: { name: string; text: string }[]): Promise<void> {
  await page.getByRole('button', { name: /^Model: / }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file…' }).click();
  await (await chooser).setFiles(
    files.map(({ name, text }) => ({
      name,
      mimeType: 'application/json',
      buffer: Buffer.from(text),
    })),
  );
}

/** Drags files over the page and lets them go. */
async function drop(page: Page, files: { name: string; text: string }[]): Promise<void> {
  const data = await page.evaluateHandle((given) => {
    const transfer = new DataTransfer();
    for (const { name, text } of given) transfer.items.add(new File([text], name));
    return transfer;
  }, files);
  await page.dispatchEvent('canvas, body', 'dragenter', { dataTransfer: data });
  await page.getByText('Drop the model file to open it').waitFor();
  await page.dispatchEvent('canvas, body', 'drop', { dataTransfer: data });
  await page.getByText('Drop the model file to open it').waitFor({ state: 'detached' });
}

describe('the points drawer', () => {
  it('changes a point, and the reading says what the solver says; undo and redo by keys', async () => {
    const page = await open();
    await shows(caster(page), casterOf(FACTORY));
    await openFolder(page, 'Upper arm');
    const x = field(page, 'Upper arm: Ball joint, x');
    await holds(x, '−24');
    await type(x, '-40');
    await shows(caster(page), casterOf(withUpperX(-40)));
    // From the field itself, where nothing is being typed any more.
    await page.keyboard.press('Control+z');
    await shows(caster(page), casterOf(FACTORY));
    await holds(x, '−24');
    await page.keyboard.press('Control+Shift+z');
    await shows(caster(page), casterOf(withUpperX(-40)));
    await holds(x, '−40');
    await page.getByRole('button', { name: 'Undo' }).click();
    await holds(x, '−24');
  });

  it('makes one step of a slider drag, however far it goes', async () => {
    const page = await open();
    await openFolder(page, 'Upper arm');
    const x = field(page, 'Upper arm: Ball joint, x');
    const box = await field(page, 'Upper arm: Ball joint, x, slider').boundingBox();
    if (box === null) throw new Error('The slider is not to be seen.');
    const middle = box.y + box.height / 2;
    await page.mouse.move(box.x + box.width / 2, middle);
    await page.mouse.down();
    for (let i = 1; i <= 8; i += 1) await page.mouse.move(box.x + box.width / 2 + 3 * i, middle);
    await page.mouse.up();
    await expect.poll(() => x.inputValue(), PATIENCE).not.toBe('−24');
    const reached = Number((await x.inputValue()).replace('−', '-'));
    expect(reached).toBeGreaterThan(-24);
    await shows(caster(page), casterOf(withUpperX(reached)));
    await page.getByRole('button', { name: 'Undo' }).click();
    await holds(x, '−24');
    await shows(caster(page), casterOf(FACTORY));
    await expect
      .poll(() => page.getByRole('button', { name: 'Undo' }).isDisabled(), PATIENCE)
      .toBe(true);
  });

  it('refuses a tyre size in words, and loses nothing that was typed', async () => {
    const page = await open();
    await openFolder(page, 'Tyre');
    const size = field(page, 'Tyre: Size');
    await type(size, '265/70');
    const alert = drawer(page).getByRole('alert');
    await shows(alert, 'Not taken: found "265/70", wanted a tyre size');
    await holds(size, '265/70');
    await size.press('Tab');
    await holds(size, '265/70');
    await type(size, '265/70R18');
    await alert.waitFor({ state: 'detached' });
    await drawer(page).getByRole('button', { name: 'Hub and wheel' }).click();
    await holds(field(page, 'Hub and wheel: Rim diameter'), '18');
    await page.getByRole('button', { name: 'Undo' }).click();
    await holds(field(page, 'Hub and wheel: Rim diameter'), '17');
    await holds(size, '265/70R17');
    const offset = field(page, 'Hub and wheel: Offset');
    await type(offset, '123456');
    await shows(alert, 'Not taken: found 123456, wanted a number between −100,000 and 100,000.');
    await offset.press('Escape');
    await alert.waitFor({ state: 'detached' });
    await type(field(page, 'Hub and wheel: Rim width'), '-8');
    await shows(
      alert,
      'Not taken: found −8, wanted a number above 0 and below 100,000 (inch code).',
    );
  });

  it('takes lengths in the unit shown', async () => {
    const page = await open();
    await openFolder(page, 'Hub and wheel');
    await page.getByRole('button', { name: 'Inches, to the nearest sixteenth' }).click();
    const offset = field(page, 'Hub and wheel: Offset');
    await holds(offset, '1.772');
    await type(offset, '1 1/2');
    await holds(offset, '1.5');
    await page.getByRole('button', { name: 'Millimetres' }).click();
    await holds(offset, '38.1');
  });

  it('takes a part away and gives it back with values of its own', async () => {
    const page = await open();
    await openFolder(page, 'Coilover');
    await drawer(page).getByRole('button', { name: 'Remove coilover' }).click();
    await field(page, 'Coilover: Spring rate').waitFor({ state: 'detached' });
    await drawer(page).getByRole('button', { name: 'Add coilover' }).click();
    await holds(field(page, 'Coilover: Spring rate'), '80');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await holds(field(page, 'Coilover: Spring rate'), '88');
  });
});

describe('files', () => {
  it('are opened by the button and by dropping; a bad one leaves the work alone', async () => {
    const page = await open();
    const moved = writeModel({ ...withUpperX(-60), name: 'Moved' });
    await openFiles(page, [{ name: 'moved.json', text: moved }]);
    await shows(caster(page), casterOf(withUpperX(-60)));
    await page.getByRole('button', { name: /^Model: Moved/ }).waitFor();
    await drop(page, [
      { name: 'bad.json', text: FACTORY_TEXT.replace('"offset": 45', '"offset": "x"') },
    ]);
    const alert = page.getByRole('alert');
    await shows(alert, 'bad.json: wheel.offset: found "x" (text), wanted a number');
    await shows(caster(page), casterOf(withUpperX(-60)));
    await alert.getByRole('button', { name: 'Put this notice away' }).click();
    await alert.waitFor({ state: 'detached' });
    await drop(page, [
      { name: 'factory.json', text: FACTORY_TEXT },
      { name: 'other.json', text: moved },
    ]);
    await shows(page.getByRole('status').filter({ hasText: 'factory.json was opened' }), 'first');
    await shows(caster(page), casterOf(FACTORY));
    await page.keyboard.press('Control+z');
    await shows(caster(page), casterOf(withUpperX(-60)));
  });

  it('of every shipped model can be chosen, and undone', async () => {
    const page = await open();
    await page.getByRole('button', { name: /^Model: / }).click();
    const planar = modelOf(readFileSync('models/planar-equal-arms.json', 'utf8'));
    await page
      .getByRole('dialog', { name: 'Model' })
      .getByRole('button', { name: planar.name })
      .click();
    await shows(caster(page), casterOf(planar));
    await page.getByRole('button', { name: 'Undo' }).click();
    await shows(caster(page), casterOf(FACTORY));
  });

  it('that are saved hold the work, under the name it was given', async () => {
    const page = await open();
    await page.getByRole('button', { name: /^Model: / }).click();
    await page.getByLabel('Name', { exact: true }).fill('Front corner, mine');
    await page.getByLabel('Name', { exact: true }).press('Enter');
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as a file' }).click();
    const download = await saving;
    expect(download.suggestedFilename()).toBe('front-corner-mine.json');
    const text = readFileSync(await download.path(), 'utf8');
    expect(text).toBe(writeModel({ ...FACTORY, name: 'Front corner, mine' }));
    expect(modelOf(text)).toEqual({ ...FACTORY, name: 'Front corner, mine' });
  });
});

describe('kept work', () => {
  it('is there after a reload, with its history, unit and drawer', async () => {
    const page = await open();
    await openFolder(page, 'Upper arm');
    await page.getByRole('button', { name: 'Inches, decimal' }).click();
    await type(field(page, 'Upper arm: Ball joint, x'), '-50 mm');
    await shows(caster(page), casterOf(withUpperX(-50)));
    // At once: whatever follows later must not be needed.
    await page.reload();
    await firstPicture(page);
    await shows(caster(page), casterOf(withUpperX(-50)));
    await drawer(page).getByRole('button', { name: 'Upper arm' }).click();
    await holds(field(page, 'Upper arm: Ball joint, x'), '−1.969');
    await type(field(page, 'Upper arm: Ball joint, x'), '-60 mm');
    await shows(caster(page), casterOf(withUpperX(-60)));
    await expect
      .poll(
        () =>
          page.evaluate(
            () =>
              new Promise<number>((resolve) => {
                const opening = indexedDB.open('armscribe');
                opening.onsuccess = () => {
                  const asking = opening.result.transaction('work').objectStore('work').get('work');
                  asking.onsuccess = () => resolve(asking.result?.past?.length ?? 0);
                };
              }),
          ),
        PATIENCE,
      )
      .toBeGreaterThan(0);
    await page.reload();
    await firstPicture(page);
    await expect
      .poll(() => page.getByRole('button', { name: 'Undo' }).isEnabled(), PATIENCE)
      .toBe(true);
    await page.getByRole('button', { name: 'Undo' }).click();
    await shows(caster(page), casterOf(withUpperX(-50)));
  });

  it('that is damaged is set aside and said, and the bench opens all the same', async () => {
    const page = await open({
      before: (fresh) =>
        fresh.addInitScript(() => {
          if (localStorage.getItem('armscribe.work') === null)
            localStorage.setItem('armscribe.work', '{"form":"armscribe-work/1","model":{');
          localStorage.setItem('armscribe.view', '[[[');
        }),
    });
    await shows(caster(page), casterOf(FACTORY));
    await shows(page.getByRole('alert'), 'could not be read');
    const kept = await page.evaluate(() =>
      Object.keys(localStorage)
        .filter((key) => key.startsWith('armscribe.work.set-aside'))
        .map((key) => localStorage.getItem(key)),
    );
    expect(kept).toEqual(['{"form":"armscribe-work/1","model":{']);
  });

  it('cannot be kept where storage refuses: the bench says so and works on', async () => {
    const page = await open({
      before: (fresh) =>
        fresh.addInitScript(() => {
          Storage.prototype.setItem = () => {
            throw new DOMException('full', 'QuotaExceededError');
          };
          indexedDB.open = () => {
            throw new DOMException('private', 'SecurityError');
          };
        }),
    });
    await openFolder(page, 'Upper arm');
    await type(field(page, 'Upper arm: Ball joint, x'), '-50');
    await shows(caster(page), casterOf(withUpperX(-50)));
    await shows(page.getByRole('alert'), 'This browser keeps nothing here');
  });

  it('in two tabs is said in both', async () => {
    const page = await open();
    const other = await page.context().newPage();
    await other.goto(page.url());
    for (const tab of [page, other]) {
      await shows(tab.getByRole('status').filter({ hasText: 'another tab' }), 'changed last');
    }
    await other.close();
  });
});

it('holds yesterday against which every reading shows its difference', async () => {
  const page = await open();
  await page.getByRole('button', { name: 'Hold as yesterday' }).click();
  await openFolder(page, 'Upper arm');
  await type(field(page, 'Upper arm: Ball joint, x'), '-40');
  const was = Number.parseFloat(casterOf(FACTORY));
  const is = Number.parseFloat(casterOf(withUpperX(-40)));
  const change = page.locator('[data-reading="caster"] [data-part="change"]');
  await shows(caster(page), casterOf(withUpperX(-40)));
  await shows(change, 'against yesterday');
  const said = Number.parseFloat((await change.textContent()) ?? '');
  // Both ends are rounded to 0.01°, and so is the difference.
  expect(Math.abs(said - (is - was))).toBeLessThan(0.016);
});
