/** The wheel's axes in the design pose: origin the wheel centre, z outboard along the hub axis, x towards the tie rod at the inner lip. */
import type { Matrix4, Vector3 } from 'three';
import { type Model, wheelSections } from '../../../solver/index.ts';
import { designHubAxis, designWheelCentre } from '../../../solver/linkage/frames.ts';
import { axisFrame, toVector } from './solid.ts';

/** Where the rod's line passes the lip's plane; its outer joint where it does not within its length. */
function rodAtLip(model: Model, centre: Vector3, axis: Vector3): Vector3 {
  const outer = toVector(model.tieRod.outer);
  const inner = toVector(model.tieRod.inner);
  const lip = wheelSections(model)[0]!.line[0]!;
  const s0 = outer.clone().sub(centre).dot(axis);
  const s1 = inner.clone().sub(centre).dot(axis);
  const share = s0 === s1 ? 0 : (lip - s0) / (s1 - s0);
  return outer.lerp(inner, Math.min(1, Math.max(0, share)));
}

export function wheelFrame(model: Model): Matrix4 {
  const centre = toVector(designWheelCentre(model));
  const axis = toVector(designHubAxis(model));
  return axisFrame(centre, axis, rodAtLip(model, centre, axis).sub(centre));
}
