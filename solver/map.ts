/**
 * The travel–lock map: over a grid of travel × rack, the gap of a pair of parts or of the worst of them, and what is out
 * of reach. Filled row by row, so that a worker can stop between rows; nothing is allocated per pose.
 */
import type { GapField } from './clearance/gapField.ts';
import { type Corner, solve } from './corner.ts';
import { createPose, type Pose } from './linkage/solve.ts';
import { placeParts } from './measures/parts.ts';

/** Nodes of the full grid, and of the coarse one that comes first. */
export const FULL_GRID = { rows: 81, columns: 61 } as const;
export const COARSE_GRID = { rows: 21, columns: 16 } as const;

export type Range = readonly [number, number];

/** Nodes stand row by row: node = row · columns + column. Lengths mm. */
export interface LockMap {
  /** Travel of each row, ascending. 0 is a node wherever the range holds it. */
  readonly travels: Float64Array;
  /** Rack of each column, ascending; one column where the model states no steering limit. */
  readonly racks: Float64Array;
  /**
   * Gap at the node (the field's `value`), or, out of reach, at the last reachable place of the straight path to it; NaN
   * where nothing is.
   */
  readonly gap: Float64Array;
  /** Which of the field's pairs it is. */
  readonly which: Uint8Array;
  /** 1 where the node is reached. */
  readonly reached: Uint8Array;
  /** The last reachable place on the straight path to the node: the node itself where it is reached. */
  readonly lastTravel: Float64Array;
  readonly lastRack: Float64Array;
}

/** Makes an empty map. */
export function createLockMap(rows: number, columns: number): LockMap {
  const nodes = rows * columns;
  return {
    travels: new Float64Array(rows),
    racks: new Float64Array(columns),
    gap: new Float64Array(nodes),
    which: new Uint8Array(nodes),
    reached: new Uint8Array(nodes),
    lastTravel: new Float64Array(nodes),
    lastRack: new Float64Array(nodes),
  };
}

/** Index of the node that is exactly 0, or −1. */
function zeroNode(axis: Float64Array): number {
  return axis.indexOf(0);
}

/** Spreads nodes over [least, most], evenly on each side of 0, so that 0 is a node where the range holds it. */
export function fillAxis(axis: Float64Array, [least, most]: Range): void {
  const last = axis.length - 1;
  if (last === 0) {
    axis[0] = least;
    return;
  }
  const holdsZero = least <= 0 && most >= 0 && most > least;
  const share = holdsZero ? -least / (most - least) : 0;
  let zero = Math.round(share * last);
  if (least < 0 && holdsZero) zero = Math.max(1, zero);
  if (most > 0 && holdsZero) zero = Math.min(last - 1, zero);
  if (least === 0 && holdsZero) zero = 0;
  if (most === 0 && holdsZero) zero = last;
  for (let i = 0; i <= last; i += 1) {
    if (!holdsZero) axis[i] = least + ((most - least) * i) / last;
    else if (i < zero) axis[i] = (least * (zero - i)) / zero;
    else axis[i] = i === zero ? 0 : (most * (i - zero)) / (last - zero);
  }
}

/** A map being filled. */
export interface Mapping {
  readonly corner: Corner;
  readonly map: LockMap;
  readonly pose: Pose;
  readonly field: GapField;
  readonly zeroRow: number;
  readonly zeroColumn: number;
  /** Rows filled so far. */
  filled: number;
}

/** Sets the axes of `map` and makes ready to fill it by `mapRow`. */
export function beginMap(
  corner: Corner,
  field: GapField,
  map: LockMap,
  travel: Range,
  rack: Range,
): Mapping {
  fillAxis(map.travels, travel);
  fillAxis(map.racks, rack);
  return {
    corner,
    map,
    pose: createPose(),
    field,
    zeroRow: zeroNode(map.travels),
    zeroColumn: zeroNode(map.racks),
    filled: 0,
  };
}

/** The k-th of `count` indices in the order start, start+1, start−1, start+2, …, the rest once one side is used up. */
function outwards(k: number, start: number, count: number): number {
  const below = start;
  const above = count - 1 - start;
  const paired = 2 * Math.min(below, above);
  if (k <= paired) return k % 2 === 1 ? start + (k + 1) / 2 : start - k / 2;
  return above > below ? start + (k - below) : start - (k - above);
}

function greatestDivisor(a: number, b: number): number {
  let x = Math.abs(a);
  let y = Math.abs(b);
  while (y > 0) {
    const rest = x % y;
    x = y;
    y = rest;
  }
  return x;
}

/**
 * The next node inwards on the node's own ray from (0, 0), or −1. A pose counts as reached by the straight path
 * (q·travel, q·rack) from (0, 0): where one is out of reach, so is every pose farther out on its ray, with the same
 * last reachable place. Each quadrant's nodes are evenly spaced from 0, hence whole-number steps find the ray.
 */
function innerNode({ map, zeroRow, zeroColumn }: Mapping, row: number, column: number): number {
  if (zeroRow < 0 || zeroColumn < 0) return -1;
  const up = row - zeroRow;
  const across = column - zeroColumn;
  const steps = greatestDivisor(up, across);
  if (steps < 2) return -1;
  const innerRow = row - up / steps;
  return innerRow * map.racks.length + column - across / steps;
}

function copyNode(map: LockMap, from: number, to: number): void {
  map.gap[to] = map.gap[from]!;
  map.which[to] = map.which[from]!;
  map.reached[to] = 0;
  map.lastTravel[to] = map.lastTravel[from]!;
  map.lastRack[to] = map.lastRack[from]!;
}

function solveNode(work: Mapping, node: number, travel: number, rack: number): void {
  const { corner, map, pose, field } = work;
  const outcome = solve(corner, pose, travel, rack);
  map.reached[node] = outcome === 'reached' ? 1 : 0;
  map.lastTravel[node] = pose.lastTravel;
  map.lastRack[node] = pose.lastRack;
  if (corner.linkage.broken !== null) {
    map.gap[node] = Number.NaN;
    return;
  }
  placeParts(corner, pose.data);
  field.read(pose);
  map.gap[node] = field.value;
  map.which[node] = field.which;
}

/** Fills the next row; false when all were filled already. Rows go outwards from travel 0. */
export function mapRow(work: Mapping): boolean {
  const { map, zeroRow, zeroColumn } = work;
  const rows = map.travels.length;
  const columns = map.racks.length;
  if (work.filled >= rows) return false;
  const row = outwards(work.filled, Math.max(0, zeroRow), rows);
  for (let k = 0; k < columns; k += 1) {
    const column = outwards(k, Math.max(0, zeroColumn), columns);
    const node = row * columns + column;
    const inner = innerNode(work, row, column);
    if (inner >= 0 && map.reached[inner] === 0) copyNode(map, inner, node);
    else solveNode(work, node, map.travels[row]!, map.racks[column]!);
  }
  work.filled += 1;
  return true;
}

/** Fills a whole map at once over the given ranges of travel and rack, mm. */
export function mapInto(
  corner: Corner,
  field: GapField,
  map: LockMap,
  travel: Range,
  rack: Range,
): void {
  const work = beginMap(corner, field, map, travel, rack);
  while (mapRow(work));
}
