/** Angles of the ball joints, tie rod ends and the half-shaft's joints: between lines, 0 to 90 degrees. */
import type { Corner, Joint, Shaft } from '../corner.ts';
import { Fixed, Slot } from '../linkage/slots.ts';
import { carryDirection } from '../linkage/triad.ts';
import { dotAt, lineAngleAt } from '../math/buffer.ts';
import { Measure } from './keys.ts';

const STUD = Slot.scratch;
const HOUSING = Slot.scratch + 3;

const THIRD = Slot.scratch + 6;

/** Angle between a stud fixed to the knuckle and a housing axis fixed to the frame at `housingFrame`, degrees. */
function jointAngle(
  joint: Joint,
  pose: Float64Array,
  housingFrame: number,
  out: Float64Array,
  to: number,
): void {
  carryDirection(joint.stud, 0, pose, Slot.frame, STUD);
  carryDirection(joint.housing, 0, pose, housingFrame, HOUSING);
  lineAngleAt(pose, STUD, HOUSING, out, to);
}

/** Both ball joints and both tie rod ends, degrees; the inner end against the rack's direction. */
export function measureJoints(corner: Corner, pose: Float64Array, out: Float64Array): void {
  const { fixed } = corner.linkage;
  jointAngle(corner.joints.lower, pose, Slot.lowerFrame, out, Measure.lowerBallJoint);
  jointAngle(corner.joints.upper, pose, Slot.upperFrame, out, Measure.upperBallJoint);
  jointAngle(corner.joints.rod, pose, Slot.rodFrame, out, Measure.tieRodOuter);
  for (let i = 0; i < 3; i += 1) pose[STUD + i] = fixed[Fixed.rackDirection + i]!;
  lineAngleAt(pose, Slot.rodFrame, STUD, out, Measure.tieRodInner);
}

/** Outer angle against the hub axis, inner angle against the inner axis, plunge = design length − length (mm). */
export function measureShaft(shaft: Shaft, pose: Float64Array, out: Float64Array): void {
  for (let i = 0; i < 3; i += 1) {
    pose[STUD + i] = pose[Slot.shaftOuter + i]! - shaft.inner[i]!;
    pose[THIRD + i] = shaft.innerAxis[i]!;
  }
  lineAngleAt(pose, STUD, Slot.hubAxis, out, Measure.outerAngle);
  lineAngleAt(pose, STUD, THIRD, out, Measure.innerAngle);
  dotAt(pose, STUD, STUD, Slot.scalars);
  out[Measure.plunge] = shaft.designLength - Math.sqrt(pose[Slot.scalars]!);
}
