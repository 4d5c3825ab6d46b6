/** A dimension between two spots: extension lines, arrows, and its number along the line (ISO 129-1). */
import { type Mark, type Spot, stroke, words } from './marks.ts';

const ARROW = 3;
const ARROW_HALF = 0.5;
const GAP = 1.5;
const BEYOND = 2;
export const FIGURE = 3.5;

function arrow([x, y]: Spot, [ux, uy]: Spot): Mark {
  const [bx, by] = [x - ARROW * ux, y - ARROW * uy];
  return stroke(
    'dimension',
    [bx - ARROW_HALF * uy, by + ARROW_HALF * ux],
    [x, y],
    [bx + ARROW_HALF * uy, by - ARROW_HALF * ux],
  );
}

/** Keeps words from standing on their head: −90 < turn ≤ 90. */
function upright(turn: number): number {
  if (turn > 90) return turn - 180;
  return turn <= -90 ? turn + 180 : turn;
}

/**
 * The distance from a to b along the direction of `along` (default: straight from a to b), its line `aside` mm to the
 * left of that direction from the farther of both.
 */
export function dimension(a: Spot, b: Spot, aside: number, text: string, along?: Spot): Mark[] {
  const [dx, dy] = along ?? [b[0] - a[0], b[1] - a[1]];
  const size = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / size, dy / size];
  const [nx, ny] = [-uy, ux];
  const offset = (spot: Spot): number => spot[0] * nx + spot[1] * ny;
  const level =
    aside > 0 ? Math.max(offset(a), offset(b)) + aside : Math.min(offset(a), offset(b)) + aside;
  const onLine = (spot: Spot): Spot => {
    const way = level - offset(spot);
    return [spot[0] + way * nx, spot[1] + way * ny];
  };
  const sign = Math.sign(aside) || 1;
  const extension = (spot: Spot): Mark => {
    const [ex, ey] = onLine(spot);
    return stroke(
      'dimension',
      [spot[0] + sign * GAP * nx, spot[1] + sign * GAP * ny],
      [ex + sign * BEYOND * nx, ey + sign * BEYOND * ny],
    );
  };
  const [from, to] = [onLine(a), onLine(b)];
  const turn = upright((Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI);
  const lift = 1.2;
  const radians = (turn * Math.PI) / 180;
  const middle: Spot = [
    (from[0] + to[0]) / 2 - lift * Math.sin(radians),
    (from[1] + to[1]) / 2 + lift * Math.cos(radians),
  ];
  const way: Spot = [to[0] - from[0], to[1] - from[1]];
  const span = Math.hypot(way[0], way[1]) || 1;
  const unitWay: Spot = [way[0] / span, way[1] / span];
  return [
    extension(a),
    extension(b),
    stroke('dimension', from, to),
    arrow(to, unitWay),
    arrow(from, [-unitWay[0], -unitWay[1]]),
    words('dimension', middle, text, FIGURE, 'middle', turn),
  ];
}
