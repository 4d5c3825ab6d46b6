/**
 * Second derivatives along travel with the rack held, by differentiating each closed-form piece once more. Primes are
 * derivatives in the lower arm's angle θ; at the end d²/dt² = (·)″·θ_t² + (·)′·θ_tt with θ_tt = −W_z″·θ_t³.
 */
import { combineAt, crossAt, dotAt } from '../math/buffer.ts';
import { CIRCLE_AXIS, circleVelocity } from './circle.ts';
import { Fixed, Slot } from './slots.ts';

const RADIAL = Slot.scratch;
const TANGENT = Slot.scratch + 3;
const SPAN = Slot.scratch + 6;
const SPAN_RATE = Slot.scratch + 9;
const WORK = Slot.scratch + 12;

function fromCentre(
  fixed: Float64Array,
  circle: number,
  pose: Float64Array,
  point: number,
  to: number,
): void {
  pose[to] = pose[point]! - fixed[circle]!;
  pose[to + 1] = pose[point + 1]! - fixed[circle + 1]!;
  pose[to + 2] = pose[point + 2]! - fixed[circle + 2]!;
}

/** Ball joints: LB″ = −radial; UB″ = φ″·tangent − φ′²·radial with k·k″ + |k′|² = 0. Returns φ″. */
function ballJointBends(fixed: Float64Array, pose: Float64Array): number {
  fromCentre(fixed, Fixed.lowerCircle, pose, Slot.lower, RADIAL);
  combineAt(pose, -1, RADIAL, 0, RADIAL, Slot.lowerBend);
  fromCentre(fixed, Fixed.upperCircle, pose, Slot.upper, RADIAL);
  circleVelocity(
    fixed,
    Fixed.upperCircle,
    pose[Slot.upperCos]!,
    pose[Slot.upperSin]!,
    1,
    pose,
    TANGENT,
  );
  combineAt(pose, 1, Slot.upper, -1, Slot.lower, SPAN);
  combineAt(pose, 1, Slot.angleUpper, -1, Slot.angleLower, SPAN_RATE);
  const phiRate = pose[Slot.anglePhi]!;
  const phiBend =
    (dotAt(pose, SPAN, Slot.lowerBend) -
      dotAt(pose, SPAN_RATE, SPAN_RATE) +
      phiRate * phiRate * dotAt(pose, SPAN, RADIAL)) /
    dotAt(pose, SPAN, TANGENT);
  combineAt(pose, phiBend, TANGENT, -phiRate * phiRate, RADIAL, Slot.upperBend);
  return phiBend;
}

/** to = LB″ + α × (point − LB) + ω × (ω × (point − LB)), all in θ. */
function pointBend(pose: Float64Array, point: number, to: number): void {
  combineAt(pose, 1, point, -1, Slot.lower, RADIAL);
  crossAt(pose, Slot.angleOmega, RADIAL, TANGENT);
  crossAt(pose, Slot.angleOmega, TANGENT, TANGENT);
  crossAt(pose, Slot.knuckleAlpha, RADIAL, to);
  combineAt(pose, 1, to, 1, TANGENT, to);
  combineAt(pose, 1, to, 1, Slot.lowerBend, to);
}

/** Knuckle: α = k̂ × (k̂″ − ω × (ω × k̂)) + ν·k̂, ν from τ·TO″ + |TO′|² = 0, τ = TO − TI. */
function knuckleBend(fixed: Float64Array, pose: Float64Array): void {
  crossAt(pose, Slot.angleOmega, Slot.frame, TANGENT);
  crossAt(pose, Slot.angleOmega, TANGENT, TANGENT);
  combineAt(pose, 1, Slot.upperBend, -1, Slot.lowerBend, WORK);
  combineAt(pose, fixed[Fixed.spanInverse]!, WORK, -1, TANGENT, WORK);
  crossAt(pose, Slot.frame, WORK, Slot.knuckleAlpha);
  pointBend(pose, Slot.outer, WORK);
  combineAt(pose, 1, Slot.outer, -1, Slot.inner, SPAN);
  crossAt(pose, Slot.angleOmega, RADIAL, SPAN_RATE);
  combineAt(pose, 1, SPAN_RATE, 1, Slot.angleLower, SPAN_RATE);
  crossAt(pose, Slot.frame, RADIAL, TANGENT);
  const spin =
    -(dotAt(pose, SPAN, WORK) + dotAt(pose, SPAN_RATE, SPAN_RATE)) / dotAt(pose, SPAN, TANGENT);
  combineAt(pose, 1, Slot.knuckleAlpha, spin, Slot.frame, Slot.knuckleAlpha);
}

function axisAlpha(
  fixed: Float64Array,
  circle: number,
  alpha: number,
  pose: Float64Array,
  to: number,
): void {
  pose[to] = alpha * fixed[circle + CIRCLE_AXIS]!;
  pose[to + 1] = alpha * fixed[circle + CIRCLE_AXIS + 1]!;
  pose[to + 2] = alpha * fixed[circle + CIRCLE_AXIS + 2]!;
}

/** Writes the second derivatives along travel of both ball joints and of the three bodies' rotations, per mm². */
export function poseBends(fixed: Float64Array, pose: Float64Array): void {
  const phiBend = ballJointBends(fixed, pose);
  knuckleBend(fixed, pose);
  pointBend(pose, Slot.centre, WORK);
  const rate = pose[Slot.travelTheta]!;
  const bend = -pose[WORK + 2]! * rate * rate * rate;
  const squared = rate * rate;
  combineAt(pose, squared, Slot.lowerBend, bend, Slot.angleLower, Slot.lowerBend);
  combineAt(pose, squared, Slot.upperBend, bend, Slot.angleUpper, Slot.upperBend);
  combineAt(pose, squared, Slot.knuckleAlpha, bend, Slot.angleOmega, Slot.knuckleAlpha);
  axisAlpha(fixed, Fixed.lowerCircle, bend, pose, Slot.lowerAlpha);
  axisAlpha(
    fixed,
    Fixed.upperCircle,
    phiBend * squared + pose[Slot.anglePhi]! * bend,
    pose,
    Slot.upperAlpha,
  );
}
