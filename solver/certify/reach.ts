/** Which cells hold no reachable pose at all. */
import { Slot } from '../linkage/slots.ts';
import { createPose, type Pose, solvePose } from '../linkage/solve.ts';
import type { Cell, CellTree } from './cells.ts';

/** Half-size up to which five rays speak for a cell, mm. */
const LARGEST = 12;

const CORNERS: readonly (readonly [number, number])[] = [
  [-1, -1],
  [-1, 1],
  [1, -1],
  [1, 1],
];

const _pose: Pose = createPose();

/**
 * How far before the place its straight path from (0, 0) ends, mm; negative where it is reached. Poses beyond the end of
 * a path are out of reach.
 */
function shortfall({ corner, shortfalls }: CellTree, travel: number, rack: number): number {
  const key = `${travel},${rack}`;
  const known = shortfalls.get(key);
  if (known !== undefined) return known;
  const outcome = solvePose(corner.linkage, _pose, travel, rack);
  const short = Math.hypot(travel - _pose.lastTravel, rack - _pose.lastRack);
  shortfalls.set(key, outcome === 'reached' ? -1 : short);
  return outcome === 'reached' ? -1 : short;
}

/**
 * True for a small cell whose centre's and corners' paths all end before the cell, by more than its own size: a rule on
 * the safe side, since reach changes little from ray to ray, not a proof.
 */
export function isOutOfReach(tree: CellTree, cell: Cell): boolean {
  const { travel, rack, half, isReached, pose } = cell;
  if (isReached || Math.max(half.travel, half.rack) > LARGEST) return false;
  const known = cell.tracks.get(OUT_OF_REACH);
  if (known !== undefined) return known !== null;
  const enough = 4 * Math.hypot(half.travel, half.rack);
  const isOut =
    Math.hypot(travel - pose[Slot.travel]!, rack - pose[Slot.rack]!) > enough &&
    CORNERS.every(
      ([a, b]) => shortfall(tree, travel + a * half.travel, rack + b * half.rack) > enough,
    );
  cell.tracks.set(OUT_OF_REACH, isOut ? NOTHING : null);
  return isOut;
}

const OUT_OF_REACH = -1;
const NOTHING = new Float64Array(0);
