/** Marks over the picture: the ideal line and point, the reach, the present place and the best ones. */
import { contoursOf } from '../../../solver/contours.ts';
import { type IdealLine, PLANE_AXES, type Vector3 } from '../../../solver/index.ts';
import type { Inks } from '../../charts/paper.ts';
import { trace } from './paintContours.ts';
import { type PaperFrame, xOf, yOf } from './paperFrame.ts';
import type { Pen, PlaceDrawing, Spot } from './placeDrawing.ts';

/** Ends of the ideal line at the plot's edges, in px. */
function lineEnds(frame: PaperFrame, { a, b, c }: IdealLine): readonly [Spot, Spot] {
  const middle: Spot = [
    frame.least[0] + frame.size / frame.scale / 2,
    frame.least[1] + frame.size / frame.scale / 2,
  ];
  const off = a * middle[0] + b * middle[1] - c;
  const reach = (2 * frame.size) / frame.scale;
  const end = (way: number): Spot => [
    xOf(frame, middle[0] - a * off - b * way),
    yOf(frame, middle[1] - b * off + a * way),
  ];
  return [end(-reach), end(reach)];
}

const IDEAL_DASH = [12, 4, 2, 4];

/** The ideal line and point; without a straight line, the zero line of the picture's rates. */
export function drawIdeal(pen: Pen, drawing: PlaceDrawing): void {
  const { frame, ideal, picture, inks } = drawing;
  pen.strokeStyle = inks.accent;
  pen.lineWidth = 2.4;
  pen.setLineDash(IDEAL_DASH);
  if (ideal === null) {
    const zero = contoursOf({ ...picture, values: picture.rates }, 0);
    for (const line of zero) trace(pen, frame, line);
  } else if (ideal.line !== null) {
    const [from, to] = lineEnds(frame, ideal.line);
    pen.beginPath();
    pen.moveTo(...from);
    pen.lineTo(...to);
    pen.stroke();
  }
  pen.setLineDash([]);
  if (ideal?.point == null) return;
  const [x, y] = [xOf(frame, ideal.point[0]), yOf(frame, ideal.point[1])];
  for (const radius of [4, 8]) {
    pen.beginPath();
    pen.arc(x, y, radius, 0, 2 * Math.PI);
    pen.stroke();
  }
}

/** How far the point may move. */
export function drawReach(pen: Pen, { frame, reach, present, inks }: PlaceDrawing): void {
  const [i, j] = PLANE_AXES[frame.plane];
  const [x, y] = [present[i]!, present[j]!];
  const across = [xOf(frame, x - reach.first.minus), xOf(frame, x + reach.first.plus)];
  const up = [yOf(frame, y - reach.second.minus), yOf(frame, y + reach.second.plus)];
  pen.strokeStyle = inks.ink;
  pen.lineWidth = 1.2;
  pen.setLineDash([6, 4]);
  const [left, top] = [Math.min(...across), Math.min(...up)];
  pen.strokeRect(left, top, Math.max(...across) - left, Math.max(...up) - top);
  pen.setLineDash([]);
}

/** A mark with a rim of paper: dot, ring, or diamond. */
function mark(pen: Pen, inks: Inks, [x, y]: Spot, kind: 'dot' | 'ring' | 'diamond'): void {
  pen.beginPath();
  if (kind === 'diamond') {
    for (const [dx, dy] of [
      [0, -8],
      [8, 0],
      [0, 8],
      [-8, 0],
    ] as const)
      pen.lineTo(x + dx, y + dy);
    pen.closePath();
  } else pen.arc(x, y, 4.5, 0, 2 * Math.PI);
  pen.strokeStyle = inks.card;
  pen.lineWidth = 5;
  pen.stroke();
  pen.strokeStyle = kind === 'ring' ? inks.held : inks.ink;
  pen.lineWidth = 2;
  pen.stroke();
  pen.fillStyle = kind === 'dot' ? inks.ink : inks.card;
  pen.fill();
}

/** The present place with its uncertainty, and where the held design has it. */
export function drawPresent(pen: Pen, drawing: PlaceDrawing): void {
  const { frame, known, held, inks } = drawing;
  const [i, j] = PLANE_AXES[frame.plane];
  const at = (place: Vector3): Spot => [xOf(frame, place[i]!), yOf(frame, place[j]!)];
  const [x, y] = at(drawing.present);
  if (known !== null) {
    pen.strokeStyle = inks.ink;
    pen.lineWidth = 1.2;
    for (const count of [1, 2]) {
      pen.setLineDash(count === 1 ? [] : [4, 3]);
      pen.beginPath();
      pen.arc(x, y, count * known.sigma * frame.scale, 0, 2 * Math.PI);
      pen.stroke();
    }
    pen.setLineDash([]);
  }
  if (held !== null) mark(pen, inks, at(held), 'ring');
  mark(pen, inks, [x, y], 'dot');
}

/** Best places of the picture and of the reach, by their letters. */
export function drawBests(pen: Pen, { frame, bests: list, inks }: PlaceDrawing): void {
  const marked = list.filter(({ room }) => room === 'picture' || room === 'reach').reverse();
  for (const { at, room } of marked) {
    const spot: Spot = [xOf(frame, at[0]), yOf(frame, at[1])];
    mark(pen, inks, spot, 'diamond');
    pen.fillStyle = inks.ink;
    pen.font = `600 10.5px ${inks.font}`;
    pen.textAlign = 'center';
    pen.textBaseline = 'middle';
    pen.fillText(room === 'picture' ? 'A' : 'B', spot[0], spot[1] + 0.5);
  }
}
