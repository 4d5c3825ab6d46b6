/** `armscribe report` as a person or a program calls it: the files are there, and what stands in the way is named. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { assemble, createMargins, cycleGrid } from '../../solver/index.ts';
import { paperDocument } from '../../src/paper/page.ts';
import { sheetsOf } from '../../src/paper/sheets.ts';
import { armscribe } from '../support/armscribe.ts';
import { shipped } from '../support/models.ts';

const FILE = 'models/half-ton-long-travel.json';
const folder = mkdtempSync(join(tmpdir(), 'armscribe-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('writes every paper into a folder that it makes, the same that the page makes', () => {
  const out = join(folder, 'new', 'papers');
  const words = ['--out', out, '--paper', 'letter', '--unit', 'sixteenth', '--date', '2026-03-04'];
  const { status, out: told, err } = armscribe('report', FILE, ...words);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  const names = told.trim().split('\n');
  expect(names.map((name) => name.replace(`${out}/`, '')).sort()).toEqual(readdirSync(out).sort());
  expect(readdirSync(out)).toEqual(
    expect.arrayContaining([
      'set-up.html',
      'alignment.html',
      'alignment-blank.html',
      'cycle.html',
      'inspector.html',
      'curves.html',
      'curves-travel.csv',
      'cut-list.csv',
      'upper-arm-left.svg',
      'tie-rod-right.dxf',
      'lower-arm-right-full-size.html',
      'curves-rack.csv',
    ]),
  );
  const model = shipped('half-ton-long-travel');
  const settings = { paper: 'letter', unit: 'sixteenth', date: '2026-03-04' } as const;
  const [setUp] = sheetsOf(model, cycleGrid(createMargins(assemble(model))), settings);
  const html = readFileSync(join(out, 'set-up.html'), 'utf8');
  expect(html).toBe(paperDocument(`Set-up sheet: ${model.name}`, [setUp!], settings));
  expect(html).toContain('@page { size: 215.9mm 279.4mm');
});

test.each([
  [[], '--out: found nothing, wanted a folder'],
  [['--out', 'x', '--paper', 'a5'], '--paper: found "a5", wanted a4 or letter'],
  [['--out', 'x', '--unit', 'cm'], '--unit: found "cm", wanted mm, inch or sixteenth'],
  [
    ['--out', 'x', '--date', '2026-02-30'],
    '--date: found "2026-02-30", wanted a day as YYYY-MM-DD',
  ],
])('refuses %j', (words, said) => {
  const { status, out, err } = armscribe('report', FILE, ...words);
  expect({ status, out }).toEqual({ status: 2, out: '' });
  expect(err).toContain(`armscribe report: ${said}`);
  expect(err.trim().split('\n').length).toBe(1);
});

test('a folder that cannot be made, or a file in its way, is named', () => {
  const file = join(folder, 'file');
  writeFileSync(file, '');
  for (const [out, found] of [
    [file, 'a file that is no folder'],
    [join(file, 'below'), 'a path through something that is no folder'],
  ] as const) {
    const { status, out: told, err } = armscribe('report', FILE, '--out', out);
    expect({ status, told }).toEqual({ status: 2, told: '' });
    expect(err).toBe(
      `armscribe report: --out: ${JSON.stringify(out)}: found ${found}, wanted a folder that can be written to\n`,
    );
  }
});

test('--help tells of it', () => {
  const { status, out } = armscribe('report', '--help');
  expect(status).toBe(0);
  expect(out).toMatch(/^armscribe report MODEL --out DIR/);
});
