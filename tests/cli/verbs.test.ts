/** The verbs as a person or a program calls them: what they print is what the solver answers. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { assemble, type Model, poseReport } from '../../solver/index.ts';
import { writeModel } from '../../solver/model/write.ts';
import { csvField, measureColumns, valueAt } from '../../src/cli/columns.ts';
import { armscribe, run } from '../support/armscribe.ts';
import { FULL_MODEL } from '../support/full-model.ts';

const FILE = 'models/half-ton-factory.json';
const EXAMPLE = assemble(JSON.parse(readFileSync(FILE, 'utf8')) as Model);

const folder = mkdtempSync(join(tmpdir(), 'armscribe-'));
const FULL_FILE = join(folder, 'full.json');
writeFileSync(FULL_FILE, writeModel(FULL_MODEL));
afterAll(() => rmSync(folder, { recursive: true }));

describe('--help', () => {
  test.each([
    [['--help'], 'armscribe VERB MODEL [options]\n'],
    [['pose', '--help'], 'armscribe pose MODEL [--travel T] [--rack R] [--json]\n'],
    [['pose', 'nowhere.json', '-h'], 'armscribe pose MODEL [--travel T] [--rack R] [--json]\n'],
    [
      ['sweep', '--help'],
      'armscribe sweep MODEL [--travel A:B:STEP] [--rack A:B:STEP] [--csv | --json]\n',
    ],
    [['check', '--help'], 'armscribe check FILE…\n'],
    [['clearance', '--help'], 'armscribe clearance MODEL [--json]\n'],
    [
      ['compare', '--help'],
      'armscribe compare MODEL MODEL [MODEL MODEL] [--differing] [--csv | --json]\n',
    ],
    [['align', '--help'], 'armscribe align MODEL [--camber D] [--caster D] [--toe D] [--json]\n'],
  ])('%j', (words, firstLine) => {
    const { status, out, err } = armscribe(...words);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out.startsWith(firstLine)).toBe(true);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(90);
  });

  test('the whole help names every verb', () => {
    for (const verb of ['pose', 'sweep', 'clearance', 'compare', 'align', 'uncertainty', 'check']) {
      expect(armscribe('--help').out).toContain(`\n  ${verb} `);
    }
  });
});

describe('pose', () => {
  test.each([
    [['--travel', '50', '--rack', '-12'], 50, -12],
    [['--travel=-5', '--rack=+3'], -5, 3],
    [['--rack', '1e1'], 0, 10],
    [[], 0, 0],
  ])('%j --json is the solver’s own answer', (words, travel, rack) => {
    const { status, out, err } = armscribe('pose', FILE, ...words, '--json');
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(JSON.parse(out)).toEqual(poseReport(EXAMPLE, travel, rack));
  });

  test('options may stand before the model, and the model after a lone --', () => {
    const { out } = armscribe('pose', FILE, '--travel', '20', '--json');
    expect(armscribe('pose', '--json', '--travel', '20', '--', FILE)).toEqual({
      status: 0,
      out,
      err: '',
    });
  });

  test('the table shows every number of the object, rounded, with its sign in words', () => {
    const { status, out } = armscribe('pose', FILE, '--travel', '50');
    const report = poseReport(EXAMPLE, 50, 0) as unknown as Record<string, number>;
    expect(status).toBe(0);
    const camber = (report['camber'] ?? 0).toFixed(3).padStart(12);
    expect(report['camber']).toBeLessThan(0);
    expect(out).toContain(`  camber                  ${camber} deg     top leans in\n`);
    const steer = (report['steerAngle'] ?? 0).toFixed(3).padStart(12);
    expect(out).toContain(`  steer angle             ${steer} deg     steers right\n`);
    expect(out).toContain('\nOutside of its limits: none\n');
    expect(out).not.toMatch(/NaN|undefined|null|-0\.0+\b/);
  });

  test('a limit passed is named, and does not stop the answer', () => {
    const { status, out } = armscribe('pose', FILE, '--travel', '104');
    expect(status).toBe(0);
    expect(out).toContain('\nOutside of its limits: stops.bump\n');
  });

  test('a pose out of reach: exit status 1, and what fails where', () => {
    const answer = poseReport(EXAMPLE, 400, 20);
    expect(answer.reached).toBe(false);
    const json = armscribe('pose', FILE, '--travel', '400', '--rack', '20', '--json');
    expect({ ...json, out: '' }).toEqual({ status: 1, out: '', err: '' });
    expect(JSON.parse(json.out)).toEqual(answer);
    expect(Object.keys(JSON.parse(json.out))).toEqual([
      'reached',
      'fails',
      'lastTravel',
      'lastRack',
    ]);
    const { status, out } = armscribe('pose', FILE, '--travel', '400');
    expect(status).toBe(1);
    expect(out).toMatch(
      /^travel 400 mm, rack 0 mm\nNot reached: \w+ cannot be kept; the last reachable pose on the way is travel \d+\.\d\d mm, rack 0\.00 mm\.\n$/,
    );
  });
});

/** Rows of fields of CSV text without quoted fields. */
function fields(csv: string): string[][] {
  return csv
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));
}

describe('sweep', () => {
  test('--json is the solver’s answers, travel outer, rack inner, both ends included', () => {
    const { status, out } = armscribe(
      'sweep',
      FILE,
      '--travel',
      '-20:5:10',
      '--rack',
      '10:-10:10',
      '--json',
    );
    expect(status).toBe(0);
    const wanted = [-20, -10, 0, 5].flatMap((travel) =>
      [10, 0, -10].map((rack) => poseReport(EXAMPLE, travel, rack)),
    );
    expect(JSON.parse(out)).toEqual(wanted);
  });

  test('by default the whole travel in steps of 10 mm at rack 0', () => {
    const poses = JSON.parse(armscribe('sweep', FILE, '--json').out) as {
      travel: number;
      rack: number;
    }[];
    expect(poses.map(({ travel }) => travel)).toEqual(
      Array.from({ length: 22 }, (_, i) => 10 * i - 105),
    );
    expect(new Set(poses.map(({ rack }) => rack))).toEqual(new Set([0]));
  });

  test('a single number is one pose', () => {
    const poses = JSON.parse(
      armscribe('sweep', FILE, '--travel', '7', '--rack', '-3', '--json').out,
    );
    expect(poses).toEqual([poseReport(EXAMPLE, 7, -3)]);
  });

  test('--csv has names and units in its first line and unrounded numbers below', () => {
    const { status, out } = armscribe('sweep', FILE, '--travel', '-10:10:10', '--csv');
    expect(status).toBe(0);
    const [header = [], ...rows] = fields(out);
    expect(header.slice(0, 7)).toEqual([
      'travel [mm]',
      'rack [mm]',
      'reached',
      'fails',
      'camber [deg]',
      'toe [deg]',
      'caster [deg]',
    ]);
    expect(header).toContain('halfShaft.outerAngle [deg]');
    expect(header).toContain('frontViewCentre.z [mm]');
    expect(header).toContain('points.wheelCentre.x [mm]');
    expect(rows).toHaveLength(3);
    rows.forEach((row, index) => {
      const report = poseReport(EXAMPLE, 10 * index - 10, 0);
      expect(row).toHaveLength(header.length);
      header.forEach((name, column) => {
        const [key = '', letter] = name.replace(/ \[.*/, '').split(/\.(?=[xyz]$)/);
        const value = valueAt(report, key);
        if (typeof value === 'number') expect(Number(row[column])).toBe(value);
        if (Array.isArray(value) && letter !== undefined) {
          const letters =
            key === 'frontViewCentre' ? 'yz' : key === 'sideViewCentre' ? 'xz' : 'xyz';
          expect(Number(row[column])).toBe(value[letters.indexOf(letter)]);
        }
      });
    });
  });

  test('a pose out of reach keeps its row: exit status 1', () => {
    const csv = armscribe('sweep', FILE, '--travel', '0:400:400', '--csv');
    expect(csv.status).toBe(1);
    const [header = [], reached = [], unreached = []] = fields(csv.out);
    expect(reached.slice(0, 4)).toEqual(['0', '0', 'true', '']);
    expect(unreached).toEqual(['400', '0', 'false', 'lowerArm', ...header.slice(4).map(() => '')]);
    const json = armscribe('sweep', FILE, '--travel', '400', '--json');
    expect(json.status).toBe(1);
    expect(JSON.parse(json.out)).toEqual([
      { travel: 400, rack: 0, ...poseReport(EXAMPLE, 400, 0) },
    ]);
    const table = armscribe('sweep', FILE, '--travel', '400');
    expect(table.status).toBe(1);
    expect(table.out).toContain('    400.000      0.000  not reached: lowerArm cannot be kept\n');
  });

  test('a reader that has seen enough ends it quietly', () => {
    const command = `node src/cli/launch.js sweep ${FILE} --travel -100:100:0.02 --csv | head -n 1`;
    const { status, out, err } = run('bash', ['-o', 'pipefail', '-c', command]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out.startsWith('travel [mm],rack [mm],')).toBe(true);
  });
});

describe('check', () => {
  test('says of each sound file its name', () => {
    expect(armscribe('check', FILE, FULL_FILE)).toEqual({
      status: 0,
      out: `${FILE}: sound: Half-ton four-wheel drive, factory height\n${FULL_FILE}: sound: Every key, once\n`,
      err: '',
    });
  });

  test('by npm, as the README has it', () => {
    expect(run('npm', ['run', '--silent', 'armscribe', '--', 'check', FILE])).toEqual({
      status: 0,
      out: `${FILE}: sound: Half-ton four-wheel drive, factory height\n`,
      err: '',
    });
  });
});

describe('a model with every part', () => {
  const report = poseReport(assemble(FULL_MODEL), -20, 8);

  /** Paths of every number of an answer, lists of numbers as one. */
  function numberPaths(value: unknown, path: string): string[] {
    if (typeof value === 'number' || value === null) return [path];
    if (Array.isArray(value)) {
      return Array.isArray(value[0]) ? value.map((_, index) => `${path}[${index}]`) : [path];
    }
    return Object.entries(value as object).flatMap(([key, item]) =>
      numberPaths(item, path === '' ? key : `${path}.${key}`),
    );
  }

  test('has a column for every number of the object, in its order, and none for anything else', () => {
    const columns = measureColumns(report as unknown as Record<string, unknown>);
    const named = columns.map(({ header }) => header.replace(/(\.[xyz])? \[.*/, ''));
    const {
      travel: _,
      rack: __,
      outside: ___,
      ...measures
    } = report as unknown as Record<string, unknown>;
    expect([...new Set(named)]).toEqual(numberPaths(measures, ''));
  });

  test('has no empty field and a line for every number', () => {
    const csv = fields(
      armscribe('sweep', FULL_FILE, '--travel', '-20', '--rack', '8', '--csv').out,
    );
    const [header = [], row = []] = csv;
    header.forEach((name, column) => {
      if (name !== 'fails' && name !== 'outside') expect(row[column]).not.toBe('');
    });
    const table = armscribe('pose', FULL_FILE, '--travel', '-20', '--rack', '8').out;
    expect(table).toContain('\n  tie rod bends 2 ');
    expect(table).toContain('\n  half-shaft plunge ');
  });
});

describe('a CSV field', () => {
  test.each([
    [1.5e-7, '1.5e-7'],
    [undefined, ''],
    [null, ''],
    [false, 'false'],
    ['a,b', '"a,b"'],
    ['say "x"\n', '"say ""x""\n"'],
  ])('%j', (value, field) => {
    expect(csvField(value)).toBe(field);
  });
});
