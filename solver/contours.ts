/**
 * Contours of a grid of values by marching squares with linear interpolation, joined into lines.
 * Values stand row by row over ascending axes: value(row, column) = values[row · columns + column].
 */

export interface Contour {
  /** x, y, x, y, …: x from the columns' axis, y from the rows'. */
  readonly points: Float64Array;
  /** True when the last point joins the first. */
  readonly closed: boolean;
}

export interface Grid {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly values: Float64Array;
}

/**
 * Edges a contour joins in a cell, by which of its corners lie at or above the level: bit 1 lower left, 2 lower right,
 * 4 upper right, 8 upper left; edges 0 lower, 1 right, 2 upper, 3 left. The two saddles stand apart.
 */
const JOINS: readonly (readonly number[])[] = [
  [],
  [3, 0],
  [0, 1],
  [3, 1],
  [1, 2],
  [],
  [0, 2],
  [3, 2],
  [2, 3],
  [2, 0],
  [],
  [2, 1],
  [1, 3],
  [1, 0],
  [0, 3],
  [],
];
/** A saddle's joins when its middle lies at or above the level, and when below. */
const SADDLES: Readonly<Record<number, readonly [readonly number[], readonly number[]]>> = {
  5: [
    [3, 2, 1, 0],
    [3, 0, 1, 2],
  ],
  10: [
    [0, 3, 2, 1],
    [0, 1, 2, 3],
  ],
};

/** Every edge of the grid has a number: lower edge of cell (row, column) = 2·node, left edge = 2·node + 1. */
function edgeNumber(side: number, row: number, column: number, columns: number): number {
  const node = (side === 2 ? row + 1 : row) * columns + (side === 1 ? column + 1 : column);
  return 2 * node + (side === 1 || side === 3 ? 1 : 0);
}

function joinsOfCell(corners: readonly number[], level: number): readonly number[] {
  let kind = 0;
  let sum = 0;
  for (let i = 0; i < 4; i += 1) {
    const value = corners[i]!;
    if (Number.isNaN(value)) return [];
    if (value >= level) kind |= 1 << i;
    sum += value;
  }
  const saddle = SADDLES[kind];
  if (saddle === undefined) return JOINS[kind]!;
  return sum / 4 >= level ? saddle[0] : saddle[1];
}

/** For every edge the contour crosses, the one or two edges it is joined to. */
function linkEdges({ xs, ys, values }: Grid, level: number): Map<number, number[]> {
  const columns = xs.length;
  const links = new Map<number, number[]>();
  const link = (from: number, to: number): void => {
    const known = links.get(from);
    if (known === undefined) links.set(from, [to]);
    else known.push(to);
  };
  for (let row = 0; row + 1 < ys.length; row += 1) {
    for (let column = 0; column + 1 < columns; column += 1) {
      const node = row * columns + column;
      const corners = [
        values[node]!,
        values[node + 1]!,
        values[node + columns + 1]!,
        values[node + columns]!,
      ];
      const joins = joinsOfCell(corners, level);
      for (let i = 0; i < joins.length; i += 2) {
        const a = edgeNumber(joins[i]!, row, column, columns);
        const b = edgeNumber(joins[i + 1]!, row, column, columns);
        link(a, b);
        link(b, a);
      }
    }
  }
  return links;
}

/** Follows the links from one edge until they end or come round, taking them away. */
function followLinks(links: Map<number, number[]>, start: number): number[] {
  const edges = [start];
  let at = start;
  for (;;) {
    const next = links.get(at)?.pop();
    if (next === undefined) return edges;
    const back = links.get(next);
    back?.splice(back.indexOf(at), 1);
    edges.push(next);
    at = next;
  }
}

function writeCrossing(
  { xs, ys, values }: Grid,
  level: number,
  edge: number,
  out: Float64Array,
  at: number,
): void {
  const columns = xs.length;
  const node = edge >> 1;
  const row = Math.floor(node / columns);
  const column = node % columns;
  const upright = (edge & 1) === 1;
  const low = values[node]!;
  const high = values[upright ? node + columns : node + 1]!;
  const share = (level - low) / (high - low);
  const x = xs[column]!;
  const y = ys[row]!;
  out[at] = upright ? x : x + share * (xs[column + 1]! - x);
  out[at + 1] = upright ? y + share * (ys[row + 1]! - y) : y;
}

/** A contour by the numbers of the grid's edges it crosses: the edge of node row · columns + column to the node right of it is 2 · node, to the node above 2 · node + 1. */
export interface EdgeChain {
  readonly edges: readonly number[];
  readonly closed: boolean;
}

/** The edges that lines along which the values equal `level` cross, in order. A cell with a NaN corner has none. */
export function edgeChains(grid: Grid, level: number): EdgeChain[] {
  const links = linkEdges(grid, level);
  const ends = [...links.keys()].filter((edge) => links.get(edge)!.length === 1);
  const found: EdgeChain[] = [];
  for (const start of [...ends, ...links.keys()]) {
    if ((links.get(start)?.length ?? 0) === 0) continue;
    const edges = followLinks(links, start);
    const closed = edges.length > 2 && edges[0] === edges.at(-1);
    if (closed) edges.pop();
    found.push({ edges, closed });
  }
  return found;
}

/** Lines along which the linearly interpolated values equal `level`. A cell with a NaN corner has none. */
export function contoursOf(grid: Grid, level: number): Contour[] {
  return edgeChains(grid, level).map(({ edges, closed }) => {
    const points = new Float64Array(2 * edges.length);
    edges.forEach((edge, i) => {
      writeCrossing(grid, level, edge, points, 2 * i);
    });
    return { points, closed };
  });
}
