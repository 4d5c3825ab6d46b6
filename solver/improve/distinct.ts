/** Which of the places that searches came to are answers of their own: good, and far enough from each other. */
import type { Moving } from './moving.ts';
import type { Candidate } from './search.ts';

/** Two answers differ where some number differs by this share of its bounds. */
const APART = 0.08;
/** Costs are alike within this share of the best one's distance from the present design. */
export const ALIKE = 0.01;
/** An answer further than this share of that distance behind the best is none. */
const GOOD = 0.35;

/** The greatest difference of any number, as a share of its bounds. */
export function apart({ low, high }: Moving, x: readonly number[], y: readonly number[]): number {
  return x.reduce((most, each, i) => {
    const width = high[i]! - low[i]!;
    return width > 0 ? Math.max(most, Math.abs(each - y[i]!) / width) : most;
  }, 0);
}

/**
 * Distinct good candidates, the best first; of those that cost alike the one that moves least. `cost` is the present
 * design's, in the candidates' own measure (half the sum of squares).
 */
export function distinctOf(
  candidates: readonly Candidate[],
  moving: Moving,
  cost: number,
): readonly Candidate[] {
  const best = Math.min(...candidates.map((each) => each.cost));
  const step = Math.max(ALIKE * (cost - best), 1e-12);
  const rank = (each: Candidate): number => Math.round((each.cost - best) / step);
  const moved = (each: Candidate): number => apart(moving, each.x, moving.present);
  const sorted = candidates
    .filter((each) => each.cost < cost && each.cost <= best + GOOD * (cost - best))
    .sort((a, b) => rank(a) - rank(b) || moved(a) - moved(b) || a.start - b.start);
  const kept: Candidate[] = [];
  for (const each of sorted) {
    if (kept.every((other) => apart(moving, each.x, other.x) > APART)) kept.push(each);
  }
  return kept;
}
