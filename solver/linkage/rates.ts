/**
 * Exact derivatives of a solved pose by implicit differentiation: along travel with the rack held, and along the rack
 * with travel held. With W_z(θ, r) = design height + t: θ_t = 1/W_z,θ and θ_r = −W_z,r/W_z,θ.
 */
import { scaledAt } from '../math/buffer.ts';
import { angleRates } from './place.ts';
import { Fixed, Slot } from './slots.ts';
import { carryVelocity, triadSpinFromRod } from './triad.ts';

/** Writes all first derivatives (per mm of travel, per mm of rack) of the pose in the buffer. */
export function poseRates(fixed: Float64Array, pose: Float64Array): void {
  angleRates(fixed, pose);
  const perTravel = 1 / pose[Slot.angleCentre + 2]!;
  pose[Slot.travelTheta] = perTravel;
  pose[Slot.travelPhi] = pose[Slot.anglePhi]! * perTravel;
  scaledAt(pose, Slot.travelTheta, Slot.angleOmega, Slot.travelOmega);
  scaledAt(pose, Slot.travelTheta, Slot.angleLower, Slot.travelLower);
  scaledAt(pose, Slot.travelTheta, Slot.angleUpper, Slot.travelUpper);
  scaledAt(pose, Slot.travelTheta, Slot.angleCentre, Slot.travelCentre);
  carryVelocity(pose, Slot.lower, Slot.travelLower, Slot.travelOmega, Slot.outer, Slot.travelOuter);
  rackRates(fixed, pose);
}

function rackRates(fixed: Float64Array, pose: Float64Array): void {
  triadSpinFromRod(
    pose,
    Slot.lower,
    Slot.inner,
    Slot.frame,
    Slot.outer,
    fixed,
    Fixed.rackDirection,
    Slot.rackSpin,
  );
  const spin = pose[Slot.rackSpin]!;
  const kx = pose[Slot.frame]!;
  const ky = pose[Slot.frame + 1]!;
  const height =
    spin *
    (kx * (pose[Slot.centre + 1]! - pose[Slot.lower + 1]!) -
      ky * (pose[Slot.centre]! - pose[Slot.lower]!));
  const theta = -height * pose[Slot.travelTheta]!;
  pose[Slot.rackTheta] = theta;
  pose[Slot.rackPhi] = pose[Slot.anglePhi]! * theta;
  scaledAt(pose, Slot.rackTheta, Slot.angleLower, Slot.rackLower);
  scaledAt(pose, Slot.rackTheta, Slot.angleUpper, Slot.rackUpper);
  pose[Slot.rackOmega] = theta * pose[Slot.angleOmega]! + spin * kx;
  pose[Slot.rackOmega + 1] = theta * pose[Slot.angleOmega + 1]! + spin * ky;
  pose[Slot.rackOmega + 2] = theta * pose[Slot.angleOmega + 2]! + spin * pose[Slot.frame + 2]!;
  carryVelocity(pose, Slot.lower, Slot.rackLower, Slot.rackOmega, Slot.outer, Slot.rackOuter);
  carryVelocity(pose, Slot.lower, Slot.rackLower, Slot.rackOmega, Slot.centre, Slot.rackCentre);
}
