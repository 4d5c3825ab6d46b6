/** The line of poses along a ray, as cells to be halved on demand, and how far the linkage reaches along it. */
import {
  type Cell,
  type CellTree,
  cellAt,
  createCellTree,
  halves,
  WHOLE,
} from '../certify/cells.ts';
import type { Corner } from '../corner.ts';
import { assembleLinkage } from '../linkage/assemble.ts';
import type { Failure } from '../linkage/linkage.ts';
import { createPose, type Pose, solvePose } from '../linkage/solve.ts';
import { rackRange, rideTravel } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { steerSign } from './margins.ts';
import type { Ray } from './results.ts';

export interface Line {
  readonly corner: Corner;
  readonly ray: Ray;
  readonly along: 'travel' | 'rack';
  /** +1 where the ray runs to greater travel or rack. */
  readonly sign: 1 | -1;
  readonly start: number;
  /** Where the search ends: an overshoot of the range. */
  readonly farthest: number;
  readonly rangeEnd: number | null;
  readonly tree: CellTree;
  readonly pose: Pose;
}

/** Limits that act outside of the range are looked for up to this share of it. */
export const OVERSHOOT = 1.5;
/** How far a lock ray goes where the model states no steering limit, mm of rack. Common practice, no source: racks move 60 to 100 mm. */
const RACK_WITHOUT_LIMIT = 100;
/** Half-size, mm, below which cells of which nothing is proven are taken by samples. */
export const SAMPLED_HALF = 0.125;

interface Ends {
  readonly start: number;
  readonly farthest: number;
  readonly rangeEnd: number | null;
  readonly sign: 1 | -1;
}

function travelEnds({ model }: Corner, isBump: boolean, share: number): Ends {
  const { bump, droop } = model.travel;
  const start = rideTravel(model.travel);
  const rangeEnd = isBump ? bump : -droop;
  const sign = isBump ? 1 : -1;
  const overshoot = share * rangeEnd;
  // A vehicle may ride at or beyond the end of its range.
  const least = start + sign * (share - 1) * Math.max(bump, droop);
  const farthest = isBump ? Math.max(overshoot, least) : Math.min(overshoot, least);
  return { start, farthest, rangeEnd, sign };
}

function rackEnds(corner: Corner, isLeft: boolean, share: number): Ends {
  const sign: 1 | -1 = steerSign(corner) > 0 === isLeft ? 1 : -1;
  const { steering } = corner.model;
  if (steering?.limit === undefined) {
    return { start: 0, farthest: sign * RACK_WITHOUT_LIMIT, rangeEnd: null, sign };
  }
  const [least, most] = rackRange(steering);
  const rangeEnd = sign > 0 ? most : least;
  const reach = Math.max(Math.abs(least), Math.abs(most));
  return { start: 0, farthest: rangeEnd + sign * (share - 1) * reach, rangeEnd, sign };
}

/**
 * The same corner with room for quick solutions beyond the range: its linkage is proven free of singular poses over a
 * wider box, where that holds. Nothing else differs.
 */
function widened(corner: Corner, share: number): Corner {
  const { model } = corner;
  const { bump, droop } = model.travel;
  const [least, most] = rackRange(model.steering);
  const wide: Model = {
    ...model,
    travel: { ...model.travel, bump: share * bump, droop: share * droop },
    steering: { ...model.steering, limit: [share * least, share * most] },
  };
  return { ...corner, linkage: assembleLinkage(wide) };
}

/** The line of a ray up to a share of the model's range; nothing is solved yet. */
export function createLine(corner: Corner, ray: Ray, share: number = OVERSHOOT): Line {
  const along = ray.way === 'bump' || ray.way === 'droop' ? 'travel' : 'rack';
  const ends =
    along === 'travel'
      ? travelEnds(corner, ray.way === 'bump', share)
      : rackEnds(corner, ray.way === 'left', share);
  const span: readonly [number, number] =
    ends.sign > 0 ? [ends.start, ends.farthest] : [ends.farthest, ends.start];
  const held: readonly [number, number] = [ray.held, ray.held];
  const range = along === 'travel' ? { travel: span, rack: held } : { travel: held, rack: span };
  const roomy = share > 1 ? widened(corner, share) : corner;
  return {
    corner: roomy,
    ray,
    along,
    ...ends,
    tree: createCellTree(roomy, range),
    pose: createPose(),
  };
}

/** The whole line as one cell. */
export function wholeLine(line: Line): Cell {
  return cellAt(line.tree, WHOLE);
}

/** Centre and half-size of a cell along the line. */
export function middleOf(line: Line, cell: Cell): number {
  return line.along === 'travel' ? cell.travel : cell.rack;
}

export function halfOf(line: Line, cell: Cell): number {
  return cell.half[line.along];
}

/** A cell's halves in the order in which the line comes to them. */
export function halvesInOrder(line: Line, cell: Cell): readonly [Cell, Cell] {
  const [low, high] = halves(line.tree, cell, line.along);
  return line.sign > 0 ? [low, high] : [high, low];
}

/** Solves the pose at a place of the line into `line.pose`. */
export function solveAt(line: Line, at: number): boolean {
  const { corner, ray, along, pose } = line;
  const outcome =
    along === 'travel'
      ? solvePose(corner.linkage, pose, at, ray.held)
      : solvePose(corner.linkage, pose, ray.held, at);
  return outcome === 'reached';
}

/** Where the linkage's reach ends along a line. */
export interface LineReach {
  /** The last reachable place, to 1e-6; the line's own end where it is reached throughout. */
  readonly end: number;
  readonly fails: Failure | null;
  /** Up to where that is proven; beyond, the line could only be sampled, at most 0.25 mm apart. */
  readonly provenTo: number;
}

const REACH_TOLERANCE = 1e-7;

function failureAt(line: Line, at: number): Failure | null {
  solveAt(line, at);
  const { outcome } = line.pose;
  return outcome === 'reached' ? null : outcome;
}

/** Narrows the end of reach between a reached place and one that is not. */
function narrowReach(line: Line, reached: number, beyond: number, provenTo: number): LineReach {
  let inside = reached;
  let outside = beyond;
  while (Math.abs(outside - inside) > REACH_TOLERANCE) {
    const middle = (inside + outside) / 2;
    if (solveAt(line, middle)) inside = middle;
    else outside = middle;
  }
  return { end: inside, fails: failureAt(line, outside), provenTo };
}

/** Follows the line cell by cell: an enclosed cell is reached as a whole; what is not is halved, and sampled at last. */
export function reachOf(line: Line): LineReach {
  if (!solveAt(line, line.start)) {
    return { end: line.start, fails: failureAt(line, line.start), provenTo: line.start };
  }
  let last = line.start;
  let provenTo = line.start;
  const open: Cell[] = [wholeLine(line)];
  for (let cell = open.pop(); cell !== undefined; cell = open.pop()) {
    const middle = middleOf(line, cell);
    const half = halfOf(line, cell);
    const far = middle + line.sign * half;
    if (cell.motion !== null) {
      provenTo = provenTo === last ? far : provenTo;
      last = far;
    } else if (half > SAMPLED_HALF) {
      const [first, second] = halvesInOrder(line, cell);
      open.push(second, first);
    } else if (!cell.isReached) return narrowReach(line, last, middle, provenTo);
    else if (!solveAt(line, far)) return narrowReach(line, middle, far, provenTo);
    else last = far;
  }
  return { end: line.farthest, fails: null, provenTo };
}
