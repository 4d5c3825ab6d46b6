/**
 * Numbers go in and out through buffers only: a number handed to or from a function that is not inlined is boxed.
 *
 * A circle as 13 numbers in a buffer: centre (3), two perpendicular unit directions p and q in its plane (3 + 3), the
 * unit axis p × q (3), radius. Its point at angle θ is centre + radius·(cos θ·p + sin θ·q).
 * A circle with its sphere has two more: the sphere's radius squared, and ±1 for which of their two points is meant.
 */
import {
  addScaled,
  cross,
  distance,
  length,
  rejectFrom,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../math/vec3.ts';

const CENTRE = 0;
const P = 3;
const Q = 6;
const AXIS = 9;
/** Where the radius stands in a circle's 13 numbers. */
export const RADIUS = 12;
/** Places of the sphere's radius squared and of the side in a circle with its sphere, and how long that is. */
export const SPHERE = 13;
export const SIDE = 14;
export const CIRCLE_WITH_SPHERE = 15;
export const CIRCLE_AXIS: number = AXIS;

/**
 * Writes the circle on which a point keeps its distances to two pivots (two spheres' intersection), with θ = 0 at the
 * point of the circle nearest to `towards`.
 * Returns false, with nothing written, when the distances cannot both hold.
 */
export function writeCircle(
  out: Float64Array,
  at: number,
  front: Vector3,
  rear: Vector3,
  toFront: number,
  toRear: number,
  towards: Vector3,
): boolean {
  const between = distance(front, rear);
  if (!(between > 0)) return false;
  const axis = scale(subtract(front, rear), 1 / between);
  const along = (toRear * toRear - toFront * toFront + between * between) / (2 * between);
  const squared = toRear * toRear - along * along;
  if (!(squared > 0)) return false;
  const centre = addScaled(rear, axis, along);
  const p = unit(rejectFrom(subtract(towards, centre), axis));
  if (length(p) === 0) return false;
  const q = cross(axis, p);
  out.set(centre, at + CENTRE);
  out.set(p, at + P);
  out.set(q, at + Q);
  out.set(axis, at + AXIS);
  out[at + RADIUS] = Math.sqrt(squared);
  return true;
}

/** Writes the circle's point for the angle whose cosine and sine stand at `angle` of the pose. */
export function circlePoint(
  circle: Float64Array,
  at: number,
  pose: Float64Array,
  angle: number,
  to: number,
): void {
  const c = circle[at + RADIUS]! * pose[angle]!;
  const s = circle[at + RADIUS]! * pose[angle + 1]!;
  pose[to] = circle[at]! + c * circle[at + 3]! + s * circle[at + 6]!;
  pose[to + 1] = circle[at + 1]! + c * circle[at + 4]! + s * circle[at + 7]!;
  pose[to + 2] = circle[at + 2]! + c * circle[at + 5]! + s * circle[at + 8]!;
}

/** Writes the derivative of the circle's point with respect to its angle. */
export function circleVelocity(
  circle: Float64Array,
  at: number,
  pose: Float64Array,
  angle: number,
  out: Float64Array,
  to: number,
): void {
  const c = circle[at + RADIUS]! * pose[angle]!;
  const s = circle[at + RADIUS]! * pose[angle + 1]!;
  out[to] = c * circle[at + 6]! - s * circle[at + 3]!;
  out[to + 1] = c * circle[at + 7]! - s * circle[at + 4]!;
  out[to + 2] = c * circle[at + 8]! - s * circle[at + 5]!;
}

/**
 * Circle with sphere, closed form: the point X of the circle with |X − P| = r, P read from `pose` at `centre`.
 * With d = P − circle centre the condition is E cos φ + F sin φ = G, E = d·p, F = d·q, G = (ρ² + d² − r²)/(2ρ); the
 * record's side picks one of its two answers. Writes at `room` 1 − G²/(E² + F²): 0 where both answers meet (singular),
 * negative out of reach. In reach it also writes cos φ, sin φ at `angle` and X at `to`, and returns true.
 */
export function circleMeetsSphere(
  circle: Float64Array,
  at: number,
  pose: Float64Array,
  centre: number,
  to: number,
  angle: number,
  room: number,
): boolean {
  const dx = pose[centre]! - circle[at]!;
  const dy = pose[centre + 1]! - circle[at + 1]!;
  const dz = pose[centre + 2]! - circle[at + 2]!;
  const e = dx * circle[at + 3]! + dy * circle[at + 4]! + dz * circle[at + 5]!;
  const f = dx * circle[at + 6]! + dy * circle[at + 7]! + dz * circle[at + 8]!;
  const radius = circle[at + RADIUS]!;
  const g = (radius * radius + dx * dx + dy * dy + dz * dz - circle[at + SPHERE]!) / (2 * radius);
  const squared = e * e + f * f;
  const left = squared - g * g;
  if (!(left > 0)) {
    pose[room] = squared > 0 ? left / squared : -1;
    return false;
  }
  const root = circle[at + SIDE]! * Math.sqrt(left);
  const inverse = 1 / squared;
  pose[room] = left * inverse;
  pose[angle] = (e * g - f * root) * inverse;
  pose[angle + 1] = (f * g + e * root) * inverse;
  circlePoint(circle, at, pose, angle, to);
  return true;
}

/**
 * Rate of the angle of `circleMeetsSphere`'s answer, written at `rate`, when the sphere's centre P moves with the
 * velocity read at `velocity`: (X − P)·(X′ − P′) = 0 gives φ′ = k·P′ / (k·∂X/∂φ), k = X − P. Writes X′ at `to`.
 */
export function circleMeetsSphereRate(
  circle: Float64Array,
  at: number,
  pose: Float64Array,
  centre: number,
  velocity: number,
  point: number,
  angle: number,
  to: number,
  rate: number,
): void {
  const kx = pose[point]! - pose[centre]!;
  const ky = pose[point + 1]! - pose[centre + 1]!;
  const kz = pose[point + 2]! - pose[centre + 2]!;
  const c = circle[at + RADIUS]! * pose[angle]!;
  const s = circle[at + RADIUS]! * pose[angle + 1]!;
  const tx = c * circle[at + 6]! - s * circle[at + 3]!;
  const ty = c * circle[at + 7]! - s * circle[at + 4]!;
  const tz = c * circle[at + 8]! - s * circle[at + 5]!;
  const turn =
    (kx * pose[velocity]! + ky * pose[velocity + 1]! + kz * pose[velocity + 2]!) /
    (kx * tx + ky * ty + kz * tz);
  pose[to] = tx * turn;
  pose[to + 1] = ty * turn;
  pose[to + 2] = tz * turn;
  pose[rate] = turn;
}
