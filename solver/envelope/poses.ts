/**
 * All poses of the sweep as a binary tree of cells of travel × rack. In each cell the wheel centre and the hub axis are
 * given as linear functions of the place in the cell, and the most they stray from those is enclosed: so a leaf stands
 * for every pose in it, not for samples of them.
 */
import { carriedPoint, carriedVector, encloseMotion } from '../certify/motion.ts';
import type { CertifiedRange } from '../certify/range.ts';
import { type Corner, solve } from '../corner.ts';
import { placeFrames } from '../linkage/bodies.ts';
import { poseRates } from '../linkage/rates.ts';
import { Slot } from '../linkage/slots.ts';
import { createPose, type Pose } from '../linkage/solve.ts';

/** Where a cell's numbers stand in `PoseTree.cells`, from its own start. Slopes are per half-size of the cell. */
export const Cell = {
  /** Wheel centre at the cell's middle, and its slopes along travel and rack. */
  centre: 0,
  centreA: 3,
  centreB: 6,
  /** Hub axis at the cell's middle, and its slopes. */
  axis: 9,
  axisA: 12,
  axisB: 15,
  travel: 18,
  rack: 19,
  halfTravel: 20,
  halfRack: 21,
  /** How far any point of the tyre can stray from the linear motion, mm. */
  stray: 22,
  /** Lengths of the slopes of centre and axis. */
  speedA: 23,
  speedB: 24,
  turnA: 25,
  turnB: 26,
  size: 27,
} as const;

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

/** Middle and half-sizes of a cell: travel, rack, half of travel, half of rack, mm. */
type Place = readonly [number, number, number, number];

interface Growing {
  readonly corner: Corner;
  readonly reach: number;
  /** How far from linear a leaf's motion may be, mm. */
  readonly allowed: number;
  readonly pose: Pose;
  readonly cells: number[];
  readonly firsts: number[];
  readonly seconds: number[];
  /** Numbers of the leaves, in the order in which they grew: those below a cell stand side by side. */
  readonly leaves: number[];
  /** Counts places that border on poses out of reach. */
  breaks: number;
}

/** Solves the cell's middle, or else a corner that can be reached; false where there is none. */
function findReached({ corner, pose }: Growing, at: Place): boolean {
  const [travel, rack, halfTravel, halfRack] = at;
  return ENDS.some(
    ([a, b]) => solve(corner, pose, travel + a * halfTravel, rack + b * halfRack) === 'reached',
  );
}

const ENDS = [
  [0, 0],
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
] as const;

/** Adds a cell and returns its number; its numbers are those of its middle's linear motion, or of a pose that stands still. */
function addCell(tree: Growing, at: Place, stray: number, isLinear: boolean): number {
  const { pose, corner, cells } = tree;
  const { data } = pose;
  const [travel, rack, halfTravel, halfRack] = at;
  placeFrames(corner.linkage.fixed, data);
  const numbers = new Float64Array(Cell.size);
  const a = isLinear ? halfTravel : 0;
  const b = isLinear ? halfRack : 0;
  for (let i = 0; i < 3; i += 1) {
    numbers[Cell.centre + i] = data[Slot.centre + i]!;
    numbers[Cell.centreA + i] = a * data[Slot.travelCentre + i]!;
    numbers[Cell.centreB + i] = b * data[Slot.rackCentre + i]!;
    const j = (i + 1) % 3;
    const k = (i + 2) % 3;
    const turned = (spin: number): number =>
      data[spin + j]! * data[Slot.hubAxis + k]! - data[spin + k]! * data[Slot.hubAxis + j]!;
    numbers[Cell.axis + i] = data[Slot.hubAxis + i]!;
    numbers[Cell.axisA + i] = a * turned(Slot.travelOmega);
    numbers[Cell.axisB + i] = b * turned(Slot.rackOmega);
  }
  numbers.set(
    [isLinear ? travel : data[Slot.travel]!, isLinear ? rack : data[Slot.rack]!],
    Cell.travel,
  );
  numbers.set(isLinear ? [halfTravel, halfRack, stray] : [0, 0, stray], Cell.halfTravel);
  const length = (from: number): number =>
    Math.hypot(numbers[from]!, numbers[from + 1]!, numbers[from + 2]!);
  numbers.set(
    [length(Cell.centreA), length(Cell.centreB), length(Cell.axisA), length(Cell.axisB)],
    Cell.speedA,
  );
  cells.push(...numbers);
  tree.seconds.push(-1);
  return tree.firsts.push(-1) - 1;
}

/** What can stray from the linear motion of the cell whose middle is solved, mm; infinite where nothing is enclosed. */
function strayOf({ corner, pose, reach }: Growing, halfTravel: number, halfRack: number): number {
  const { data } = pose;
  poseRates(corner.linkage.fixed, data);
  placeFrames(corner.linkage.fixed, data);
  const half = { travel: halfTravel, rack: halfRack };
  const motion = encloseMotion(corner.linkage, data, half);
  if (motion === null) return Number.POSITIVE_INFINITY;
  const triple = (at: number) => ({ x: data[at]!, y: data[at + 1]!, z: data[at + 2]! });
  const centre = carriedPoint(motion.knuckle, triple(Slot.centre));
  const axis = carriedVector(motion.knuckle, triple(Slot.hubAxis));
  return centre.rest + reach * axis.rest;
}

/** Which way a cell is halved: across the direction in which the tyre moves more. */
function isAlongTravel({ pose: { data }, reach }: Growing, halfTravel: number, halfRack: number) {
  const speed = (centre: number, spin: number): number =>
    Math.hypot(data[centre]!, data[centre + 1]!, data[centre + 2]!) +
    reach * Math.hypot(data[spin]!, data[spin + 1]!, data[spin + 2]!);
  const travel = halfTravel * speed(Slot.travelCentre, Slot.travelOmega);
  const rack = halfRack * speed(Slot.rackCentre, Slot.rackOmega);
  return halfRack === 0 || travel >= rack;
}

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
