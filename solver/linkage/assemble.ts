/** From a model to a linkage: the constant lengths, the branch of the design pose, and the settings applied. */

import {
  add,
  addScaled,
  cross,
  distance,
  dot,
  length,
  rejectFrom,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../math/vec3.ts';
import {
  camAngle,
  camSlot,
  hubAngle,
  steeringDirection,
  tieRodChange,
  wheelSpacer,
} from '../model/defaults.ts';
import type { Arm, Cam, Model } from '../model/model.ts';
import { radians } from '../units.ts';
import { writeCircle } from './circle.ts';
import { nameOfSingular, walk } from './follow.ts';
import { placeRack } from './place.ts';
import { createPredictor, type Predictor } from './predictor.ts';
import { correct, writeSides } from './regular.ts';
import { Fixed, Slot } from './slots.ts';

/** The constraint that can no longer be kept. */
export type Failure = 'lowerArm' | 'upperArm' | 'tieRod';

/** Two vectors that span the design knuckle frame with their cross product, and its origin LB. */
export interface Frame {
  readonly origin: Vector3;
  readonly axes: readonly [Vector3, Vector3, Vector3];
}

/** A model made ready to be solved: constants only, no pose. */
export interface Linkage {
  readonly model: Model;
  readonly fixed: Float64Array;
  /** Design-pose frames in which carried points keep their components. */
  readonly knuckle: Frame;
  readonly lowerArm: Frame;
  readonly upperArm: Frame;
  /** The pose at travel 0 and rack 0 with the settings applied, and the determinant that tells its branch. */
  readonly home: Float64Array;
  readonly homeDeterminant: number;
  /** What the settings themselves break, else null. */
  readonly broken: Failure | null;
  /** Fast first guesses inside a box of poses proven to be on the branch. */
  readonly predictor: Predictor;
  /** The pivots with their cams applied. */
  readonly pivots: {
    readonly lowerFront: Vector3;
    readonly lowerRear: Vector3;
    readonly upperFront: Vector3;
    readonly upperRear: Vector3;
  };
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

function armFrame(arm: Arm): Frame {
  return frameFrom(
    arm.ballJoint,
    subtract(arm.frontPivot, arm.rearPivot),
    subtract(arm.ballJoint, arm.rearPivot),
  );
}

function camShift(cam: Cam | undefined): Vector3 {
  if (cam === undefined) return [0, 0, 0];
  return scale(unit(camSlot(cam)), cam.throw * Math.sin(radians(camAngle(cam))));
}

interface Settings {
  readonly lowerFront: Vector3;
  readonly lowerRear: Vector3;
  readonly upperFront: Vector3;
  readonly upperRear: Vector3;
  readonly rod: number;
}

function settingsOf(model: Model): Settings {
  return {
    lowerFront: camShift(model.lowerArm.frontCam),
    lowerRear: camShift(model.lowerArm.rearCam),
    upperFront: camShift(model.upperArm.frontCam),
    upperRear: camShift(model.upperArm.rearCam),
    rod: tieRodChange(model.tieRod),
  };
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
function applySettings(
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

function writeConstants(model: Model, fixed: Float64Array, knuckle: Frame): void {
  const span = distance(model.upperArm.ballJoint, model.lowerArm.ballJoint);
  fixed[Fixed.spanSquared] = span * span;
  fixed[Fixed.spanInverse] = 1 / span;
  const outer = pointInFrame(knuckle, model.tieRod.outer);
  fixed[Fixed.outerAlong] = outer[0];
  fixed[Fixed.outerAside] = outer[1];
  const centre = designWheelCentre(model);
  fixed.set(pointInFrame(knuckle, centre), Fixed.centreInFrame);
  fixed.set(inFrame(knuckle, designHubAxis(model)), Fixed.hubInFrame);
  fixed.set(model.tieRod.inner, Fixed.rackOrigin);
  fixed.set(unit(steeringDirection(model.steering)), Fixed.rackDirection);
  fixed[Fixed.designHeight] = centre[2];
}

/** Writes the design pose, in which both circles' angles are 0, from the model's own points. */
function writeDesignPose(fixed: Float64Array, pose: Float64Array, knuckle: Frame): void {
  placeRack(fixed, pose);
  pose[Slot.lowerAngle] = 0;
  pose[Slot.upperCos] = 1;
  pose[Slot.upperSin] = 0;
  pose.set(knuckle.axes.flat(), Slot.frame);
}

/** Longest displacement that the settings bring, mm. */
function sizeOf(settings: Settings): number {
  const { lowerFront, lowerRear, upperFront, upperRear, rod } = settings;
  return Math.max(Math.abs(rod), ...[lowerFront, lowerRear, upperFront, upperRear].map(length));
}

/**
 * Follows the branch at travel 0 and rack 0 while the settings grow to their full size, `pose` holding the design pose.
 * Where they break the corner, the last share that holds stays applied and the constraint is named.
 */
function settle(model: Model, fixed: Float64Array, pose: Float64Array): Failure | null {
  const settings = settingsOf(model);
  const size = sizeOf(settings);
  const home = correct(fixed, pose, 0);
  if (home === 0) return 'lowerArm';
  if (size === 0) return null;
  const trial = pose.slice();
  let failed: Failure | null = null;
  const attempt = (share: number): number => {
    failed = applySettings(model, fixed, settings, share);
    trial.set(pose);
    return failed === null ? correct(fixed, trial, 0) / home : 0;
  };
  const reached = walk(size, attempt, () => pose.set(trial));
  if (reached === 1) return null;
  applySettings(model, fixed, settings, reached);
  return failed ?? nameOfSingular(pose);
}

/**
 * Makes a linkage of a sound model (one that `parseModel` accepts): lengths from the design pose, branch signs, cam
 * angles and tie rod turns applied on top. Costs a fraction of a millisecond; poses are then solved by `solvePose`.
 */
export function assembleLinkage(model: Model): Linkage {
  const fixed = new Float64Array(Fixed.size);
  const pose = new Float64Array(Slot.size);
  const lower = model.lowerArm.ballJoint;
  const knuckle = frameFrom(
    lower,
    subtract(model.upperArm.ballJoint, lower),
    subtract(model.tieRod.outer, lower),
  );
  const settings = settingsOf(model);
  writeConstants(model, fixed, knuckle);
  writeDesignPose(fixed, pose, knuckle);
  const unsound = applySettings(model, fixed, settings, 0);
  const broken = unsound ?? settle(model, fixed, pose);
  const homeDeterminant = correct(fixed, pose, 0);
  writeSides(fixed, pose);
  pose[Slot.travel] = 0;
  return {
    model,
    fixed,
    knuckle,
    lowerArm: armFrame(model.lowerArm),
    upperArm: armFrame(model.upperArm),
    home: pose,
    homeDeterminant,
    broken,
    predictor: createPredictor(model, fixed, pose[Slot.lowerAngle]!, broken === null),
    pivots: {
      lowerFront: add(model.lowerArm.frontPivot, settings.lowerFront),
      lowerRear: add(model.lowerArm.rearPivot, settings.lowerRear),
      upperFront: add(model.upperArm.frontPivot, settings.upperFront),
      upperRear: add(model.upperArm.rearPivot, settings.upperRear),
    },
  };
}
