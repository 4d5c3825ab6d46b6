/**
 * Cells of charts (chart.ts) in place of a small cell of travel × rack of which nothing could be proven: one row of them,
 * from the last reachable pose on the way there, both ways along the mark for as long as their poses may lie in the cell
 * and on the design pose's branch. They hold every pose of the cell that is joined to that one inside the cell.
 */
import type { Corner } from '../corner.ts';
import { Slot } from '../linkage/slots.ts';
import { placeParts } from '../measures/parts.ts';
import type { Cell, CellTree } from './cells.ts';
import { type Chart, type ChartHalf, chartAt, encloseChart, markAt } from './chart.ts';
import { solveChart } from './chartPose.ts';
import { swingOf, type Taylor } from './taylor.ts';

/** A cell of a chart, with the cell of travel × rack it stands in for. */
export interface ChartCell {
  readonly cell: Cell;
  readonly chart: Chart;
  readonly mark: number;
  readonly kept: number;
  readonly half: ChartHalf;
  readonly within: Cell;
  readonly travel: Taylor | null;
  readonly rack: Taylor | null;
  readonly determinant: Taylor | null;
}

export interface Flood {
  readonly cells: readonly ChartCell[];
  /** False where not all of the cell could be covered. */
  readonly isWhole: boolean;
}

/** Half-size of the first cells along the mark, mm, and the one below which a cell is given up. */
const FIRST_HALF = 4;
export const LAST_HALF = 1e-3;
const MOST_CELLS = 300;
/** Cells gone along before the first that matters. */
const MOST_IDLE = 6;

function reaches(value: Taylor, middle: number, half: number): boolean {
  return Math.abs(value.mid - middle) <= half + swingOf(value);
}

/** True where some pose of the chart's cell may be one of the cell it stands in for, on the branch. */
export function mayMatter(cell: ChartCell): boolean {
  const { travel, rack, within } = cell;
  if (travel === null || rack === null) return true;
  return (
    !isBeyond(cell) &&
    reaches(travel, within.travel, within.half.travel) &&
    reaches(rack, within.rack, within.half.rack)
  );
}

/** True where every pose lies beyond the one that ends the branch. */
function isBeyond({ determinant }: ChartCell): boolean {
  return determinant !== null && determinant.mid + swingOf(determinant) < 0;
}

/** Solves and encloses one cell from a pose nearby; null where its centre has no pose nearby. */
export function chartCell(
  corner: Corner,
  chart: Chart,
  near: Float64Array,
  mark: number,
  kept: number,
  half: ChartHalf,
  within: Cell,
): ChartCell | null {
  const pose = near.slice();
  if (!solveChart(corner.linkage, pose, chart, mark, kept)) return null;
  placeParts(corner, pose);
  const over = encloseChart(corner.linkage, pose, chart, half);
  const cell: Cell = {
    place: within.place,
    travel: pose[Slot.travel]!,
    rack: pose[Slot.rack]!,
    half: within.half,
    isReached: false,
    pose,
    motion: over?.motion ?? null,
    tracks: new Map(),
  };
  return {
    cell,
    chart,
    mark,
    kept,
    half,
    within,
    travel: over?.travel ?? null,
    rack: over?.rack ?? null,
    determinant: over?.determinant ?? null,
  };
}

/** Goes along the mark from a pose in one sense; answers whether it came to where nothing matters any more. */
function walk(
  corner: Corner,
  chart: Chart,
  start: Float64Array,
  sense: 1 | -1,
  within: Cell,
  cells: ChartCell[],
): boolean {
  const isRack = chart.kept === 'rack';
  const kept = isRack ? within.rack : within.travel;
  const keptHalf = isRack ? within.half.rack : within.half.travel;
  const before = cells.length;
  let near = start;
  let edge = markAt(chart, start);
  let half = FIRST_HALF;
  for (let count = 0; count < MOST_CELLS; count += 1) {
    const size = { mark: half, kept: keptHalf };
    const made = chartCell(corner, chart, near, edge + sense * half, kept, size, within);
    if (made === null || made.cell.motion === null) {
      half /= 2;
      if (half < LAST_HALF) return false;
      continue;
    }
    if (mayMatter(made)) cells.push(made);
    else if (cells.length > before || isBeyond(made) || count >= MOST_IDLE) return true;
    near = made.cell.pose;
    edge += sense * 2 * half;
    half = Math.min(FIRST_HALF, 1.5 * half);
  }
  return false;
}

/** Covers a cell by cells of a chart, once for all pairs. */
export function floodOf(tree: CellTree, within: Cell): Flood {
  const known = tree.floods.get(within);
  if (known !== undefined) return known;
  const made = floodCell(tree.corner, within);
  tree.floods.set(within, made);
  return made;
}

function floodCell(corner: Corner, within: Cell): Flood {
  const chart = chartAt(corner.linkage, within.pose, within.half.rack === 0);
  if (chart === null) return { cells: [], isWhole: false };
  const start = within.pose.slice();
  const kept = chart.kept === 'rack' ? within.rack : within.travel;
  if (!solveChart(corner.linkage, start, chart, markAt(chart, start), kept)) {
    return { cells: [], isWhole: false };
  }
  const cells: ChartCell[] = [];
  const isWhole = ([1, -1] as const)
    .map((sense) => walk(corner, chart, start, sense, within, cells))
    .every((done) => done);
  return { cells, isWhole };
}

/** Both halves of a chart's cell, without those that do not matter; null where a half has no pose. */
export function chartHalves(
  corner: Corner,
  whole: ChartCell,
  side: 'mark' | 'kept',
): readonly ChartCell[] | null {
  const { chart, mark, kept, half, within, cell } = whole;
  const size =
    side === 'mark' ? { ...half, mark: half.mark / 2 } : { ...half, kept: half.kept / 2 };
  const parts: ChartCell[] = [];
  for (const sense of [-1, 1]) {
    const at = side === 'mark' ? mark + sense * size.mark : mark;
    const keptAt = side === 'kept' ? kept + sense * size.kept : kept;
    const part = chartCell(corner, chart, cell.pose, at, keptAt, size, within);
    if (part === null) return null;
    if (mayMatter(part)) parts.push(part);
  }
  return parts;
}
