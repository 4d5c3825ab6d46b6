/** Contours against fields whose level lines are known exactly. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Contour, contoursOf, type Grid } from '../../solver/contours.ts';

function gridOf(
  xs: readonly number[],
  ys: readonly number[],
  field: (x: number, y: number) => number,
): Grid {
  return {
    xs: Float64Array.from(xs),
    ys: Float64Array.from(ys),
    values: Float64Array.from(ys.flatMap((y) => xs.map((x) => field(x, y)))),
  };
}

const even = (least: number, most: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => least + ((most - least) * i) / (count - 1));

const pairs = ({ points }: Contour): [number, number][] =>
  Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i]!, points[2 * i + 1]!]);

describe('contoursOf(grid, level)', () => {
  test('lies exactly on the line of a linear field, on any axes, from edge to edge', () => {
    const slope = fc.double({ min: -3, max: 3, noNaN: true });
    const steps = fc.array(fc.double({ min: 0.1, max: 5, noNaN: true }), {
      minLength: 3,
      maxLength: 9,
    });
    fc.assert(
      fc.property(slope, slope, steps, steps, (a, b, across, up) => {
        const axis = (list: readonly number[]) =>
          list.map((_, i) => list.slice(0, i).reduce((x, y) => x + y, -6));
        fc.pre(Math.abs(a) + Math.abs(b) > 0.1);
        const grid = gridOf(axis(across), axis(up), (x, y) => a * x + b * y);
        const least = Math.min(...grid.values);
        const most = Math.max(...grid.values);
        const level = least + 0.37 * (most - least);
        const lines = contoursOf(grid, level);
        expect(lines).toHaveLength(1);
        expect(lines[0]!.closed).toBe(false);
        for (const [x, y] of pairs(lines[0]!)) expect(a * x + b * y).toBeCloseTo(level, 9);
        const isOnEdge = ([x, y]: [number, number]) =>
          x === grid.xs[0] || x === grid.xs.at(-1) || y === grid.ys[0] || y === grid.ys.at(-1);
        expect(isOnEdge(pairs(lines[0]!)[0]!)).toBe(true);
        expect(isOnEdge(pairs(lines[0]!).at(-1)!)).toBe(true);
      }),
    );
  });

  test('is one closed ring about a circle, nearer with the square of the spacing', () => {
    const worst = (count: number): number => {
      const axis = even(-10, 10, count);
      const lines = contoursOf(
        gridOf(axis, axis, (x, y) => Math.hypot(x - 0.3, y + 0.2)),
        6,
      );
      expect(lines).toHaveLength(1);
      expect(lines[0]!.closed).toBe(true);
      return Math.max(
        ...pairs(lines[0]!).map(([x, y]) => Math.abs(Math.hypot(x - 0.3, y + 0.2) - 6)),
      );
    };
    // Linear interpolation over a chord h of a circle of radius 6 is off by at most h²/(8·6).
    expect(worst(41)).toBeLessThan(0.5 ** 2 / 48 + 1e-9);
    expect(worst(161)).toBeLessThan(0.125 ** 2 / 48 + 1e-9);
  });

  test('goes through a saddle as its middle says, and never crosses itself', () => {
    const saddle = gridOf([0, 1], [0, 1], (x, y) => (x === y ? 1 : 0));
    // Middle 0.5 is above 0.4: the high corners are joined, so each line cuts off a low corner.
    const above = contoursOf(saddle, 0.4).map(pairs);
    expect(above).toHaveLength(2);
    for (const line of above) {
      const [x, y] = [line[0]![0] + line[1]![0], line[0]![1] + line[1]![1]];
      expect(Math.abs(x / 2 - y / 2)).toBeGreaterThan(0.5);
    }
    const below = contoursOf(saddle, 0.6).map(pairs);
    expect(below).toHaveLength(2);
    for (const line of below) {
      const [x, y] = [line[0]![0] + line[1]![0], line[0]![1] + line[1]![1]];
      expect(Math.abs(x / 2 - y / 2)).toBeLessThan(0.5);
    }
  });

  test('every point lies between its edge’s two values, whatever the field', () => {
    const values = fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 36, maxLength: 36 });
    fc.assert(
      fc.property(values, (list) => {
        const axis = even(0, 5, 6);
        const grid = gridOf(axis, axis, (x, y) => list[y * 6 + x]!);
        const lines = contoursOf(grid, 0.5);
        const crossed = lines.reduce((sum, line) => sum + line.points.length / 2, 0);
        let edges = 0;
        for (let row = 0; row < 6; row += 1) {
          for (let column = 0; column < 6; column += 1) {
            const here = list[row * 6 + column]! > 0.5;
            if (column < 5 && list[row * 6 + column + 1]! > 0.5 !== here) edges += 1;
            if (row < 5 && list[row * 6 + column + 6]! > 0.5 !== here) edges += 1;
          }
        }
        // Each crossed edge is a point of exactly one line.
        expect(crossed).toBe(edges);
      }),
    );
  });

  test('has no line where a corner is not a number, or the level is never met', () => {
    const axis = even(0, 4, 5);
    expect(
      contoursOf(
        gridOf(axis, axis, () => Number.NaN),
        0,
      ),
    ).toEqual([]);
    expect(
      contoursOf(
        gridOf(axis, axis, (x) => x),
        9,
      ),
    ).toEqual([]);
    expect(
      contoursOf(
        gridOf([1], axis, (_, y) => y),
        2,
      ),
    ).toEqual([]);
  });
});
