/** Linear least squares with every unknown between two ends: the few unknowns of a corner's hardware. */
import { solveLinear } from './linear.ts';

/** Added to the diagonal, as a part of its greatest entry: of equally good answers the shortest step is taken. */
const SHORTEST = 1e-12;
/** Slack of the optimality conditions, as a part of the gradient at no step. */
const SLACK = 1e-9;

/** Every way to hold unknowns at their least (−1) or greatest (1) or leave them free (0). */
function holdings(count: number): number[][] {
  if (count === 0) return [[]];
  return holdings(count - 1).flatMap((rest) => [0, -1, 1].map((way) => [...rest, way]));
}

/**
 * The d, least ≤ d ≤ most, for which |r + J·d| is least, J by rows: every set of unknowns held at an end is tried, at most
 * 3^4, and the best of those whose free unknowns stay between their ends is taken.
 */
export function boxedStep(
  j: readonly (readonly number[])[],
  r: readonly number[],
  least: readonly number[],
  most: readonly number[],
): number[] {
  const count = least.length;
  const product = (a: number, b: number) => j.reduce((sum, row) => sum + row[a]! * row[b]!, 0);
  const squares = least.map((_, a) => least.map((__, b) => product(a, b)));
  const damping = SHORTEST * Math.max(0, ...squares.map((row, i) => row[i]!));
  const pull = least.map((_, a) => -j.reduce((sum, row, i) => sum + row[a]! * r[i]!, 0));
  const cost = (d: readonly number[]) => {
    const fit = j.reduce((sum, row, i) => {
      const value = row.reduce((total, slope, k) => total + slope * d[k]!, r[i]!);
      return sum + value * value;
    }, 0);
    return fit + damping * d.reduce((sum, value) => sum + value * value, 0);
  };
  let best = least.map((low, i) => Math.min(Math.max(0, low), most[i]!));
  for (const ways of holdings(count)) {
    const d = ways.map((way, i) => (way < 0 ? least[i]! : way > 0 ? most[i]! : 0));
    const free = ways.flatMap((way, i) => (way === 0 ? [i] : []));
    if (free.length > 0) {
      const matrix = free.map((a) => free.map((b) => squares[a]![b]! + (a === b ? damping : 0)));
      const side = free.map((a) => [
        pull[a]! - ways.reduce((sum, way, b) => sum + (way === 0 ? 0 : squares[a]![b]! * d[b]!), 0),
      ]);
      const found = solveLinear(matrix, side);
      if (found === null) continue;
      for (const [k, i] of free.entries()) d[i] = found[k]![0]!;
      const isInside = free.every((i) => d[i]! >= least[i]! - SLACK && d[i]! <= most[i]! + SLACK);
      if (!isInside) continue;
      for (const i of free) d[i] = Math.min(Math.max(d[i]!, least[i]!), most[i]!);
    }
    if (cost(d) < cost(best)) best = d;
  }
  return best;
}
