/**
 * Exact derivatives of a solved pose by implicit differentiation: along travel with the rack held, and along the rack
 * with travel held. With W_z(θ, r) = design height + t: θ_t = 1/W_z,θ and θ_r = −W_z,r/W_z,θ.
 */
import { angleRates } from './place.ts';
import { Fixed, Slot } from './slots.ts';
import { carryVelocity, triadSpinFromRod } from './triad.ts';

function scaleInto(pose: Float64Array, from: number, factor: number, to: number): void {
  pose[to] = factor * pose[from]!;
  pose[to + 1] = factor * pose[from + 1]!;
  pose[to + 2] = factor * pose[from + 2]!;
}

/** Writes all first derivatives (per mm of travel, per mm of rack) of the pose in the buffer. */
export function poseRates(fixed: Float64Array, pose: Float64Array): void {
  angleRates(fixed, pose);
  const perTravel = 1 / pose[Slot.angleCentre + 2]!;
  pose[Slot.travelTheta] = perTravel;
  pose[Slot.travelPhi] = pose[Slot.anglePhi]! * perTravel;
  scaleInto(pose, Slot.angleOmega, perTravel, Slot.travelOmega);
  scaleInto(pose, Slot.angleLower, perTravel, Slot.travelLower);
  scaleInto(pose, Slot.angleUpper, perTravel, Slot.travelUpper);
  scaleInto(pose, Slot.angleCentre, perTravel, Slot.travelCentre);
  carryVelocity(pose, Slot.lower, Slot.travelLower, Slot.travelOmega, Slot.outer, Slot.travelOuter);
  rackRates(fixed, pose, perTravel);
}

function rackRates(fixed: Float64Array, pose: Float64Array, perTravel: number): void {
  const spin = triadSpinFromRod(
    pose,
    Slot.lower,
    Slot.inner,
    Slot.frame,
    Slot.outer,
    fixed,
    Fixed.rackDirection,
  );
  const kx = pose[Slot.frame]!;
  const ky = pose[Slot.frame + 1]!;
  const height =
    spin *
    (kx * (pose[Slot.centre + 1]! - pose[Slot.lower + 1]!) -
      ky * (pose[Slot.centre]! - pose[Slot.lower]!));
  const theta = -height * perTravel;
  pose[Slot.rackTheta] = theta;
  pose[Slot.rackPhi] = pose[Slot.anglePhi]! * theta;
  scaleInto(pose, Slot.angleLower, theta, Slot.rackLower);
  scaleInto(pose, Slot.angleUpper, theta, Slot.rackUpper);
  pose[Slot.rackOmega] = theta * pose[Slot.angleOmega]! + spin * kx;
  pose[Slot.rackOmega + 1] = theta * pose[Slot.angleOmega + 1]! + spin * ky;
  pose[Slot.rackOmega + 2] = theta * pose[Slot.angleOmega + 2]! + spin * pose[Slot.frame + 2]!;
  carryVelocity(pose, Slot.lower, Slot.rackLower, Slot.rackOmega, Slot.outer, Slot.rackOuter);
  carryVelocity(pose, Slot.lower, Slot.rackLower, Slot.rackOmega, Slot.centre, Slot.rackCentre);
}
