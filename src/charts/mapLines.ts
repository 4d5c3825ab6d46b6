/** Contour lines on the map's paper, with their numbers along them. */
import { type Contour, contoursOf } from '../../solver/contours.ts';
import type { LockMap } from '../../solver/map.ts';
import { type MapFrame, xOfRack, yOfTravel } from './mapFrame.ts';

/** A box of paper that is taken: centre and half-size. */
interface Box {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly high: number;
}

export interface LineStyle {
  readonly colour: string;
  readonly width: number;
  readonly dash: readonly number[];
  /** A line under the line, that keeps it apart from any ground. */
  readonly halo?: string;
}

/** Where labels stand already, so that none covers another. */
export class LabelRoom {
  readonly #taken: Box[] = [];
  readonly #frame: MapFrame;

  constructor(frame: MapFrame) {
    this.#frame = frame;
  }

  take(x: number, y: number, wide: number, high: number): void {
    this.#taken.push({ x, y, wide, high });
  }

  isFree(x: number, y: number, wide: number, high: number): boolean {
    const { left, top, plotWidth, plotHeight } = this.#frame;
    if (x - wide < left + 2 || x + wide > left + plotWidth - 2) return false;
    if (y - high < top + 2 || y + high > top + plotHeight - 2) return false;
    return this.#taken.every(
      (box) => Math.abs(box.x - x) > box.wide + wide || Math.abs(box.y - y) > box.high + high,
    );
  }
}

/** The lines of one level, in pixels. */
export function linesAt(map: LockMap, level: number, frame: MapFrame): Contour[] {
  const grid = { xs: map.racks, ys: map.travels, values: map.gap };
  return contoursOf(grid, level).map(({ points, closed }) => ({
    closed,
    points: points.map((value, i) =>
      i % 2 === 0 ? xOfRack(frame, value) : yOfTravel(frame, value),
    ),
  }));
}

function trace(context: CanvasRenderingContext2D, { points, closed }: Contour): void {
  context.beginPath();
  for (let i = 0; i < points.length; i += 2) context.lineTo(points[i]!, points[i + 1]!);
  if (closed) context.closePath();
}

export function strokeLines(
  context: CanvasRenderingContext2D,
  lines: readonly Contour[],
  { colour, width, dash, halo }: LineStyle,
): void {
  context.lineJoin = 'round';
  for (const line of lines) {
    trace(context, line);
    if (halo !== undefined) {
      context.setLineDash([]);
      context.strokeStyle = halo;
      context.lineWidth = width + 2;
      context.stroke();
    }
    context.setLineDash([...dash]);
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.stroke();
  }
  context.setLineDash([]);
}

function lengthOf({ points }: Contour): number {
  let length = 0;
  for (let i = 2; i < points.length; i += 2) {
    length += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!);
  }
  return length;
}

/** Parts of a line's length to try a label at: the middle first. */
const TRIES = [0.5, 0.38, 0.62, 0.25, 0.75, 0.15, 0.85];

/** Writes `text` along the longest line, upright enough to read, where it has room. */
export function labelLines(
  context: CanvasRenderingContext2D,
  lines: readonly Contour[],
  text: string,
  room: LabelRoom,
  ink: string,
  halo: string,
): void {
  const half = context.measureText(text).width / 2;
  const line = [...lines].sort((a, b) => lengthOf(b) - lengthOf(a))[0];
  if (line === undefined || lengthOf(line) < 3 * half) return;
  const { points } = line;
  const count = points.length / 2;
  for (const share of TRIES) {
    const i = Math.min(count - 1, Math.floor(share * count));
    const from = Math.max(0, i - 2);
    const to = Math.min(count - 1, i + 2);
    const x = points[2 * i]!;
    const y = points[2 * i + 1]!;
    let turn = Math.atan2(
      points[2 * to + 1]! - points[2 * from + 1]!,
      points[2 * to]! - points[2 * from]!,
    );
    if (Math.abs(turn) > Math.PI / 2) turn -= Math.sign(turn) * Math.PI;
    const wide = Math.abs(Math.cos(turn)) * half + 7;
    const high = Math.abs(Math.sin(turn)) * half + 7;
    if (!room.isFree(x, y, wide, high)) continue;
    room.take(x, y, wide, high);
    context.save();
    context.translate(x, y);
    context.rotate(turn);
    writeWithHalo(context, text, 0, 0, ink, halo);
    context.restore();
    return;
  }
}

/** Text that stands off from whatever is under it. */
export function writeWithHalo(
  context: CanvasRenderingContext2D,
  text: string,
  x: number,
  y: number,
  ink: string,
  halo: string,
): void {
  context.lineJoin = 'round';
  context.lineWidth = 3.5;
  context.strokeStyle = halo;
  context.strokeText(text, x, y);
  context.fillStyle = ink;
  context.fillText(text, x, y);
}
