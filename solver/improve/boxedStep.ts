/**
 * The least of a quadratic ½ pᵀAp + gᵀp inside a box: A symmetric and positive definite, by an active set that lets go of
 * one bound at a time (C. L. Lawson and R. J. Hanson, Solving Least Squares Problems, 1974, chapter 23, for two-sided bounds).
 */

/** A row-major n × n; all others of length n. `low` ≤ 0 ≤ `high`. */
export interface BoxedQuadratic {
  readonly curvature: Float64Array;
  readonly slope: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Where a number of the step is held: −1 at its low bound, 1 at its high bound, 0 free. */
type Held = Int8Array;

/** A pull off its bound smaller than this, as a part of the greatest slope, is rounding. */
const ROUNDING = 1e-12;

/** Solves A x = b for a positive definite A of size n in place by Cholesky; false where A is not. */
function solvePositive(a: Float64Array, b: Float64Array, n: number): boolean {
  for (let j = 0; j < n; j += 1) {
    for (let i = j; i < n; i += 1) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k += 1) sum -= a[i * n + k]! * a[j * n + k]!;
      if (i > j) a[i * n + j] = sum / a[j * n + j]!;
      else if (sum > 0) a[j * n + j] = Math.sqrt(sum);
      else return false;
    }
  }
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < i; k += 1) b[i] = b[i]! - a[i * n + k]! * b[k]!;
    b[i] = b[i]! / a[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < n; k += 1) b[i] = b[i]! - a[k * n + i]! * b[k]!;
    b[i] = b[i]! / a[i * n + i]!;
  }
  return true;
}

/** The least with the held numbers where they are; null where the quadratic is not positive definite. */
function leastOfFree(
  { curvature, slope }: BoxedQuadratic,
  step: Float64Array,
  held: Held,
): Float64Array | null {
  const n = slope.length;
  const free = [...held.keys()].filter((i) => held[i] === 0);
  const matrix = new Float64Array(free.length * free.length);
  const right = new Float64Array(free.length);
  free.forEach((i, row) => {
    let sum = -slope[i]!;
    for (let k = 0; k < n; k += 1) if (held[k] !== 0) sum -= curvature[i * n + k]! * step[k]!;
    right[row] = sum;
    free.forEach((j, column) => {
      matrix[row * free.length + column] = curvature[i * n + j]!;
    });
  });
  if (!solvePositive(matrix, right, free.length)) return null;
  const least = step.slice();
  free.forEach((i, row) => {
    least[i] = right[row]!;
  });
  return least;
}

/** Goes towards a point until the first bound, which then holds; true where none was met. */
function advance(
  quadratic: BoxedQuadratic,
  step: Float64Array,
  to: Float64Array,
  held: Held,
): boolean {
  const { low, high } = quadratic;
  let share = 1;
  let first = -1;
  for (let i = 0; i < step.length; i += 1) {
    const bound = to[i]! < low[i]! ? low[i]! : high[i]!;
    if (held[i] !== 0 || (to[i]! >= low[i]! && to[i]! <= high[i]!)) continue;
    const room = (bound - step[i]!) / (to[i]! - step[i]!);
    if (room < share || first < 0) [share, first] = [Math.min(share, room), i];
  }
  for (let i = 0; i < step.length; i += 1) {
    if (held[i] === 0) step[i] = step[i]! + share * (to[i]! - step[i]!);
  }
  if (first < 0) return true;
  held[first] = to[first]! < low[first]! ? -1 : 1;
  step[first] = held[first] === -1 ? low[first]! : high[first]!;
  return false;
}

/** Lets go of the bound that is pulled off the hardest; false where none is. */
function letGo({ curvature, slope }: BoxedQuadratic, step: Float64Array, held: Held): boolean {
  const n = slope.length;
  let hardest = ROUNDING * slope.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
  let loose = -1;
  for (let i = 0; i < n; i += 1) {
    if (held[i] === 0) continue;
    let rise = slope[i]!;
    for (let k = 0; k < n; k += 1) rise += curvature[i * n + k]! * step[k]!;
    const pull = held[i]! * rise;
    if (pull > hardest) [hardest, loose] = [pull, i];
  }
  if (loose < 0) return false;
  held[loose] = 0;
  return true;
}

/** The step to the least inside the box; null where the quadratic is not positive definite. */
export function boxedStep(quadratic: BoxedQuadratic): Float64Array | null {
  const { slope, low, high } = quadratic;
  const n = slope.length;
  const step = new Float64Array(n);
  const held: Held = new Int8Array(n);
  for (let i = 0; i < n; i += 1) {
    if (low[i] === 0 && slope[i]! > 0) held[i] = -1;
    else if (high[i] === 0 && slope[i]! < 0) held[i] = 1;
    if (low[i] === 0 && high[i] === 0) held[i] = -1;
  }
  for (let turn = 0; turn < 10 * (n + 1); turn += 1) {
    const least = leastOfFree(quadratic, step, held);
    if (least === null) return null;
    if (advance(quadratic, step, least, held) && !letGo(quadratic, step, held)) return step;
  }
  return step;
}
