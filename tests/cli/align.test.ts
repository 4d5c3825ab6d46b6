/** `armscribe align` as a person or a program calls it: what it prints is what the solver answers, and what `pose` confirms. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { align, type Model, withSettings } from '../../solver/index.ts';
import { writeModel } from '../../solver/model/write.ts';
import { armscribe } from '../support/armscribe.ts';

const FILE = 'models/half-ton-factory.json';
const FACTORY = JSON.parse(readFileSync(FILE, 'utf8')) as Model;

const folder = mkdtempSync(join(tmpdir(), 'armscribe-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, model: Model): string {
  const path = join(folder, name);
  writeFileSync(path, writeModel(model));
  return path;
}

describe('--json', () => {
  test('reached: status 0, the settings that are there, and pose --json of them gives the result', () => {
    const { status, out, err } = armscribe(
      'align',
      FILE,
      '--camber',
      '-0.5',
      '--caster=4.4',
      '--json',
    );
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const answer = JSON.parse(out);
    expect(Object.keys(answer).slice(0, 3)).toEqual(['reached', 'settings', 'result']);
    expect(Object.keys(answer.settings)).toEqual(['lowerFrontCam', 'lowerRearCam', 'tieRodTurns']);
    const { after } = align(FACTORY, { camber: -0.5, caster: 4.4 });
    expect(answer).toMatchObject({ reached: true, settings: after.settings, result: after.angles });
    expect(answer.targets.toe).toEqual({
      value: 0.08,
      from: 'file',
      isHeld: true,
      plusMinus: 0.05,
    });
    const set = file('set.json', withSettings(FACTORY, answer.settings));
    const pose = JSON.parse(armscribe('pose', set, '--json').out);
    for (const key of ['camber', 'caster', 'toe']) expect(pose[key]).toBe(answer.result[key]);
    expect(Math.abs(pose.camber + 0.5)).toBeLessThan(1e-9);
  });

  test('out of reach: status 1, the nearest, and which cam runs out', () => {
    const { status, out, err } = armscribe('align', FILE, '--caster', '9', '--json');
    expect({ status, err }).toEqual({ status: 1, err: '' });
    const answer = JSON.parse(out);
    expect(answer.reached).toBe(false);
    expect(answer.runsOut.length).toBeGreaterThan(0);
    for (const name of answer.runsOut) expect(Math.abs(answer.settings[name])).toBe(90);
    expect(Math.abs(answer.result.toe - 0.08)).toBeLessThan(1e-6);
  });

  test('a corner that does not come to its ride height: status 1, null and what fails', () => {
    const lifted = file('lifted.json', { ...FACTORY, travel: { ...FACTORY.travel, ride: 900 } });
    const { status, out } = armscribe('align', lifted, '--json');
    expect(status).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ reached: false, result: null });
    expect(JSON.parse(out).fails).toMatch(/^(lowerArm|upperArm|tieRod)$/);
    const table = armscribe('align', lifted);
    expect(table).toMatchObject({ status: 1, err: '' });
    expect(table.out).toMatch(/^Not reached: \w+ cannot be kept/);
  });
});

describe('the table', () => {
  test('tells angles, verdict and an order of work in marks, shims and flats', () => {
    const { status, out } = armscribe(
      'align',
      'models/half-ton-long-travel.json',
      '--camber',
      '-0.5',
    );
    expect(status).toBe(0);
    expect(out).toMatch(
      /\n {2}camber {6}-0\.200 {4}-0\.500 {4}-0\.500 {4}-0\.\d{3} deg {2}top leans in/,
    );
    expect(out).toContain('\nThe targets are reached.\n');
    expect(out).toMatch(
      /\n {2}1 lower front cam: \d+ marks? outboard, from 0\.0° to \d+\.0° \(exactly /,
    );
    expect(out).toContain('\n  3 upper front shims: leave it as it is\n');
    expect(out).toMatch(/\n {2}5 tie rod, for toe, last: \d flats? longer, \d\.\d\d turns/);
    expect(out).not.toMatch(/NaN|undefined|null|-0\.0+\b/);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(120);
  });

  test('says what stands in the way, and whether the nearest is within the tolerances', () => {
    const saloon = armscribe('align', 'models/rear-steer-saloon.json');
    expect(saloon.status).toBe(1);
    expect(saloon.out).toContain('cannot be reached exactly, but the nearest lies within');
    expect(saloon.out).toContain('\nAt the end: lower rear cam.\n');
    const crossover = armscribe('align', 'models/tall-knuckle-crossover.json');
    expect(crossover.out).toContain('\nCamber: too few pivots can be moved.\n');
  });
});
