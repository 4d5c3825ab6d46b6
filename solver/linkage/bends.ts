/**
 * Second derivatives along travel with the rack held, by differentiating each closed-form piece once more. Primes are
 * derivatives in the lower arm's angle θ; at the end d²/dt² = (·)″·θ_t² + (·)′·θ_tt with θ_tt = −W_z″·θ_t³.
 */
import { addScaledAt, crossAt, differenceAt, dotAt, scaledAt, sumAt } from '../math/buffer.ts';
import { CIRCLE_AXIS, circleVelocity } from './circle.ts';
import { Fixed, Slot } from './slots.ts';

const RADIAL = Slot.scratch;
const TANGENT = Slot.scratch + 3;
const SPAN = Slot.scratch + 6;
const SPAN_RATE = Slot.scratch + 9;
const WORK = Slot.scratch + 12;
/** Scalars. */
const A = Slot.scalars;
const B = Slot.scalars + 1;
const C = Slot.scalars + 2;
const D = Slot.scalars + 3;
const PHI_BEND = Slot.scalars + 4;
const SQUARED = Slot.scalars + 5;
const BEND = Slot.scalars + 6;

function fromCentre(fixed: Float64Array, circle: number, pose: Float64Array, point: number): void {
  for (let i = 0; i < 3; i += 1) pose[RADIAL + i] = pose[point + i]! - fixed[circle + i]!;
}

/** Ball joints: LB″ = −radial; UB″ = φ″·tangent − φ′²·radial with k·k″ + |k′|² = 0. Leaves φ″ in `PHI_BEND`. */
function ballJointBends(fixed: Float64Array, pose: Float64Array): void {
  fromCentre(fixed, Fixed.lowerCircle, pose, Slot.lower);
  pose[A] = -1;
  scaledAt(pose, A, RADIAL, Slot.lowerBend);
  fromCentre(fixed, Fixed.upperCircle, pose, Slot.upper);
  circleVelocity(fixed, Fixed.upperCircle, pose, Slot.upperCos, pose, TANGENT);
  differenceAt(pose, Slot.upper, Slot.lower, SPAN);
  differenceAt(pose, Slot.angleUpper, Slot.angleLower, SPAN_RATE);
  dotAt(pose, SPAN, Slot.lowerBend, A);
  dotAt(pose, SPAN_RATE, SPAN_RATE, B);
  dotAt(pose, SPAN, RADIAL, C);
  dotAt(pose, SPAN, TANGENT, D);
  const squared = pose[Slot.anglePhi]! * pose[Slot.anglePhi]!;
  pose[PHI_BEND] = (pose[A]! - pose[B]! + squared * pose[C]!) / pose[D]!;
  scaledAt(pose, PHI_BEND, TANGENT, Slot.upperBend);
  pose[A] = -squared;
  addScaledAt(pose, Slot.upperBend, A, RADIAL, Slot.upperBend);
}

/** to = LB″ + α × (point − LB) + ω × (ω × (point − LB)), all in θ; leaves point − LB in `RADIAL`. */
function pointBend(pose: Float64Array, point: number, to: number): void {
  differenceAt(pose, point, Slot.lower, RADIAL);
  crossAt(pose, Slot.angleOmega, RADIAL, TANGENT);
  crossAt(pose, Slot.angleOmega, TANGENT, TANGENT);
  crossAt(pose, Slot.knuckleAlpha, RADIAL, to);
  sumAt(pose, to, TANGENT, to);
  sumAt(pose, to, Slot.lowerBend, to);
}

/** Knuckle: α = k̂ × (k̂″ − ω × (ω × k̂)) + ν·k̂, ν from τ·TO″ + |TO′|² = 0, τ = TO − TI. */
function knuckleBend(fixed: Float64Array, pose: Float64Array): void {
  crossAt(pose, Slot.angleOmega, Slot.frame, TANGENT);
  crossAt(pose, Slot.angleOmega, TANGENT, TANGENT);
  differenceAt(pose, Slot.upperBend, Slot.lowerBend, WORK);
  pose[A] = fixed[Fixed.spanInverse]!;
  scaledAt(pose, A, WORK, WORK);
  differenceAt(pose, WORK, TANGENT, WORK);
  crossAt(pose, Slot.frame, WORK, Slot.knuckleAlpha);
  pointBend(pose, Slot.outer, WORK);
  differenceAt(pose, Slot.outer, Slot.inner, SPAN);
  crossAt(pose, Slot.angleOmega, RADIAL, SPAN_RATE);
  sumAt(pose, SPAN_RATE, Slot.angleLower, SPAN_RATE);
  crossAt(pose, Slot.frame, RADIAL, TANGENT);
  dotAt(pose, SPAN, WORK, A);
  dotAt(pose, SPAN_RATE, SPAN_RATE, B);
  dotAt(pose, SPAN, TANGENT, C);
  pose[D] = -(pose[A]! + pose[B]!) / pose[C]!;
  addScaledAt(pose, Slot.knuckleAlpha, D, Slot.frame, Slot.knuckleAlpha);
}

/** to = (·)″·θ_t² + (·)′·θ_tt, the second derivative in place. */
function alongTravel(pose: Float64Array, bend: number, rate: number): void {
  scaledAt(pose, SQUARED, bend, bend);
  addScaledAt(pose, bend, BEND, rate, bend);
}

function axisAlpha(fixed: Float64Array, circle: number, pose: Float64Array, to: number): void {
  for (let i = 0; i < 3; i += 1) pose[to + i] = pose[A]! * fixed[circle + CIRCLE_AXIS + i]!;
}

/** Writes the second derivatives along travel of both ball joints and of the three bodies' rotations, per mm². */
export function poseBends(fixed: Float64Array, pose: Float64Array): void {
  ballJointBends(fixed, pose);
  knuckleBend(fixed, pose);
  pointBend(pose, Slot.centre, WORK);
  const rate = pose[Slot.travelTheta]!;
  pose[SQUARED] = rate * rate;
  pose[BEND] = -pose[WORK + 2]! * rate * rate * rate;
  alongTravel(pose, Slot.lowerBend, Slot.angleLower);
  alongTravel(pose, Slot.upperBend, Slot.angleUpper);
  alongTravel(pose, Slot.knuckleAlpha, Slot.angleOmega);
  pose[A] = pose[BEND]!;
  axisAlpha(fixed, Fixed.lowerCircle, pose, Slot.lowerAlpha);
  pose[A] = pose[PHI_BEND]! * pose[SQUARED]! + pose[Slot.anglePhi]! * pose[BEND]!;
  axisAlpha(fixed, Fixed.upperCircle, pose, Slot.upperAlpha);
}
