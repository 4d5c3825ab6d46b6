/**
 * All poses of the sweep as a binary tree of cells of travel × rack. In each cell the wheel centre and the hub axis are
 * given as linear functions of the place in the cell, and the most they stray from those is enclosed: so a leaf stands
 * for every pose in it, not for samples of them.
 */
import type { CertifiedRange } from '../certify/range.ts';
import { type Corner, solve } from '../corner.ts';
import { poseRates } from '../linkage/rates.ts';
import { createPose } from '../linkage/solve.ts';
import {
  addCell,
  Cell,
  findReached,
  type Growing,
  isAlongTravel,
  type Place,
  strayOf,
} from './cell.ts';

export interface PoseTree {
  readonly cells: Float64Array;
  /** Numbers of a cell's two halves; −1 where the cell is a leaf. */
  readonly firsts: Int32Array;
  readonly seconds: Int32Array;
  /** The root's number, or −1 where no pose of the range can be reached. */
  readonly root: number;
  /** The most any point of the tyre strays from a leaf's linear motion, mm. */
  readonly stray: number;
}

/** Half-sizes, mm, up to which a cell at the edge of what can be reached is a leaf, whatever is enclosed. */
const SMALLEST = 2;
/** Half-sizes, mm, up to which a cell is given up when neither its middle nor a corner can be reached. */
const LOST = 12;

/** Makes a leaf of the cell, and returns its number. */
function addLeaf(tree: Growing, at: Place, stray: number, isLinear: boolean): number {
  const number = addCell(tree, at, stray, isLinear);
  tree.leaves.push(number);
  return number;
}

/** Grows the cell and all below it, pausing at each cell; returns its number, or −1 where no pose of it is reached. */
function* grow(tree: Growing, at: Place): Generator<undefined, number> {
  yield;
  const [travel, rack, halfTravel, halfRack] = at;
  const { corner, pose } = tree;
  let stray = Number.POSITIVE_INFINITY;
  let alongTravel = halfTravel >= halfRack;
  if (solve(corner, pose, travel, rack) === 'reached') {
    stray = strayOf(tree, halfTravel, halfRack);
    alongTravel = isAlongTravel(tree, halfTravel, halfRack);
  }
  if (stray <= tree.allowed) return addLeaf(tree, at, stray, true);
  const size = Math.max(halfTravel, halfRack);
  if (size > LOST) return yield* halve(tree, at, alongTravel);
  const isReached = Number.isFinite(stray) || pose.outcome === 'reached';
  if (!isReached && !findReached(tree, at)) {
    tree.breaks += 1;
    return -1;
  }
  if (size > SMALLEST) return yield* halve(tree, at, alongTravel);
  tree.breaks += 1;
  // The enclosure fails where the linkage is about to lock: taken as linear, or as the one pose there is.
  return addLeaf(tree, at, 0, isReached);
}

/**
 * How far the tyre strays from the linear motion of cell `over` within the cell `leaf`: where two linear motions part
 * the most is a corner.
 */
function apart({ cells, reach }: Growing, over: number, leaf: number): number {
  const o = over * Cell.size;
  const l = leaf * Cell.size;
  let most = 0;
  for (let corner = 0; corner < 4; corner += 1) {
    const a = corner & 1 ? 1 : -1;
    const b = corner & 2 ? 1 : -1;
    const oa = place(cells, o, l, Cell.travel, Cell.halfTravel, a);
    const ob = place(cells, o, l, Cell.rack, Cell.halfRack, b);
    const gap = (from: number): number => {
      let sum = 0;
      for (let i = from; i < from + 3; i += 1) {
        const there = cells[l + i]! + a * cells[l + i + 3]! + b * cells[l + i + 6]!;
        const here = cells[o + i]! + oa * cells[o + i + 3]! + ob * cells[o + i + 6]!;
        sum += (there - here) ** 2;
      }
      return Math.sqrt(sum);
    };
    most = Math.max(most, gap(Cell.centre) + reach * gap(Cell.axis));
  }
  return most + cells[l + Cell.stray]!;
}

/** Where an end of one cell lies in another, as a part of that one's half-size. */
function place(
  cells: readonly number[],
  over: number,
  leaf: number,
  middle: number,
  half: number,
  end: number,
): number {
  const size = cells[over + half]!;
  if (size === 0) return 0;
  return (cells[leaf + middle]! + end * cells[leaf + half]! - cells[over + middle]!) / size;
}

/**
 * Grows both halves of a cell. Their leaves say how far the tyre strays from the cell's own linear motion; where that is
 * little enough they are not needed. Where only one half has reached poses, it stands for the whole.
 */
function* halve(tree: Growing, at: Place, alongTravel: boolean): Generator<undefined, number> {
  const [travel, rack, halfTravel, halfRack] = at;
  const { corner, pose, cells, firsts, seconds, leaves, breaks } = tree;
  const t = alongTravel ? halfTravel / 2 : 0;
  const r = alongTravel ? 0 : halfRack / 2;
  const start = firsts.length;
  const firstLeaf = leaves.length;
  const first = yield* grow(tree, [travel - t, rack - r, halfTravel - t, halfRack - r]);
  const second = yield* grow(tree, [travel + t, rack + r, halfTravel - t, halfRack - r]);
  if (first < 0 || second < 0) return Math.max(first, second);
  const isLinear = solve(corner, pose, travel, rack) === 'reached';
  if (!isLinear && !findReached(tree, at)) pose.data.set(corner.linkage.home);
  poseRates(corner.linkage.fixed, pose.data);
  const number = addCell(tree, at, 0, isLinear);
  let stray = 0;
  for (let i = firstLeaf; i < leaves.length; i += 1) {
    stray = Math.max(stray, apart(tree, number, leaves[i]!));
  }
  cells[number * Cell.size + Cell.stray] = stray;
  if (!(stray <= tree.allowed) || tree.breaks > breaks) {
    firsts[number] = first;
    seconds[number] = second;
    return number;
  }
  const own = cells.slice(number * Cell.size);
  cells.length = start * Cell.size;
  firsts.length = start;
  seconds.length = start;
  leaves.length = firstLeaf;
  cells.push(...own);
  leaves.push(start);
  seconds.push(-1);
  return firsts.push(-1) - 1;
}

/**
 * Grows the tree of all poses of the range for a tyre that reaches `reach` mm from its wheel centre; within a leaf the
 * tyre strays at most `allowed` mm from its linear motion.
 */
export function* growPoses(
  corner: Corner,
  { travel, rack }: CertifiedRange,
  reach: number,
  allowed: number,
): Generator<undefined, PoseTree> {
  const growing: Growing = {
    corner,
    reach,
    allowed,
    pose: createPose(),
    cells: [],
    firsts: [],
    seconds: [],
    leaves: [],
    breaks: 0,
  };
  const halfTravel = (travel[1] - travel[0]) / 2;
  const halfRack = (rack[1] - rack[0]) / 2;
  const root = yield* grow(growing, [
    travel[0] + halfTravel,
    rack[0] + halfRack,
    halfTravel,
    halfRack,
  ]);
  const { cells, leaves } = growing;
  return {
    cells: Float64Array.from(cells),
    firsts: Int32Array.from(growing.firsts),
    seconds: Int32Array.from(growing.seconds),
    root,
    stray: Math.max(0, ...leaves.map((leaf) => cells[leaf * Cell.size + Cell.stray]!)),
  };
}
