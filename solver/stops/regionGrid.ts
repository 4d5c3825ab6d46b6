/** The grid behind the usable region: which limits are kept where, and what is connected with the set pose. */
import { solve } from '../corner.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import { fillAxis } from '../map.ts';
import { placeParts } from '../measures/parts.ts';
import { rackRange, rideTravel } from '../model/defaults.ts';
import { type Margins, marginInto, marginsInto, OUTSIDE, outsideAtSet } from './margins.ts';
import { measureQuantities } from './quantity.ts';

/** A grid being filled. */
export interface RegionWork {
  readonly margins: Margins;
  readonly pose: Pose;
  /** Indices of the margins that the set pose is outside of, which are left out. */
  readonly leftOut: readonly number[];
  readonly travels: Float64Array;
  readonly racks: Float64Array;
  readonly usable: Uint8Array;
  readonly least: Float64Array;
  readonly which: Int16Array;
}

/** An empty grid over the model's ranges. */
export function createWork(margins: Margins, rows: number, columns: number): RegionWork {
  const { model } = margins.corner;
  const range = rackRange(model.steering);
  const width = range[0] === range[1] ? 1 : columns;
  const travels = new Float64Array(rows);
  const racks = new Float64Array(width);
  fillAxis(travels, [-model.travel.droop, model.travel.bump]);
  fillAxis(racks, range);
  return {
    margins,
    pose: createPose(),
    leftOut: outsideAtSet(margins),
    travels,
    racks,
    usable: new Uint8Array(rows * width),
    least: new Float64Array(rows * width).fill(Number.NaN),
    which: new Int16Array(rows * width).fill(-1),
  };
}

/** Works out one node: 1 in `usable` where every margin is kept, connected or not. */
export function fillNode(work: RegionWork, node: number, travel: number, rack: number): void {
  const { leftOut, margins, pose } = work;
  if (solve(margins.corner, pose, travel, rack) !== 'reached') return;
  placeParts(margins.corner, pose.data);
  marginsInto(margins, pose, travel, rack);
  let least = Number.POSITIVE_INFINITY;
  let isKept = true;
  for (let i = 0; i < margins.list.length - 1; i += 1) {
    if (leftOut.includes(i)) continue;
    const value = margins.values[i]!;
    const share = value / Math.max(margins.list[i]!.near, 1);
    isKept &&= value >= OUTSIDE;
    if (share >= least) continue;
    least = share;
    work.which[node] = i;
  }
  work.least[node] = least;
  work.usable[node] = isKept ? 1 : 0;
}

/** Margins not kept at a place; "linkage" alone where it is not reached. */
export function brokenAt(work: RegionWork, travel: number, rack: number): number[] {
  const { leftOut, margins, pose } = work;
  const linkage = margins.list.length - 1;
  if (solve(margins.corner, pose, travel, rack) !== 'reached') return [linkage];
  placeParts(margins.corner, pose.data);
  marginsInto(margins, pose, travel, rack);
  const broken: number[] = [];
  for (let i = 0; i < linkage; i += 1) {
    if (margins.values[i]! < OUTSIDE && !leftOut.includes(i)) broken.push(i);
  }
  return broken;
}

/** The first of the named margins that is not kept at a place, or the linkage; −1 where all are kept. */
export function firstBroken(
  work: RegionWork,
  among: readonly number[],
  travel: number,
  rack: number,
): number {
  const { margins, pose } = work;
  if (solve(margins.corner, pose, travel, rack) !== 'reached') return margins.list.length - 1;
  placeParts(margins.corner, pose.data);
  measureQuantities(margins.corner, pose.data, margins.measures);
  for (const index of among) {
    marginInto(margins, pose, index, travel, rack);
    if (margins.values[index]! < OUTSIDE) return index;
  }
  return -1;
}

/** Index of the last axis value not above `value`, at least 0. */
function floorIndex(axis: Float64Array, value: number): number {
  let at = 0;
  while (at + 1 < axis.length && axis[at + 1]! <= value) at += 1;
  return at;
}

/** Usable nodes about the set pose. */
function startNodes({ margins, travels, racks, usable }: RegionWork): number[] {
  const columns = racks.length;
  const row = floorIndex(travels, rideTravel(margins.corner.model.travel));
  const column = floorIndex(racks, 0);
  return [row, Math.min(row + 1, travels.length - 1)]
    .flatMap((r) => [r * columns + column, r * columns + Math.min(column + 1, columns - 1)])
    .filter((node) => usable[node] === 1);
}

/** Takes nodes that are not connected with the set pose out of `usable`. */
export function keepConnected(work: RegionWork): void {
  const { travels, racks, usable } = work;
  const columns = racks.length;
  const kept = new Uint8Array(usable.length);
  const open = startNodes(work);
  for (const node of open) kept[node] = 1;
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    const row = Math.floor(node / columns);
    const column = node % columns;
    const next = [
      column > 0 ? node - 1 : -1,
      column + 1 < columns ? node + 1 : -1,
      row > 0 ? node - columns : -1,
      row + 1 < travels.length ? node + columns : -1,
    ];
    for (const other of next) {
      if (other < 0 || usable[other] !== 1 || kept[other] === 1) continue;
      kept[other] = 1;
      open.push(other);
    }
  }
  usable.set(kept);
}
