/**
 * Bounded least squares against published problems: J. J. Moré, B. S. Garbow, K. E. Hillstrom, "Testing Unconstrained
 * Optimization Software", ACM TOMS 7 (1981), and W. Hock, K. Schittkowski, "Test Examples for Nonlinear Programming Codes"
 * (1981). Starts and minima as printed there, from memory.
 */

import fc from 'fast-check';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import * as numeric from 'numeric';
import { describe, expect, it } from 'vitest';
import { boxedStep } from '../../solver/improve/boxedStep.ts';
import { boundedLeastSquares, type Solved } from '../../solver/improve/leastSquares.ts';
import { allSteps } from '../../solver/index.ts';

type Residuals = (x: readonly number[]) => number[];

interface Published {
  readonly name: string;
  readonly residuals: Residuals;
  readonly start: readonly number[];
  /** The sum of squares at the minimum, and where it is. */
  readonly least: number;
  readonly at?: readonly number[];
  readonly low?: readonly number[];
  readonly high?: readonly number[];
}

const rosenbrock: Residuals = ([a, b]) => [10 * (b! - a! * a!), 1 - a!];

const HS2_A = Math.sqrt(598 / 1200);
const HS2_X = 2 * HS2_A * Math.cos(Math.acos(1 / (400 * HS2_A ** 3)) / 3);

const BARD = [
  0.14, 0.18, 0.22, 0.25, 0.29, 0.32, 0.35, 0.39, 0.37, 0.58, 0.73, 0.96, 1.34, 2.1, 4.39,
];

const KOWALIK_Y = [
  0.1957, 0.1947, 0.1735, 0.16, 0.0844, 0.0627, 0.0456, 0.0342, 0.0323, 0.0235, 0.0246,
];
const KOWALIK_U = [4, 2, 1, 0.5, 0.25, 0.167, 0.125, 0.1, 0.0833, 0.0714, 0.0625];

const PUBLISHED: readonly Published[] = [
  { name: 'Rosenbrock (MGH 1)', residuals: rosenbrock, start: [-1.2, 1], least: 0, at: [1, 1] },
  {
    name: 'Freudenstein and Roth (MGH 2), the local minimum',
    residuals: ([a, b]) => [
      -13 + a! + ((5 - b!) * b! - 2) * b!,
      -29 + a! + ((b! + 1) * b! - 14) * b!,
    ],
    start: [0.5, -2],
    least: 48.9842,
    at: [11.41278, -0.89681],
  },
  {
    name: 'Powell badly scaled (MGH 3)',
    residuals: ([a, b]) => [1e4 * a! * b! - 1, Math.exp(-a!) + Math.exp(-b!) - 1.0001],
    start: [0, 1],
    least: 0,
    at: [1.098e-5, 9.106],
  },
  {
    name: 'Brown badly scaled (MGH 4)',
    residuals: ([a, b]) => [a! - 1e6, b! - 2e-6, a! * b! - 2],
    start: [1, 1],
    least: 0,
    at: [1e6, 2e-6],
  },
  {
    name: 'Beale (MGH 5)',
    residuals: ([a, b]) => [1.5, 2.25, 2.625].map((y, i) => y - a! * (1 - b! ** (i + 1))),
    start: [1, 1],
    least: 0,
    at: [3, 0.5],
  },
  {
    name: 'helical valley (MGH 7)',
    residuals: ([a, b, c]) => {
      const turn = Math.atan(b! / a!) / (2 * Math.PI) + (a! < 0 ? 0.5 : 0);
      return [10 * (c! - 10 * turn), 10 * (Math.hypot(a!, b!) - 1), c!];
    },
    start: [-1, 0, 0],
    least: 0,
    at: [1, 0, 0],
  },
  {
    name: 'Bard (MGH 8)',
    residuals: ([a, b, c]) =>
      BARD.map((y, i) => {
        const [u, v] = [i + 1, 15 - i];
        return y - (a! + u / (v * b! + Math.min(u, v) * c!));
      }),
    start: [1, 1, 1],
    least: 8.21487e-3,
  },
  {
    name: 'Kowalik and Osborne (MGH 15)',
    residuals: ([a, b, c, d]) =>
      KOWALIK_Y.map((y, i) => {
        const u = KOWALIK_U[i]!;
        return y - (a! * (u * u + u * b!)) / (u * u + u * c! + d!);
      }),
    start: [0.25, 0.39, 0.415, 0.39],
    least: 3.07505e-4,
  },
  {
    name: 'Rosenbrock with its minimum out of bounds (HS 2; started on this side of its other, worse minimum)',
    residuals: rosenbrock,
    start: [2, 1],
    low: [-Infinity, 1.5],
    least: 0.0504261879,
    at: [HS2_X, 1.5],
  },
  {
    name: 'growth of three numbers (HS 25)',
    residuals: ([a, b, c]) =>
      Array.from({ length: 99 }, (_, i) => {
        const u = 25 + (-50 * Math.log(0.01 * (i + 1))) ** (2 / 3);
        return -0.01 * (i + 1) + Math.exp(-((u - b!) ** c!) / a!);
      }),
    start: [60, 24, 1.7],
    low: [0.1, 0, 0],
    high: [100, 25.6, 5],
    least: 0,
    at: [50, 25, 1.5],
  },
  {
    name: 'Wood, with Colville’s bounds (MGH 14, HS 38)',
    residuals: ([a, b, c, d]) => [
      10 * (b! - a! * a!),
      1 - a!,
      Math.sqrt(90) * (d! - c! * c!),
      1 - c!,
      Math.sqrt(10) * (b! + d! - 2),
      (b! - d!) / Math.sqrt(10),
    ],
    start: [-3, -1, -3, -1],
    low: [-10, -10, -10, -10],
    high: [10, 10, 10, 10],
    least: 0,
    at: [1, 1, 1, 1],
  },
];

function solved(
  residuals: Residuals,
  start: readonly number[],
  low: readonly number[] = start.map(() => -Infinity),
  high: readonly number[] = start.map(() => Infinity),
): Solved {
  const problem = {
    low,
    high,
    residuals: (x: readonly number[]) => Float64Array.from(residuals(x)),
  };
  const found = allSteps(
    boundedLeastSquares(problem, start, { mostTurns: 1000, smallestGain: 1e-15 }),
  );
  if (found === null) throw new Error('Nothing at the start');
  return found;
}

function sumOfSquares(values: readonly number[]): number {
  return values.reduce((sum, each) => sum + each * each, 0);
}

describe('published least-squares problems', () => {
  it.each(PUBLISHED)('$name', ({ residuals, start, low, high, least, at }) => {
    const found = solved(residuals, start, low, high);
    const near = least === 0 ? 1e-12 : 1e-5 * least;
    expect(Math.abs(2 * found.cost - least)).toBeLessThan(near);
    at?.forEach((each, i) => {
      expect(Math.abs(found.x[i]! - each)).toBeLessThan(1e-3 * Math.max(Math.abs(each), 1e-3));
    });
  });
});

// Hundredths: doubles drawn over their own range are nearly all of them nearly 0.
const number = fc.integer({ min: -300, max: 300 }).map((each) => each / 100);
const width = fc.integer({ min: 1, max: 300 }).map((each) => each / 100);
const nearlyLinear = fc.record({
  rows: fc.array(fc.tuple(number, number, number, number), { minLength: 6, maxLength: 9 }),
  centre: fc.tuple(number, number, number),
  width: fc.tuple(width, width, width),
});

describe('bounds', () => {
  it('hold exactly, and no number inside them could lower the cost (Karush, Kuhn and Tucker)', () => {
    fc.assert(
      fc.property(nearlyLinear, ({ rows, centre, width }) => {
        const residuals: Residuals = (x) =>
          rows.map((row) => row[0] * x[0]! + row[1] * x[1]! + row[2] * x[2]! + x[0]! ** 3 - row[3]);
        const low = centre.map((each, i) => each - width[i]!);
        const high = centre.map((each, i) => each + width[i]!);
        const found = solved(residuals, centre, low, high);
        expect(found.cost).toBeLessThanOrEqual(sumOfSquares(residuals(centre)) / 2);
        const size = 1 + Math.sqrt(2 * found.cost);
        found.x.forEach((each, i) => {
          expect(each).toBeGreaterThanOrEqual(low[i]!);
          expect(each).toBeLessThanOrEqual(high[i]!);
          const by = (h: number) =>
            sumOfSquares(residuals(found.x.map((one, k) => (k === i ? one + h : one)))) / 2;
          const rise = (by(1e-6) - by(-1e-6)) / 2e-6;
          if (each > low[i]! + 1e-9) expect(rise).toBeLessThan(1e-3 * size * size);
          if (each < high[i]! - 1e-9) expect(rise).toBeGreaterThan(-1e-3 * size * size);
        });
      }),
      { numRuns: 200, seed: 1703 },
    );
  });

  it('of a quadratic are met as trying every set of held numbers finds them', () => {
    const matrix = fc.array(number, { minLength: 9, maxLength: 9 });
    const side = fc.integer({ min: 0, max: 200 }).map((each) => (each < 40 ? 0 : each / 100));
    const sides = fc.array(side, { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(matrix, fc.tuple(number, number, number), sides, (m, slope, room) => {
        const a = [0, 1, 2].map((i) =>
          [0, 1, 2].map((j) =>
            [0, 1, 2].reduce((s, k) => s + m[3 * k + i]! * m[3 * k + j]!, i === j ? 0.1 : 0),
          ),
        );
        const low = room.slice(0, 3).map((each) => -each);
        const high = room.slice(3);
        const value = (p: readonly number[]): number =>
          p.reduce(
            (s, each, i) =>
              s + each * (slope[i]! + a[i]!.reduce((t, one, j) => t + (one * p[j]!) / 2, 0)),
            0,
          );
        const step = boxedStep({
          curvature: Float64Array.from(a.flat()),
          slope: Float64Array.from(slope),
          low: Float64Array.from(low),
          high: Float64Array.from(high),
        })!;
        let least = Infinity;
        for (let code = 0; code < 27; code += 1) {
          const held = [code % 3, Math.floor(code / 3) % 3, Math.floor(code / 9)];
          const free = [0, 1, 2].filter((i) => held[i] === 0);
          const p = held.map((each, i) => (each === 1 ? low[i]! : each === 2 ? high[i]! : 0));
          if (free.length > 0) {
            const right = free.map(
              (i) =>
                -slope[i]! -
                a[i]!.reduce((s, each, j) => s + (held[j] === 0 ? 0 : each * p[j]!), 0),
            );
            const inner = numeric.solve(
              free.map((i) => free.map((j) => a[i]![j]!)),
              right,
            );
            free.forEach((i, k) => {
              p[i] = inner[k]!;
            });
          }
          const isInside = p.every((each, i) => each >= low[i]! - 1e-9 && each <= high[i]! + 1e-9);
          if (isInside) least = Math.min(least, value(p));
        }
        expect(Math.abs(value([...step]) - least)).toBeLessThan(1e-7 * (1 + Math.abs(least)));
      }),
      { numRuns: 300, seed: 1974 },
    );
  });
});

describe('general-purpose libraries', () => {
  const TIMES = Array.from({ length: 20 }, (_, i) => i / 4);
  /** A sum of two decays that nobody measured: invented. */
  const DECAY = TIMES.map(
    (t) => 3 * Math.exp(-0.8 * t) + 1.2 * Math.exp(-0.15 * t) + 0.05 * Math.sin(9 * t),
  );
  const model = (x: readonly number[]) => (t: number) =>
    x[0]! * Math.exp(-x[1]! * t) + x[2]! * Math.exp(-x[3]! * t);
  const residuals: Residuals = (x) => TIMES.map((t, i) => model(x)(t) - DECAY[i]!);
  const start = [2, 1, 1, 0.3];

  it.each([
    { low: [0, 0, 0, 0], high: [10, 10, 10, 10] },
    { low: [0, 0, 0, 0.25], high: [10, 10, 10, 10] },
    { low: [0, 0, 0, 0.05], high: [2.5, 10, 1.5, 10] },
  ])('find no better within bounds (%#)', ({ low, high }) => {
    const ours = solved(residuals, start, low, high);
    const theirs = levenbergMarquardt({ x: TIMES, y: DECAY }, (x) => model(x), {
      initialValues: start,
      minValues: low,
      maxValues: high,
      damping: 1e-2,
      gradientDifference: 1e-6,
      centralDifference: true,
      maxIterations: 500,
      errorTolerance: 1e-14,
      improvementThreshold: 1e-12,
    });
    expect(2 * ours.cost).toBeLessThanOrEqual(theirs.parameterError * (1 + 1e-6));
    // A general minimiser on sin² of free numbers, which cannot leave the bounds either.
    const inside = (free: readonly number[]) =>
      free.map((each, i) => low[i]! + (high[i]! - low[i]!) * Math.sin(each) ** 2);
    const first = start.map((each, i) => {
      const share = (Math.min(high[i]!, Math.max(low[i]!, each)) - low[i]!) / (high[i]! - low[i]!);
      return Math.asin(Math.sqrt(Math.min(0.999, Math.max(0.001, share))));
    });
    const general = numeric.uncmin(
      (free: number[]) => sumOfSquares(residuals(inside(free))),
      first,
    );
    expect(2 * ours.cost).toBeLessThanOrEqual(general.f * (1 + 1e-6));
    expect(general.f).toBeLessThan(2 * ours.cost * 1.01);
  });
});
