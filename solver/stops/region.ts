/**
 * The part of travel × rack that can really be used: a grid of the least margin, the nodes connected with the set pose,
 * and the region's edge, root-found along the grid's edges, in pieces of one limit each.
 */
import type { Margins } from './margins.ts';
import { traceEdge } from './regionEdge.ts';
import { createWork, fillNode, keepConnected } from './regionGrid.ts';
import type { UsableRegion } from './results.ts';
import { allSteps, type Steps } from './steps.ts';

/** Nodes of the grid over the model's travel and steering limit. */
export const REGION_GRID = { rows: 49, columns: 37 } as const;

/**
 * Finds the usable region row by row, yielding the share done. The nodes and the edge's points are exact; between nodes a
 * dip that is narrower than the grid's spacing can hide: `firstStops` rules that out along a line.
 */
export function* usableRegionInSteps(
  margins: Margins,
  grid: { readonly rows: number; readonly columns: number } = REGION_GRID,
): Steps<UsableRegion> {
  const work = createWork(margins, grid.rows, grid.columns);
  const { travels, racks, usable, least, which } = work;
  for (let row = 0; row < travels.length; row += 1) {
    for (let column = 0; column < racks.length; column += 1) {
      fillNode(work, row * racks.length + column, travels[row]!, racks[column]!);
    }
    yield (0.9 * (row + 1)) / travels.length;
  }
  keepConnected(work);
  return {
    travels,
    racks,
    usable,
    least,
    which,
    margins: margins.list,
    edge: traceEdge(work),
    outsideAtSet: margins.list.filter((_, index) => work.leftOut.includes(index)),
  };
}

/** The usable region at once: see `usableRegionInSteps`. */
export function usableRegion(
  margins: Margins,
  grid?: { readonly rows: number; readonly columns: number },
): UsableRegion {
  return allSteps(usableRegionInSteps(margins, grid));
}
