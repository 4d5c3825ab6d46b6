/** Which cells hold no reachable pose at all. */
import { createPose, type Pose, solvePose } from '../linkage/solve.ts';
import type { Cell, CellTree } from './cells.ts';

/** Half-size up to which five rays speak for a cell, mm. */
const LARGEST = 12;

const _pose: Pose = createPose();

/**
 * How far before the place its straight path from (0, 0) ends, mm; negative where it is reached. Poses beyond the end of
 * a path are out of reach.
 */
function shortfall({ corner }: CellTree, travel: number, rack: number): number {
  if (solvePose(corner.linkage, _pose, travel, rack) === 'reached') return -1;
  return Math.hypot(travel - _pose.lastTravel, rack - _pose.lastRack);
}

/**
 * True for a small cell whose centre's and corners' paths all end before the cell, by more than its own size: a rule on
 * the safe side, since reach changes little from ray to ray, not a proof.
 */
export function isOutOfReach(tree: CellTree, cell: Cell): boolean {
  const { travel, rack, half, isReached } = cell;
  if (isReached || Math.max(half.travel, half.rack) > LARGEST) return false;
  const size = 2 * Math.hypot(half.travel, half.rack);
  const known = cell.tracks.get(OUT_OF_REACH);
  if (known !== undefined) return known !== null;
  const isOut = [
    [0, 0],
    [-1, -1],
    [-1, 1],
    [1, -1],
    [1, 1],
  ].every(
    ([a = 0, b = 0]) => shortfall(tree, travel + a * half.travel, rack + b * half.rack) > 2 * size,
  );
  cell.tracks.set(OUT_OF_REACH, isOut ? NOTHING : null);
  return isOut;
}

const OUT_OF_REACH = -1;
const NOTHING = new Float64Array(0);
