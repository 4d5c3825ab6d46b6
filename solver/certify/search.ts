/** Branch and bound over travel × rack for one pair: best first, the cell with the lowest bound is halved next. */
import { placesOf } from '../clearance/deepest.ts';
import { isConvex } from '../clearance/depth.ts';
import type { Section } from '../clearance/section.ts';
import type { Corner } from '../corner.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import type { ProvableShape } from './bounder.ts';
import { type Cell, type CellTree, cellAt, halves, MOST_LEVELS, WHOLE } from './cells.ts';
import { descend, type Found, findGap, findLeast, type GapIn } from './descend.ts';
import { type Bounder, type Element, halvesOf } from './element.ts';
import { type ChartCell, chartHalves, floodOf, LAST_HALF } from './flood.ts';
import { pop, push } from './heap.ts';
import { isOutOfReach } from './reach.ts';

/** A cell still to be looked at, with the elements that may hold the least there. */
interface Node {
  readonly cell: Cell;
  readonly elements: readonly Element[];
  readonly bound: number;
  /** The cell as one of a chart; null of a plain one. */
  readonly chart: ChartCell | null;
}

export interface Search {
  readonly tree: CellTree;
  readonly bounder: Bounder;
  readonly gapIn: GapIn;
  readonly required: number;
  /** No gap of the pair can be smaller than this, wherever its parts are, mm. */
  readonly floor: number;
  readonly open: Node[];
  readonly pose: Pose;
  found: Found;
  /** The least of the bounds of cells that were given up. */
  givenUp: number;
  nodes: number;
}

/** How far from touching a pair decides anything, mm, and how near least and provenAtLeast then come. */
const DECIDES = 25;
const CLOSE = 0.04;
/** Share, and mm at most, by which they may differ beyond. */
const CLOSE_SHARE = 0.05;
const COARSE = 2;
/** How near they come at most where the wanted gap lies between them. */
const CLOSEST = 0.002;
/** What rounding, the solver's residuals and the closed forms' own errors cannot come to, mm. */
export const SAFETY = 1e-6;
const MOST_NODES = 12_000;
/** The same where parts overlap by so much that it no longer matters how deep. */
const MOST_DEEP_NODES = 3000;
/** A convex section's deepest place is found to a ten thousandth, mm. */
const DEEPEST_ROUNDING = 2e-4;

export function createSearch(
  corner: Corner,
  tree: CellTree,
  pair: {
    readonly bounder: Bounder;
    readonly gapIn: GapIn;
    readonly required: number;
    readonly floor: number;
  },
): Search {
  const pose = createPose();
  const found = findLeast(corner, pose, pair.gapIn, tree.range, tree.seeds);
  const search: Search = {
    ...pair,
    tree,
    open: [],
    pose,
    found,
    givenUp: Number.POSITIVE_INFINITY,
    nodes: 0,
  };
  visit(search, cellAt(tree, WHOLE), pair.bounder.elements, Number.NEGATIVE_INFINITY);
  return search;
}

/** What is proven so far. */
export function provenAtLeast({ open, givenUp, found, floor }: Search): number {
  const lowest = open[0]?.bound ?? Number.POSITIVE_INFINITY;
  return Math.max(floor, Math.min(found.gap, givenUp, lowest)) - SAFETY;
}

/** The bound at which a search is content. */
function aimOf({ found, required }: Search): number {
  const { gap } = found;
  const slack = gap < DECIDES ? CLOSE : Math.min(COARSE, CLOSE_SHARE * gap);
  const decided = required > gap ? gap - slack : Math.min(required + SAFETY, gap - CLOSEST);
  return Math.max(gap - slack, decided) + SAFETY;
}

export function isProven(search: Search): boolean {
  const { open, nodes, found, floor } = search;
  const lowest = open[0]?.bound;
  return (
    lowest === undefined ||
    nodes >= (found.gap > -DECIDES ? MOST_NODES : MOST_DEEP_NODES) ||
    found.gap - floor <= CLOSE ||
    lowest >= Math.min(found.gap, aimOf(search), search.givenUp)
  );
}

/** Bounds an element over a cell, halving it where it is coarse; keeps what may hold less than the least found. */
function boundElements(
  { bounder, found }: Search,
  cell: Cell,
  elements: readonly Element[],
  kept: Element[],
): number {
  let lowest = Number.POSITIVE_INFINITY;
  const waiting = elements.slice();
  for (let element = waiting.pop(); element !== undefined; element = waiting.pop()) {
    const bound = bounder.bound(cell, element, found.gap);
    if (bound >= found.gap) continue;
    // A bound that is no number bounds nothing.
    const known = Number.isNaN(bound) ? Number.NEGATIVE_INFINITY : bound;
    if (bounder.isCoarse()) waiting.push(...halvesOf(element));
    else {
      kept.push(element);
      lowest = Math.min(lowest, known);
    }
  }
  return lowest;
}

function takeGap(search: Search, cell: Cell): void {
  if (!cell.isReached) return;
  search.pose.data.set(cell.pose);
  const gap = search.gapIn(search.pose);
  if (!(gap < search.found.gap)) return;
  const { corner, range } = search.tree;
  const start = { travel: cell.travel, rack: cell.rack, gap };
  search.found = descend(corner, search.pose, search.gapIn, range, start, cell.half);
}

function visit(search: Search, cell: Cell, elements: readonly Element[], inherited: number): void {
  search.nodes += 1;
  if (isOutOfReach(search.tree, cell)) return;
  if (cell.motion === null) {
    push(search.open, { cell, elements, bound: inherited, chart: null });
    return;
  }
  takeGap(search, cell);
  bound(search, cell, elements, inherited, null);
}

/** Bounds an enclosed cell and keeps it open if it may hold less than the least found. */
function bound(
  search: Search,
  cell: Cell,
  elements: readonly Element[],
  inherited: number,
  chart: ChartCell | null,
): void {
  const kept: Element[] = [];
  const lowest = Math.max(inherited, boundElements(search, cell, elements, kept));
  if (kept.length > 0 && lowest < search.found.gap) {
    push(search.open, { cell, elements: kept, bound: lowest, chart });
  }
}

function giveUp(search: Search, lowest: number): void {
  search.givenUp = Math.min(search.givenUp, lowest);
}

/** The same of a chart's cell; its centre's gap counts where the pose can really be reached. */
function visitChart(
  search: Search,
  chart: ChartCell,
  elements: readonly Element[],
  inherited: number,
): void {
  const { cell } = chart;
  search.nodes += 1;
  if (cell.motion === null) {
    if (chart.half.mark < LAST_HALF) giveUp(search, inherited);
    else push(search.open, { cell, elements, bound: inherited, chart });
    return;
  }
  tryReach(search, cell);
  bound(search, cell, elements, inherited, chart);
}

/** Takes the gap at a chart's cell's centre where it is less and the pose can really be reached. */
function tryReach(search: Search, { travel, rack, half, pose }: Cell): void {
  const { corner, range } = search.tree;
  search.pose.data.set(pose);
  if (!(search.gapIn(search.pose) < search.found.gap)) return;
  const start = findGap(
    corner,
    search.pose,
    search.gapIn,
    Math.min(range.travel[1], Math.max(range.travel[0], travel)),
    Math.min(range.rack[1], Math.max(range.rack[0], rack)),
  );
  if (!(start.gap < search.found.gap)) return;
  search.found = descend(corner, search.pose, search.gapIn, range, start, half);
}

/** Along which side a cell is halved: the one along which more happens. */
function sideOf({ bounder }: Search, cell: Cell): 'travel' | 'rack' {
  const { travelLevel, rackLevel } = cell.place;
  if (cell.half.rack === 0 || rackLevel >= MOST_LEVELS) return 'travel';
  if (travelLevel >= MOST_LEVELS) return 'rack';
  if (cell.motion === null) return cell.half.travel > cell.half.rack ? 'travel' : 'rack';
  const { travel, rack } = bounder.swings(cell);
  return travel >= rack ? 'travel' : 'rack';
}

function isSpent(cell: Cell): boolean {
  const { half, place } = cell;
  const isRackSpent = half.rack === 0 || place.rackLevel >= MOST_LEVELS;
  return place.travelLevel >= MOST_LEVELS && isRackSpent;
}

/** Halves the cell with the lowest bound. */
export function stepSearch(search: Search): void {
  const node = pop(search.open);
  if (node === undefined) return;
  if (node.chart !== null) halveChart(search, node, node.chart);
  else if (isForCharts(node.cell)) flood(search, node);
  else if (isSpent(node.cell)) giveUp(search, node.bound);
  else halve(search, node);
}

function halve(search: Search, node: Node): void {
  for (const half of halves(search.tree, node.cell, sideOf(search, node.cell))) {
    visit(search, half, node.elements, node.bound);
  }
}

/** Half-size, mm, below which a cell of which nothing is proven is covered by cells of a chart instead. */
const FOR_CHARTS = 2;

function isForCharts({ motion, half }: Cell): boolean {
  return motion === null && Math.max(half.travel, half.rack) < FOR_CHARTS;
}

function flood(search: Search, node: Node): void {
  const { cells, isWhole } = floodOf(search.tree, node.cell);
  if (!isWhole) giveUp(search, node.bound);
  for (const chart of cells) visitChart(search, chart, node.elements, node.bound);
}

function halveChart(search: Search, node: Node, chart: ChartCell): void {
  const { travel, rack } = search.bounder.swings(node.cell);
  const isSmall = chart.half.mark < LAST_HALF && chart.half.kept < LAST_HALF;
  const side = chart.half.kept === 0 || travel >= rack ? 'mark' : 'kept';
  const parts = isSmall ? null : chartHalves(search.tree.corner, chart, side);
  if (parts === null) giveUp(search, node.bound);
  else for (const part of parts) visitChart(search, part, node.elements, node.bound);
}

/** No place of a solid section is deeper, mm. */
function deepestIn(section: Section): number {
  const { line, solid } = section;
  if (!solid) return 0;
  const depth = isConvex(line) ? placesOf(section)[0]?.depth : undefined;
  return depth === undefined ? Math.max(...line) - Math.min(...line) : depth + DEEPEST_ROUNDING;
}

/** Half the thickness of a shape, and how deep a solid can be, mm. */
function depthOf(shape: ProvableShape): number {
  if (shape.kind === 'chain') return Math.max(...shape.radii);
  if (shape.kind === 'mesh') return 0;
  if (shape.kind === 'box') {
    return Math.min(...shape.max.map((most, i) => most - shape.min[i]!)) / 2;
  }
  return Math.max(...shape.sections.map((section) => section.half + deepestIn(section)));
}

/** No gap of these shapes can be smaller than this, wherever they are, mm. */
export function floorOf([first, second]: readonly [ProvableShape, ProvableShape]): number {
  return -depthOf(first) - depthOf(second);
}
