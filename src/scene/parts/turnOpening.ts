/** Turns the opening of the cut wheel to where the eye sees the rod inside the rim. */
import { type Camera, Matrix4, Object3D, Vector3 } from 'three';
import { type Corner, placeRod, rodPointCount, Slot } from '../../../solver/index.ts';
import type { Posed } from '../../state/posed.ts';
import { threeToFlat } from '../axes.ts';
import { tyreDrum } from '../camera/extent.ts';
import { brakeShape } from '../geometry/hub.ts';
import { openingStart, type Rim } from '../geometry/opening.ts';
import { sectionOf } from '../geometry/spokes.ts';
import { placeInFrame } from '../placing.ts';
import { WHEEL } from '../proportions.ts';

const MOST_POINTS = 40;
const _rod = new Float64Array(3 * MOST_POINTS);
const _eye = new Float64Array(3);
const _knuckle = new Object3D();
const _inverse = new Matrix4();
const _point = new Vector3();

/** What stands between rod and eye. */
export function rimOf(corner: Corner): Rim {
  const { model } = corner;
  const barrel = sectionOf(model, 'barrel');
  let inner = Number.POSITIVE_INFINITY;
  let half = 0;
  for (let at = 0; at + 1 < barrel.line.length; at += 2) {
    inner = Math.min(inner, barrel.line[at + 1]! - barrel.half);
    half = Math.max(half, Math.abs(barrel.line[at]!) + barrel.half);
  }
  const drum = tyreDrum(corner);
  return {
    inner,
    outer: drum.radius,
    half: Math.max(half, drum.half),
    face: brakeShape(model).low,
    pad: WHEEL.pad,
  };
}

function intoWheel(buffer: Float64Array, at: number): void {
  _point.fromArray(buffer, at).applyMatrix4(_inverse).toArray(buffer, at);
}

/**
 * The angle the opening starts at. `frame` carries the wheel's axes into the design pose, `design` the design pose into the
 * knuckle's own axes.
 */
export function openingNow(
  { corner, pose: { data }, wheelGap }: Posed,
  rim: Rim,
  frame: Matrix4,
  design: Matrix4,
  camera: Camera,
): number {
  placeInFrame(_knuckle, data, Slot.lower, Slot.frame, design);
  _inverse.multiplyMatrices(_knuckle.matrix, frame).invert();
  const count = Math.min(MOST_POINTS, rodPointCount(corner));
  if (count === rodPointCount(corner)) placeRod(corner, data, _rod);
  for (let i = 0; i < count; i += 1) intoWheel(_rod, 3 * i);
  threeToFlat(camera.position, _eye, 0);
  intoWheel(_eye, 0);
  const { wheelPoint } = wheelGap;
  _point.fromArray(wheelPoint as unknown as number[]).applyMatrix4(_inverse);
  const lip = Math.atan2(_point.y, _point.x);
  _point.set(0, 0, -1).transformDirection(_inverse);
  return openingStart(rim, _rod, count, _eye, lip, Math.atan2(_point.y, _point.x));
}
