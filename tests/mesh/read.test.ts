import fc from 'fast-check';
import type { BufferGeometry, Object3D } from 'three';
import { Mesh } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { OBJLoader } from 'three/examples/jsm/loaders/OBJLoader.js';
import { PLYLoader } from 'three/examples/jsm/loaders/PLYLoader.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { describe, expect, it } from 'vitest';
import { readMesh } from '../../src/mesh/read/read.ts';
import {
  boxShape,
  glb,
  glbFile,
  glbParts,
  joined,
  obj,
  ply,
  type Shape,
  stlBinary,
  stlText,
} from '../support/meshFiles.ts';

const BOX = boxShape([1, -2, 3.5], [4, 5, 6]);

type Triangle = readonly (readonly number[])[];

/** Triangles as text, each by its corners from the least on, all in order: the same surface reads the same. */
function surface(triangles: readonly Triangle[]): string[] {
  return triangles
    .map((triangle) =>
      triangle
        .map((corner) => corner.map((value) => Math.fround(value).toFixed(4)).join(','))
        .sort()
        .join(' '),
    )
    .sort();
}

function readSurface(name: string, bytes: Uint8Array): string[] {
  const reading = readMesh(name, bytes);
  if (!reading.ok) throw new Error(`${name}: found ${reading.found}, wanted ${reading.wanted}`);
  const { positions, index } = reading.mesh;
  const corner = (i: number) => [...positions.subarray(3 * i, 3 * i + 3)];
  return surface(
    Array.from({ length: index.length / 3 }, (_, i) =>
      [0, 1, 2].map((j) => corner(index[3 * i + j]!)),
    ),
  );
}

/** What a loader of three made of a file: an independent reading of the same bytes. */
function loadedSurface(geometries: readonly BufferGeometry[], turn = (p: number[]) => p): string[] {
  return surface(
    geometries.flatMap((geometry) => {
      const plain = geometry.index === null ? geometry : geometry.toNonIndexed();
      const places = [...plain.getAttribute('position').array];
      return Array.from({ length: places.length / 9 }, (_, i) =>
        [0, 3, 6].map((j) => turn(places.slice(9 * i + j, 9 * i + j + 3))),
      );
    }),
  );
}

function geometriesOf(object: Object3D): BufferGeometry[] {
  object.updateMatrixWorld(true);
  const found: BufferGeometry[] = [];
  object.traverse((part) => {
    if (part instanceof Mesh) {
      found.push((part.geometry as BufferGeometry).clone().applyMatrix4(part.matrixWorld));
    }
  });
  return found;
}

const SHIFTED = [
  { children: [1, 2], translation: [10, 0, 0], scale: [1, 2, 1] },
  { mesh: 0, rotation: [0, Math.SQRT1_2, 0, Math.SQRT1_2] },
  { mesh: 0, matrix: [1, 0, 0, 0, 0, -1, 0, 0, 0, 0, 1, 0, 0, 30, 0, 1] },
];

describe('a file is read as the loaders of three read it:', () => {
  const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

  it.each([
    ['binary STL', stlBinary(BOX)],
    ['binary STL whose header begins as a text does', stlBinary(BOX, 'solid part')],
    ['text STL', stlText(BOX)],
  ])('%s', (_, bytes) => {
    expect(readSurface('a.stl', bytes)).toEqual(
      loadedSurface([new STLLoader().parse(bytes.buffer)]),
    );
  });

  it.each([
    ['text', ply(BOX, 'ascii')],
    ['binary, low byte first', ply(BOX, 'binary_little_endian')],
    ['binary, high byte first', ply(BOX, 'binary_big_endian')],
    ['binary, long numbers', ply(BOX, 'binary_big_endian', true)],
  ])('PLY, %s', (_, bytes) => {
    expect(readSurface('a.ply', bytes)).toEqual(
      loadedSurface([new PLYLoader().parse(bytes.buffer)]),
    );
  });

  it.each([
    ['from the first vertex on', obj(BOX)],
    ['from the last vertex back', obj(BOX, true)],
  ])('OBJ, %s', (_, bytes) => {
    expect(readSurface('a.obj', bytes)).toEqual(
      loadedSurface(geometriesOf(new OBJLoader().parse(text(bytes)))),
    );
  });

  it.each([
    ['one body', glb(BOX)],
    ['two bodies under moved, turned, stretched and mirrored nodes', glb(BOX, SHIFTED)],
  ])('GLB, %s, its axes turned into the vehicle’s', async (_, bytes) => {
    const { scene } = await new GLTFLoader().parseAsync(bytes.buffer, '');
    expect(readSurface('a.glb', bytes)).toEqual(
      loadedSurface(geometriesOf(scene), ([x, y, z]) => [z!, x!, y!]),
    );
  });
});

describe('what those loaders leave out or let pass', () => {
  const hollow: Shape = {
    // A face in the form of an L: a fan from its first corner would lie outside of it.
    vertices: [
      [3, 1, 0],
      [1, 1, 0],
      [1, 3, 0],
      [0, 3, 0],
      [0, 0, 0],
      [3, 0, 0],
    ],
    faces: [[0, 1, 2, 3, 4, 5]],
  };

  function areaOf(name: string, bytes: Uint8Array): number {
    const reading = readMesh(name, bytes);
    if (!reading.ok) throw new Error(reading.found);
    const { positions, index } = reading.mesh;
    let sum = 0;
    for (let i = 0; i < index.length; i += 3) {
      const [a, b, c] = [0, 1, 2].map((j) => 3 * index[i + j]!) as [number, number, number];
      const x = (from: number, to: number, k: number) => positions[to + k]! - positions[from + k]!;
      sum += Math.abs(x(a, b, 0) * x(a, c, 1) - x(a, b, 1) * x(a, c, 0)) / 2;
    }
    return sum;
  }

  it('faces of many corners, hollow ones too, are covered once', () => {
    expect(areaOf('l.ply', ply(hollow, 'ascii'))).toBeCloseTo(5, 6);
    expect(areaOf('l.obj', obj(hollow))).toBeCloseTo(5, 6);
  });

  it('strips and fans', () => {
    const square: Shape = {
      vertices: [
        [0, 0, 0],
        [1, 0, 0],
        [0, 1, 0],
        [1, 1, 0],
      ],
      faces: [[0, 1, 2]],
    };
    const { json, body } = glbParts(square);
    const as = (mode: number) => {
      const meshes = [{ primitives: [{ attributes: { POSITION: 0 }, mode }] }];
      return readSurface('a.glb', glbFile({ ...json, meshes }, body));
    };
    expect(as(5)).toHaveLength(2);
    expect(as(6)).toHaveLength(2);
    expect(as(5)).not.toEqual(as(6));
  });

  it('a text STL in capitals, with DOS line ends, several solids and a mark before it', () => {
    const text = new TextDecoder().decode(stlText(BOX)).toUpperCase().replaceAll('\n', '\r\n');
    const bytes = new TextEncoder().encode(`\ufeff${text}${text}`);
    expect(readSurface('a.stl', bytes)).toHaveLength(24);
  });

  it('an OBJ whose lines are joined', () => {
    const text = new TextDecoder().decode(obj(BOX)).replaceAll(/f (\S+) (\S+) /g, 'f $1 \\\n $2 ');
    expect(readSurface('a.obj', new TextEncoder().encode(text))).toEqual(
      readSurface('b.obj', obj(BOX)),
    );
  });
});

const bytes = (text: string) => new TextEncoder().encode(text);
const cut = (whole: Uint8Array, by: number) => whole.slice(0, whole.length - by);
const withByte = (whole: Uint8Array, place: number, byte: number) =>
  whole.map((value, at) => (at === place ? byte : value));
const changed = (whole: Uint8Array, from: string, to: string) =>
  bytes(new TextDecoder().decode(whole).replace(from, to));

/** A GLB file of the box with something of its JSON replaced. */
function damagedGlb(change: object): Uint8Array {
  const { json, body } = glbParts(BOX);
  return glbFile({ ...json, ...change }, body);
}

const FLAT: Shape = {
  vertices: [
    [0, 0, 0],
    [1, 1, 1],
    [2, 2, 2],
  ],
  faces: [[0, 1, 2]],
};

describe('a file that cannot be used is refused in words:', () => {
  it.each<[string, string, Uint8Array, string]>([
    ['empty', 'a.stl', new Uint8Array(), 'an empty file'],
    ['another kind', 'a.step', bytes('ISO-10303-21;'), 'another kind of file'],
    ['too large', 'a.stl', new Uint8Array(200_000_001), 'a file of 200 MB'],
    ['STL cut off', 'a.stl', cut(stlBinary(BOX), 60), 'it says 12 triangles and holds 10'],
    ['STL of rubbish', 'a.stl', bytes('rubbish'), 'no STL, in neither of its two forms'],
    ['text STL cut off', 'a.stl', cut(stlText(BOX), 60), 'a file cut off'],
    ['text STL without end', 'a.stl', cut(stlText(BOX), 14), 'a file cut off after triangle 12'],
    ['text STL with a wrong word', 'a.stl', changed(stlText(BOX), 'endloop', 'oops'), '"oops" in'],
    [
      'text STL with a wrong number',
      'a.stl',
      changed(stlText(BOX), 'vertex 1 ', 'vertex nan '),
      'a corner without three numbers near line 4 (triangle 1)',
    ],
    ['STL without triangles', 'a.stl', bytes('solid a\nendsolid a\n'), 'no triangles'],
    [
      'STL of infinite size',
      'a.stl',
      stlBinary(boxShape([0, 0, 0], [1, 1, Infinity])),
      'a coordinate that is not a number',
    ],
    ['no area', 'a.stl', stlBinary(FLAT), 'only triangles without any area'],
    ['PLY cut off', 'a.ply', cut(ply(BOX, 'binary_big_endian'), 3), 'a file cut off'],
    ['text PLY cut off', 'a.ply', cut(ply(BOX, 'ascii'), 3), 'a file cut off'],
    ['PLY without header', 'a.ply', bytes('ply\nformat ascii 1.0\n'), 'no PLY header'],
    [
      'points without faces',
      'a.ply',
      ply({ vertices: BOX.vertices, faces: [] }, 'ascii'),
      'points without faces (a point cloud)',
    ],
    [
      'PLY with a corner too many',
      'a.ply',
      ply({ ...BOX, faces: [[0, 1, 8]] }, 'ascii'),
      'the corner 8 in face 1',
    ],
    ['PLY with a word', 'a.ply', changed(ply(BOX, 'ascii'), '3.5', 'x'), '"x"'],
    ['OBJ without faces', 'a.obj', bytes('v 0 0 0\n'), 'no triangles'],
    ['OBJ without anything', 'a.obj', bytes('hello\n'), 'no vertices'],
    ['OBJ naming nothing', 'a.obj', bytes('v 0 0 0\nf 1 2 3\n'), 'the corner "2" in line 2'],
    ['OBJ with a short vertex', 'a.obj', bytes('v 0 0\n'), 'a vertex without three numbers'],
    ['OBJ with curves', 'a.obj', bytes('v 0 0 0\ncstype bspline\n'), 'a curved surface'],
    ['GLB cut off', 'a.glb', cut(glb(BOX), 8), 'a file cut off'],
    ['GLB with nothing in it', 'a.glb', cut(glb(BOX), glb(BOX).length - 8), 'a file cut off'],
    ['GLB without JSON', 'a.glb', withByte(glb(BOX), 20, 0x5b), 'contents that are not readable'],
    [
      'GLB with numbers elsewhere',
      'a.glb',
      damagedGlb({ buffers: [{ uri: 'a.bin' }] }),
      'numbers in a file beside it',
    ],
    [
      'GLB that needs an extension',
      'a.glb',
      damagedGlb({ extensionsRequired: ['KHR_draco_mesh_compression'] }),
      'the extension "KHR_draco_mesh_compression", which the file needs',
    ],
    ['GLB in a circle', 'a.glb', damagedGlb({ nodes: [{ children: [0] }] }), 'nodes that lead'],
    ['GLB that bends', 'a.glb', damagedGlb({ nodes: [{ mesh: 0, skin: 0 }] }), 'a body that bends'],
    ['GLB with a list for a number', 'a.glb', damagedGlb({ nodes: 5 }), 'nodes that lead'],
    [
      'GLB with a number for a list',
      'a.glb',
      damagedGlb({ meshes: 5, scenes: [{ nodes: 0 }] }),
      'contents of another form',
    ],
    [
      'GLB longer than itself',
      'a.glb',
      damagedGlb({
        bufferViews: [{ byteLength: 1e6 }, { byteLength: 1e6 }],
        accessors: [{ bufferView: 0, componentType: 5126, count: 5000, type: 'VEC3' }],
      }),
      'a list of numbers longer than the file',
    ],
    ['GLB of nothing', 'a.glb', damagedGlb({ scenes: [{ nodes: [] }] }), 'no triangles'],
  ])('%s', (_, name, file, found) => {
    const reading = readMesh(name, file);
    expect(reading).toMatchObject({ ok: false });
    if (!reading.ok) expect(reading.found).toContain(found);
  });

  it('whatever the bytes are', () => {
    const whole = [stlText(BOX), stlBinary(BOX), ply(BOX, 'ascii'), obj(BOX), glb(BOX)];
    const damaged = fc
      .tuple(
        fc.constantFrom('a.stl', 'a.ply', 'a.obj', 'a.glb'),
        fc.constantFrom(...whole),
        fc.array(fc.tuple(fc.nat(2000), fc.nat(255)), { maxLength: 4 }),
        fc.nat(200),
      )
      .map(([name, file, changes, by]) => {
        const copy = joined([file]);
        for (const [at, value] of changes) copy[at % copy.length] = value;
        return { name, file: cut(copy, by % copy.length) };
      });
    fc.assert(
      fc.property(damaged, ({ name, file }) => {
        const reading = readMesh(name, file);
        expect(reading.ok || `${reading.found}${reading.wanted}`.length > 0).toBe(true);
      }),
      { seed: 3, numRuns: 600 },
    );
  });
});
