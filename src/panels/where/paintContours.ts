/** Lines of equal numbers, each with its number where there is room. */
import { type Contour, contoursOf } from '../../../solver/contours.ts';
import { EDGES } from './bands.ts';
import { type PaperFrame, xOf, yOf } from './paperFrame.ts';
import type { Pen, PlaceDrawing, Spot } from './placeDrawing.ts';
import { aimText } from './words.ts';

/** Strokes a line of places. */
export function trace(pen: Pen, frame: PaperFrame, { points, closed }: Contour): void {
  pen.beginPath();
  for (let i = 0; i < points.length; i += 2) {
    pen.lineTo(xOf(frame, points[i]!), yOf(frame, points[i + 1]!));
  }
  if (closed) pen.closePath();
  pen.stroke();
}

/** Words with a rim of paper, so that they are read over anything. */
function words(pen: Pen, { inks }: PlaceDrawing, text: string, x: number, y: number, ink: string) {
  pen.lineJoin = 'round';
  pen.lineWidth = 4;
  pen.strokeStyle = inks.card;
  pen.setLineDash([]);
  pen.strokeText(text, x, y);
  pen.fillStyle = ink;
  pen.fillText(text, x, y);
}

/** Least room between two numbers on contours, px, and least size of a line that has room for one. */
const APART = 46;
const ROOMY = 110;

/** Height and width of what a line goes round, px together. */
function sizeOf({ scale }: PaperFrame, { points }: Contour): number {
  const least = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const most = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  points.forEach((value, i) => {
    least[i % 2] = Math.min(least[i % 2]!, value);
    most[i % 2] = Math.max(most[i % 2]!, value);
  });
  return scale * (most[0]! - least[0]! + most[1]! - least[1]!);
}

/** A place on the longest line of a contour that is well inside the plot and away from other words. */
function labelSpot(
  frame: PaperFrame,
  lines: readonly Contour[],
  taken: readonly Spot[],
): Spot | null {
  const longest = [...lines].sort((a, b) => b.points.length - a.points.length)[0];
  if (longest === undefined || sizeOf(frame, longest) < ROOMY) return null;
  const count = longest.points.length / 2;
  const room = (x: number, y: number) =>
    Math.min(
      x - frame.left - 34,
      frame.left + frame.size - 34 - x,
      y - frame.top - 16,
      frame.top + frame.size - 16 - y,
      ...taken.map(([a, b]) => Math.hypot(a - x, b - y) - APART),
    );
  let best: Spot | null = null;
  let most = 0;
  for (let i = 0; i < count; i += 1) {
    const spot = [
      xOf(frame, longest.points[2 * i]!),
      yOf(frame, longest.points[2 * i + 1]!),
    ] as const;
    const here = Math.min(60, room(...spot));
    if (here > most) [most, best] = [here, spot];
  }
  return best;
}

/** Contours at half the limit, the limit, heavier, and at the bands' other edges. */
export function drawContours(pen: Pen, drawing: PlaceDrawing): void {
  const taken: Spot[] = [];
  const { frame, picture, limit, aim, unit, inks } = drawing;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  for (const edge of [0.5, ...EDGES]) {
    const lines = contoursOf(picture, limit * edge);
    pen.strokeStyle = inks.ink;
    pen.lineWidth = edge === 1 ? 2.6 : 1;
    pen.setLineDash(edge < 1 ? [3, 3] : []);
    for (const line of lines) trace(pen, frame, line);
    const spot = labelSpot(frame, lines, taken);
    if (spot === null) continue;
    taken.push(spot);
    pen.font = `${edge === 1 ? 600 : 400} 13px ${inks.font}`;
    words(pen, drawing, aimText(limit * edge, aim, unit).replace(/\/.*/, ''), ...spot, inks.ink);
  }
  pen.setLineDash([]);
}
