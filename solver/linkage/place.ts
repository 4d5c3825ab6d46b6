/**
 * The corner as a composition of closed-form pieces, for a given lower arm angle θ and rack place:
 * circle point (LB) → circle with sphere (UB) → rigid triad on three spheres (knuckle, TO) → carried point (W).
 * What is left, W's height, is one equation in θ: solve.ts.
 */
import {
  circleMeetsSphere,
  circleMeetsSphereRate,
  circlePoint,
  circleVelocity,
  RADIUS,
} from './circle.ts';
import { Fixed, Slot } from './slots.ts';
import { carryPoint, carryVelocity, placeTriad, triadSpin } from './triad.ts';

/** What the placing met: every length holds, or the first constraint that cannot. */
export type Placing = 'placed' | 'upperArm' | 'tieRod';

/** Writes the rack's end (tie rod inner joint) for the rack displacement at `Slot.rack`, mm. */
export function placeRack(fixed: Float64Array, pose: Float64Array): void {
  const rack = pose[Slot.rack]!;
  pose[Slot.inner] = fixed[Fixed.rackOrigin]! + rack * fixed[Fixed.rackDirection]!;
  pose[Slot.inner + 1] = fixed[Fixed.rackOrigin + 1]! + rack * fixed[Fixed.rackDirection + 1]!;
  pose[Slot.inner + 2] = fixed[Fixed.rackOrigin + 2]! + rack * fixed[Fixed.rackDirection + 2]!;
}

/** Places every body for the lower arm angle at `Slot.lowerAngle`, rad, with the rack's end already placed. */
export function placeBodies(fixed: Float64Array, pose: Float64Array): Placing {
  const theta = pose[Slot.lowerAngle]!;
  pose[Slot.lowerCos] = Math.cos(theta);
  pose[Slot.lowerSin] = Math.sin(theta);
  circlePoint(fixed, Fixed.lowerCircle, pose, Slot.lowerCos, Slot.lower);
  const isReached = circleMeetsSphere(
    fixed,
    Fixed.upperCircle,
    pose,
    Slot.lower,
    Slot.upper,
    Slot.upperCos,
    Slot.upperRoom,
  );
  if (!isReached) return 'upperArm';
  const isHeld = placeTriad(
    fixed,
    Fixed.triad,
    pose,
    Slot.lower,
    Slot.upper,
    Slot.inner,
    Slot.frame,
    Slot.outer,
    Slot.rodRoom,
  );
  if (!isHeld) return 'tieRod';
  carryPoint(fixed, Fixed.centreInFrame, pose, Slot.lower, Slot.frame, Slot.centre);
  return 'placed';
}

/** Rates of every body per radian of θ with the rack held; writes the wheel's room. Needs placed bodies. */
export function angleRates(fixed: Float64Array, pose: Float64Array): void {
  circleVelocity(fixed, Fixed.lowerCircle, pose, Slot.lowerCos, pose, Slot.angleLower);
  circleMeetsSphereRate(
    fixed,
    Fixed.upperCircle,
    pose,
    Slot.lower,
    Slot.angleLower,
    Slot.upper,
    Slot.upperCos,
    Slot.angleUpper,
    Slot.anglePhi,
  );
  triadSpin(
    fixed,
    Fixed.triad,
    pose,
    Slot.lower,
    Slot.angleLower,
    Slot.angleUpper,
    Slot.inner,
    Slot.frame,
    Slot.outer,
    Slot.angleOmega,
  );
  carryVelocity(pose, Slot.lower, Slot.angleLower, Slot.angleOmega, Slot.centre, Slot.angleCentre);
  pose[Slot.wheelRoom] =
    (fixed[Fixed.wheelSide]! * pose[Slot.angleCentre + 2]!) / fixed[Fixed.lowerCircle + RADIUS]!;
}
