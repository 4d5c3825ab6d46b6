import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import factory from '../../models/half-ton-factory.json' with { type: 'json' };
import {
  AxleMeasure,
  assemble,
  axleInto,
  createAxle,
  createPose,
  createRodGap,
  EXPLANATIONS,
  type Model,
  parseModel,
  placeParts,
  poseReport,
  rodGapInto,
  solve,
} from '../../solver/index.ts';
import { DOCKED_SHEETS } from '../../src/panels/workSheets.ts';
import { type Bench, type BenchOptions, openBench } from '../support/launch.ts';
import { shipped } from '../support/models.ts';
import { withoutPicture } from '../support/withoutPicture.ts';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

function modelOf(value: object): Model {
  const read = parseModel(JSON.stringify(value), 'test.json');
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.model;
}

const MODEL = modelOf(factory);
const CORNER = assemble(MODEL);

/** Numbers of the solver's own report. */
function report(travel: number, rack: number, corner = CORNER): Record<string, number> {
  const answer = poseReport(corner, travel, rack);
  if (answer.reached === false) throw new Error(`Not reached: ${travel}, ${rack}`);
  return answer as unknown as Record<string, number>;
}

/** A number as a person reads it: fixed digits, a true minus, no minus zero. */
function shown(value: number | undefined, digits: number): string {
  const text = (value ?? Number.NaN).toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

function plus(value: number, digits: number): string {
  const text = shown(value, digits);
  return Number(value.toFixed(digits)) > 0 ? `+${text}` : text;
}

/** Asserts on what the page comes to within a while: it is drawn in software, by however busy a machine. */
function eventually<T>(read: () => T | Promise<T>, message = '') {
  return expect.poll(read, { timeout: 20_000, message });
}

let bench: Bench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

async function open(options: BenchOptions = { before: withoutPicture }): Promise<Page> {
  bench = await openBench(options);
  const { page } = bench;
  // The first frame has written the readings: by then everything listens.
  await eventually(() => part(page, 'camber', 'figure').textContent()).toBe('−0.20°');
  return page;
}

async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill(text);
  await field.press('Enter');
}

/** Drops a file on the page. */
async function drop(page: Page, name: string, text: string): Promise<void> {
  await page.evaluate(
    ([fileName, content]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content], fileName, { type: 'application/json' }));
      const told = { dataTransfer, bubbles: true, cancelable: true };
      document.body.dispatchEvent(new DragEvent('drop', told));
    },
    [name, text] as const,
  );
}

function part(page: Page, key: string, name: string) {
  return page.locator(`[data-reading="${key}"] [data-part="${name}"]`);
}

async function openGroup(page: Page, title: string): Promise<void> {
  const button = page.getByRole('button', { name: title, exact: true });
  if ((await button.getAttribute('aria-expanded')) === 'false') await button.click();
}

/** Text of a locator, once it is what it should be. */
async function reads(page: Page, key: string, name: string, text: string): Promise<void> {
  await eventually(() => part(page, key, name).textContent(), key).toBe(text);
}

describe('readings', () => {
  it('are the solver’s own numbers, wherever the bench is moved', async () => {
    const page = await open();
    for (const title of ['Steering axis', 'Centres', 'Steering', 'Half-shaft', 'Joints']) {
      await openGroup(page, title);
    }
    for (const [travel, rack] of [
      [62.5, 0],
      [-90, 45],
      [33, -71.5],
    ] as const) {
      await type(page, 'Travel', String(travel));
      await type(page, 'Rack', String(rack));
      const wanted = report(travel, rack);
      for (const key of ['camber', 'caster', 'toe', 'kingpinInclination', 'steerAngle']) {
        await reads(page, key, 'figure', `${shown(wanted[key], 2)}°`);
      }
      for (const key of ['scrubRadius', 'casterTrail', 'rollCentreHeight']) {
        await reads(page, key, 'figure', `${shown(wanted[key], 1)} mm`);
      }
      const { joints, halfShaft } = wanted as unknown as Record<string, Record<string, number>>;
      await reads(page, 'lowerBallJoint', 'figure', `${shown(joints?.['lowerBallJoint'], 2)}°`);
      await reads(page, 'plunge', 'figure', `${shown(halfShaft?.['plunge'], 1)} mm`);
      await reads(page, 'antiDive', 'figure', `${shown(wanted['antiDive'], 1)} %`);
      const axle = new Float64Array(4);
      axleInto(createAxle(CORNER), travel, rack, axle);
      const ackermann = axle[AxleMeasure.ackermann] ?? Number.NaN;
      await reads(
        page,
        'ackermann',
        'figure',
        Number.isNaN(ackermann) ? '–' : `${shown(ackermann, 1)} %`,
      );
    }
  });

  it('say their sign in words, and how far they are from the design pose or from yesterday', async () => {
    const page = await open();
    await type(page, 'Travel', '80');
    const design = report(0, 0);
    const now = report(80, 0);
    await reads(page, 'camber', 'words', 'top leans in');
    const change = (now['camber'] ?? 0) - (design['camber'] ?? 0);
    await reads(page, 'camber', 'change', `${plus(change, 2)}° since design pose`);
    await page.getByRole('button', { name: 'Hold as yesterday' }).click();
    await reads(page, 'camber', 'change', '0.00° against yesterday');
    await page.getByRole('button', { name: 'Let go of yesterday' }).click();
    await reads(page, 'camber', 'change', `${plus(change, 2)}° since design pose`);
  });

  it('say which part they need, and what is left of a limit', async () => {
    const page = await open();
    await openGroup(page, 'Springing');
    await reads(page, 'strapLength', 'words', 'needs strap');
    await openGroup(page, 'Joints');
    const { joints } = report(0, 0) as unknown as Record<string, Record<string, number>>;
    const left = 32 - (joints?.['tieRodInner'] ?? 0);
    await reads(page, 'tieRodInner', 'limit', `${shown(left, 2)}° left of 32.00°`);
    expect(await part(page, 'lowerBallJoint', 'limit').textContent()).toContain(
      'assumed centred as measured',
    );
    await type(page, 'Travel', '103');
    await eventually(() => page.locator('[data-banner="limits"]').textContent()).toBe(
      'Outside: past the bump stop',
    );
    await type(page, 'Travel', '0');
    await eventually(() => page.locator('[data-banner="limits"]').isVisible()).toBe(false);
  });

  it('follow the unit: millimetres, inches, sixteenths', async () => {
    const page = await open();
    await openGroup(page, 'Steering axis');
    await openGroup(page, 'Bump');
    await type(page, 'Travel', '38.1');
    const { casterTrail = 0, bumpSteer = 0 } = report(38.1, 0);
    await page.getByRole('button', { name: 'in: inches, decimal' }).click();
    await reads(page, 'casterTrail', 'figure', `${shown(casterTrail / 25.4, 2)} in`);
    await reads(page, 'bumpSteer', 'figure', `${shown(bumpSteer * 25.4, 3)}°/in`);
    const travel = page.getByRole('textbox', { name: 'Travel', exact: true });
    await eventually(() => travel.inputValue()).toBe('1.50');
    await page.getByRole('button', { name: '1/16 in: inches, to the nearest sixteenth' }).click();
    await eventually(() => travel.inputValue()).toBe('1 1/2');
    const count = Math.round((casterTrail / 25.4) * 16);
    const words = await part(page, 'casterTrail', 'figure').textContent();
    const [, whole = '0', top = '0', bottom = '1'] =
      /^(\d+)?(?: ?(\d+)\/(\d+))? in$/.exec(words ?? '') ?? [];
    expect(Number(whole) * 16 + (Number(top) / Number(bottom)) * 16).toBe(count);
    await type(page, 'Travel', '-1 3/16');
    const data = page.locator('.transport');
    await eventually(() => data.getAttribute('data-travel')).toBe('-30.1625');
  });

  it('explain themselves on hover, focus and Escape, without covering their figure', async () => {
    const page = await open();
    const name = page.locator('[data-reading="caster"] .name');
    const tip = page.getByRole('tooltip');
    await name.hover();
    await eventually(() => tip.textContent()).toContain(EXPLANATIONS.caster);
    const box = await tip.boundingBox();
    const figure = await part(page, 'caster', 'figure').boundingBox();
    if (box === null || figure === null) throw new Error('Nothing to compare.');
    expect(box.x + box.width).toBeLessThanOrEqual(figure.x);
    await page.mouse.move(700, 300);
    await eventually(() => tip.count()).toBe(0);
    await name.focus();
    await eventually(() => name.getAttribute('aria-describedby')).toBe('explanation');
    await page.keyboard.press('Escape');
    await eventually(() => tip.count()).toBe(0);
  });
});

describe('moving by hand', () => {
  it('lifts the vehicle by one slider, takes the bench along, and undoes it', async () => {
    const page = await open();
    const data = page.locator('.transport');
    const slider = page.getByRole('slider', { name: 'Lift slider' });
    await slider.focus();
    await slider.press('Shift+ArrowRight');
    await slider.press('Shift+ArrowRight');
    await eventually(() => data.getAttribute('data-travel')).toBe('-50');
    const lifted = report(-50, 0);
    await reads(page, 'camber', 'figure', `${shown(lifted['camber'], 2)}°`);
    const change = (lifted['camber'] ?? 0) - (report(0, 0)['camber'] ?? 0);
    await reads(page, 'camber', 'change', `${plus(change, 2)}° since design pose`);
    await eventually(() => slider.getAttribute('aria-valuetext')).toBe(
      '50.0 mm, a lift: travel −50 mm',
    );
    await page.keyboard.press('Control+z');
    await eventually(() => data.getAttribute('data-travel')).toBe('-25');
    await page.keyboard.press('Control+z');
    await eventually(() => data.getAttribute('data-travel')).toBe('0');
    await page.keyboard.press('Control+Shift+Z');
    await eventually(() => data.getAttribute('data-travel')).toBe('-25');
  });

  it('refuses in words what no slider reaches, in every length that is typed', async () => {
    const page = await open();
    const data = page.locator('.transport');
    const said = page.locator('.transport .slide-refusal');
    await type(page, 'Lift', '500');
    await eventually(() => said.allTextContents()).toEqual([
      '',
      '',
      'Most is 105.0 mm: full droop.',
    ]);
    await eventually(() => data.getAttribute('data-travel')).toBe('-105');
    await type(page, 'Lift', '0');
    await eventually(() => said.allTextContents()).toEqual(['', '', '']);
    await type(page, 'Travel', '-300');
    await type(page, 'Rack', '5 apples');
    await eventually(() => said.allTextContents()).toEqual([
      'Least is −105.0 mm: full droop.',
      '“5 apples” is not a number.',
      '',
    ]);
    const rack = page.getByRole('textbox', { name: 'Rack', exact: true });
    expect(await rack.inputValue()).toBe('0.0');
  });

  it.each(['half-ton-factory', 'rear-steer-saloon'] as const)(
    'has left lock at the left of the rack’s slider, and Home is the design pose there too: %s',
    async (name) => {
      const page = await open();
      await drop(page, 'model.json', JSON.stringify(shipped(name)));
      const data = page.locator('.transport');
      const slider = page.getByRole('slider', { name: 'Rack slider' });
      // The model has arrived once the slider runs its way: with the rack to the left at the left, or the other way.
      const way = name === 'rear-steer-saloon' ? 'ltr' : 'rtl';
      await eventually(() => slider.getAttribute('dir')).toBe(way);
      await type(page, 'Travel', '20');
      const ends = page.locator('.slide-ends span');
      expect(await ends.allTextContents()).toEqual(['left lock', 'right lock']);
      const box = await slider.boundingBox();
      if (box === null) throw new Error('There is no slider.');
      await page.mouse.click(box.x + 20, box.y + box.height / 2);
      await eventually(() => data.getAttribute('data-rack')).not.toBe('0');
      const rack = Number(await data.getAttribute('data-rack'));
      const corner = assemble(shipped(name));
      expect(report(20, rack, corner)['steerAngle']).toBeGreaterThan(5);
      await slider.press('ArrowLeft');
      await eventually(async () =>
        Math.abs(Number(await data.getAttribute('data-rack'))),
      ).toBeCloseTo(Math.abs(rack) + 5, 6);
      await slider.press('Home');
      await eventually(() => data.getAttribute('data-rack')).toBe('0');
      expect(await data.getAttribute('data-travel')).toBe('0');
    },
  );

  it('is one step of history for a whole drag of the lift', async () => {
    const page = await open();
    const slider = page.getByRole('slider', { name: 'Lift slider' });
    const box = await slider.boundingBox();
    if (box === null) throw new Error('There is no slider.');
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + box.width / 2, y);
    await page.mouse.down();
    for (const share of [0.6, 0.7, 0.8]) await page.mouse.move(box.x + box.width * share, y);
    await page.mouse.up();
    const data = page.locator('.transport');
    await eventually(async () => Number(await data.getAttribute('data-travel'))).toBeLessThan(-40);
    await page.getByRole('button', { name: 'Undo' }).click();
    await eventually(() => data.getAttribute('data-travel')).toBe('0');
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  it('by keys, but never while something is typed', async () => {
    const page = await open();
    const data = page.locator('.transport');
    const at = async () => [
      await data.getAttribute('data-travel'),
      await data.getAttribute('data-rack'),
    ];
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Shift+ArrowUp');
    await page.keyboard.press('Alt+ArrowUp');
    await page.keyboard.press('ArrowLeft');
    await eventually(at).toEqual(['30.5', '5']);
    await page.keyboard.press('Home');
    await eventually(at).toEqual(['0', '0']);
    const field = page.getByRole('textbox', { name: 'Travel', exact: true });
    await field.focus();
    for (const key of ['ArrowUp', 'h', '2', 'Space']) await field.press(key);
    expect(await at()).toEqual(['0', '0']);
    expect(await page.getByRole('button', { name: 'Hold as yesterday' }).count()).toBe(1);
    expect(await page.getByRole('button', { name: 'Pause' }).count()).toBe(0);
    await field.press('Escape');
    await page.keyboard.press('2');
    const front = page.getByRole('button', { name: 'Front view' });
    await eventually(() => front.getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('g');
    const ghost = page.getByRole('button', { name: 'Ghost of wheel and tyre' });
    await eventually(() => ghost.getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('h');
    await page.getByRole('button', { name: 'Let go of yesterday' }).waitFor();
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Pause' }).waitFor();
    await page.keyboard.press('Space');
    await page.keyboard.press('?');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await page.keyboard.press('Escape');
    await eventually(() => page.getByRole('dialog', { name: 'Keys' }).count()).toBe(0);
  });

  it('leaves Space to what it ticks: the points are opened by keys alone, and nothing plays', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'Points', exact: true }).focus();
    await page.keyboard.press('Space');
    await eventually(() => page.getByText('Points and parts').count()).toBe(1);
    expect(await page.getByRole('button', { name: 'Play', exact: true }).count()).toBe(1);
  });

  it('out of reach: says what fails and where the last reachable pose is, and reads that one', async () => {
    const page = await open();
    const far = { ...factory, travel: { bump: 400, droop: 105 } };
    await drop(page, 'far.json', JSON.stringify(far));
    const slider = page.getByRole('slider', { name: 'Travel slider' });
    await eventually(() => slider.getAttribute('max')).toBe('400');
    await type(page, 'Travel', '400');
    const answer = poseReport(assemble(modelOf(far)), 400, 0);
    if (answer.reached !== false) throw new Error('This pose should be out of reach.');
    const fails = { lowerArm: 'lower arm', upperArm: 'upper arm', tieRod: 'tie rod' }[answer.fails];
    await eventually(() => page.locator('[data-banner="reach"]').textContent()).toBe(
      `Out of reach: the ${fails} cannot keep its length; last reachable at travel +${answer.lastTravel.toFixed(1)} mm, rack 0.0 mm. Readings are those of that pose.`,
    );
    const last = report(answer.lastTravel - 0.001, 0, assemble(modelOf(far)));
    const figure = await part(page, 'camber', 'figure').textContent();
    const read = Number(figure?.replace('−', '-').replace('°', ''));
    // Near the end of reach a thousandth of a millimetre still turns the wheel by some hundredths.
    expect(Math.abs(read - (last['camber'] ?? 0))).toBeLessThan(0.3);
    await type(page, 'Travel', '0');
    await eventually(() => page.locator('[data-banner="reach"]').isVisible()).toBe(false);
  });
});

describe('a design that is hardly meant', () => {
  it('is solved all the same, and said: upper ball joint below the lower one', async () => {
    const page = await open();
    const { upperArm, lowerArm } = factory;
    const [x = 0, y = 0] = upperArm.ballJoint;
    const below = { ...upperArm, ballJoint: [x, y, (lowerArm.ballJoint[2] ?? 0) - 30] };
    await drop(page, 'below.json', JSON.stringify({ ...factory, upperArm: below }));
    const line = page.locator('[data-banner="doubt"]');
    await eventually(() => line.isVisible()).toBe(true);
    expect(await line.textContent()).toContain('upper ball joint is below the lower one');
    await page.keyboard.press('Control+z');
    await eventually(() => line.isVisible()).toBe(false);
  });
});

describe('the rod and the wheel’s lip', () => {
  /** What the gap tile says, once its state is as wanted. */
  async function tile(page: Page, state: string): Promise<string> {
    const gap = page.locator('[data-panel="gap"]');
    await eventually(() => gap.getAttribute('data-state')).toBe(state);
    return (await gap.textContent()) ?? '';
  }

  it('meet near full lock with a straight rod, which is said with place and depth, and clear with the bent one', async () => {
    const straight = shipped('half-ton-long-travel');
    const named = [...straight.notes!.matchAll(/\[(-?\d+), (-?\d+), (-?\d+)\]/g)];
    const bends = named.map(([, ...point]) => point.map(Number));
    const page = await open();
    await drop(page, 'straight.json', JSON.stringify(straight));
    await type(page, 'Rack', '-70');
    expect(await tile(page, 'near')).toContain('under the wanted gap');
    await type(page, 'Rack', '-92');
    const touching = await tile(page, 'touch');
    expect(touching).toContain('at the inner lip');
    const corner = assemble(straight);
    const pose = createPose();
    solve(corner, pose, 0, -92);
    placeParts(corner, pose.data);
    const rod = createRodGap(corner, 'wheel');
    rodGapInto(rod, pose);
    expect(touching).toContain(`touch: ${(-rod.gap).toFixed(1)} mm deep`);
    const bent = { ...straight, tieRod: { ...straight.tieRod, bends } };
    await drop(page, 'bent.json', JSON.stringify(bent));
    await type(page, 'Rack', '-92');
    expect(await tile(page, 'clear')).toContain('clear');
  });

  it('are compared with yesterday’s, and the tyre’s gap is the tile’s where the map shows it', async () => {
    const page = await open();
    const gapAt = (pair: 'wheel' | 'tyre', model: Model, rack: number): number => {
      const corner = assemble(model);
      const pose = createPose();
      solve(corner, pose, 0, rack);
      placeParts(corner, pose.data);
      const rod = createRodGap(corner, pair);
      rodGapInto(rod, pose);
      return rod.gap;
    };
    await page.getByRole('button', { name: 'Hold as yesterday' }).click();
    await type(page, 'Rack', '-60');
    const gap = page.locator('[data-panel="gap"]');
    await eventually(() => gap.textContent()).toContain('as yesterday');
    const [x = 0, y = 0, z = 0] = factory.tieRod.outer;
    const moved = modelOf({ ...factory, tieRod: { ...factory.tieRod, outer: [x + 12, y, z] } });
    await drop(page, 'moved.json', JSON.stringify(moved));
    await type(page, 'Rack', '-60');
    for (const pair of ['wheel', 'tyre'] as const) {
      await page.locator('.map-card').getByLabel('Pair on the map').selectOption(`tieRod/${pair}`);
      const now = gapAt(pair, moved, -60);
      const change = now - gapAt(pair, MODEL, -60);
      const words = `${Math.abs(change).toFixed(1)} mm ${change < 0 ? 'less' : 'more'} than yesterday`;
      await eventually(() => gap.textContent()).toContain(words);
      const title = gap.getByRole('heading', { name: `Tie rod to ${pair}` });
      expect(await title.isVisible()).toBe(true);
      const figure = gap.locator('[data-part="figure"]');
      expect(await figure.textContent()).toBe(now.toFixed(1));
    }
  });
});

/** Share of the window where the stage is what lies uppermost. */
function freeShare(page: Page): Promise<number> {
  return page.evaluate(() => {
    let free = 0;
    let all = 0;
    for (let x = 4; x < innerWidth; x += 8) {
      for (let y = 4; y < innerHeight; y += 8) {
        all += 1;
        if (document.elementFromPoint(x, y)?.closest('[data-stage]') !== null) free += 1;
      }
    }
    return free / all;
  });
}

describe('the page', () => {
  it('leaves at least 60 % of the stage free with readings and map open, and more without', async () => {
    const page = await open({});
    await page.locator('.map-card').waitFor();
    const share = await freeShare(page);
    expect(share).toBeGreaterThanOrEqual(0.6);
    for (const title of ['Steering axis', 'Bump', 'Springing']) await openGroup(page, title);
    expect(await freeShare(page)).toBeGreaterThanOrEqual(0.6);
    await page.getByRole('button', { name: 'Readings', exact: true }).click();
    await page.getByRole('button', { name: 'Map', exact: true }).click();
    await eventually(() => page.locator('.readings, .map-card').count()).toBe(0);
    expect(await page.locator('.gap-tile').isVisible()).toBe(true);
    expect(await freeShare(page)).toBeGreaterThan(0.8);
  });

  it('keeps its panels inside a 1024 × 768 window, apart from each other', async () => {
    const page = await open({ width: 1024, height: 768 });
    await page.locator('.map-card').waitFor();
    const boxes = await page.evaluate(() =>
      ['.place-top', '.place-map', '.place-readings', '.gap-tile', '.transport'].map((name) => {
        const box = document.querySelector(name)?.getBoundingClientRect();
        if (box === undefined) throw new Error(`There is no ${name}.`);
        return { name, left: box.left, right: box.right, top: box.top, bottom: box.bottom };
      }),
    );
    for (const a of boxes) {
      expect(a.left, a.name).toBeGreaterThanOrEqual(0);
      expect(a.right, a.name).toBeLessThanOrEqual(1024);
      expect(a.bottom, a.name).toBeLessThanOrEqual(768);
      for (const b of boxes) {
        if (a === b) continue;
        const isApart =
          a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
        expect(isApart, `${a.name} and ${b.name}`).toBe(true);
      }
    }
  });

  it('works on a phone: nothing cut off, targets to touch, tabs', async () => {
    const page = await open({ width: 390, height: 844, context: { hasTouch: true } });
    const tabs = page.getByRole('tab');
    const sheets = DOCKED_SHEETS.map(({ label }) => label);
    expect(await tabs.allTextContents()).toEqual(['Readings', 'Map', 'Points', ...sheets]);
    const wrong = await page.evaluate(() => {
      const small: string[] = [];
      const wide = document.documentElement.scrollWidth > innerWidth;
      for (const element of document.querySelectorAll(
        '.top-bar button, .transport button, .transport input, .transport select, .phone-tabs button, .caution-line',
      )) {
        // Tabs scroll along their bar.
        element.scrollIntoView({ inline: 'nearest' });
        const { width, height, right, left } = element.getBoundingClientRect();
        if (width === 0) continue;
        if (height < 39.5 || right > innerWidth + 0.5 || left < 0) {
          small.push(`${element.className} ${element.textContent} ${width}×${height}`);
        }
      }
      return { small, wide };
    });
    expect(wrong).toEqual({ small: [], wide: false });
    await tabs.nth(1).tap();
    await page.locator('.map-card').waitFor();
    await tabs.nth(0).tap();
    const name = page.locator('[data-reading="camber"] .name');
    await name.tap();
    const tip = page.getByRole('tooltip');
    await eventually(() => tip.textContent()).toContain(EXPLANATIONS.camber);
    const [box, figure] = [
      await tip.boundingBox(),
      await part(page, 'camber', 'figure').boundingBox(),
    ];
    if (box === null || figure === null) throw new Error('Nothing to compare.');
    expect(box.y + box.height <= figure.y || box.y >= figure.y + figure.height).toBe(true);
  });

  it.each([
    ['light', 1440, 900],
    ['dark', 1440, 900],
    ['light', 390, 844],
    ['dark', 390, 844],
  ] as const)('has nothing serious for axe: %s, %d × %d', async (colorScheme, width, height) => {
    const page = await open({ colorScheme, width, height });
    for (const title of ['Springing', 'Joints']) await openGroup(page, title);
    await part(page, 'tieRodInner', 'limit').waitFor();
    await page.addScriptTag({ path: AXE });
    const found = await page.evaluate(async () => {
      const { axe } = globalThis as unknown as {
        axe: {
          run(): Promise<{
            violations: { id: string; impact: string; nodes: { html: string }[] }[];
          }>;
        };
      };
      const { violations } = await axe.run();
      return violations
        .filter(({ impact }) => impact === 'serious' || impact === 'critical')
        .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
    });
    expect(found).toEqual([]);
  });
});
