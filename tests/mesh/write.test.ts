import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readMesh } from '../../src/mesh/read/read.ts';
import { writeGlb } from '../../src/mesh/write/glb.ts';
import { writeStl } from '../../src/mesh/write/stl.ts';

/** A tetrahedron, its faces turned outwards; mm. */
const BODY = {
  positions: Float32Array.of(0, 0, 0, 100, 0, 0, 0, 200, 0, 0, 0, 300),
  normals: Float32Array.of(0, 0, -1, 1, 0, 0, 0, 1, 0, 0, 0, 1),
  triangles: Uint32Array.of(0, 2, 1, 0, 1, 3, 1, 2, 3, 0, 3, 2),
};
const PLACES = [...BODY.triangles].flatMap((i) => [...BODY.positions.subarray(3 * i, 3 * i + 3)]);

describe('binary STL', () => {
  const bytes = writeStl(BODY, 'Größe 4×4');
  const view = new DataView(bytes.buffer);

  it('says its unit and axes in its header, in plain letters, and does not look like text', () => {
    const header = String.fromCharCode(...bytes.subarray(0, 80));
    expect(header.trimEnd()).toBe('mm, x forward, y left, z up: Gr??e 4?4');
    expect(header.startsWith('solid')).toBe(false);
    const long = writeStl(BODY, 'x'.repeat(200));
    expect(new DataView(long.buffer).getUint32(80, true)).toBe(4);
  });

  it('holds every triangle as it stands, its normal outwards', () => {
    expect(view.getUint32(80, true)).toBe(4);
    expect(bytes.length).toBe(84 + 4 * 50);
    const normals: number[][] = [];
    const places: number[] = [];
    for (let i = 0; i < 4; i += 1) {
      const at = 84 + 50 * i;
      normals.push([0, 4, 8].map((k) => view.getFloat32(at + k, true)));
      for (let k = 12; k < 48; k += 4) places.push(view.getFloat32(at + k, true));
      expect(view.getUint16(at + 48, true)).toBe(0);
    }
    expect(places).toEqual(PLACES);
    expect(normals[0]!.map((v) => v + 0)).toEqual([0, 0, -1]);
    expect(normals[1]!.map((v) => v + 0)).toEqual([0, -1, 0]);
    // The slanted face x/100 + y/200 + z/300 = 1: its normal is (6, 3, 2)/7.
    expect(normals[2]![0]).toBeCloseTo(6 / 7, 6);
    expect(normals[2]![1]).toBeCloseTo(3 / 7, 6);
    expect(normals[2]![2]).toBeCloseTo(2 / 7, 6);
  });
});

/** What the exporter needs of a page to put its bytes together. */
class PageFileReader {
  result: ArrayBuffer | null = null;
  onloadend: (() => void) | null = null;

  readAsArrayBuffer(blob: Blob): void {
    void blob.arrayBuffer().then((buffer) => {
      this.result = buffer;
      this.onloadend?.();
    });
  }
}

describe('GLB', () => {
  const page = globalThis as { FileReader?: unknown };
  const before = page.FileReader;
  beforeAll(() => {
    page.FileReader = PageFileReader;
  });
  afterAll(() => {
    page.FileReader = before;
  });

  it('is in metres, y up, z forward, and says so with its name', async () => {
    const bytes = await writeGlb(BODY, 'Corner, tyre swept', { roomMillimetres: 12 });
    const view = new DataView(bytes.buffer);
    expect(String.fromCharCode(...bytes.subarray(0, 4))).toBe('glTF');
    expect(view.getUint32(4, true)).toBe(2);
    expect(view.getUint32(8, true)).toBe(bytes.length);
    const length = view.getUint32(12, true);
    const json = JSON.parse(new TextDecoder().decode(bytes.subarray(20, 20 + length))) as {
      nodes: { name: string; extras: object }[];
      accessors: { min?: number[]; max?: number[]; type: string }[];
    };
    expect(json.nodes[0]).toMatchObject({
      name: 'Corner, tyre swept',
      extras: { unit: 'metre', axes: 'x left, y up, z forward', roomMillimetres: 12 },
    });
    const position = json.accessors.find(({ max }) => max !== undefined)!;
    const near = (values: number[]) => values.map((v) => Math.round(1e6 * v) / 1e6);
    expect(near(position.max!)).toEqual([0.2, 0.3, 0.1]);
    expect(near(position.min!)).toEqual([0, 0, 0]);
  });

  it('is read back as it was, facing outwards', async () => {
    const bytes = await writeGlb(BODY, 'corner', {});
    const read = readMesh('corner.glb', bytes);
    if (!read.ok) throw new Error(read.found);
    const { positions, index } = read.mesh;
    expect(index.length).toBe(12);
    const places = [...index].flatMap((i) => [...positions.subarray(3 * i, 3 * i + 3)]);
    const box = (values: number[]) =>
      [0, 1, 2].map((k) => Math.max(...values.filter((_, i) => i % 3 === k)));
    const scale = Math.max(...box(places)) / 0.3;
    expect(scale).toBeGreaterThan(0);
    expect(volumeOf(places)).toBeCloseTo((scale ** 3 * (0.1 * 0.2 * 0.3)) / 6, 6);
  });
});

/** Volume of a list of triangles' corners. */
function volumeOf(places: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < places.length; i += 9) {
    const [a, b, c] = [0, 3, 6].map((k) => places.slice(i + k, i + k + 3)) as [
      number[],
      number[],
      number[],
    ];
    sum +=
      a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) +
      a[1]! * (b[2]! * c[0]! - b[0]! * c[2]!) +
      a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!);
  }
  return sum / 6;
}
