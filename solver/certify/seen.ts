/** Points of the corner's parts over a cell, as they are seen from one of its rigid bodies. */
import type { Lever } from '../corner.ts';
import { RADIUS, SIDE, SPHERE } from '../linkage/circle.ts';
import { Slot } from '../linkage/slots.ts';
import type { Carrier } from '../model/model.ts';
import { carriedPoint, carriedVector, type Motion, seenFrom, turnedBack } from './motion.ts';
import {
  cross,
  difference,
  dot,
  inverse,
  multiple,
  plus,
  product,
  root,
  scaled,
  still,
  sum,
  swingOf,
  type Taylor,
  type TaylorVector,
  type Triple,
  times,
  tripleAt,
} from './taylor.ts';

/** A rigid body that others are seen from: its origin and axes are the measure. The ground keeps vehicle axes. */
export type Frame = 'ground' | Carrier;

/** Where the joint that two bodies share stands in a pose; −1 where they share none. */
function sharedJoint(a: Carrier, b: Carrier): number {
  const [arm, other] = a === 'knuckle' ? [b, a] : [a, b];
  if (other !== 'knuckle' || arm === 'knuckle') return -1;
  return arm === 'lowerArm' ? Slot.lower : Slot.upper;
}

function from(point: Triple, origin: Triple): Triple {
  return { x: point.x - origin.x, y: point.y - origin.y, z: point.z - origin.z };
}

/** A point fixed to the ground. */
export function seenGround(motion: Motion, point: Triple, frame: Frame): TaylorVector {
  return frame === 'ground' ? still(point) : seenFrom(motion[frame], still(point));
}

/** A point fixed to a carrier, given where it is in the centre's pose. */
export function seenCarried(
  { motion, pose }: { readonly motion: Motion; readonly pose: Float64Array },
  on: Carrier,
  point: Triple,
  frame: Frame,
): TaylorVector {
  const body = motion[on];
  if (frame === 'ground') return carriedPoint(body, point);
  const seer = motion[frame];
  if (frame === on) return still(from(point, seer.origin));
  const joint = sharedJoint(on, frame);
  if (joint < 0) {
    const arm = carriedVector(body, from(point, body.origin));
    return sum(seenFrom(seer, body.origin), turnedBack(seer, arm));
  }
  const hinge = tripleAt(pose, joint);
  const arm = turnedBack(seer, carriedVector(body, from(point, hinge)));
  return sum(still(from(hinge, seer.origin)), arm);
}

/** A point that moves as given. */
export function seenMoving(motion: Motion, point: TaylorVector, frame: Frame): TaylorVector {
  return frame === 'ground' ? point : seenFrom(motion[frame], point);
}

/** Where the anti-roll bar's link cannot reach its lever anywhere in a cell. */
export const NOWHERE = 'nowhere';

/**
 * The anti-roll bar's lever end, from the carried joint of its link: the circle with its sphere (linkage/circle.ts) in
 * Taylor models. Null where the link may meet the bar's axis.
 */
export function leverEndOver(
  { circle }: Lever,
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

/** √v of what of v is not negative. */
function rootFromZero(v: Taylor): Taylor {
  const half = Math.sqrt(v.mid + swingOf(v)) / 2;
  return { mid: half, a: 0, b: 0, rest: half };
}

/** The tie rod's frame over the cell, the axes e1, e2, e3 of the contract; null where its stud may lie along it. */
export function rodAxesOver(
  { outer, inner, knuckle }: Motion,
  stud: Triple,
): readonly [TaylorVector, TaylorVector, TaylorVector] | null {
  const e1 = unitOver(difference(outer, inner));
  if (e1 === null) return null;
  const n = carriedVector(knuckle, stud);
  const e2 = unitOver(difference(n, times(dot(n, e1), e1)));
  if (e2 === null) return null;
  return [e1, e2, cross(e1, e2)];
}

function unitOver(v: TaylorVector): TaylorVector | null {
  const length = root(dot(v, v));
  const shrink = length === null ? null : inverse(length);
  return shrink === null ? null : times(shrink, v);
}
