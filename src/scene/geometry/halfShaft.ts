/** The half-shaft's rigid parts: the inner cup on the body, and the bar from the outer joint (z = 0) inwards. */
import { Matrix4, Vector3 } from 'three';
import type { Model } from '../../../solver/index.ts';
import { shaftDiameter, shaftInnerAxis } from '../../../solver/model/defaults.ts';
import { CLAMP, CUP } from '../proportions.ts';
import { addBall, revolve } from './revolve.ts';
import { type Assembly, axisFrame, piece, toVector } from './solid.ts';

export function shaftRadius(model: Model): number {
  return model.halfShaft === undefined ? 0 : shaftDiameter(model.halfShaft) / 2;
}

/** Inner joint's axis, unit, turned to the wheel. */
export function innerAxis(model: Model): Vector3 {
  const shaft = model.halfShaft!;
  const axis = toVector(shaftInnerAxis(shaft)).normalize();
  const out = toVector(shaft.outer).sub(toVector(shaft.inner));
  return axis.dot(out) < 0 ? axis.negate() : axis;
}

/** The inner joint's cup with three lobes' worth of shoulder, its stub cut short. Vehicle axes. */
export function addInnerCup(assembly: Assembly, model: Model): void {
  const at = axisFrame(toVector(model.halfShaft!.inner), innerAxis(model));
  revolve(
    piece(assembly, 'dark'),
    at,
    [
      [-CUP.behind - 46, 0],
      [-CUP.behind - 46, CUP.stub],
      [-CUP.behind - 8, CUP.stub],
      [-CUP.behind, CUP.radius - 12],
      [-CUP.behind + 8, CUP.radius - 3],
      [CUP.mouth - 14, CUP.radius - 3],
      [CUP.mouth - 12, CUP.radius],
      [CUP.mouth - 12, CUP.radius + CLAMP],
      [CUP.mouth - 5, CUP.radius + CLAMP],
      [CUP.mouth - 5, CUP.radius],
      [CUP.mouth, CUP.radius],
      [CUP.mouth, CUP.radius - 7],
    ],
    { segments: 34 },
  );
}

/** The bar, with a shoulder beside each joint; its diameter is the model's at the widest. */
export function buildShaft(length: number, radius: number): Assembly {
  const assembly: Assembly = {};
  const thin = radius * 0.86;
  revolve(
    piece(assembly, 'steel'),
    new Matrix4(),
    [
      [0, 0],
      [0, radius],
      [0.26 * length, radius],
      [0.28 * length, thin],
      [0.68 * length, thin],
      [0.7 * length, radius],
      [length, radius],
      [length, 0],
    ],
    { segments: 22 },
  );
  addBall(piece(assembly, 'steel'), new Vector3(0, 0, 0), radius + 5);
  return assembly;
}
