// The work sheet of alignment in the page: its dials turned by hand and by key, hardware added, against the solver.
import type { Locator, Page } from 'playwright-core';
import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  align,
  assemble,
  casterReasons,
  casterSweep,
  type Model,
  poseReport,
  type Reached,
  reachableRegion,
  withSettings,
  writeModel,
} from '../../solver/index.ts';
import { seriousForAxe } from '../support/axe.ts';
import { drop } from '../support/drop.ts';
import { type Bench, type BenchOptions, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const PATIENCE = { timeout: 20_000 };
vi.setConfig({ testTimeout: 120_000 });

const MODEL: Model = shipped('half-ton-long-travel');
const MARK = 15;

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

async function openSheet(model: Model, options: BenchOptions = {}): Promise<[Page, Locator]> {
  bench = await openBench({ before: withoutPicture, ...options });
  const { page } = bench;
  await drop(page, 'test.json', Buffer.from(writeModel(model)));
  await page.getByRole('button', { name: `Model: ${model.name}` }).waitFor(PATIENCE);
  const named = { name: 'Align', exact: true };
  await page.getByRole('button', named).or(page.getByRole('tab', named)).click();
  const sheet = page.locator('[data-panel="work"], #tab-body');
  await sheet.locator('[data-angle="toe"]').waitFor(PATIENCE);
  return [page, sheet];
}

/** Camber, caster and toe as the sheet must show them: of the set pose, to hundredths. */
function wanted(model: Model): readonly string[] {
  const pose = poseReport(assemble(model), model.travel.ride ?? 0, 0) as Reached;
  return (['camber', 'caster', 'toe'] as const).map((key) => {
    const text = (pose[key] as number).toFixed(2);
    return `${text === '-0.00' ? '0.00' : text.replace('-', '−')}°`;
  });
}

function shown(sheet: Locator): Promise<readonly string[]> {
  return sheet.locator('.align-figure').allTextContents();
}

async function expectShown(sheet: Locator, model: Model): Promise<void> {
  await expect.poll(() => shown(sheet), PATIENCE).toEqual(wanted(model));
}

/** Takes hold of a dial's hand at the angle it stands at and turns it on to another, degrees from the top. */
async function turn(page: Page, dial: Locator, from: number, to: number): Promise<void> {
  await dial.scrollIntoViewIfNeeded();
  const box = (await dial.boundingBox())!;
  const point = (degrees: number): [number, number] => {
    const angle = (degrees * Math.PI) / 180;
    const radius = box.width * 0.36;
    return [
      box.x + box.width / 2 + radius * Math.sin(angle),
      box.y + box.height / 2 - radius * Math.cos(angle),
    ];
  };
  await page.mouse.move(...point(from));
  await page.mouse.down();
  for (let i = 1; i <= 8; i += 1) await page.mouse.move(...point(from + ((to - from) * i) / 8));
  await page.mouse.up();
}

describe('the dials', () => {
  it('turn the cams, mark by mark, as the solver says; one drag is one step of the history', async () => {
    const [page, sheet] = await openSheet(MODEL);
    await expectShown(sheet, MODEL);
    const dial = sheet.getByRole('slider', { name: 'Lower arm, front cam' });
    await turn(page, dial, 0, 3 * MARK + 2);
    const turned = withSettings(MODEL, { lowerFrontCam: 3 * MARK });
    await expectShown(sheet, turned);
    expect(await dial.getAttribute('aria-valuetext')).toBe('3 marks outboard');

    await dial.press('ArrowLeft');
    await expectShown(sheet, withSettings(MODEL, { lowerFrontCam: 2 * MARK }));
    const rear = sheet.getByRole('textbox', { name: 'Lower arm, rear cam, degrees' });
    await rear.fill('2 marks in');
    await rear.press('Enter');
    expect(await sheet.getByRole('alert').filter({ hasText: '2 marks in' }).count()).toBe(1);
    expect(await rear.inputValue()).toBe('2 marks in');
    await rear.fill('−2 marks');
    await rear.press('Enter');
    const both = withSettings(MODEL, { lowerFrontCam: 2 * MARK, lowerRearCam: -2 * MARK });
    await expectShown(sheet, both);

    for (let i = 0; i < 3; i += 1) await page.getByRole('button', { name: 'Undo' }).click();
    await expectShown(sheet, MODEL);
    expect(await page.getByRole('button', { name: 'Redo' }).isEnabled()).toBe(true);
  });

  it('stop at a quarter turn, and say so of what is typed beyond', async () => {
    const [page, sheet] = await openSheet(MODEL);
    const dial = sheet.getByRole('slider', { name: 'Lower arm, rear cam' });
    await turn(page, dial, 0, 150);
    await expectShown(sheet, withSettings(MODEL, { lowerRearCam: 90 }));
    const field = sheet.getByRole('textbox', { name: 'Lower arm, rear cam, degrees' });
    await field.fill('-120');
    await field.press('Enter');
    await expectShown(sheet, withSettings(MODEL, { lowerRearCam: -90 }));
    await sheet.getByText('working range ends at 90°').waitFor(PATIENCE);
  });

  it('turn the tie rod round and round, by flats', async () => {
    const [page, sheet] = await openSheet(MODEL);
    const dial = sheet.getByRole('slider', { name: 'Tie rod' });
    await turn(page, dial, 0, 422);
    await expectShown(sheet, withSettings(MODEL, { tieRodTurns: 7 / 6 }));
    expect(await dial.getAttribute('aria-valuetext')).toBe('7 flats longer');
  });
});

describe('hardware', () => {
  it('is added to a bare pivot, set, and taken away again', async () => {
    const { frontShim: _front, rearShim: _rear, ...upperArm } = MODEL.upperArm;
    const bare: Model = { ...MODEL, upperArm };
    const [page, sheet] = await openSheet(bare);
    await sheet.getByRole('button', { name: 'Add a cam: Upper arm, front' }).click();
    const field = sheet.getByRole('textbox', { name: 'Upper arm, front cam, degrees' });
    await field.fill('30');
    await field.press('Enter');
    const cam = { throw: 6, angle: 30 };
    await expectShown(sheet, { ...bare, upperArm: { ...upperArm, frontCam: cam } });

    await sheet.getByRole('button', { name: 'Add shims: Upper arm, rear' }).click();
    await sheet.getByRole('button', { name: 'One shim in: Upper arm, rear' }).click();
    const rearShim = { thickness: 1 };
    await expectShown(sheet, { ...bare, upperArm: { ...upperArm, frontCam: cam, rearShim } });
    expect(await seriousForAxe(page)).toEqual([]);

    const card = sheet.getByRole('region', { name: 'Upper arm, front cam', exact: true });
    await card.locator('summary').click();
    await card.getByRole('button', { name: 'Remove this cam' }).click();
    await expectShown(sheet, { ...bare, upperArm: { ...upperArm, rearShim } });
  });
});

function spanOf(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

/** Types what is wanted of an angle. */
async function want(sheet: Locator, angle: string, degrees: number): Promise<void> {
  const field = sheet.getByRole('textbox', { name: `Wanted ${angle}, degrees` });
  await field.fill(String(degrees));
  await field.press('Enter');
}

describe('the settings', () => {
  it('are found as the solver finds them, tried as a ghost, taken back and kept', async () => {
    const [page, sheet] = await openSheet(MODEL);
    await want(sheet, 'camber', -0.5);
    await want(sheet, 'caster', 4.2);
    const targets = {
      ...MODEL.targets,
      camber: { value: -0.5, plusMinus: 0.75 },
      caster: { value: 4.2, plusMinus: 0.75 },
    };
    const found = align({ ...MODEL, targets });
    expect(found.reached).toBe(true);
    await sheet.getByRole('button', { name: 'Find the settings' }).click();
    const answer = sheet.getByRole('region', { name: 'Settings found' });
    await answer.getByText('Reached', { exact: false }).waitFor(PATIENCE);
    for (const { at, count, unit } of found.work) {
      const text = await answer.locator(`[data-step="${at}"]`).textContent();
      const counted = `${Math.abs(count)} ${unit}`;
      expect(text).toContain(count === 0 ? 'leave it as it is' : counted);
    }
    await sheet.getByRole('region', { name: 'What else the settings move' }).waitFor(PATIENCE);
    expect(await seriousForAxe(page)).toEqual([]);

    const whole = withSettings(MODEL, found.rounded!.settings);
    await answer.getByRole('button', { name: 'Try as ghost' }).click();
    await expectShown(sheet, whole);
    await page.getByRole('button', { name: 'Let go of yesterday' }).waitFor(PATIENCE);
    await answer.getByRole('checkbox').uncheck();
    await expectShown(sheet, withSettings(MODEL, found.after.settings));
    await answer.getByRole('button', { name: 'Take back' }).click();
    await expectShown(sheet, MODEL);
    await answer.getByRole('checkbox').check();
    await answer.getByRole('button', { name: 'Try as ghost' }).click();
    await answer.getByRole('button', { name: 'Keep these settings' }).click();
    await page.getByRole('button', { name: 'Hold as yesterday' }).waitFor(PATIENCE);
    await expectShown(sheet, whole);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expectShown(sheet, MODEL);
  });

  it('that cannot be had are said to be out of reach, with the nearest and what runs out', async () => {
    const [, sheet] = await openSheet(MODEL);
    await want(sheet, 'caster', 12);
    const targets = { ...MODEL.targets, caster: { value: 12, plusMinus: 0.75 } };
    const found = align({ ...MODEL, targets });
    expect(found.reached).toBe(false);
    await sheet.getByRole('button', { name: 'Find the settings' }).click();
    const answer = sheet.getByRole('region', { name: 'Settings found' });
    await answer.getByText('Cannot be reached.').waitFor(PATIENCE);
    const nearest = found.after.angles!.caster.toFixed(2);
    expect(await answer.textContent()).toContain(`caster ${nearest}°`);
    expect(found.runsOut).toContain('lowerRearCam');
    expect(await answer.textContent()).toContain('lower rear cam runs out at 90°');
  });
});

describe('what can be reached', () => {
  it('is drawn to scale; a hand in it asks for a pair, as one step of the history, and settings follow', async () => {
    const [page, sheet] = await openSheet(MODEL);
    const chart = sheet.getByRole('application', {
      name: /^Camber and caster that can be reached/,
    });
    await chart.waitFor(PATIENCE);
    const region = reachableRegion(MODEL)!;
    const drawn = await chart.locator('.region-fill').getAttribute('d');
    const places = drawn!
      .slice(1, -1)
      .split('L')
      .map((place) => place.split(' ').map(Number));
    expect(places).toHaveLength(region.outline.length);
    // A degree is as long both ways, and what is drawn is the outline itself.
    const spans = [0, 1].map((axis) => spanOf(places.map((place) => place[axis]!)));
    const camber = spanOf(region.outline.map((point) => point.camber));
    const caster = spanOf(region.outline.map((point) => point.caster));
    expect(spans[0]! / camber).toBeCloseTo(spans[1]! / caster, 0);

    await chart.scrollIntoViewIfNeeded();
    const box = (await chart.boundingBox())!;
    const held = { x: box.x + 0.5 * box.width, y: box.y + 0.4 * box.height };
    await page.mouse.move(held.x, held.y);
    await page.mouse.down();
    await page.mouse.move(held.x + 30, held.y - 30, { steps: 4 });
    await page.mouse.up();
    const wantedOf = (angle: string) =>
      sheet.getByRole('textbox', { name: `Wanted ${angle}, degrees` }).inputValue();
    const [wantedCamber, wantedCaster] = [await wantedOf('camber'), await wantedOf('caster')].map(
      (text) => Number(text.replace('−', '-')),
    );
    const targets = {
      ...MODEL.targets,
      camber: { value: wantedCamber!, plusMinus: 0.75 },
      caster: { value: wantedCaster!, plusMinus: 0.75 },
    };
    const found = align({ ...MODEL, targets });
    const answer = sheet.getByRole('region', { name: 'Settings found' });
    const said = found.reached ? 'Reached' : /Cannot be reached|Not exactly/;
    await answer.getByText(said).first().waitFor(PATIENCE);
    const exact = answer.locator('tbody tr').filter({ hasText: 'exact' });
    const { caster: reached } = found.after.angles!;
    await expect
      .poll(() => exact.textContent(), PATIENCE)
      .toContain(`${reached.toFixed(2).replace('-', '−')}°`);

    await chart.press('ArrowUp');
    await expect.poll(() => wantedOf('caster'), PATIENCE).toBe((wantedCaster! + 0.05).toFixed(2));
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => wantedOf('caster'), PATIENCE).toBe('4.50');
  });
});

describe('the caster sweep', () => {
  it('reads what the solver reads, at any angle that can be steered, and says why it is off', async () => {
    const [, sheet] = await openSheet(MODEL);
    const section = sheet.getByRole('region', { name: 'Caster sweep' });
    const field = section.getByRole('textbox', { name: /steer angle either way/ });
    const expectRead = async (asked: number): Promise<void> => {
      const sweep = casterSweep(MODEL, asked)!;
      const reads = [sweep.trueCaster, sweep.byRule, sweep.bySmallAngles, sweep.byFixedAxis];
      await expect
        .poll(() => section.locator('tbody td:nth-of-type(1)').allTextContents(), PATIENCE)
        .toEqual(reads.map((value) => `${value.toFixed(2)}°`));
      for (const why of casterReasons(sweep)) expect(await section.textContent()).toContain(why);
    };
    await expectRead(20);
    await field.fill('12');
    await field.press('Enter');
    await expectRead(12);
    await field.fill('75');
    await field.press('Enter');
    await section.getByText('Found 75°: write 1 to 60 degrees.').waitFor(PATIENCE);
    await field.fill('50');
    await field.press('Enter');
    await section.getByText('±50° cannot be steered').waitFor(PATIENCE);
    await expectRead(50);
  });
});

describe('on a phone', () => {
  it('the sheet stays inside its width and its dials turn', async () => {
    const [page, sheet] = await openSheet(MODEL, { width: 390, height: 844 });
    await sheet.getByRole('button', { name: 'Find the settings' }).click();
    await sheet.getByRole('region', { name: 'Settings found' }).waitFor(PATIENCE);
    const body = sheet.locator('.align');
    const beyond = await body.evaluate((element) => element.scrollWidth - element.clientWidth);
    expect(beyond).toBeLessThanOrEqual(0);
    const dial = sheet.getByRole('slider', { name: 'Lower arm, rear cam' });
    await dial.evaluate((element) => element.scrollIntoView({ block: 'end' }));
    await turn(page, dial, 0, -2 * MARK);
    await expectShown(sheet, withSettings(MODEL, { lowerRearCam: -2 * MARK }));
    expect(await seriousForAxe(page)).toEqual([]);
  });

  it('a finger draws the wanted point itself, and scrolls past the rest of the chart', async () => {
    const [page, sheet] = await openSheet(MODEL, {
      width: 390,
      height: 844,
      context: { hasTouch: true },
    });
    const hold = sheet.locator('.region-hold');
    await hold.waitFor(PATIENCE);
    await hold.evaluate((element) => element.scrollIntoView({ block: 'end' }));
    const wantedCaster = sheet.getByRole('textbox', { name: 'Wanted caster, degrees' });
    const touch = await page.context().newCDPSession(page);
    const draw = async (x: number, y: number, by: number): Promise<void> => {
      await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
      for (let i = 1; i <= 6; i += 1) {
        const touchPoints = [{ x, y: y + (by * i) / 6 }];
        await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints });
      }
      await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    };
    const chart = (await sheet.locator('.region').boundingBox())!;
    const box = (await hold.boundingBox())!;
    const y = box.y + box.height / 2;
    await draw(chart.x + chart.width - 20, y, 24);
    expect(await wantedCaster.inputValue()).toBe('4.50');
    const again = (await hold.boundingBox())!;
    await draw(again.x + again.width / 2, again.y + again.height / 2, -30);
    await expect
      .poll(async () => Number(await wantedCaster.inputValue()), PATIENCE)
      .toBeGreaterThan(4.6);
  });
});
