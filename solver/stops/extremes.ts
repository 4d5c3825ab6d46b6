/**
 * The least and the greatest of every quantity anywhere in travel × rack, by proof: found by descent, then bounded by
 * enclosing the motion over cells that are halved until none can hold more.
 */
import {
  type Cell,
  type CellTree,
  cellAt,
  createCellTree,
  halves,
  WHOLE,
} from '../certify/cells.ts';
import { type Found, findLeast } from '../certify/descend.ts';
import { pop, push } from '../certify/heap.ts';
import { type CertifiedRange, certifiedRange } from '../certify/range.ts';
import { isOutOfReach } from '../certify/reach.ts';
import type { Corner } from '../corner.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import { createMeasures } from '../measures/keys.ts';
import { quantityOver } from './enclosed.ts';
import type { MarginUnit } from './margin.ts';
import { measureQuantities, type QuantityKey, quantityOf } from './quantity.ts';
import type { Extreme, ExtremePlace } from './results.ts';
import { allSteps, type Steps } from './steps.ts';

/** How near what is found and what is proven come, mm or degrees. */
const CLOSE = 1e-3;
/** Half-size, mm, below which a cell of which nothing is proven is given up: next to the end of the linkage's reach. */
const SMALLEST = 1;
const MOST_CELLS = 5000;

interface Node {
  readonly cell: Cell;
  /** No sense · quantity in the cell is less. */
  readonly bound: number;
}

/** A search for the least of sense · quantity: sense −1 finds the greatest. */
interface Search {
  readonly tree: CellTree;
  readonly key: QuantityKey;
  readonly sense: 1 | -1;
}

function lowestIn({ tree, key, sense }: Search, cell: Cell): number {
  const { motion } = cell;
  if (motion === null) return Number.NEGATIVE_INFINITY;
  const over = quantityOver(tree.corner, key, { ...cell, motion });
  if (over === null) return Number.NEGATIVE_INFINITY;
  return sense > 0 ? over.low : -over.high;
}

/** Halves of a cell along its longer side. */
function halvesOf(tree: CellTree, cell: Cell): readonly [Cell, Cell] {
  return halves(tree, cell, cell.half.travel >= cell.half.rack ? 'travel' : 'rack');
}

function isSpent({ half, motion }: Cell): boolean {
  return motion === null && Math.max(half.travel, half.rack) < SMALLEST;
}

/** The bound that can be proven, at most CLOSE below what was found. */
function boundBelow(search: Search, found: number): number {
  const { tree } = search;
  const aim = found - CLOSE;
  const open: Node[] = [];
  let givenUp = Number.POSITIVE_INFINITY;
  const visit = (cell: Cell, inherited: number): void => {
    const bound = Math.max(inherited, lowestIn(search, cell));
    if (bound < aim && !isOutOfReach(tree, cell)) push(open, { cell, bound });
  };
  visit(cellAt(tree, WHOLE), Number.NEGATIVE_INFINITY);
  for (let count = 0; open.length > 0; count += 1) {
    const node = pop(open);
    if (node === undefined) break;
    if (count >= MOST_CELLS || isSpent(node.cell)) {
      givenUp = Math.min(givenUp, node.bound);
      if (count >= MOST_CELLS) break;
      continue;
    }
    for (const half of halvesOf(tree, node.cell)) visit(half, node.bound);
  }
  return Math.min(aim, givenUp);
}

function placeOf(search: Search, pose: Pose, measures: Float64Array): ExtremePlace {
  const { tree, key, sense } = search;
  const { corner } = tree;
  const valueIn = (solved: Pose): number => {
    measureQuantities(corner, solved.data, measures);
    return sense * quantityOf(corner, key, solved.data, measures);
  };
  const { gap, travel, rack }: Found = findLeast(corner, pose, valueIn, tree.range);
  const bound = boundBelow(search, gap);
  return {
    value: sense * gap,
    travel,
    rack,
    bound: sense * bound,
    isProven: bound >= gap - 2 * CLOSE,
  };
}

/** The quantities of a corner's parts, in the order people ask for them. */
export function quantitiesOf(corner: Corner): readonly QuantityKey[] {
  const { coilover, lever, shaft, strap } = corner;
  const shaftKeys: readonly QuantityKey[] = ['outerAngle', 'innerAngle', 'plunge'];
  return [
    ...(shaft === null ? [] : shaftKeys),
    'lowerBallJoint',
    'upperBallJoint',
    'tieRodOuter',
    'tieRodInner',
    ...(coilover === null ? [] : ['damperLength' as const]),
    ...(strap === null ? [] : ['strapLength' as const]),
    ...(lever === null ? [] : ['dropLink' as const]),
  ];
}

const LENGTHS: ReadonlySet<QuantityKey> = new Set<QuantityKey>([
  'damperLength',
  'strapLength',
  'plunge',
  'dropLink',
  'travel',
  'rack',
]);

function unitOf(key: QuantityKey): MarginUnit {
  return LENGTHS.has(key) ? 'mm' : 'degree';
}

/**
 * Finds the extremes of the corner's quantities over a range, by default the model's own travel and steering limit,
 * quantity by quantity, yielding the share done. None where the settings cannot be assembled.
 */
export function* extremesInSteps(
  corner: Corner,
  range: CertifiedRange = certifiedRange(corner.model),
  keys: readonly QuantityKey[] = quantitiesOf(corner),
): Steps<Extreme[]> {
  if (corner.linkage.broken !== null) return [];
  const tree = createCellTree(corner, range);
  const pose = createPose();
  const measures = createMeasures();
  const extremes: Extreme[] = [];
  for (const key of keys) {
    const least = placeOf({ tree, key, sense: 1 }, pose, measures);
    yield (extremes.length + 0.5) / keys.length;
    const greatest = placeOf({ tree, key, sense: -1 }, pose, measures);
    extremes.push({ key, unit: unitOf(key), least, greatest });
    yield extremes.length / keys.length;
  }
  return extremes;
}

/** Extremes at once: see `extremesInSteps`. */
export function extremesOf(
  corner: Corner,
  range?: CertifiedRange,
  keys?: readonly QuantityKey[],
): Extreme[] {
  return allSteps(extremesInSteps(corner, range, keys));
}
