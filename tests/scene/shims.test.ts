/** Shims as drawn: as thick together as they are, as many as they are, on the side they push the bracket away from. */
import { Matrix4 } from 'three';
import { describe, expect, test } from 'vitest';
import type { Shim } from '../../solver/index.ts';
import { addShims, shimCount } from '../../src/scene/geometry/shims.ts';
import { createSolid } from '../../src/scene/geometry/solid.ts';

const REACH = 45;
/** Local x is the way to the body, inboard; local z along the pivots. */
const INBOARD = new Matrix4().set(0, 0, 1, 100, -1, 0, 0, 470, 0, 1, 0, 200, 0, 0, 0, 1);

/** Least and greatest distance of the plates from the pivot, towards the body, mm. */
function extent(shim: Shim): [number, number] {
  const solid = createSolid();
  addShims(solid, INBOARD, shim, REACH, 60, 80);
  const across = solid.positions.filter((_, i) => i % 3 === 1).map((y) => 470 - y);
  return [Math.min(...across), Math.max(...across)];
}

describe('shims on a pivot', () => {
  test('that push it outboard lie between its bracket and the body, as thick as stated', () => {
    const [near, far] = extent({ thickness: 4.5, step: 1.5 });
    expect(near).toBeCloseTo(REACH + 3, 9);
    expect(far - near).toBeCloseTo(4.5, 9);
  });

  test('that push it inboard lie on the other side', () => {
    const [near, far] = extent({ thickness: 3, direction: [0, -1, 0] });
    expect(far).toBeCloseTo(REACH - 3, 9);
    expect(far - near).toBeCloseTo(3, 9);
  });

  test('are as many as there are', () => {
    expect(shimCount({})).toBe(0);
    expect(shimCount({ thickness: 4.5, step: 1.5 })).toBe(3);
    expect(shimCount({ thickness: 2 })).toBe(1);
    expect(shimCount({ thickness: 0.5, step: 1.5 })).toBe(1);
  });
});
