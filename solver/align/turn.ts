/** What a setting costs: the turn of a cam, and next to nothing for shims. */
import type { Link } from './stance.ts';

/** Shims break ties only: a millimetre counts as a millionth of a radian. */
const TURN_PER_SHIM_MM = 1e-6;

/** What a link's share adds to the total turn, rad: |asin s| of a cam. */
export function turnOfLink({ fitting, reach }: Link, share: number): number {
  if (fitting === null) return 0;
  if (fitting.kind === 'shim') return TURN_PER_SHIM_MM * reach * share;
  return Math.asin(Math.min(1, Math.abs(share)));
}

/** Its derivative with respect to the share; `sign` tells on which side of 0 a cam is. */
export function turnSlope({ fitting, reach }: Link, share: number, sign: number): number {
  if (fitting === null) return 0;
  if (fitting.kind === 'shim') return TURN_PER_SHIM_MM * reach;
  return sign / Math.sqrt(Math.max(0, 1 - share * share));
}

/** Total turn of shares in the order of `Stance.arms`, rad. */
export function totalTurn(arms: readonly Link[], shares: readonly number[]): number {
  return arms.reduce((sum, link, i) => sum + turnOfLink(link, shares[i]!), 0);
}
