/** Mean, standard deviation and coverage interval of drawn values. */

export function meanOf(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}

/** Standard deviation with n − 1. */
export function deviationOf(values: Float64Array, mean: number): number {
  let sum = 0;
  for (const value of values) sum += (value - mean) ** 2;
  return Math.sqrt(sum / Math.max(1, values.length - 1));
}

/** The value with the share `p` of the ascending values at or below it. */
function quantile(sorted: Float64Array, p: number): number {
  const at = p * (sorted.length - 1);
  const below = Math.floor(at);
  const next = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return sorted[below]! + (at - below) * (next - sorted[below]!);
}

/** Ends of the probabilistically symmetric interval that holds the share `coverage` of the ascending values (JCGM 101:2008, 7.7.2). */
export function coverageInterval(
  sorted: Float64Array,
  coverage: number,
): readonly [number, number] {
  return [quantile(sorted, (1 - coverage) / 2), quantile(sorted, (1 + coverage) / 2)];
}
