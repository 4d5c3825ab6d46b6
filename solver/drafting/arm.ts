/** An arm laid flat: its points in its own plane, its measures for the shop, its tubes. */

import { frameFrom, inFrame, pointInFrame } from '../linkage/frames.ts';
import {
  add,
  cross,
  distance,
  dot,
  length,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../math/vec3.ts';
import { tubeDiameter } from '../model/defaults.ts';
import type { Arm, Model } from '../model/model.ts';
import { degrees } from '../units.ts';
import { bendsOf, endWays, type Run, rotationOfEnds, runLength, type TubeBend } from './tube.ts';

export type ArmName = 'lowerArm' | 'upperArm';

/** How a joint's housing stands on the arm, degrees. */
export interface CupTilt {
  /** Between the housing's axis and the normal of the arm's plane. */
  readonly whole: number;
  /** Its lean along the pivots' line, positive with its top to the front. */
  readonly forward: number;
  /** Its lean across it, positive with its top away from the pivots. */
  readonly outward: number;
}

/** One tube of an arm, from its pivot to the ball joint. */
export interface ArmLeg {
  readonly run: Run;
  /** Centre to centre along the tube, mm. */
  readonly length: number;
  readonly bends: readonly TubeBend[];
  /** Between the tube and the pivots' line at the pivot, degrees. */
  readonly pivotAngle: number;
  /** Out of the arm's plane at the pivot, degrees, positive upward. */
  readonly rise: number;
  /** Turn of the cup's axis about the tube against the pivots' line, degrees; null where it has none. */
  readonly rotation: number | null;
}

/**
 * The arm in its own plane, mm: u along the pivots' line from rear to front, v from that line to the ball joint, w normal
 * to both (upward on a left arm). The origin is the foot of the ball joint on the pivots' line. Design pose.
 */
export interface ArmFigure {
  readonly name: ArmName;
  readonly front: Vector3;
  readonly rear: Vector3;
  readonly ball: Vector3;
  readonly legs: { readonly front: ArmLeg; readonly rear: ArmLeg };
  readonly pivotToPivot: number;
  readonly frontToBall: number;
  readonly rearToBall: number;
  /** From the pivots' line square to the ball joint, mm. */
  readonly reach: number;
  /** Along the pivots' line from the ball joint's foot to each pivot, mm; the rear one's is negative where it lies behind. */
  readonly offsets: { readonly front: number; readonly rear: number };
  readonly cup: CupTilt;
  /** Unit vector of the housing's axis, upward. */
  readonly cupAxis: Vector3;
  /** Between both tubes at the ball joint, degrees. */
  readonly ballAngle: number;
  /** False where the model states no axis of the housing: the stud's is taken. */
  readonly isCupStated: boolean;
}

/** Between two lines, degrees from 0 to 90. */
function lineAngle(a: Vector3, b: Vector3): number {
  return degrees(Math.atan2(length(cross(a, b)), Math.abs(dot(a, b))));
}

function cupOf(up: Vector3): CupTilt {
  return {
    whole: lineAngle(up, [0, 0, 1]),
    forward: degrees(Math.atan2(up[0], up[2])),
    outward: degrees(Math.atan2(up[1], up[2])),
  };
}

function legOf(run: Run, cup: Vector3): ArmLeg {
  const { first } = endWays(run);
  return {
    run,
    length: runLength(run),
    bends: bendsOf(run),
    pivotAngle: lineAngle(first, [1, 0, 0]),
    rise: degrees(Math.asin(Math.max(-1, Math.min(1, first[2])))),
    rotation: rotationOfEnds(run, [1, 0, 0], cup),
  };
}

function housingOf(arm: Arm, model: Model): Vector3 {
  const stud = subtract(model.upperArm.ballJoint, model.lowerArm.ballJoint);
  return unit(arm.housingAxis ?? arm.studAxis ?? stud);
}

/** An arm of a sound model, laid flat. */
export function armFigure(model: Model, name: ArmName): ArmFigure {
  const arm = model[name];
  const along = unit(subtract(arm.frontPivot, arm.rearPivot));
  const foot = add(arm.rearPivot, scale(along, dot(subtract(arm.ballJoint, arm.rearPivot), along)));
  const frame = frameFrom(foot, along, subtract(arm.ballJoint, foot));
  const lay = (point: Vector3): Vector3 => pointInFrame(frame, point);
  const [front, rear, ball] = [lay(arm.frontPivot), lay(arm.rearPivot), lay(arm.ballJoint)];
  const axis = inFrame(frame, housingOf(arm, model));
  const cup = axis[2] < 0 ? scale(axis, -1) : axis;
  const leg = (pivot: Vector3, bends: readonly Vector3[] | undefined): ArmLeg =>
    legOf(
      { points: [pivot, ...(bends ?? []).map(lay), ball], diameter: tubeDiameter(model, name) },
      cup,
    );
  const legs = { front: leg(front, arm.legs?.front), rear: leg(rear, arm.legs?.rear) };
  const [frontEnd, rearEnd] = [endWays(legs.front.run).last, endWays(legs.rear.run).last];
  return {
    name,
    front,
    rear,
    ball,
    legs,
    pivotToPivot: distance(front, rear),
    frontToBall: distance(front, ball),
    rearToBall: distance(rear, ball),
    reach: ball[1],
    offsets: { front: front[0], rear: rear[0] },
    cup: cupOf(cup),
    cupAxis: cup,
    ballAngle: degrees(Math.atan2(length(cross(frontEnd, rearEnd)), dot(frontEnd, rearEnd))),
    isCupStated: arm.housingAxis !== undefined || arm.studAxis !== undefined,
  };
}
