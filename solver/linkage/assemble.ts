/** From a model to a linkage: the constant lengths, the branch of the design pose, and the settings applied. */
import { add, distance, subtract, unit } from '../math/vec3.ts';
import { steeringDirection } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { nameOfSingular, walk } from './follow.ts';
import {
  armFrame,
  designHubAxis,
  designWheelCentre,
  type Frame,
  frameFrom,
  inFrame,
  pointInFrame,
} from './frames.ts';
import type { Failure, Linkage } from './linkage.ts';
import { placeRack } from './place.ts';
import { createPredictor, type Predictor, servesAlso } from './predictor.ts';
import { correct, writeSides } from './regular.ts';
import { applySettings, type Settings, settingsOf, sizeOf } from './settings.ts';
import { Fixed, Slot } from './slots.ts';

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

/**
 * Follows the branch at travel 0 and rack 0 while the settings grow to their full size, `pose` holding the design pose.
 * Where they break the corner, the last share that holds stays applied and the constraint is named.
 */
function settle(
  model: Model,
  settings: Settings,
  fixed: Float64Array,
  pose: Float64Array,
): Failure | null {
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

/** First guesses: another linkage's where they serve, else its own; none where none are wanted. */
function predictorFor(
  model: Model,
  fixed: Float64Array,
  home: number,
  guesses: boolean | Linkage,
): Predictor {
  if (typeof guesses === 'boolean') return createPredictor(model, fixed, home, guesses);
  const { predictor } = guesses;
  const isShared = predictor.length === 0 || servesAlso(predictor, fixed);
  return isShared ? predictor : createPredictor(model, fixed, home, true);
}

/**
 * Makes a linkage of a sound model (one that `parseModel` accepts): lengths from the design pose, branch signs, cam
 * angles and tie rod turns applied on top. Costs a fraction of a millisecond; poses are then solved by `solvePose`. Most of
 * it goes into first guesses over travel × rack: without them (`guesses` false) poses are followed step by step; those of another
 * linkage whose points are close serve too.
 */
export function assembleLinkage(model: Model, guesses: boolean | Linkage = true): Linkage {
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
  const broken = unsound ?? settle(model, settings, fixed, pose);
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
    predictor: predictorFor(model, fixed, pose[Slot.lowerAngle]!, broken === null && guesses),
    pivots: {
      lowerFront: add(model.lowerArm.frontPivot, settings.lowerFront),
      lowerRear: add(model.lowerArm.rearPivot, settings.lowerRear),
      upperFront: add(model.upperArm.frontPivot, settings.upperFront),
      upperRear: add(model.upperArm.rearPivot, settings.upperRear),
    },
  };
}
