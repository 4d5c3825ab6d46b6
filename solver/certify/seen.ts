import { Slot } from '../linkage/slots.ts';
import type { Carrier } from '../model/model.ts';
import { carriedPoint, carriedVector, type Motion, seenFrom, turnedBack } from './motion.ts';
import {
  cross,
  difference,
  dot,
  inverse,
  root,
  still,
  sum,
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
