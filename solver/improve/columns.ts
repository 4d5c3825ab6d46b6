/** Derivatives of residuals, a column a number: as the problem states them, or by differences inside its bounds. */
import type { LeastSquares } from './leastSquares.ts';

/** Width of a difference, as a part of the number and at the least. */
const REACH = 1e-5;

function shifted(x: readonly number[], at: number, by: number): readonly number[] {
  return x.map((each, i) => (i === at ? each + by : each));
}

/** Difference of two sets of residuals over a width; null where either is missing. */
function slopeOf(
  high: Float64Array | null,
  low: Float64Array | null,
  width: number,
): Float64Array | null {
  if (high === null || low === null) return null;
  return high.map((each, i) => (each - low[i]!) / width);
}

/** One column by differences inside the bounds: central, or to one side where the other is out of bounds or missing. */
function columnBy(problem: LeastSquares, x: readonly number[], at: number): Float64Array | null {
  const { low, high, residuals } = problem;
  const reach = problem.reach ?? REACH * Math.max(1, Math.abs(x[at]!));
  const up = Math.min(reach, high[at]! - x[at]!);
  const down = Math.min(reach, x[at]! - low[at]!);
  const above = up > 0 ? residuals(shifted(x, at, up)) : null;
  const below = down > 0 ? residuals(shifted(x, at, -down)) : null;
  if (above !== null && below !== null && up === down) return slopeOf(above, below, up + down);
  const here = residuals(x);
  if (above !== null && up >= down) return slopeOf(above, here, up);
  if (below !== null) return slopeOf(here, below, down);
  return above === null && here !== null ? new Float64Array(here.length) : slopeOf(above, here, up);
}

/** All columns at a place; null where the residuals are missing on both sides of a number. */
export function columnsOf(
  problem: LeastSquares,
  x: readonly number[],
): readonly Float64Array[] | null {
  if (problem.columns !== undefined) return problem.columns(x);
  const columns = x.map((_, at) => columnBy(problem, x, at));
  return columns.some((column) => column === null) ? null : (columns as Float64Array[]);
}
