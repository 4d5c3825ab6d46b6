/** Angles of the ball joints, tie rod ends and the half-shaft's joints: between lines, 0 to 90 degrees. */
import type { Corner, Joint, Shaft } from '../corner.ts';
import { Fixed, Slot } from '../linkage/slots.ts';
import { carryDirection } from '../linkage/triad.ts';
import { lineAngle } from '../math/buffer.ts';
import { Measure } from './keys.ts';

const STUD = Slot.scratch;
const HOUSING = Slot.scratch + 3;

function angleAt(pose: Float64Array, a: number, b: number): number {
  return lineAngle(pose[a]!, pose[a + 1]!, pose[a + 2]!, pose[b]!, pose[b + 1]!, pose[b + 2]!);
}

/** Angle between a stud fixed to the knuckle and a housing axis fixed to the frame at `housingFrame`, degrees. */
function jointAngle(joint: Joint, pose: Float64Array, housingFrame: number): number {
  carryDirection(joint.stud, 0, pose, Slot.frame, STUD);
  carryDirection(joint.housing, 0, pose, housingFrame, HOUSING);
  return angleAt(pose, STUD, HOUSING);
}

export function measureJoints(corner: Corner, pose: Float64Array, out: Float64Array): void {
  const { fixed } = corner.linkage;
  out[Measure.lowerBallJoint] = jointAngle(corner.joints.lower, pose, Slot.lowerFrame);
  out[Measure.upperBallJoint] = jointAngle(corner.joints.upper, pose, Slot.upperFrame);
  out[Measure.tieRodOuter] = jointAngle(corner.joints.rod, pose, Slot.rodFrame);
  out[Measure.tieRodInner] = lineAngle(
    pose[Slot.rodFrame]!,
    pose[Slot.rodFrame + 1]!,
    pose[Slot.rodFrame + 2]!,
    fixed[Fixed.rackDirection]!,
    fixed[Fixed.rackDirection + 1]!,
    fixed[Fixed.rackDirection + 2]!,
  );
}

/** Outer angle against the hub axis, inner angle against the inner axis, plunge = design length − length (mm). */
export function measureShaft(shaft: Shaft, pose: Float64Array, out: Float64Array): void {
  const x = pose[Slot.shaftOuter]! - shaft.inner[0];
  const y = pose[Slot.shaftOuter + 1]! - shaft.inner[1];
  const z = pose[Slot.shaftOuter + 2]! - shaft.inner[2];
  out[Measure.outerAngle] = lineAngle(
    x,
    y,
    z,
    pose[Slot.hubAxis]!,
    pose[Slot.hubAxis + 1]!,
    pose[Slot.hubAxis + 2]!,
  );
  out[Measure.innerAngle] = lineAngle(
    x,
    y,
    z,
    shaft.innerAxis[0],
    shaft.innerAxis[1],
    shaft.innerAxis[2],
  );
  out[Measure.plunge] = shaft.designLength - Math.sqrt(x * x + y * y + z * z);
}
