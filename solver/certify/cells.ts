/**
 * The cells of travel × rack, halved on demand and shared by all pairs: each is solved at its centre and enclosed once.
 */
import type { Corner } from '../corner.ts';
import { poseRates } from '../linkage/rates.ts';
import { createPose, type Pose, solvePose } from '../linkage/solve.ts';
import { placeParts } from '../measures/parts.ts';
import type { Flood } from './flood.ts';
import { encloseMotion, type HalfSizes, type Motion } from './motion.ts';
import type { CertifiedRange } from './range.ts';

/** Where a cell stands: how often travel and rack were halved, and which of the parts it is. */
export interface CellPlace {
  readonly travelLevel: number;
  readonly travelIndex: number;
  readonly rackLevel: number;
  readonly rackIndex: number;
}

/** A closed rectangle of travel × rack, mm. */
export interface Cell {
  readonly place: CellPlace;
  readonly travel: number;
  readonly rack: number;
  readonly half: HalfSizes;
  readonly isReached: boolean;
  /** The solved pose at the centre with parts and rates, or the last reachable one of the straight path to it. */
  readonly pose: Float64Array;
  /** null where nothing could be proven of the cell as a whole. */
  readonly motion: Motion | null;
  /** What else was worked out of the cell, by who asks. */
  readonly tracks: Map<number, Float64Array | null>;
}

export interface CellTree {
  readonly corner: Corner;
  readonly range: CertifiedRange;
  readonly cells: Map<number, Cell>;
  /** What stands in for cells of which nothing could be proven: flood.ts. */
  readonly floods: Map<Cell, Flood>;
  /** How far before a place its straight path ends, by place: reach.ts. */
  readonly shortfalls: Map<string, number>;
  /** Poses of a coarse grid, from which least gaps are looked for: descend.ts. */
  readonly seeds: Pose[];
  readonly solved: Pose;
}

export function createCellTree(corner: Corner, range: CertifiedRange): CellTree {
  return {
    corner,
    range,
    cells: new Map(),
    floods: new Map(),
    shortfalls: new Map(),
    seeds: [],
    solved: createPose(),
  };
}

/** Halvings of one input at most: a hundred thousandth of a millimetre. */
export const MOST_LEVELS = 24;
const INDEX_SPAN = 2 ** MOST_LEVELS;

export const WHOLE: CellPlace = { travelLevel: 0, travelIndex: 0, rackLevel: 0, rackIndex: 0 };

/** A number of its own for every place: an index and its level together count 2^level + index. */
function keyOf({ travelLevel, travelIndex, rackLevel, rackIndex }: CellPlace): number {
  return (2 ** travelLevel + travelIndex) * 2 * INDEX_SPAN + 2 ** rackLevel + rackIndex;
}

function middle([low, high]: readonly [number, number], level: number, index: number): number {
  return low + ((high - low) * (2 * index + 1)) / 2 ** (level + 1);
}

function makeCell(tree: CellTree, place: CellPlace): Cell {
  const { corner, range, solved } = tree;
  const travel = middle(range.travel, place.travelLevel, place.travelIndex);
  const rack = middle(range.rack, place.rackLevel, place.rackIndex);
  const half = {
    travel: (range.travel[1] - range.travel[0]) / 2 ** (place.travelLevel + 1),
    rack: (range.rack[1] - range.rack[0]) / 2 ** (place.rackLevel + 1),
  };
  const isReached = solvePose(corner.linkage, solved, travel, rack) === 'reached';
  placeParts(corner, solved.data);
  poseRates(corner.linkage.fixed, solved.data);
  const pose = solved.data.slice();
  const motion = isReached ? encloseMotion(corner.linkage, pose, half) : null;
  return { place, travel, rack, half, isReached, pose, motion, tracks: new Map() };
}

export function cellAt(tree: CellTree, place: CellPlace): Cell {
  const key = keyOf(place);
  const known = tree.cells.get(key);
  if (known !== undefined) return known;
  const made = makeCell(tree, place);
  tree.cells.set(key, made);
  return made;
}

/** Both halves of a cell along one of its sides. */
export function halves(
  tree: CellTree,
  { place }: Cell,
  side: 'travel' | 'rack',
): readonly [Cell, Cell] {
  const half = (part: number): Cell =>
    cellAt(
      tree,
      side === 'travel'
        ? {
            ...place,
            travelLevel: place.travelLevel + 1,
            travelIndex: 2 * place.travelIndex + part,
          }
        : { ...place, rackLevel: place.rackLevel + 1, rackIndex: 2 * place.rackIndex + part },
    );
  return [half(0), half(1)];
}
