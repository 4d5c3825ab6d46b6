/** The worst place of a travel–lock map: its least gap, found on the grid and then refined on the solver itself. */
import type { GapField } from './clearance/gapField.ts';
import { type Corner, solve } from './corner.ts';
import { createPose } from './linkage/solve.ts';
import type { LockMap, Range } from './map.ts';
import { placeParts } from './measures/parts.ts';
import type { Model } from './model/model.ts';

/** A reachable place and its gap, mm; `which` of the field's pairs it is of, and the field's own `value` there. */
export interface WorstPlace {
  readonly travel: number;
  readonly rack: number;
  readonly gap: number;
  readonly which: number;
  readonly value: number;
}

/** Step at which a search ends, mm of travel or rack: surfaces close up by about as much, so the gap is good to 0.01 mm. */
const LAST_STEP = 1e-3;
/** Local minima of the grid that are searched from, the lowest first: the least of them need not stay the least. */
const MOST_STARTS = 6;
/** A gap closes by about 1 mm per mm of travel or rack, seldom by more than this: a higher start cannot win. */
const STEEPEST = 2;
const RING = [-1, -0.5, 0, 0.5, 1];

type Gap = (travel: number, rack: number) => WorstPlace;

/** The gap at a place, or, out of reach, at the last reachable place of the straight path to it. */
function gapOf(corner: Corner, field: GapField): Gap {
  const pose = createPose();
  return (travel, rack) => {
    solve(corner, pose, travel, rack);
    placeParts(corner, pose.data);
    field.read(pose);
    const { gap, which, value } = field;
    return { travel: pose.lastTravel, rack: pose.lastRack, gap, which, value };
  };
}

/** First and last row of the map inside a range of travel; the nearest row where none is. */
function rowsWithin({ travels }: LockMap, [least, most]: Range): readonly [number, number] {
  let first = 0;
  let last = travels.length - 1;
  while (first < last && travels[first]! < least) first += 1;
  while (last > first && travels[last]! > most) last -= 1;
  return [first, last];
}

/** Nodes of a range of travel no neighbour of which is lower, lowest first. */
function lowNodes(map: LockMap, within: Range, most: number): number[] {
  const values = map.gap;
  const columns = map.racks.length;
  const [firstRow, lastRow] = rowsWithin(map, within);
  const isLow = (node: number): boolean => {
    const row = Math.floor(node / columns);
    const column = node % columns;
    for (let r = Math.max(firstRow, row - 1); r <= Math.min(lastRow, row + 1); r += 1) {
      for (let c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c += 1) {
        if (values[r * columns + c]! < values[node]!) return false;
      }
    }
    return Number.isFinite(values[node]!);
  };
  const nodes: number[] = [];
  for (let node = firstRow * columns; node < (lastRow + 1) * columns; node += 1)
    if (isLow(node)) nodes.push(node);
  return nodes.sort((a, b) => values[a]! - values[b]!).slice(0, most);
}

function clamp(value: number, [least, most]: Range): number {
  return Math.min(most, Math.max(least, value));
}

/** Widest spacing of an axis; 0 for a single node. */
function spacing(axis: Float64Array): number {
  let widest = 0;
  for (let i = 1; i < axis.length; i += 1) widest = Math.max(widest, axis[i]! - axis[i - 1]!);
  return widest;
}

/** Looks around the best place so far at 24 places, moves to a better one or halves the step, until LAST_STEP. */
function descend(map: LockMap, within: Range, gapAt: Gap, start: WorstPlace): WorstPlace {
  const { travels, racks } = map;
  const rackRange: Range = [racks[0]!, racks.at(-1)!];
  let best = start;
  let up = spacing(travels);
  let across = spacing(racks);
  while (Math.max(up, across) > LAST_STEP) {
    const centre = best;
    for (const a of RING) {
      for (const b of RING) {
        if ((a === 0 && b === 0) || (b !== 0 && across === 0)) continue;
        const tried = gapAt(
          clamp(centre.travel + a * up, within),
          clamp(centre.rack + b * across, rackRange),
        );
        if (tried.value < best.value) best = tried;
      }
    }
    if (best === centre) {
      up /= 2;
      across /= 2;
    }
  }
  return best;
}

/** The part of a range of travel that the model's stops leave: what lies past them is drawn, but no wheel gets there. */
export function withinStops({ stops }: Model, [least, most]: Range): Range {
  const lower = stops?.droop === undefined ? least : Math.max(least, -stops.droop);
  const upper = stops?.bump === undefined ? most : Math.min(most, stops.bump);
  return lower <= upper ? [lower, upper] : [least, most];
}

/**
 * The least gap of a pair (or of the worst of all) over the range of a filled map, to 0.01 mm, and where it is; null where nothing is in
 * reach. It is the least that was found: the neighbourhoods of at most `mostStarts` low nodes are searched, no bound is
 * proven. `within` leaves out travel outside of it, mm.
 */
export function worstPlace(
  corner: Corner,
  map: LockMap,
  field: GapField,
  mostStarts: number = MOST_STARTS,
  within: Range = [map.travels[0]!, map.travels.at(-1)!],
): WorstPlace | null {
  if (corner.linkage.broken !== null) return null;
  const gapAt = gapOf(corner, field);
  const room = (STEEPEST * (spacing(map.travels) + spacing(map.racks))) / 2;
  let worst: WorstPlace | null = null;
  for (const node of lowNodes(map, within, mostStarts)) {
    if (worst !== null && map.gap[node]! > worst.value + room) break;
    const start = gapAt(clamp(map.lastTravel[node]!, within), map.lastRack[node]!);
    const found = descend(map, within, gapAt, start);
    if (worst === null || found.value < worst.value) worst = found;
  }
  return worst;
}
