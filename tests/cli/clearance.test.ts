/** The verb `clearance` as a person or a program calls it. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import {
  assemble,
  certify,
  type Model,
  type PairResult,
  unwatchedPairs,
  watchedPairs,
} from '../../solver/index.ts';
import { writeModel } from '../../solver/model/write.ts';
import { armscribe } from '../support/armscribe.ts';
import { boxShape, stlBinary } from '../support/meshFiles.ts';
import { shipped } from '../support/models.ts';

const folder = mkdtempSync(join(tmpdir(), 'armscribe-clearance-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, model: Model): string {
  const path = join(folder, name);
  writeFileSync(path, writeModel(model));
  return path;
}

/** A corner of which little is left to touch: arms, tie rod, wheel and tyre in the middle of their travel. */
function bare(changes: Partial<Model> = {}): Model {
  const { coilover: _, ...rest } = shipped('planar-equal-arms');
  return { ...rest, ...changes };
}

interface Printed {
  readonly pairs: readonly (Omit<PairResult, 'names'> & { readonly pair: readonly string[] })[];
  readonly range: { readonly travel: number[]; readonly rack: number[]; readonly note: string };
  readonly notChecked: readonly { readonly pair: readonly string[]; readonly why: string }[];
}

const json = (path: string) => {
  const { status, out, err } = armscribe('clearance', path, '--json');
  expect(err).toBe('');
  return { status, answer: JSON.parse(out) as Printed };
};

describe('clearance', () => {
  test('--json is the solver’s own answer: pairs, range, and what is not checked', () => {
    const model = bare();
    const corner = assemble(model);
    const { answer } = json(file('bare.json', model));
    const wanted = certify(corner, watchedPairs(corner));
    expect(answer.pairs).toEqual(wanted.map(({ names, ...rest }) => ({ pair: names, ...rest })));
    expect(Object.keys(answer.pairs[0]!)).toEqual([
      'pair',
      'least',
      'provenAtLeast',
      'travel',
      'rack',
      'required',
      'verdict',
    ]);
    expect(answer.range.travel).toEqual([-model.travel.droop, model.travel.bump]);
    expect(answer.range.rack).toEqual(model.steering!.limit);
    expect(answer.notChecked).toEqual(
      unwatchedPairs(corner).map(({ names, why }) => ({ pair: names, why })),
    );
    expect(answer.notChecked.length).toBeGreaterThan(0);
  });

  test('exit status 0 when every pair is clear', () => {
    const path = file('clear.json', bare());
    const { status, answer } = json(path);
    expect(answer.pairs.map(({ verdict }) => verdict)).toEqual(answer.pairs.map(() => 'clear'));
    expect(status).toBe(0);
    expect(armscribe('clearance', path).status).toBe(0);
  });

  test('exit status 1 when a pair is tighter than the model wants', () => {
    const path = file('tight.json', bare({ required: { default: 1, 'wheel/lowerArm': 25 } }));
    const { status, answer } = json(path);
    expect(answer.pairs.filter(({ verdict }) => verdict !== 'clear')).toMatchObject([
      { pair: ['lowerArm', 'wheel'], required: 25, verdict: 'tight' },
    ]);
    expect(status).toBe(1);
    const { out } = armscribe('clearance', path);
    expect(out).toMatch(
      /\n {2}lowerArm \/ wheel +24\.\d\d +24\.\d\d +25\.0 .*tight: less than wanted\n/,
    );
  });

  test('exit status 1 when a pair touches, least first, its place and verdict in words', () => {
    const model = shipped('half-ton-long-travel');
    const { answer } = json('models/half-ton-long-travel.json');
    const rod = answer.pairs.find(({ pair }) => pair.join() === 'tieRod,wheel')!;
    expect(rod).toMatchObject({ verdict: 'touch', required: 8, travel: -175, rack: -92 });
    expect(rod.least).toBeLessThan(0);
    expect(rod.least - rod.provenAtLeast).toBeLessThan(0.05);
    const { status, out } = armscribe('clearance', 'models/half-ton-long-travel.json');
    expect(status).toBe(1);
    expect(out.startsWith(`${model.name}\nLeast gaps, mm, over travel -175.0 to 165.0 mm`)).toBe(
      true,
    );
    const [least, proven] = [rod.least.toFixed(2), rod.provenAtLeast.toFixed(2)];
    const line = `${least} +${proven} +8\\.0 +-175\\.0 +-92\\.0 +touches\n`;
    expect(out).toMatch(new RegExp(`\n {2}tieRod / wheel +${line}`));
    const listed = [...out.matchAll(/^ {2}.+? \/ .+? +(-?\d+\.\d\d) +-?\d+\.\d\d /gm)].map(
      ([, x]) => Number(x),
    );
    expect(listed).toHaveLength(answer.pairs.length);
    expect(listed).toEqual([...listed].sort((a, b) => a - b));
    expect(out).toContain('\nNot checked\n  wheel / tyre ');
    expect(out).toContain('carry lives');
    expect(out).not.toMatch(/NaN|undefined|null|Infinity|-0\.0+\b/);
  }, 60_000);

  test('says where the rack stands still because no limit is stated', () => {
    const { steering: _, ...rest } = bare();
    const path = file('no-limit.json', rest);
    const { answer } = json(path);
    expect(answer.range).toMatchObject({
      rack: [0, 0],
      note: expect.stringContaining('rack 0 only'),
    });
    expect(answer.pairs.every(({ rack }) => rack === 0)).toBe(true);
    expect(armscribe('clearance', path).out).toContain('and rack 0 (');
  });

  test('takes meshes from beside the model', () => {
    const [x, y, z] = bare().tieRod.inner;
    writeFileSync(join(folder, 'guard.stl'), stlBinary(boxShape([0, 0, 0], [60, 60, 20])));
    const guard = {
      name: 'guard',
      shape: 'mesh',
      file: 'guard.stl',
      unit: 'mm',
      position: [x - 30, y, z + 60],
    } as const;
    const { answer } = json(file('mesh.json', bare({ obstacles: [guard] })));
    const rod = answer.pairs.find(({ pair }) => pair.join() === 'tieRod,guard')!;
    const radius = (bare().tieRod.diameter ?? 22) / 2;
    expect(rod.least).toBeGreaterThan(10);
    expect(rod.least).toBeLessThan(60 - radius + 1);
    expect(rod.provenAtLeast).toBeLessThanOrEqual(rod.least);
  });

  test('settings that cannot be assembled: exit status 1, and what fails', () => {
    const model = bare();
    const path = file('broken.json', {
      ...model,
      tieRod: { ...model.tieRod, pitch: 1.5, turns: 400 },
    });
    const { status, out } = armscribe('clearance', path, '--json');
    expect({ status, answer: JSON.parse(out) }).toEqual({
      status: 1,
      answer: { pairs: [], reached: false, fails: 'tieRod', lastTravel: 0, lastRack: 0 },
    });
    expect(armscribe('clearance', path)).toMatchObject({
      status: 1,
      out: 'Not reached: tieRod cannot be kept; the last reachable pose on the way is travel 0.00 mm, rack 0.00 mm.\n',
    });
  });
});
