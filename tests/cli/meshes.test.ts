import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Model, type Obstacle, parseModel, writeModel } from '../../solver/index.ts';
import { loadModel } from '../../src/cli/files.ts';
import { loadMeshes } from '../../src/cli/meshes.ts';
import { BadInput } from '../../src/cli/refusal.ts';
import { fingerprint } from '../../src/mesh/fingerprint.ts';
import { armscribe } from '../support/armscribe.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { boxShape, glb, stlBinary } from '../support/meshFiles.ts';

const BOX = boxShape([0, 0, 0], [1, 2, 3]);
type Mesh = Extract<Obstacle, { shape: 'mesh' }>;

let folder = '';
const at = (name: string) => join(folder, name);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'armscribe-meshes-'));
  mkdirSync(at('parts'));
  writeFileSync(at('box.stl'), stlBinary(BOX));
  writeFileSync(at('parts/box.glb'), glb(BOX));
  writeFileSync(at('short.stl'), stlBinary(BOX).slice(0, -60));
});
afterAll(() => rmSync(folder, { recursive: true }));

function modelWith(mesh: Partial<Mesh> & { readonly file: string }): Model {
  const obstacles = [{ name: 'part', shape: 'mesh' as const, ...mesh }];
  return { ...FULL_MODEL, obstacles, required: {}, tolerance: {} };
}

function boundsOf(mesh: Partial<Mesh> & { readonly file: string }): number[] {
  const surface = loadMeshes(modelWith(mesh), at('model.json')).get('part')!;
  return [...surface.bounds.min, ...surface.bounds.max];
}

function lineOf(mesh: Partial<Mesh> & { readonly file: string }): string {
  try {
    loadMeshes(modelWith(mesh), at('model.json'));
  } catch (thrown) {
    if (thrown instanceof BadInput) return thrown.lines.join('\n').replace(folder, '…');
    throw thrown;
  }
  return 'taken';
}

describe('mesh files beside a model', () => {
  it('are read in the unit it states, and placed', () => {
    expect(boundsOf({ file: 'box.stl', unit: 'cm' })).toEqual([0, 0, 0, 10, 20, 30]);
    expect(boundsOf({ file: 'box.stl', unit: 'mm', position: [5, 0, -1] })).toEqual([
      5, 0, -1, 6, 2, 2,
    ]);
  });

  it('are in metres, y up and z forward, where they are GLB', () => {
    expect(boundsOf({ file: 'parts/box.glb' })).toEqual([0, 0, 0, 3000, 1000, 2000]);
    expect(boundsOf({ file: 'parts\\box.glb', unit: 'mm' })).toEqual([0, 0, 0, 3, 1, 2]);
  });

  it('are those that were meant', () => {
    const content = fingerprint(stlBinary(BOX));
    expect(lineOf({ file: 'box.stl', unit: 'mm', content })).toBe('taken');
    expect(lineOf({ file: 'box.stl', unit: 'mm', content: '0000000000000000' })).toBe(
      `…/model.json: obstacles[0].content: found 0000000000000000, but the file beside the model is ${content}, wanted the file that was meant, or no "content" to take any`,
    );
  });

  it.each<[string, Partial<Mesh> & { readonly file: string }, string]>([
    [
      'no unit',
      { file: 'box.stl' },
      'obstacles[0].unit: found nothing, and STL files state no unit, wanted "mm" or "cm" or "m" or "inch"',
    ],
    [
      'no file',
      { file: 'gone.stl', unit: 'mm' },
      'obstacles[0].file: found "gone.stl", no such file, wanted a mesh file beside the model',
    ],
    [
      'a folder',
      { file: 'parts', unit: 'mm' },
      'obstacles[0].file: found "parts", a folder, wanted a mesh file beside the model',
    ],
    [
      'a broken file',
      { file: 'short.stl', unit: 'mm' },
      'obstacles[0].file: found "short.stl", a file cut off or damaged: it says 12 triangles and holds 10, wanted a whole STL file',
    ],
    [
      'a wrong unit',
      { file: 'box.stl', unit: 'm', position: [99_000, 0, 0] },
      'obstacles[0].unit: found a mesh that reaches to 100 m, wanted less than 100 m: another unit',
    ],
  ])('are refused in one line: %s', (_, mesh, line) => {
    expect(lineOf(mesh)).toBe(`…/model.json: ${line}`);
  });

  it('of the shipped models are all there', () => {
    const file = 'models/rear-steer-saloon.json';
    const surfaces = loadMeshes(loadModel(file), file);
    expect([...surfaces.keys()]).toEqual(['inner guard']);
    expect(surfaces.get('inner guard')!.triangles).toBe(24);
  });

  it('are none for a model without', () => {
    const read = parseModel(
      JSON.stringify({ ...FULL_MODEL, obstacles: [], required: {}, tolerance: {} }),
      'm',
    );
    expect(read.ok && loadMeshes(read.model, 'm').size).toBe(0);
  });
});

describe('armscribe clearance', () => {
  it('refuses a mesh without a unit by one line and status 2', () => {
    writeFileSync(at('unitless.json'), writeModel(modelWith({ file: 'box.stl' })));
    const { status, out, err } = armscribe('clearance', at('unitless.json'), '--json');
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toBe(
      `${at('unitless.json')}: obstacles[0].unit: found nothing, and STL files state no unit, wanted "mm" or "cm" or "m" or "inch"\n`,
    );
  });

  it('tells the gaps of a mesh as of any obstacle', () => {
    const mesh = { file: 'box.stl', unit: 'cm', position: [0, 650, 600] } as const;
    writeFileSync(at('mesh.json'), writeModel(modelWith(mesh)));
    const { out } = armscribe('clearance', at('mesh.json'), '--json');
    const { pairs } = JSON.parse(out) as {
      pairs: { pair: string[]; least: number; provenAtLeast: number }[];
    };
    const own = pairs.filter(({ pair }) => pair.includes('part'));
    expect(own.map(({ pair }) => pair.join('/'))).toContain('tyre/part');
    for (const { least, provenAtLeast } of own) expect(provenAtLeast).toBeLessThanOrEqual(least);
  });
});

describe('a fingerprint', () => {
  it('differs where a single byte does, wherever it is', () => {
    const bytes = Uint8Array.from({ length: 23 }, (_, i) => i);
    const prints = new Set([fingerprint(bytes), fingerprint(bytes.slice(1))]);
    for (let i = 0; i < bytes.length; i += 1) {
      prints.add(fingerprint(bytes.map((value, j) => (i === j ? value ^ 1 : value))));
    }
    expect(prints.size).toBe(bytes.length + 2);
    for (const print of prints) expect(print).toMatch(/^[\da-f]{16}$/);
  });

  it('is the same for the same bytes', () => {
    expect(fingerprint(stlBinary(BOX))).toBe(fingerprint(stlBinary(BOX)));
  });
});
