/** One cell of poses: the linear motion of wheel centre and hub axis from its middle, and what strays from that. */
import { carriedPoint, carriedVector, encloseMotion } from '../certify/motion.ts';
import { type Corner, solve } from '../corner.ts';
import { placeFrames } from '../linkage/bodies.ts';
import { poseRates } from '../linkage/rates.ts';
import { Slot } from '../linkage/slots.ts';
import type { Pose } from '../linkage/solve.ts';

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

/** Middle and half-sizes of a cell: travel, rack, half of travel, half of rack, mm. */
export type Place = readonly [number, number, number, number];

/** A tree of cells that grows. */
export interface Growing {
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
export function findReached({ corner, pose }: Growing, at: Place): boolean {
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
export function addCell(tree: Growing, at: Place, stray: number, isLinear: boolean): number {
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
export function strayOf(
  { corner, pose, reach }: Growing,
  halfTravel: number,
  halfRack: number,
): number {
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
export function isAlongTravel(
  { pose: { data }, reach }: Growing,
  halfTravel: number,
  halfRack: number,
): boolean {
  const speed = (centre: number, spin: number): number =>
    Math.hypot(data[centre]!, data[centre + 1]!, data[centre + 2]!) +
    reach * Math.hypot(data[spin]!, data[spin + 1]!, data[spin + 2]!);
  const travel = halfTravel * speed(Slot.travelCentre, Slot.travelOmega);
  const rack = halfRack * speed(Slot.rackCentre, Slot.rackOmega);
  return halfRack === 0 || travel >= rack;
}
