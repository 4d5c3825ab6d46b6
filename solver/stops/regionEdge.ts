/** The edge of the usable region: where it crosses the grid's edges, root-found, and which limit ends it there. */
import { edgeChains, type Grid } from '../contours.ts';
import { brokenAt, firstBroken, type RegionWork } from './regionGrid.ts';
import type { RegionPiece } from './results.ts';

/** How near a crossing is narrowed, mm. */
const CLOSE = 1e-4;

/** A point of the edge: rack, travel, and which margin ends the region there; −1 where the range does. */
interface EdgePoint {
  readonly rack: number;
  readonly travel: number;
  readonly which: number;
}

/** The grid with a row and a column of unusable nodes all round, at the same places as its border. */
function padded({ travels, racks, usable }: RegionWork): Grid {
  const columns = racks.length + 2;
  const values = new Float64Array((travels.length + 2) * columns);
  for (let row = 0; row < travels.length; row += 1) {
    for (let column = 0; column < racks.length; column += 1) {
      values[(row + 1) * columns + column + 1] = usable[row * racks.length + column]!;
    }
  }
  const around = (axis: Float64Array): Float64Array =>
    Float64Array.of(axis[0]!, ...axis, axis.at(-1)!);
  return { xs: around(racks), ys: around(travels), values };
}

/** The margin that ends the range on a side of the grid: the steering limit's, else none. */
function borderMargin({ margins }: RegionWork, side: 'least' | 'most' | 'travel'): number {
  if (side === 'travel') return -1;
  return margins.list.findIndex(({ key }) => key === `steering.${side}`);
}

/** Narrows the crossing between a usable place and one that is not. */
function narrow(
  work: RegionWork,
  inside: readonly [number, number],
  outside: readonly [number, number],
): EdgePoint {
  let [rack, travel] = inside;
  let [farRack, farTravel] = outside;
  const broken = brokenAt(work, farTravel, farRack);
  // A node that is kept but not connected ends the region without a limit between; it is taken as its border.
  let which = broken[0] ?? -1;
  while (broken.length > 0 && Math.abs(farRack - rack) + Math.abs(farTravel - travel) > CLOSE) {
    const middleRack = (rack + farRack) / 2;
    const middleTravel = (travel + farTravel) / 2;
    const first = firstBroken(work, broken, middleTravel, middleRack);
    if (first < 0) {
      rack = middleRack;
      travel = middleTravel;
    } else {
      farRack = middleRack;
      farTravel = middleTravel;
      which = first;
    }
  }
  return { rack, travel, which };
}

/** The point at which the region's edge crosses an edge of the padded grid. */
function crossing(work: RegionWork, grid: Grid, edge: number): EdgePoint {
  const columns = grid.xs.length;
  const node = edge >> 1;
  const other = (edge & 1) === 1 ? node + columns : node + 1;
  const [inside, outside] = grid.values[node] === 1 ? [node, other] : [other, node];
  const placeAt = (at: number): readonly [number, number] => [
    grid.xs[at % columns]!,
    grid.ys[Math.floor(at / columns)]!,
  ];
  const [rack, travel] = placeAt(inside);
  const column = outside % columns;
  const row = Math.floor(outside / columns);
  if (column === 0) return { rack, travel, which: borderMargin(work, 'least') };
  if (column === columns - 1) return { rack, travel, which: borderMargin(work, 'most') };
  if (row === 0 || row === grid.ys.length - 1) {
    return { rack, travel, which: borderMargin(work, 'travel') };
  }
  return narrow(work, [rack, travel], placeAt(outside));
}

/** Where the straight continuation of one piece meets that of the next, if it does so within the step between them. */
function cornerBetween(a: readonly EdgePoint[], b: readonly EdgePoint[]): EdgePoint | null {
  const [a0, a1] = a.slice(-2);
  const [b1, b0] = b.slice(0, 2);
  if (a0 === undefined || a1 === undefined || b0 === undefined || b1 === undefined) return null;
  const ax = a1.rack - a0.rack;
  const ay = a1.travel - a0.travel;
  const bx = b1.rack - b0.rack;
  const by = b1.travel - b0.travel;
  const cross = ax * by - ay * bx;
  const gapX = b1.rack - a1.rack;
  const gapY = b1.travel - a1.travel;
  const alongA = (gapX * by - gapY * bx) / cross;
  const alongB = (gapX * ay - gapY * ax) / cross;
  const step = Math.hypot(gapX, gapY);
  const isNear =
    alongA >= 0 &&
    alongB >= 0 &&
    Math.hypot(ax, ay) * alongA <= 1.5 * step &&
    Math.hypot(bx, by) * alongB <= 1.5 * step;
  if (!isNear) return null;
  return { rack: a1.rack + alongA * ax, travel: a1.travel + alongA * ay, which: a1.which };
}

/** Cuts a closed run of points where the limit changes. */
function runsOf(points: readonly EdgePoint[]): EdgePoint[][] {
  const start = points.findIndex(
    ({ which }, i) => which !== points[(i + points.length - 1) % points.length]?.which,
  );
  if (start < 0) return [[...points, ...points.slice(0, 1)]];
  const turned = [...points.slice(start), ...points.slice(0, start)];
  const runs: EdgePoint[][] = [];
  for (const point of turned) {
    const run = runs.at(-1);
    if (run?.[0]?.which === point.which) run.push(point);
    else runs.push([point]);
  }
  return joined(runs);
}

/** Runs with the corner between each and the next, so that pieces meet. */
function joined(runs: readonly (readonly EdgePoint[])[]): EdgePoint[][] {
  const corners = runs.map((run, i) => {
    const next = runs[(i + 1) % runs.length] ?? run;
    return cornerBetween(run, next) ?? next.slice(0, 1)[0] ?? null;
  });
  return runs.map((run, i) => {
    const before = corners[(i + runs.length - 1) % runs.length];
    const after = corners[i];
    return [...(before === null || before === undefined ? [] : [before]), ...run].concat(
      after === null || after === undefined ? [] : [after],
    );
  });
}

/** The edge of the region in pieces. */
export function traceEdge(work: RegionWork): RegionPiece[] {
  const grid = padded(work);
  const { list } = work.margins;
  return edgeChains(grid, 0.5).flatMap(({ edges }) =>
    runsOf(edges.map((edge) => crossing(work, grid, edge))).map((run): RegionPiece => {
      const which = run[1]?.which ?? run[0]?.which ?? -1;
      const margin = list[which] ?? null;
      return {
        key: margin?.key ?? 'range',
        margin,
        points: Float64Array.from(run.flatMap(({ rack, travel }) => [rack, travel])),
      };
    }),
  );
}
