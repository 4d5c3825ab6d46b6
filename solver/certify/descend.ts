/** The smallest gap that can be found by trying: an upper bound of the true minimum, and where it is. */
import { type Corner, solve } from '../corner.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import { placeParts } from '../measures/parts.ts';
import type { CertifiedRange } from './range.ts';

/** A reachable place and its gap, mm. */
export interface Found {
  readonly travel: number;
  readonly rack: number;
  readonly gap: number;
}

/** The gap of the pair in a pose with its parts placed, mm. */
export type GapIn = (pose: Pose) => number;

/** Steps at which a search ends, mm: the last one, and those of the searches that it is the best of. */
const LAST_STEP = 1e-4;
const ROUGH_STEP = 0.1;
const SEED_ROWS = 9;
const SEED_COLUMNS = 7;
/** Low nodes of the coarse grid that are searched from. */
const MOST_STARTS = 2;
const RING: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
];

/** The gap at a place, or, out of reach, at the last reachable place of the straight path to it. */
export function findGap(
  corner: Corner,
  pose: Pose,
  gapIn: GapIn,
  travel: number,
  rack: number,
): Found {
  solve(corner, pose, travel, rack);
  placeParts(corner, pose.data);
  return { travel: pose.lastTravel, rack: pose.lastRack, gap: gapIn(pose) };
}

function share([low, high]: readonly [number, number], i: number, count: number): number {
  return low + ((high - low) * i) / (count - 1);
}

function clamp(value: number, [low, high]: readonly [number, number]): number {
  return Math.min(high, Math.max(low, value));
}

/** Tries the places about the best one so far, moves to a better one or halves the steps, until they are tiny. */
export function descend(
  corner: Corner,
  pose: Pose,
  gapIn: GapIn,
  range: CertifiedRange,
  start: Found,
  steps: { readonly travel: number; readonly rack: number },
  last: number = LAST_STEP,
): Found {
  let best = start;
  let { travel: up, rack: across } = steps;
  while (Math.max(up, across) > last) {
    const centre = best;
    for (const [a, b] of RING) {
      const travel = clamp(centre.travel + a * up, range.travel);
      const rack = clamp(centre.rack + b * across, range.rack);
      if (travel === centre.travel && rack === centre.rack) continue;
      const tried = findGap(corner, pose, gapIn, travel, rack);
      if (tried.gap < best.gap) best = tried;
    }
    if (best === centre) {
      up /= 2;
      across /= 2;
    }
  }
  return best;
}

/** Solves the coarse grid's poses into `seeds`, if that is not done already. */
function seedPoses(corner: Corner, range: CertifiedRange, seeds: Pose[]): readonly Pose[] {
  if (seeds.length > 0) return seeds;
  const add = (travel: number, rack: number): void => {
    const pose = createPose();
    solve(corner, pose, travel, rack);
    placeParts(corner, pose.data);
    seeds.push(pose);
  };
  add(clamp(0, range.travel), clamp(0, range.rack));
  const [left, right] = range.rack;
  const columns = left === right ? 1 : SEED_COLUMNS;
  for (let row = 0; row < SEED_ROWS; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const rack = columns === 1 ? left : share(range.rack, column, columns);
      add(share(range.travel, row, SEED_ROWS), rack);
    }
  }
  return seeds;
}

/**
 * A coarse grid over the range, then a descent from its lowest nodes, and a finer one from the lowest place found. A
 * list of seeds handed from one search of the same range to the next spares the grid's solving.
 */
export function findLeast(
  corner: Corner,
  pose: Pose,
  gapIn: GapIn,
  range: CertifiedRange,
  seeds: Pose[] = [],
): Found {
  const nodes = seedPoses(corner, range, seeds).map((seed) => ({
    travel: seed.lastTravel,
    rack: seed.lastRack,
    gap: gapIn(seed),
  }));
  nodes.sort((a, b) => a.gap - b.gap);
  const steps = {
    travel: (range.travel[1] - range.travel[0]) / (2 * (SEED_ROWS - 1)),
    rack: (range.rack[1] - range.rack[0]) / (2 * (SEED_COLUMNS - 1)),
  };
  const found = nodes
    .slice(0, MOST_STARTS)
    .map((start) => descend(corner, pose, gapIn, range, start, steps, ROUGH_STEP))
    .reduce((best, next) => (next.gap < best.gap ? next : best));
  const fine = { travel: ROUGH_STEP, rack: steps.rack > 0 ? ROUGH_STEP : 0 };
  return descend(corner, pose, gapIn, range, found, fine);
}
