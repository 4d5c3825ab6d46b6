/** The part of travel × lock that can really be used, on the map: its edge, by what stops the wheel there. */
import type { UsableRegion } from '../../solver/index.ts';
import { type MapFrame, xOfRack, yOfTravel } from './mapFrame.ts';
import { type LabelRoom, writeWithHalo } from './mapLines.ts';
import type { Inks } from './paper.ts';

/** A piece of the edge in pixels: x, y, x, y, … */
function onPaper(points: Float64Array, frame: MapFrame): number[] {
  return Array.from(points, (value, i) =>
    i % 2 === 0 ? xOfRack(frame, value) : yOfTravel(frame, value),
  );
}

function trace(context: CanvasRenderingContext2D, points: readonly number[]): void {
  context.beginPath();
  for (let i = 0; i < points.length; i += 2) context.lineTo(points[i]!, points[i + 1]!);
}

function lengthOf(points: readonly number[]): number {
  let length = 0;
  for (let i = 2; i < points.length; i += 2)
    length += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!);
  return length;
}

/** Places along a piece to try its words at, and how far inside of it, px. */
const TRIES = [0.5, 0.3, 0.7, 0.15, 0.85];
const ASIDE = [0, 14, -14];

function label(
  context: CanvasRenderingContext2D,
  points: readonly number[],
  words: string,
  room: LabelRoom,
  inks: Inks,
): void {
  const half = context.measureText(words).width / 2 + 3;
  const count = points.length / 2;
  for (const share of TRIES) {
    const i = Math.min(count - 1, Math.floor(share * count));
    for (const aside of ASIDE) {
      const [x, y] = [points[2 * i]!, points[2 * i + 1]! + aside];
      if (!room.isFree(x, y, half, 8)) continue;
      room.take(x, y, half, 8);
      writeWithHalo(context, words, x, y, inks.ink, inks.card);
      return;
    }
  }
}

export function drawUsable(
  context: CanvasRenderingContext2D,
  region: UsableRegion,
  frame: MapFrame,
  room: LabelRoom,
  inks: Inks,
): void {
  const pieces = region.edge.map(({ margin, points }) => ({
    words: margin?.label ?? '',
    isLimit: margin !== null,
    points: onPaper(points, frame),
  }));
  context.save();
  context.lineJoin = 'round';
  context.lineCap = 'round';
  for (const [colour, width] of [
    [inks.card, 6],
    [inks.ink, 3],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = width;
    for (const { points, isLimit } of pieces) {
      if (!isLimit) continue;
      trace(context, points);
      context.stroke();
    }
  }
  context.font = `600 ${12.5 * frame.type}px ${inks.font}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  const named = new Set<string>();
  for (const { words, points } of [...pieces].sort(
    (a, b) => lengthOf(b.points) - lengthOf(a.points),
  )) {
    if (words === '' || named.has(words)) continue;
    named.add(words);
    label(context, points, words, room, inks);
  }
  context.restore();
}
