/**
 * Points with their ± and readings with theirs, taken together in the linear case: where the points most probably are,
 * and how well anything is known then. All unknowns count in their own ±, so that before the readings they are
 * independent with variance 1 (Bayes' rule for normal variables; the same as weighted least squares with one more
 * equation x_i = 0 ± 1 for every unknown).
 */
import { backwards, factorise, forwards } from '../math/cholesky.ts';

/** Factor of A·Aᵀ + 1, A the readings' slopes over their ±: as large as there are readings, however many points. */
export interface Posterior {
  readonly rows: number;
  readonly columns: number;
  readonly slopes: Float64Array;
  readonly factor: Float64Array;
}

/** Makes it from A, `rows` × `columns`, row-major; null where A is no longer made of usable numbers. */
export function posteriorOf(slopes: Float64Array, rows: number, columns: number): Posterior | null {
  const factor = new Float64Array(rows * rows);
  for (let i = 0; i < rows; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = i === j ? 1 : 0;
      for (let k = 0; k < columns; k += 1)
        sum += slopes[i * columns + k]! * slopes[j * columns + k]!;
      factor[i * rows + j] = sum;
    }
  }
  return factorise(factor, rows) ? { rows, columns, slopes, factor } : null;
}

function across({ rows, columns, slopes }: Posterior, x: Float64Array): Float64Array {
  const out = new Float64Array(rows);
  for (let i = 0; i < rows; i += 1) {
    for (let k = 0; k < columns; k += 1) out[i] = out[i]! + slopes[i * columns + k]! * x[k]!;
  }
  return out;
}

/** The most probable x where the readings lie `off` (expected − read, over their ±) at `x`: Aᵀ(A·Aᵀ + 1)⁻¹(A·x − off). */
export function mostProbableStep(
  posterior: Posterior,
  x: Float64Array,
  off: Float64Array,
): Float64Array {
  const { rows, columns, slopes, factor } = posterior;
  const weights = across(posterior, x);
  for (let i = 0; i < rows; i += 1) weights[i] = weights[i]! - off[i]!;
  forwards(factor, rows, weights);
  backwards(factor, rows, weights);
  const out = new Float64Array(columns);
  for (let i = 0; i < rows; i += 1) {
    for (let k = 0; k < columns; k += 1) out[k] = out[k]! + slopes[i * columns + k]! * weights[i]!;
  }
  return out;
}

/** Standard uncertainty of what has these slopes over the unknowns, before any reading. */
export function plusMinusBefore(slopes: Float64Array): number {
  return Math.hypot(...slopes);
}

/** The same with the readings: gᵀg − |L⁻¹·A·g|², never below 0. */
export function plusMinusAfter(posterior: Posterior, slopes: Float64Array): number {
  const told = across(posterior, slopes);
  forwards(posterior.factor, posterior.rows, told);
  const before = plusMinusBefore(slopes);
  return Math.sqrt(Math.max(0, before ** 2 - Math.hypot(...told) ** 2));
}

/** The same over more unknowns, of which the readings say nothing: column k becomes column `places[k]` of `columns`. */
export function widened(
  posterior: Posterior,
  places: readonly number[],
  columns: number,
): Posterior {
  const { rows, slopes } = posterior;
  const wide = new Float64Array(rows * columns);
  for (let row = 0; row < rows; row += 1) {
    places.forEach((place, k) => {
      wide[row * columns + place] = slopes[row * places.length + k]!;
    });
  }
  return { ...posterior, columns, slopes: wide };
}
