/** On the map of the worst of all pairs: where one pair takes over from another, and which is worst where. */
import { pairWords } from '../words/parts.ts';
import { xOfRack, yOfTravel } from './mapFrame.ts';
import { type LabelRoom, writeWithHalo } from './mapLines.ts';
import type { MapDrawing } from './mapPaint.ts';

/** Parts of the map smaller than this are not named. */
const LEAST_SHARE = 0.03;

/** Half-way between neighbouring nodes of an axis, the ends where there is no neighbour. */
function middle(at: (i: number) => number, i: number, last: number): number {
  if (i < 0) return at(0);
  return i >= last ? at(last) : (at(i) + at(i + 1)) / 2;
}

/** Half-way lines between nodes whose worst pairs differ. */
function borders({ frame, present }: MapDrawing): Path2D {
  const { travels, racks, which } = present.map;
  const columns = racks.length;
  const rows = travels.length;
  const path = new Path2D();
  const x = (column: number): number => xOfRack(frame, racks[column]!);
  const y = (row: number): number => yOfTravel(frame, travels[row]!);
  for (let node = 0; node < which.length; node += 1) {
    const row = Math.floor(node / columns);
    const column = node % columns;
    if (column + 1 < columns && which[node + 1] !== which[node]) {
      const at = middle(x, column, columns - 1);
      path.moveTo(at, middle(y, row - 1, rows - 1));
      path.lineTo(at, middle(y, row, rows - 1));
    }
    if (row + 1 < rows && which[node + columns] !== which[node]) {
      const at = middle(y, row, rows - 1);
      path.moveTo(middle(x, column - 1, columns - 1), at);
      path.lineTo(middle(x, column, columns - 1), at);
    }
  }
  return path;
}

interface Region {
  readonly pair: number;
  count: number;
  /** Sums of the nodes' places in pixels. */
  x: number;
  y: number;
}

/** Reached nodes by their worst pair, the largest share first. */
function regionsOf({ present, frame }: MapDrawing): readonly Region[] {
  const { which, reached, racks, travels } = present.map;
  const regions = new Map<number, Region>();
  which.forEach((pair, node) => {
    if (reached[node] !== 1) return;
    const region = regions.get(pair) ?? { pair, count: 0, x: 0, y: 0 };
    region.count += 1;
    region.x += xOfRack(frame, racks[node % racks.length]!);
    region.y += yOfTravel(frame, travels[Math.floor(node / racks.length)]!);
    regions.set(pair, region);
  });
  return [...regions.values()]
    .filter(({ count }) => count > LEAST_SHARE * which.length)
    .sort((a, b) => b.count - a.count);
}

/** Tries for the words' height from the region's middle, px at type 1. */
const SHIFTS = [0, -18, 18, -36, 36];

export function drawRegions(
  context: CanvasRenderingContext2D,
  drawing: MapDrawing,
  room: LabelRoom,
): void {
  const { frame, inks, present } = drawing;
  const { left, plotWidth, type } = frame;
  context.save();
  context.strokeStyle = inks.ink;
  context.lineWidth = 1;
  context.setLineDash([1.5, 2.5]);
  context.stroke(borders(drawing));
  context.restore();
  context.font = `600 ${12.5 * type}px ${inks.font}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  for (const { pair, count, x: sumX, y: sumY } of regionsOf(drawing)) {
    const words = pairWords(present.pairs[pair]!);
    const half = context.measureText(words).width / 2 + 3;
    const x = Math.min(left + plotWidth - half - 3, Math.max(left + half + 3, sumX / count));
    const shift = SHIFTS.find((dy) => room.isFree(x, sumY / count + dy * type, half, 8 * type));
    if (shift === undefined) continue;
    const y = sumY / count + shift * type;
    room.take(x, y, half, 8 * type);
    writeWithHalo(context, words, x, y, inks.ink, inks.card);
  }
}
