/** Linear least squares with every unknown between two ends: the few unknowns of a corner's hardware. */
import { solveLinear } from './linear.ts';

/** Added to the diagonal, as a part of its greatest entry: of equally good answers the shortest step is taken. */
const SHORTEST = 1e-12;
/** How far a free unknown may be past its end, by rounding. */
const SLACK = 1e-9;

interface Squares {
  /** JᵀJ with a little on its diagonal, and −Jᵀr. */
  readonly matrix: readonly (readonly number[])[];
  readonly pull: readonly number[];
  readonly least: readonly number[];
  readonly most: readonly number[];
}

/** Ways to hold unknowns at their least (−1) or greatest (1) or leave them free (0), all free first; by their number. */
const _holdings: number[][][] = [[[]]];

function holdings(count: number): readonly (readonly number[])[] {
  const known = _holdings[count];
  if (known !== undefined) return known;
  const rest = holdings(count - 1);
  const all = [0, -1, 1].flatMap((way) => rest.map((each) => [...each, way]));
  _holdings[count] = all;
  return all;
}

/** What the step is worth: half of |r + J·d|² less |r|². */
function costOf({ matrix, pull }: Squares, d: readonly number[]): number {
  let cost = 0;
  for (const [a, row] of matrix.entries()) {
    for (const [b, value] of row.entries()) cost += 0.5 * value * d[a]! * d[b]!;
    cost -= pull[a]! * d[a]!;
  }
  return cost;
}

/** The best step with some unknowns held at an end; null where its free ones do not stay between theirs. */
function stepWith(
  { matrix, pull, least, most }: Squares,
  ways: readonly number[],
): number[] | null {
  const d = ways.map((way, i) => (way < 0 ? least[i]! : way > 0 ? most[i]! : 0));
  const free = ways.flatMap((way, i) => (way === 0 ? [i] : []));
  if (free.length === 0) return d;
  const found = solveLinear(
    free.map((a) => free.map((b) => matrix[a]![b]!)),
    free.map((a) => [
      ways.reduce((sum, way, b) => (way === 0 ? sum : sum - matrix[a]![b]! * d[b]!), pull[a]!),
    ]),
  );
  if (found === null) return null;
  for (const [k, i] of free.entries()) {
    const value = found[k]![0]!;
    if (value < least[i]! - SLACK || value > most[i]! + SLACK) return null;
    d[i] = Math.min(Math.max(value, least[i]!), most[i]!);
  }
  return d;
}

/**
 * The d, least ≤ d ≤ most, for which |r + J·d| is least, J by rows. When it lies between all ends it is the one; else every
 * set of unknowns held at an end is tried, at most 3^4, and the best is taken.
 */
export function boxedStep(
  j: readonly (readonly number[])[],
  r: readonly number[],
  least: readonly number[],
  most: readonly number[],
): number[] {
  const matrix = least.map((_, a) =>
    least.map((__, b) => j.reduce((sum, row) => sum + row[a]! * row[b]!, 0)),
  );
  const damping = SHORTEST * Math.max(...matrix.map((row, i) => row[i]!));
  for (const [i, row] of matrix.entries()) row[i] = row[i]! + damping;
  const pull = least.map((_, a) => -j.reduce((sum, row, i) => sum + row[a]! * r[i]!, 0));
  const squares: Squares = { matrix, pull, least, most };
  let best: number[] = least.map((low, i) => Math.min(Math.max(0, low), most[i]!));
  let cost = costOf(squares, best);
  for (const [way, ways] of holdings(least.length).entries()) {
    const d = stepWith(squares, ways);
    if (d === null) continue;
    if (way === 0) return d;
    const next = costOf(squares, d);
    if (next < cost) [best, cost] = [d, next];
  }
  return best;
}
