/** What is proven of a pair of parts over the whole range of travel × rack. */

/** touch: least ≤ 0; clear: provenAtLeast ≥ required; tight otherwise. */
export type Verdict = 'clear' | 'tight' | 'touch';

/** A pair's certified least gap: provenAtLeast ≤ the true minimum ≤ least. Lengths mm. */
export interface PairResult {
  readonly names: readonly [string, string];
  /** The smallest gap found; negative when the surfaces overlap. */
  readonly least: number;
  /** No reachable pose of the range has a smaller gap than this. */
  readonly provenAtLeast: number;
  /** Where the least was found. */
  readonly travel: number;
  readonly rack: number;
  /** The least gap wanted. */
  readonly required: number;
  readonly verdict: Verdict;
}

/** The verdict on a pair. */
export function verdictOf(least: number, provenAtLeast: number, required: number): Verdict {
  if (least <= 0) return 'touch';
  return provenAtLeast >= required ? 'clear' : 'tight';
}
