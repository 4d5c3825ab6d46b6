/** A rigid body over a cell, and what it carries. */
import {
  crossed,
  difference,
  midLength,
  slopeA,
  slopeB,
  sloping,
  sum,
  type TaylorVector,
  type Triple,
  triple,
} from './taylor.ts';

/** A rigid body over a cell. */
export interface BodyMotion {
  /** A point of the body. */
  readonly origin: TaylorVector;
  /** Rotation of the body from the centre's pose, linear in α and β: a vector of it turns from v to v + spin × v … */
  readonly spinA: Triple;
  readonly spinB: Triple;
  /** … but for this share of its length. */
  readonly rest: number;
}

/** A vector fixed to the body, as it stands in the centre's pose, over the cell. */
export function carriedVector(body: BodyMotion, vector: Triple): TaylorVector {
  return sloping(
    vector,
    crossed(body.spinA, vector),
    crossed(body.spinB, vector),
    body.rest * midLength(vector),
  );
}

/** A point fixed to the body, as it stands in the centre's pose, over the cell. */
export function carriedPoint(body: BodyMotion, point: Triple): TaylorVector {
  const { origin } = body;
  const arm = triple(point.x - origin.x, point.y - origin.y, point.z - origin.z);
  return sum(origin, carriedVector(body, arm));
}

/** A moving vector as it is seen from a rigid body, in axes that turn with it and stand as they do at the centre. */
export function turnedBack(body: BodyMotion, vector: TaylorVector): TaylorVector {
  const turningA = crossed(body.spinA, vector);
  const turningB = crossed(body.spinB, vector);
  const spin = midLength(body.spinA) + midLength(body.spinB);
  const linear = midLength(slopeA(vector)) + midLength(slopeB(vector));
  return sloping(
    vector,
    triple(vector.ax - turningA.x, vector.ay - turningA.y, vector.az - turningA.z),
    triple(vector.bx - turningB.x, vector.by - turningB.y, vector.bz - turningB.z),
    vector.rest + spin * linear + body.rest * (midLength(vector) + linear),
  );
}

/** A moving point as it is seen from a rigid body, measured from the body's origin. */
export function seenFrom(body: BodyMotion, point: TaylorVector): TaylorVector {
  return turnedBack(body, difference(point, body.origin));
}
