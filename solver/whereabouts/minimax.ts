/**
 * The least of the greatest size of linear functions of two numbers over a rectangle: a convex, piecewise linear problem,
 * solved by golden sections nested in each other.
 */

/** n functions: value + along·x + aside·y. */
export interface Planes {
  readonly value: Float64Array;
  readonly along: Float64Array;
  readonly aside: Float64Array;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const CUTS = 40;

/** Where a convex function of one number is least, between two ends. */
function leastOf(value: (x: number) => number, low: number, high: number): number {
  if (!(high > low)) return low;
  let [a, b] = [low, high];
  let [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
  let [vc, vd] = [value(c), value(d)];
  for (let cut = 0; cut < CUTS; cut += 1) {
    if (vc <= vd) {
      [b, d, vd] = [d, c, vc];
      c = b - GOLDEN * (b - a);
      vc = value(c);
    } else {
      [a, c, vc] = [c, d, vd];
      d = a + GOLDEN * (b - a);
      vd = value(d);
    }
  }
  // The ends are places too: a least value on the edge is met there and not only nearly.
  return [low, high, (a + b) / 2].reduce((best, x) => (value(x) < value(best) ? x : best));
}

/** [x, y] of the least greatest size within [low, high] of each, `pull` added per mm from [toX, toY]: ties go to the nearest. */
export function leastGreatest(
  { value, along, aside }: Planes,
  xs: readonly [number, number],
  ys: readonly [number, number],
  [toX, toY]: readonly [number, number],
  pull: number,
): readonly [number, number] {
  const at = (x: number, y: number): number => {
    let greatest = 0;
    for (let i = 0; i < value.length; i += 1) {
      greatest = Math.max(greatest, Math.abs(value[i]! + along[i]! * x + aside[i]! * y));
    }
    return greatest + pull * Math.hypot(x - toX, y - toY);
  };
  const bestY = (x: number): number => leastOf((y) => at(x, y), ys[0], ys[1]);
  const x = leastOf((candidate) => at(candidate, bestY(candidate)), xs[0], xs[1]);
  return [x, bestY(x)];
}
