/** Lower bounds of the signed distance to a section for everything inside a rectangle or a triangle of its (s, ρ) plane. */
import { isWithin, type Outline, signedApart } from './outline.ts';

/** Squared distance between two intervals. */
function between(low: number, high: number, otherLow: number, otherHigh: number): number {
  const gap = Math.max(0, otherLow - high, low - otherHigh);
  return gap * gap;
}

/** The greatest of the hull's half-planes over the place that is least in each, `halfS` and `halfRadius` about (s, ρ). */
function hullBound(
  { hull }: Outline,
  s: number,
  radius: number,
  halfS: number,
  halfRadius: number,
): number {
  let least = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < hull.length; at += 3) {
    const ns = hull[at]!;
    const nr = hull[at + 1]!;
    const lowest = Math.abs(ns) * halfS + Math.abs(nr) * halfRadius;
    least = Math.max(least, ns * s + nr * radius - hull[at + 2]! - lowest);
  }
  return least;
}

/** Squared distance of a rectangle to the nearest of the rectangles about the section's edges. */
function edgesBound(
  { line }: Outline,
  sLow: number,
  sHigh: number,
  low: number,
  high: number,
): number {
  let squared = Number.POSITIVE_INFINITY;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const s0 = line[at]!;
    const s1 = line[at + 2]!;
    const r0 = line[at + 1]!;
    const r1 = line[at + 3]!;
    const across = between(sLow, sHigh, Math.min(s0, s1), Math.max(s0, s1));
    const up = between(low, high, Math.min(r0, r1), Math.max(r0, r1));
    squared = Math.min(squared, across + up);
  }
  return squared;
}

/**
 * Lower bound of the signed distance for every point of a rectangle of the section's plane. Exact where the nearest
 * stretch of the section is level or upright, and never more than the rectangle's size too low. A bound of `enough` or
 * more is not made any better.
 */
export function boundOfBox(
  outline: Outline,
  sLow: number,
  sHigh: number,
  low: number,
  high: number,
  enough: number,
): number {
  const { half, solid, frame } = outline;
  const wanted = enough + half;
  const outer = between(sLow, sHigh, frame[0], frame[1]) + between(low, high, frame[2], frame[3]);
  if (outer > 0 && outer >= wanted * wanted) return Math.sqrt(outer) - half;
  const s = (sLow + sHigh) / 2;
  const radius = (low + high) / 2;
  const halfS = (sHigh - sLow) / 2;
  const halfRadius = (high - low) / 2;
  let least = hullBound(outline, s, radius, halfS, halfRadius);
  if (least >= wanted) return least - half;
  const squared = edgesBound(outline, sLow, sHigh, low, high);
  // Beside all edges the rectangle lies wholly inside or wholly outside.
  if (!solid || outer > 0 || (squared > 0 && !isWithin(outline, s, radius))) {
    least = Math.max(least, Math.sqrt(squared));
    if (least >= wanted) return least - half;
  }
  const size = Math.sqrt(halfS * halfS + halfRadius * halfRadius);
  return Math.max(least - half, signedApart(outline, s, radius) - size);
}

/** Squared distance from a point to a segment. */
function toSegment(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const ex = bx - ax;
  const ey = by - ay;
  const along = ((px - ax) * ex + (py - ay) * ey) / (ex * ex + ey * ey || 1);
  const t = Math.min(1, Math.max(0, along));
  const dx = px - ax - t * ex;
  const dy = py - ay - t * ey;
  return dx * dx + dy * dy;
}

function side(ax: number, ay: number, bx: number, by: number, px: number, py: number): number {
  return (bx - ax) * (py - ay) - (by - ay) * (px - ax);
}

/** Squared distance of two segments: 0 where they cross. */
function betweenSegments(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): number {
  const crosses =
    side(ax, ay, bx, by, cx, cy) > 0 !== side(ax, ay, bx, by, dx, dy) > 0 &&
    side(cx, cy, dx, dy, ax, ay) > 0 !== side(cx, cy, dx, dy, bx, by) > 0;
  if (crosses) return 0;
  return Math.min(
    toSegment(ax, ay, cx, cy, dx, dy),
    toSegment(bx, by, cx, cy, dx, dy),
    toSegment(cx, cy, ax, ay, bx, by),
    toSegment(dx, dy, ax, ay, bx, by),
  );
}

/** Whether the triangle's three sides all have the point on one side. */
function holds(corners: Float64Array, px: number, py: number): boolean {
  const first = side(corners[0]!, corners[1]!, corners[2]!, corners[3]!, px, py) > 0;
  return (
    first === side(corners[2]!, corners[3]!, corners[4]!, corners[5]!, px, py) > 0 &&
    first === side(corners[4]!, corners[5]!, corners[0]!, corners[1]!, px, py) > 0
  );
}

/** Distance of a triangle [s, ρ, s, ρ, s, ρ] and the section's line: 0 where they meet. */
function triangleApart({ line }: Outline, corners: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at + 3 < line.length; at += 2) {
    const cx = line[at]!;
    const cy = line[at + 1]!;
    if (holds(corners, cx, cy)) return 0;
    for (let i = 0; i < 6; i += 2) {
      const next = i === 4 ? 0 : i + 2;
      const squared = betweenSegments(
        corners[i]!,
        corners[i + 1]!,
        corners[next]!,
        corners[next + 1]!,
        cx,
        cy,
        line[at + 2]!,
        line[at + 3]!,
      );
      if (squared < least) least = squared;
    }
  }
  return Math.sqrt(least);
}

/** Heights of the triangle's corners over every half-plane of the hull, three each. */
const _heights = new Float64Array(3 * 64);

/**
 * Lower bound of the greatest of the hull's half-planes over a triangle: the best that one of them gives, or a mixture of
 * two, which holds where two sides of a solid are equally near.
 */
function ridgeBound({ hull }: Outline, corners: Float64Array): number {
  const count = Math.min(hull.length / 3, 64);
  let best = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i += 1) {
    for (let j = 0; j < 3; j += 1) {
      _heights[3 * i + j] =
        hull[3 * i]! * corners[2 * j]! + hull[3 * i + 1]! * corners[2 * j + 1]! - hull[3 * i + 2]!;
    }
    best = Math.max(best, mixed(i, i, 1));
  }
  for (let i = 0; i < count; i += 1) {
    for (let k = 0; k < i; k += 1) best = Math.max(best, bestMixture(i, k));
  }
  return best;
}

/** The least over the corners of `share` of one half-plane's height and the rest of another's. */
function mixed(i: number, k: number, share: number): number {
  const h = _heights;
  const rest = 1 - share;
  return Math.min(
    share * h[3 * i]! + rest * h[3 * k]!,
    share * h[3 * i + 1]! + rest * h[3 * k + 1]!,
    share * h[3 * i + 2]! + rest * h[3 * k + 2]!,
  );
}

/** The least over the corners is concave in the share: its greatest lies where two corners' heights are equal. */
function bestMixture(i: number, k: number): number {
  const h = _heights;
  let best = Number.NEGATIVE_INFINITY;
  for (let corner = 0; corner < 3; corner += 1) {
    const next = corner === 2 ? 0 : corner + 1;
    const first = h[3 * i + corner]! - h[3 * i + next]!;
    const second = h[3 * k + corner]! - h[3 * k + next]!;
    const share = second / (second - first);
    if (share > 0 && share < 1) best = Math.max(best, mixed(i, k, share));
  }
  return best;
}

/** Lower bound of the signed distance for every point of a triangle [s, ρ, s, ρ, s, ρ] of the section's plane. */
export function boundOfTriangle(outline: Outline, corners: Float64Array): number {
  const { half, solid } = outline;
  const s = (corners[0]! + corners[2]! + corners[4]!) / 3;
  const radius = (corners[1]! + corners[3]! + corners[5]!) / 3;
  let size = 0;
  for (let i = 0; i < 6; i += 2) {
    size = Math.max(size, Math.hypot(corners[i]! - s, corners[i + 1]! - radius));
  }
  let least = signedApart(outline, s, radius) + half - size;
  const apart = triangleApart(outline, corners);
  if (!solid || (apart > 0 && !isWithin(outline, s, radius))) least = Math.max(least, apart);
  if (solid) least = Math.max(least, ridgeBound(outline, corners));
  return least - half;
}
