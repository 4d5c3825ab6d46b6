/** `armscribe compare`: what it prints is what the solver answers, and every way it can be refused. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import {
  COMPARED_ROWS,
  comparedCell,
  comparisonCsv,
  measureDesign,
  STATIONS,
} from '../../solver/index.ts';
import { armscribe } from '../support/armscribe.ts';
import { shipped } from '../support/models.ts';

const FACTORY = 'models/half-ton-factory.json';
const LONG = 'models/half-ton-long-travel.json';
const PLANAR = 'models/planar-equal-arms.json';
const NAMES = ['half-ton-factory', 'half-ton-long-travel', 'planar-equal-arms'] as const;
const DESIGNS = NAMES.map((name) => measureDesign(shipped(name)));

const folder = mkdtempSync(join(tmpdir(), 'armscribe-'));
afterAll(() => rmSync(folder, { recursive: true }));

function modelFile(name: string, model: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(model));
  return path;
}

interface Row {
  readonly key: string;
  readonly values: readonly (number | null)[];
  readonly lacking: readonly (string | null)[];
  readonly differences: readonly (number | null)[];
}
interface Answer {
  readonly designs: readonly { readonly file: string }[];
  readonly stations: readonly {
    readonly station: string;
    readonly places: readonly unknown[];
    readonly rows: readonly Row[];
  }[];
}

describe('compare', () => {
  test('--json holds the solver’s own numbers, what is lacking, and differences from the first', () => {
    const { status, out, err } = armscribe('compare', FACTORY, LONG, PLANAR, '--json');
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const { designs, stations } = JSON.parse(out) as Answer;
    expect(designs.map(({ file }) => file)).toEqual([FACTORY, LONG, PLANAR]);
    expect(stations.map(({ station }) => station)).toEqual(STATIONS);
    stations.forEach(({ rows }, at) => {
      rows.forEach(({ key, values, lacking, differences }, index) => {
        const row = COMPARED_ROWS[index]!;
        expect(key).toBe(row.key);
        const cells = DESIGNS.map((design) => comparedCell(design, STATIONS[at]!, row));
        expect(cells.map((cell) => (typeof cell === 'number' ? cell + 0 : null))).toEqual(values);
        expect(cells.map((cell) => (typeof cell === 'string' ? cell : null))).toEqual(lacking);
        const [base, second] = values;
        if (base !== null && second !== null) expect(differences[1]).toBe(second! - base! + 0);
      });
    });
  });

  test('--csv is the same comparison, its designs by letter and name', () => {
    const { status, out } = armscribe('compare', FACTORY, LONG, '--csv');
    const named = DESIGNS.slice(0, 2).map((measured, at) => ({
      name: `${'AB'[at]} ${measured.model.name}`,
      measured,
    }));
    expect({ status, out }).toEqual({ status: 0, out: comparisonCsv(named, 0) });
  });

  test('the table says differences in words', () => {
    const { status, out } = armscribe('compare', FACTORY, LONG);
    expect(status).toBe(0);
    const [was, is] = DESIGNS.map(({ stations }) => stations.fullBump.values.get('camber')!);
    expect(is! < was! && was! < 0).toBe(true);
    const camber = new RegExp(
      `camber +deg +${was!.toFixed(3)} +${is!.toFixed(3)}  leans in ${(was! - is!).toFixed(3)} deg more\n`,
    );
    expect(out.slice(out.indexOf('FULL BUMP'))).toMatch(camber);
    expect(out).toMatch(/strap, end to end +mm +no strap +\d+\.\d\d\n/);
    expect(out).not.toMatch(/NaN|undefined|null|-0\.0+\b/);
  });

  test('--differing leaves out what reads the same; of a model beside itself nothing is left', () => {
    const brief = armscribe('compare', FACTORY, LONG, '--differing').out;
    const ride = brief.slice(brief.indexOf('RIDE HEIGHT'), brief.indexOf('FULL BUMP'));
    expect(ride).not.toMatch(/^ {2}camber /m);
    expect(ride).toMatch(/^ {2}kingpin inclination /m);
    const { status, out } = armscribe('compare', FACTORY, FACTORY, '--differing');
    expect(status).toBe(0);
    expect(out.match(/ {2}nothing differs\n/g)).toHaveLength(STATIONS.length);
  });

  test('a place out of reach is said in its cells, and is exit status 1', () => {
    const far = modelFile('far.json', {
      ...shipped('half-ton-factory'),
      travel: { bump: 400, droop: 105 },
    });
    const { status, out, err } = armscribe('compare', FACTORY, far);
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out).toMatch(/ {2}B out of reach: the (upper arm|lower arm|tie rod) cannot keep/);
    expect(out).toMatch(/camber +deg +-\d\.\d{3} +out of reach\n/);
  });
});

describe('compare refuses', () => {
  test.each([
    [[], 'MODEL: found nothing, wanted the names of two to four model files'],
    [[FACTORY], 'MODEL: found 1 words, wanted the names of two to four model files'],
    [
      [FACTORY, LONG, PLANAR, FACTORY, LONG],
      'MODEL: found 5 words, wanted the names of two to four model files',
    ],
    [[FACTORY, LONG, '--csv', '--json'], '--csv: found --json too, wanted one of the two'],
    [
      [FACTORY, LONG, '--csv', '--differing'],
      '--differing: found --csv too, wanted one of the two: a CSV holds every measure',
    ],
    [
      [FACTORY, LONG, '--rack', '5'],
      '--rack: found an unknown option, wanted one of --differing, --csv, --json',
    ],
  ])('%j', (words, line) => {
    expect(armscribe('compare', ...words)).toEqual({
      status: 2,
      out: '',
      err: `armscribe compare: ${line}\n`,
    });
  });

  test('a model that is not sound, whichever it is', () => {
    const { lowerArm: _, ...lame } = shipped('half-ton-factory');
    const file = modelFile('lame.json', lame);
    const { status, out, err } = armscribe('compare', FACTORY, file);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(`${file}: lowerArm: `);
    expect(err.split('\n')).toHaveLength(2);
  });
});
