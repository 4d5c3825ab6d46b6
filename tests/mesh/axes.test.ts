import { describe, expect, it } from 'vitest';
import { AXES, axesAcross, boxIn, rotationOf } from '../../src/mesh/axes.ts';
import { placingOf, toVehicle } from '../../src/mesh/placing.ts';

const PAIRS = AXES.flatMap((forward) => axesAcross(forward).map((up) => [forward, up] as const));

function pointOn(axis: string): Float64Array {
  const sign = axis.startsWith('-') ? -1 : 1;
  return Float64Array.from(['x', 'y', 'z'], (letter) => (axis.endsWith(letter) ? sign : 0));
}

describe('which way a file points', () => {
  it.each(PAIRS)('%s forward and %s up: the turns bring them there', (forward, up) => {
    const rotation = rotationOf(forward, up);
    const placing = placingOf({ name: '', shape: 'mesh', file: '', rotation });
    const turned = (axis: string): number[] => {
      const point = pointOn(axis);
      toVehicle(placing, point, point);
      return [...point].map((value) => value + 0);
    };
    expect(turned(forward)).toEqual([1, 0, 0]);
    expect(turned(up)).toEqual([0, 0, 1]);
    for (const angle of rotation) expect(Math.abs(angle) % 90).toBe(0);
  });

  it('are all twenty-four, and none turns where the file stands as the vehicle does', () => {
    expect(PAIRS).toHaveLength(24);
    expect(rotationOf('x', 'z')).toEqual([0, 0, 0]);
  });

  it('sizes a file in mm, its sides where they will be', () => {
    // 1 forward along y, 2 up along x: the vehicle's length is the file's y.
    const box = { min: [0, 0, 0], max: [2, 1, 3] } as const;
    const { min, max } = boxIn(box, 25.4, 'y', 'x');
    expect(max.map((value, i) => value - min[i as 0 | 1 | 2])).toEqual([
      25.4, 76.19999999999999, 50.8,
    ]);
  });
});
