/** The gap of any watched pair in a pose, with its two nearest points. */
import type { Pose } from '../linkage/solve.ts';
import type { WatchedPair } from './pairs.ts';

/** The answer, refilled by `pairGapInto`; points in vehicle axes, mm. */
export interface PairGap {
  readonly pair: WatchedPair;
  /** Least distance between the surfaces; negative when they overlap, then minus the overlap. */
  gap: number;
  /**
   * Nearest point of each part: of a chain's or line's centreline, of a section's mid-surface (a solid's surface), of a
   * box's or a mesh's surface.
   */
  readonly pointA: Float64Array;
  readonly pointB: Float64Array;
  /** Half the thickness of each part there, mm: its surface lies so far from its point, towards the other. */
  halfA: number;
  halfB: number;
}
export declare function createPairGap(pair: WatchedPair): PairGap;
export declare function pairGapInto(out: PairGap, pose: Pose): void;
