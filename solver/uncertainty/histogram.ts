/** Drawn values counted in equal bins. */

export interface Histogram {
  /** Ends of the bins all together. */
  readonly from: number;
  readonly to: number;
  /** How many values lie in each bin; those outside are in the first and the last. */
  readonly counts: readonly number[];
}

const BINS = 40;
/** Share of the values on either side that may lie outside: a few far ones would leave the rest in one bin. */
const TAIL = 0.001;

/** Counts ascending values. */
export function histogramOf(sorted: Float64Array): Histogram {
  const counts = new Array<number>(BINS).fill(0);
  const last = sorted.length - 1;
  if (last < 0) return { from: 0, to: 0, counts };
  const from = sorted[Math.floor(TAIL * last)]!;
  const to = sorted[Math.ceil((1 - TAIL) * last)]!;
  for (const value of sorted) {
    const bin = to > from ? Math.floor((BINS * (value - from)) / (to - from)) : 0;
    const place = Math.max(0, Math.min(BINS - 1, bin));
    counts[place] = counts[place]! + 1;
  }
  return { from, to, counts };
}
