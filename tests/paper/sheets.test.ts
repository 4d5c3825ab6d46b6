// Papers: their numbers are the solver's, their text is inert, their figures are to scale, and no row gets lost between pages.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  align,
  assemble,
  createMargins,
  cycleGrid,
  type Model,
  poseReport,
  type Vector3,
} from '../../solver/index.ts';
import { pagesOf, tableBlocks } from '../../src/paper/block.ts';
import { cornerView } from '../../src/paper/figures/cornerView.ts';
import { cornerOutline } from '../../src/paper/figures/outline.ts';
import type { Markup } from '../../src/paper/markup.ts';
import { paperDocument, type Sheet } from '../../src/paper/page.ts';
import { fiveNumbers } from '../../src/paper/sheets/inspector.ts';
import { stopRows, toePerTurn } from '../../src/paper/sheets/setUp.ts';
import { sheetsOf, tablesOf } from '../../src/paper/sheets.ts';
import { type PaperSettings, paperSource } from '../../src/paper/source.ts';
import { SHIPPED, shipped } from '../support/models.ts';

const METRIC: PaperSettings = { paper: 'a4', unit: 'mm', date: '2026-03-04' };

function gridOf(model: Model) {
  return cycleGrid(createMargins(assemble(model)));
}

const MODEL = shipped('half-ton-long-travel');
const GRID = gridOf(MODEL);
const SHEETS = sheetsOf(MODEL, GRID, METRIC);

function sheet(key: string, sheets: readonly Sheet[] = SHEETS): string {
  const found = sheets.find((each) => each.key === key);
  return found!.pages.map(({ text }) => text).join('');
}

/** Rows of all tables as lists of cells without their markup. */
function rows(text: string): string[][] {
  return [...text.matchAll(/<tr>(.*?)<\/tr>/gs)].map(([, row]) =>
    [...row!.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gs)].map(([, cell]) =>
      cell!.replace(/<[^>]*>/g, '').replaceAll('&#39;', "'"),
    ),
  );
}

function row(text: string, name: string): string[] {
  const found = rows(text).find(([first]) => first === name);
  if (found === undefined) throw new Error(`No row ${name}`);
  return found;
}

function distance(a: Vector3, b: Vector3): number {
  return Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2);
}

/** As papers write it. */
function written(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

const SET = poseReport(assemble(MODEL), 0, 0) as unknown as Record<string, number>;

describe('the set-up sheet', () => {
  const text = sheet('set-up');

  it('tells lengths between the points of the file', () => {
    const { lowerArm, upperArm, tieRod } = MODEL;
    const cases: [string, number][] = [
      ['Lower arm, pivot to pivot', distance(lowerArm.frontPivot, lowerArm.rearPivot)],
      ['Upper arm, rear pivot to ball joint', distance(upperArm.rearPivot, upperArm.ballJoint)],
      ['Ball joint to ball joint', distance(lowerArm.ballJoint, upperArm.ballJoint)],
      ['Tie rod, end to end', distance(tieRod.inner, tieRod.outer)],
    ];
    for (const [name, mm] of cases) {
      expect(row(text, name).slice(1), name).toEqual([
        `${mm.toFixed(1)} mm`,
        `${mm.toFixed(1)} mm`,
        '',
      ]);
    }
  });

  it('tells heights above the ground', () => {
    const points = SET['points'] as unknown as Record<string, Vector3>;
    const ground = points['contact']![2];
    expect(row(text, 'Lower ball joint')[1]).toBe(
      `${(MODEL.lowerArm.ballJoint[2] - ground).toFixed(1)} mm`,
    );
    expect(row(text, 'Wheel centre')[1]).toBe('425.0 mm');
  });

  it('tells stops from ride height, and what the tie rod’s thread does to toe', () => {
    const source = paperSource(MODEL, GRID, METRIC);
    const stops = new Map(stopRows(source).map(([what, value]) => [what, value]));
    expect(stops.get('Wheel from ride height to bump stop touches')).toBe('158.0 mm up');
    const at = (travel: number): number =>
      (poseReport(assemble(MODEL), travel, 0) as unknown as Record<string, number>)[
        'damperLength'
      ]!;
    expect(stops.get('Bump stop gap, along the coilover')).toBe(
      `${(at(0) - at(158)).toFixed(1)} mm`,
    );
    const longer = { ...MODEL, tieRod: { ...MODEL.tieRod, turns: 1 } };
    const toe = (poseReport(assemble(longer), 0, 0) as unknown as Record<string, number>)['toe']!;
    expect(toePerTurn(source)).toBeCloseTo(toe - SET['toe']!, 9);
  });
});

describe('the alignment sheet', () => {
  it('tells before, target and after, and total toe with its diameter', () => {
    const text = sheet('alignment');
    const { rounded } = align(MODEL, {});
    const after = rounded!.angles!;
    for (const [name, key] of [
      ['Camber', 'camber'],
      ['Caster', 'caster'],
      ['Toe, each wheel', 'toe'],
    ] as const) {
      const [now, then] = [`${written(SET[key]!, 2)}°`, `${written(after[key], 2)}°`];
      const { value, plusMinus } = MODEL.targets![key]!;
      const target = `${written(value, 2)}° ±${plusMinus}°`;
      expect(row(text, name).slice(1)).toEqual([now, now, '0.00°', target, then, then, '0.00°']);
    }
    const diameter = 35 * 25.4;
    const length = 2 * diameter * Math.sin((SET['toe']! * Math.PI) / 180);
    expect(row(text, 'Total toe')[1]).toBe(`${written(2 * SET['toe']!, 2)}°`);
    expect(row(text, 'Total toe at Ø 889.0 mm')[1]).toBe(`${written(length, 1)} mm`);
  });

  it('to fill by hand keeps the model’s targets and leaves the rest blank', () => {
    const text = sheet('alignment-blank');
    expect(row(text, 'Caster')).toEqual(['Caster', '', '', '', '4.50° ±0.75°', '', '', '']);
    const bare = { ...MODEL };
    delete (bare as { targets?: unknown }).targets;
    const blank = sheet('alignment-blank', sheetsOf(bare, GRID, METRIC));
    expect(row(blank, 'Caster').join('')).toBe('Caster');
  });
});

describe('the cycle sheet', () => {
  it('tells every margin and angle of all 15 cells, with a blank column each', () => {
    const all = rows(sheet('cycle'));
    expect(GRID.cells.length).toBe(15);
    const clearance = all.filter(([first]) => first === 'Tie rod to wheel');
    expect(clearance.length).toBe(5);
    GRID.heights.forEach(({ height }, at) => {
      GRID.racks.forEach(({ lock }, column) => {
        const cell = GRID.cells.find((each) => each.height === height && each.lock === lock)!;
        const { value } = cell.margins.find(({ margin }) => margin.key === 'tieRod/wheel')!;
        const words = `${Math.abs(value).toFixed(1)} mm ${value <= 0 ? 'deep' : 'gap'}`;
        expect(clearance[at]![1 + 2 * column]).toContain(words);
        expect(clearance[at]![2 + 2 * column]).toBe('');
        const pose = poseReport(assemble(MODEL), cell.travel, cell.rack) as unknown as {
          halfShaft: { outerAngle: number };
        };
        const angles = all.filter(([first]) => first === 'Half-shaft outer joint, angle');
        expect(angles[at]![1 + 2 * column]).toBe(`${pose.halfShaft.outerAngle.toFixed(2)}°`);
      });
    });
  });

  it('without a steering limit has one column of cells and says so', () => {
    const { steering: _, ...straight } = MODEL;
    const text = sheet('cycle', sheetsOf(straight, gridOf(straight), METRIC));
    expect(text).toContain('no steering limit');
  });
});

describe('the inspector’s note', () => {
  it('tells five numbers of the solver on one page', () => {
    const source = paperSource(MODEL, GRID, METRIC);
    const figures = fiveNumbers(source, source.set!).map(({ figure }) => figure);
    expect(figures.slice(0, 4)).toEqual([
      written(SET['motionRatio']!, 3),
      `${written(SET['antiDive']!, 1)} %`,
      `${written(100 * SET['bumpSteer']!, 2)}°/100 mm`,
      `${written(SET['scrubRadius']!, 1)} mm`,
    ]);
    const gaps = GRID.cells.map(
      ({ margins }) => margins.find(({ margin }) => margin.key === 'tieRod/wheel')!.value,
    );
    expect(figures[4]).toBe(`${written(Math.min(...gaps), 1)} mm`);
    for (const figure of figures) expect(sheet('inspector')).toContain(`<b>${figure}</b>`);
    expect(SHEETS.find(({ key }) => key === 'inspector')!.pages.length).toBe(1);
  });
});

describe('curves', () => {
  it('have their numbers as CSV with units and signs in the head', () => {
    const [travel, rack] = tablesOf(MODEL, GRID, METRIC);
    const lines = travel!.csv.trim().split('\n');
    expect(lines[0]).toContain('camber [deg; + top leans out, - top leans in]');
    const heads = lines[0]!.match(/("[^"]*"|[^,]+)/g)!;
    const column = heads.findIndex((head) => head.includes('camber [deg;'));
    for (const line of [lines[1]!, lines[61]!, lines.at(-1)!]) {
      const cells = line.split(',');
      const pose = poseReport(assemble(MODEL), Number(cells[0]), 0) as unknown as Record<
        string,
        number
      >;
      expect(Number(cells[column])).toBeCloseTo(pose['camber']!, 6);
    }
    expect(rack!.key).toBe('curves-rack');
  });
});

describe('the small views', () => {
  it('are to the scale they state: the tyre from the side, and the bar', () => {
    const source = paperSource(MODEL, GRID, METRIC);
    const { text } = cornerView(cornerOutline(source, source.set!), 'side', 'mm', 186, 120);
    const scale = Number(/data-scale="(\d+)"/.exec(text)![1]);
    const tyre = /<path d="M([^"]*)Z"/.exec(text)![1]!;
    const xs = tyre.split('L').map((spot) => Number(spot.split(',')[0]));
    // 35 in over the tread, by the tyre's size.
    expect(Math.abs(scale * (Math.max(...xs) - Math.min(...xs)) - 889)).toBeLessThan(
      0.02 * scale + 1,
    );
    const [, long, bar] = /h([\d.]+)M[^"]*" data-bar="([\d.]+)"/.exec(text)!;
    expect(Number(long) * scale).toBeCloseTo(Number(bar), 1);
  });
});

describe('text of a model', () => {
  const HOSTILE = `<img src=x onerror="alert(1)"><script>alert('2')</script>&amp;\u202e\u0007`;
  const TAGS = new Set(
    'html head meta title style body section header main footer h1 h2 dl div dt dd p ul ol li table colgroup col thead tbody tr th td figure figcaption svg path circle text span b strong small'.split(
      ' ',
    ),
  );

  it('is inert and escaped wherever it is printed', () => {
    const hostile: Model = {
      ...MODEL,
      name: HOSTILE,
      notes: HOSTILE,
      tyre: { ...MODEL.tyre, size: '35x12.50R17LT' },
      obstacles: (MODEL.obstacles ?? []).map((obstacle) => ({
        ...obstacle,
        name: `${HOSTILE}${obstacle.name}`,
      })),
    };
    const sheets = sheetsOf(hostile, gridOf(hostile), { ...METRIC, date: HOSTILE });
    const html = paperDocument(HOSTILE, sheets, METRIC);
    const body = html.replace(/<!doctype html>/, '');
    const tags = [...body.matchAll(/<\/?([^\s>]*)/g)].map(([, tag]) => tag!);
    expect(tags.length).toBeGreaterThan(500);
    expect([...new Set(tags)].filter((tag) => !TAGS.has(tag))).toEqual([]);
    expect(html).not.toMatch(/<[^>]*\son\w+\s*=/);
    for (const unprintable of ['\u202e', '\u0007']) expect(html).not.toContain(unprintable);
    expect(html).toContain('&lt;script&gt;alert(&#39;2&#39;)&lt;/script&gt;&amp;amp;');
  });
});

describe('every shipped model', () => {
  it.each(SHIPPED)('%s has whole papers in every unit', (name) => {
    const model = shipped(name);
    const grid = gridOf(model);
    for (const unit of ['mm', 'inch', 'sixteenth'] as const) {
      const all = sheetsOf(model, grid, { paper: 'letter', unit, date: '' });
      expect(all.map(({ key }) => key).sort()).toEqual(
        [...new Set(all.map(({ key }) => key))].sort(),
      );
      const text = all.flatMap(({ pages }) => pages.map((page) => page.text)).join('');
      expect(text).not.toMatch(/NaN|undefined|null|Infinity|\[object|−0(\.0+)?[°\s<]/);
      expect(all.find(({ key }) => key === 'inspector')!.pages.length).toBe(1);
    }
  });

  it('a corner that cannot stand at its ride height says so', () => {
    const lifted: Model = { ...MODEL, travel: { ...MODEL.travel, ride: 900 } };
    const text = sheetsOf(lifted, gridOf(lifted), METRIC)
      .flatMap(({ pages }) => pages.map((page) => page.text))
      .join('');
    expect(text).toContain('cannot be assembled at its ride height');
    expect(text).not.toMatch(/NaN|undefined|\[object/);
  });
});

describe('pages', () => {
  it('hold every row once, in order, and no more than they have room for', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 400 }), { maxLength: 150 }),
        fc.integer({ min: 100, max: 250 }),
        (lengths, room) => {
          const names = lengths.map((length, at) => `row ${at} ${'x'.repeat(length)}`);
          const table = {
            caption: 'c',
            heads: ['a', 'b'],
            rows: names.map((name) => [name, '1']),
            widths: [0.5, 0.5],
          };
          const blocks = tableBlocks(table, room);
          for (const { height } of blocks) expect(height).toBeLessThanOrEqual(room);
          const text = pagesOf(blocks, room)
            .flat()
            .map((piece) => (piece as Markup).text)
            .join('');
          expect(
            rows(text)
              .map(([first]) => first)
              .filter((first) => first !== 'a'),
          ).toEqual(names);
        },
      ),
      { seed: 20260304, numRuns: 40 },
    );
  });
});
