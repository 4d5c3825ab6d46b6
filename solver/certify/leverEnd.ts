/** The anti-roll bar's lever end over a cell: on its circle, at the drop link's length from the carried joint. */
import { CIRCLE_AXIS, circleVelocity, RADIUS, SIDE, SPHERE } from '../linkage/circle.ts';
import {
  crossed,
  difference,
  dot,
  inverse,
  multiple,
  plus,
  product,
  root,
  scaled,
  scaledTriple,
  sloping,
  still,
  sum,
  swingOf,
  type Taylor,
  type TaylorVector,
  times,
  triple,
  tripleAt,
} from './taylor.ts';

/** Where the link cannot reach its lever anywhere in a cell. */
export const NOWHERE = 'nowhere';

/**
 * From the lever end placed in the centre's pose along its tangent: what the link's length then lacks, over how fast it
 * grows with the lever's angle, bounds how far the angle strays. Null where the link may be stretched.
 */
function besideTangent(
  circle: Float64Array,
  pose: Float64Array,
  at: { readonly angle: number; readonly end: number },
  link: TaylorVector,
): TaylorVector | null {
  circleVelocity(circle, 0, pose, at.angle, _tangent, 0);
  const tangent = tripleAt(_tangent, 0);
  const end = tripleAt(pose, at.end);
  const rod = triple(end.x - link.x, end.y - link.y, end.z - link.z);
  const growth = rod.x * tangent.x + rod.y * tangent.y + rod.z * tangent.z;
  if (growth === 0) return null;
  const a = (rod.x * link.ax + rod.y * link.ay + rod.z * link.az) / growth;
  const b = (rod.x * link.bx + rod.y * link.by + rod.z * link.bz) / growth;
  const radius = circle[RADIUS]!;
  const bend = crossed(tripleAt(circle, CIRCLE_AXIS), tangent);
  const endOver = (strays: number): TaylorVector => {
    const widest = Math.abs(a) + Math.abs(b) + strays;
    const rest = radius * (strays + (widest * widest) / 2);
    return sloping(end, scaledTriple(a, tangent), scaledTriple(b, tangent), rest);
  };
  const tangentOver = (strays: number): TaylorVector => {
    const widest = Math.abs(a) + Math.abs(b) + strays;
    const rest = radius * (strays + (widest * widest) / 2);
    return sloping(tangent, scaledTriple(a, bend), scaledTriple(b, bend), rest);
  };
  const rodOver = difference(endOver(0), link);
  const lacks = dot(rodOver, rodOver);
  const short = Math.abs(lacks.mid - circle[SPHERE]!) + swingOf(lacks);
  const straysWithin = (strays: number): number => {
    const grows = dot(difference(endOver(strays), link), tangentOver(strays));
    const least = Math.abs(grows.mid) - swingOf(grows);
    return least > 0 ? short / (2 * least) : Number.POSITIVE_INFINITY;
  };
  const guess = GUESS * straysWithin(0);
  return guess < WIDEST && straysWithin(guess) <= guess ? endOver(guess) : null;
}

const GUESS = 1.3;
/** An angle that may stray farther is not worth a try, rad. */
const WIDEST = 0.5;
const _tangent = new Float64Array(3);

/** √v of what of v is not negative. */
function rootFromZero(v: Taylor): Taylor {
  const half = Math.sqrt(v.mid + swingOf(v)) / 2;
  return { mid: half, a: 0, b: 0, rest: half };
}

/** The closed form of circle with sphere (linkage/circle.ts), which holds for a stretched link too, if loosely. */
function byClosedForm(
  circle: Float64Array,
  link: TaylorVector,
): TaylorVector | typeof NOWHERE | null {
  const centre = still(tripleAt(circle, 0));
  const p = still(tripleAt(circle, 3));
  const q = still(tripleAt(circle, 6));
  const radius = circle[RADIUS]!;
  const d = difference(link, centre);
  const e = dot(d, p);
  const f = dot(d, q);
  const rest: Taylor = { mid: radius * radius - circle[SPHERE]!, a: 0, b: 0, rest: 0 };
  const g = multiple(0.5 / radius, plus(dot(d, d), rest));
  const squared = plus(product(e, e), product(f, f));
  const left = plus(squared, multiple(-1, product(g, g)));
  const inverseSquared = inverse(squared);
  if (left.mid + swingOf(left) <= 0) return NOWHERE;
  if (inverseSquared === null) return null;
  const across = multiple(circle[SIDE]!, root(left) ?? rootFromZero(left));
  const cos = product(plus(product(e, g), multiple(-1, product(f, across))), inverseSquared);
  const sin = product(plus(product(f, g), product(e, across)), inverseSquared);
  return sum(centre, scaled(radius, sum(times(cos, p), times(sin, q))));
}

/**
 * Encloses the lever end. `circle` is its circle with the link's sphere, `link` the carried joint over the cell; the pose
 * is the centre's, with the lever placed, `at` the places of its angle, of its end and of the link's room. Null where the
 * link may meet the bar's axis.
 */
export function leverEndOver(
  circle: Float64Array,
  pose: Float64Array,
  at: { readonly angle: number; readonly end: number; readonly room: number },
  link: TaylorVector,
): TaylorVector | typeof NOWHERE | null {
  const beside = pose[at.room]! > 0 ? besideTangent(circle, pose, at, link) : null;
  return beside ?? byClosedForm(circle, link);
}
