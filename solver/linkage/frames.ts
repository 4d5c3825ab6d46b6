/** Frames of the design pose, in which carried points and axes keep their components. */
import { addScaled, cross, dot, rejectFrom, subtract, unit, type Vector3 } from '../math/vec3.ts';
import { hubAngle, wheelSpacer } from '../model/defaults.ts';
import type { Arm, Model } from '../model/model.ts';
import { radians } from '../units.ts';

/** An origin and three perpendicular unit axes, in vehicle axes. */
export interface Frame {
  readonly origin: Vector3;
  readonly axes: readonly [Vector3, Vector3, Vector3];
}

/** Components of a direction in a frame. */
export function inFrame(frame: Frame, direction: Vector3): Vector3 {
  return [
    dot(direction, frame.axes[0]),
    dot(direction, frame.axes[1]),
    dot(direction, frame.axes[2]),
  ];
}

/** Components of a point in a frame, from the frame's origin. */
export function pointInFrame(frame: Frame, point: Vector3): Vector3 {
  return inFrame(frame, subtract(point, frame.origin));
}

/** Frame with its first axis along `first` and its second towards `second`. */
export function frameFrom(origin: Vector3, first: Vector3, second: Vector3): Frame {
  const e1 = unit(first);
  const e2 = unit(rejectFrom(second, e1));
  return { origin, axes: [e1, e2, cross(e1, e2)] };
}

/** Hub axis of the design pose: a = [cos c·sin τ, cos c·cos τ, −sin c]. */
export function designHubAxis(model: Model): Vector3 {
  const camber = radians(hubAngle(model.hub.camber));
  const toe = radians(hubAngle(model.hub.toe));
  return [Math.cos(camber) * Math.sin(toe), Math.cos(camber) * Math.cos(toe), -Math.sin(camber)];
}

/** Wheel centre of the design pose: hub face + a·(spacer − offset). */
export function designWheelCentre(model: Model): Vector3 {
  return addScaled(
    model.hub.face,
    designHubAxis(model),
    wheelSpacer(model.wheel) - model.wheel.offset,
  );
}

/** An arm's frame: origin the ball joint, e1 along its pivots, e2 from the pivot axis to the ball joint. */
export function armFrame(arm: Arm): Frame {
  return frameFrom(
    arm.ballJoint,
    subtract(arm.frontPivot, arm.rearPivot),
    subtract(arm.ballJoint, arm.rearPivot),
  );
}
