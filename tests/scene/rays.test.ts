import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alongLine, meetsDrum, onPlane } from '../../src/scene/handles/rays.ts';

const number = fc.double({ min: -1000, max: 1000, noNaN: true });
const triple = fc.tuple(number, number, number);
const direction = triple
  .filter((v) => Math.hypot(...v) > 1)
  .map((v) => v.map((part) => part / Math.hypot(...v)));

function dot(a: readonly number[], b: readonly number[]): number {
  return a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
}

function along(from: ArrayLike<number>, way: readonly number[], t: number): number[] {
  return way.map((part, i) => from[i]! + t * part);
}

function rayTo(target: readonly number[], way: readonly number[], far: number): Float64Array {
  return Float64Array.from([...along(target, way, -far), ...way]);
}

describe('alongLine', () => {
  it('reads off the line the very point the ray goes through', () => {
    fc.assert(
      fc.property(triple, direction, direction, number, (point, line, way, t) => {
        fc.pre(1 - dot(line, way) ** 2 > 0.05);
        const ray = rayTo(along(point, line, t), way, 3000);
        expect(alongLine(ray, point, line)).toBeCloseTo(t, 6);
      }),
    );
  });

  it('gives the nearest point of the line when the ray passes beside it', () => {
    // A ray along x at y = 30, z = 12 passes the z axis at its nearest at z = 12.
    const ray = Float64Array.of(-500, 30, 12, 1, 0, 0);
    expect(alongLine(ray, [0, 0, 0], [0, 0, 1])).toBeCloseTo(12, 12);
  });

  it('says that a line along the view cannot be read', () => {
    expect(alongLine(Float64Array.of(0, 0, 900, 0, 0, -1), [1, 2, 3], [0, 0, 1])).toBeNaN();
  });
});

describe('onPlane', () => {
  it('finds the point of the plane the ray goes through', () => {
    fc.assert(
      fc.property(triple, direction, direction, (point, normal, way) => {
        fc.pre(Math.abs(dot(normal, way)) > 0.2);
        const out = new Float64Array(3);
        expect(onPlane(rayTo(point, way, 2000), point, normal, out)).toBe(true);
        point.forEach((part, i) => {
          expect(out[i]).toBeCloseTo(part, 6);
        });
      }),
    );
  });

  it('refuses a plane seen edge-on', () => {
    const out = new Float64Array(3);
    expect(onPlane(Float64Array.of(0, 0, 0, 1, 0, 0), [5, 5, 5], [0, 0, 1], out)).toBe(false);
  });
});

describe('meetsDrum', () => {
  const axis = [0, 1, 0];
  const centre = [10, 800, -5];
  const hit = (ray: number[]): number[] | null => {
    const out = new Float64Array(3);
    return meetsDrum(Float64Array.from(ray), centre, axis, 130, 400, out) ? [...out] : null;
  };

  it('meets the tread first from the front, and the side wall from the side', () => {
    expect(hit([2000, 800, -5, -1, 0, 0])).toEqual([410, 800, -5]);
    expect(hit([10, 2000, 95, 0, -1, 0])).toEqual([10, 930, 95]);
    expect(hit([10, -2000, 95, 0, 1, 0])).toEqual([10, 670, 95]);
  });

  it('misses beside, above and behind', () => {
    expect(hit([2000, 931, -5, -1, 0, 0])).toBeNull();
    expect(hit([2000, 800, 396, -1, 0, 0])).toBeNull();
    expect(hit([2000, 800, -5, 1, 0, 0])).toBeNull();
  });
});
