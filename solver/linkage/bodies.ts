/** The three moving bodies that carry other parts, each as the places of its frame and motion in the pose buffer. */

import {
  addScaledAt,
  crossAt,
  differenceAt,
  dotAt,
  normaliseAt,
  scaledAt,
} from '../math/buffer.ts';
import type { Carrier } from '../model/model.ts';
import { CIRCLE_AXIS } from './circle.ts';
import { Fixed, Slot } from './slots.ts';
import { carryDirection, carryPoint } from './triad.ts';

/** Where a rigid body's origin, frame, velocity, spin and their travel derivatives stand in a pose buffer. */
export interface Body {
  readonly origin: number;
  readonly frame: number;
  readonly originRate: number;
  readonly omega: number;
  readonly originBend: number;
  readonly alpha: number;
}

export const BODIES: Readonly<Record<Carrier, Body>> = {
  lowerArm: {
    origin: Slot.lower,
    frame: Slot.lowerFrame,
    originRate: Slot.travelLower,
    omega: Slot.lowerOmega,
    originBend: Slot.lowerBend,
    alpha: Slot.lowerAlpha,
  },
  upperArm: {
    origin: Slot.upper,
    frame: Slot.upperFrame,
    originRate: Slot.travelUpper,
    omega: Slot.upperOmega,
    originBend: Slot.upperBend,
    alpha: Slot.upperAlpha,
  },
  knuckle: {
    origin: Slot.lower,
    frame: Slot.frame,
    originRate: Slot.travelLower,
    omega: Slot.travelOmega,
    originBend: Slot.lowerBend,
    alpha: Slot.knuckleAlpha,
  },
};

/** e1 along the pivots, e2 from the axis to the ball joint: e2 = cos·p + sin·q, e3 = e1 × e2 = cos·q − sin·p. */
function armFrame(
  fixed: Float64Array,
  circle: number,
  pose: Float64Array,
  angle: number,
  to: number,
): void {
  const cos = pose[angle]!;
  const sin = pose[angle + 1]!;
  for (let i = 0; i < 3; i += 1) {
    const p = fixed[circle + 3 + i]!;
    const q = fixed[circle + 6 + i]!;
    pose[to + i] = fixed[circle + CIRCLE_AXIS + i]!;
    pose[to + 3 + i] = cos * p + sin * q;
    pose[to + 6 + i] = cos * q - sin * p;
  }
}

/** Writes the frames of both arms and the hub axis of a solved pose. */
export function placeFrames(fixed: Float64Array, pose: Float64Array): void {
  armFrame(fixed, Fixed.lowerCircle, pose, Slot.lowerCos, Slot.lowerFrame);
  armFrame(fixed, Fixed.upperCircle, pose, Slot.upperCos, Slot.upperFrame);
  carryDirection(fixed, Fixed.hubInFrame, pose, Slot.frame, Slot.hubAxis);
}

/** Writes the arms' angular velocities per mm of travel; needs `placeFrames` and `poseRates`. */
export function placeSpins(pose: Float64Array): void {
  scaledAt(pose, Slot.travelTheta, Slot.lowerFrame, Slot.lowerOmega);
  scaledAt(pose, Slot.travelPhi, Slot.upperFrame, Slot.upperOmega);
}

/**
 * Writes the tie rod's frame: e1 = unit(TO − TI), e2 = the stud axis made normal to e1, e3 = e1 × e2. `stud` holds the
 * stud axis's components in the knuckle frame.
 */
export function placeRodFrame(stud: Float64Array, pose: Float64Array): void {
  const e1 = Slot.rodFrame;
  const e2 = Slot.rodFrame + 3;
  differenceAt(pose, Slot.outer, Slot.inner, e1);
  normaliseAt(pose, e1);
  carryDirection(stud, 0, pose, Slot.frame, e2);
  dotAt(pose, e1, e2, Slot.scalars);
  pose[Slot.scalars] = -pose[Slot.scalars]!;
  addScaledAt(pose, e2, Slot.scalars, e1, e2);
  normaliseAt(pose, e2);
  crossAt(pose, e1, e2, Slot.rodFrame + 6);
}

/** Writes a point carried by a body: `seat` holds its components in the body's frame. */
export function placeSeat(seat: Float64Array, body: Body, pose: Float64Array, to: number): void {
  carryPoint(seat, 0, pose, body.origin, body.frame, to);
}
