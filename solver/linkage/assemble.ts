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
import { angleOnCircle, writeCircle } from './circle.ts';
import { angleRates, placeBodies, placeRack } from './place.ts';
import { createPredictor, type Predictor } from './predictor.ts';
import { Fixed, Slot } from './slots.ts';
import { stepTo } from './step.ts';

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
  /** Lower arm angle, rad, at travel 0 and rack 0 with the settings applied. */
  readonly homeAngle: number;
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

function isZero(settings: Settings): boolean {
  return (
    length(settings.lowerFront) === 0 &&
    length(settings.lowerRear) === 0 &&
    length(settings.upperFront) === 0 &&
    length(settings.upperRear) === 0 &&
    settings.rod === 0
  );
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

/** Signs of the closed-form answers that give the design pose back. */
function writeBranch(
  model: Model,
  fixed: Float64Array,
  pose: Float64Array,
  knuckle: Frame,
): Failure | null {
  const [k, m] = knuckle.axes;
  const inner = rejectFrom(subtract(model.tieRod.inner, model.lowerArm.ballJoint), k);
  fixed[Fixed.rodSide] = dot(m, cross(k, inner)) < 0 ? -1 : 1;
  const axis: Vector3 = [
    fixed[Fixed.upperCircle + 9]!,
    fixed[Fixed.upperCircle + 10]!,
    fixed[Fixed.upperCircle + 11]!,
  ];
  const centre: Vector3 = [
    fixed[Fixed.upperCircle]!,
    fixed[Fixed.upperCircle + 1]!,
    fixed[Fixed.upperCircle + 2]!,
  ];
  const toUpper = subtract(model.upperArm.ballJoint, centre);
  const toLower = subtract(model.lowerArm.ballJoint, centre);
  fixed[Fixed.upperSide] = dot(axis, cross(toLower, toUpper)) < 0 ? -1 : 1;
  fixed[Fixed.wheelSide] = 1;
  placeRack(fixed, pose, 0);
  const placed = placeBodies(fixed, pose, 0);
  if (placed !== 'placed') return placed;
  angleRates(fixed, pose);
  const climb = pose[Slot.angleCentre + 2]!;
  fixed[Fixed.wheelSide] = climb < 0 ? -1 : 1;
  return climb === 0 ? 'lowerArm' : null;
}

const SETTING_STEPS = 16;

/** Follows the branch at travel 0 and rack 0 while the settings grow to their full size. */
function settle(
  model: Model,
  fixed: Float64Array,
  pose: Float64Array,
): { angle: number; broken: Failure | null } {
  const settings = settingsOf(model);
  if (isZero(settings)) return { angle: 0, broken: null };
  let angle = 0;
  for (let step = 1; step <= SETTING_STEPS; step += 1) {
    const failed = applySettings(model, fixed, settings, step / SETTING_STEPS);
    if (failed !== null) return { angle, broken: failed };
    placeRack(fixed, pose, 0);
    const outcome = stepTo(fixed, pose, angle, 0);
    if (outcome !== 'placed') return { angle, broken: outcome };
    angle = pose[Slot.lowerAngle]!;
  }
  return { angle, broken: null };
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
  const broken =
    applySettings(model, fixed, settings, 0) ?? writeBranch(model, fixed, pose, knuckle);
  const home = broken === null ? settle(model, fixed, pose) : { angle: 0, broken };
  return {
    model,
    fixed,
    knuckle,
    lowerArm: armFrame(model.lowerArm),
    upperArm: armFrame(model.upperArm),
    homeAngle: home.angle,
    broken: home.broken,
    predictor: createPredictor(model, fixed, home.angle, home.broken === null),
    pivots: {
      lowerFront: add(model.lowerArm.frontPivot, settings.lowerFront),
      lowerRear: add(model.lowerArm.rearPivot, settings.lowerRear),
      upperFront: add(model.upperArm.frontPivot, settings.upperFront),
      upperRear: add(model.upperArm.rearPivot, settings.upperRear),
    },
  };
}

/** Angle, rad, of the design ball joint on the upper circle: where leverage measures start. */
export function designUpperAngle(linkage: Linkage): number {
  return angleOnCircle(linkage.fixed, Fixed.upperCircle, linkage.model.upperArm.ballJoint);
}
