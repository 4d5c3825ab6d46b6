/** Alignment hardware as it changes a linkage: cams and shims shift pivots, turns change the tie rod's length. */
import { add, addScaled, distance, length, scale, unit, type Vector3 } from '../math/vec3.ts';
import {
  camAngle,
  camSlot,
  shimDirection,
  shimThickness,
  tieRodChange,
} from '../model/defaults.ts';
import type { Arm, Cam, Model, Shim } from '../model/model.ts';
import { radians } from '../units.ts';
import { writeCircle } from './circle.ts';
import type { Failure } from './linkage.ts';
import { Fixed } from './slots.ts';

/** Shifts of the four pivots, and the change of the tie rod's length, mm. */
export interface Settings {
  readonly lowerFront: Vector3;
  readonly lowerRear: Vector3;
  readonly upperFront: Vector3;
  readonly upperRear: Vector3;
  readonly rod: number;
}

/** The settings of a model. */
export function settingsOf(model: Model): Settings {
  const { upperArm } = model;
  return {
    lowerFront: camShift(model.lowerArm.frontCam),
    lowerRear: camShift(model.lowerArm.rearCam),
    upperFront: add(camShift(upperArm.frontCam), shimShift(upperArm.frontShim)),
    upperRear: add(camShift(upperArm.rearCam), shimShift(upperArm.rearShim)),
    rod: tieRodChange(model.tieRod),
  };
}

function camShift(cam: Cam | undefined): Vector3 {
  if (cam === undefined) return [0, 0, 0];
  return scale(unit(camSlot(cam)), cam.throw * Math.sin(radians(camAngle(cam))));
}

function shimShift(shim: Shim | undefined): Vector3 {
  if (shim === undefined) return [0, 0, 0];
  return scale(unit(shimDirection(shim)), shimThickness(shim));
}

/** Longest displacement that the settings bring, mm. */
export function sizeOf(settings: Settings): number {
  const { lowerFront, lowerRear, upperFront, upperRear, rod } = settings;
  return Math.max(Math.abs(rod), ...[lowerFront, lowerRear, upperFront, upperRear].map(length));
}

function writeArm(
  fixed: Float64Array,
  at: number,
  arm: Arm,
  front: Vector3,
  rear: Vector3,
): boolean {
  return writeCircle(
    fixed,
    at,
    front,
    rear,
    distance(arm.ballJoint, arm.frontPivot),
    distance(arm.ballJoint, arm.rearPivot),
    arm.ballJoint,
  );
}

/** Writes what the settings change, at the share u of their full size. */
export function applySettings(
  model: Model,
  fixed: Float64Array,
  settings: Settings,
  u: number,
): Failure | null {
  const { lowerArm, upperArm, tieRod } = model;
  const lower = writeArm(
    fixed,
    Fixed.lowerCircle,
    lowerArm,
    addScaled(lowerArm.frontPivot, settings.lowerFront, u),
    addScaled(lowerArm.rearPivot, settings.lowerRear, u),
  );
  if (!lower) return 'lowerArm';
  const upper = writeArm(
    fixed,
    Fixed.upperCircle,
    upperArm,
    addScaled(upperArm.frontPivot, settings.upperFront, u),
    addScaled(upperArm.rearPivot, settings.upperRear, u),
  );
  if (!upper) return 'upperArm';
  const rod = distance(tieRod.inner, tieRod.outer) + u * settings.rod;
  if (!(rod > 0)) return 'tieRod';
  fixed[Fixed.rodSquared] = rod * rod;
  return null;
}
