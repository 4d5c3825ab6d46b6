/** Which drawing belongs to which layer and to which lit measure. */
import type { MeasureKey } from '../../../solver/index.ts';
import type { Layer } from '../../state/view.ts';
import { drawCamber, drawCaster, drawKingpin, drawSteerAngle, drawToe } from './angles.ts';
import { drawCentres, drawFrontCentre, drawRollCentre, drawSideCentre } from './centres.ts';
import { drawGap } from './gap.ts';
import {
  drawJointCones,
  drawLowerJoint,
  drawPlunge,
  drawRodInner,
  drawRodOuter,
  drawShaftInner,
  drawShaftOuter,
  drawUpperJoint,
} from './joints.ts';
import { drawBallJointArcs, drawWheelPath } from './paths.ts';
import { pointDrawing } from './point.ts';
import { drawBar, drawDamper, drawRack, drawStrap } from './ratios.ts';
import { drawContact, drawSpindle, drawSteeringAxis, drawTrack } from './steering.ts';
import type { Drawing } from './subject.ts';
import { drawSweptGaps } from './sweptGaps.ts';

export const LAYER_DRAWINGS: Readonly<Partial<Record<Layer, Drawing>>> = {
  steeringAxis: drawSteeringAxis,
  contactPatch: drawContact,
  wheelPath: drawWheelPath,
  ballJointArcs: drawBallJointArcs,
  instantCentres: drawCentres,
  rollCentre: drawRollCentre,
  jointCones: drawJointCones,
  sweptSpace: drawSweptGaps,
};

const both =
  (first: Drawing, second: Drawing): Drawing =>
  (pen, subject) => {
    first(pen, subject);
    second(pen, subject);
  };

const axisAndContact = both(drawSteeringAxis, drawContact);
const axisAndSpindle = both(drawSteeringAxis, drawSpindle);
const toeAlong = both(drawToe, drawWheelPath);
const camberAlong = both(drawCamber, drawWheelPath);
const casterAlong = both(drawCaster, drawSteeringAxis);
const kingpinAlong = both(drawKingpin, drawSteeringAxis);

/** A drawing for every measure, and for the gap of rod and wheel. */
export const LIT_DRAWINGS: Readonly<Record<MeasureKey | 'rodGap', Drawing>> = {
  camber: drawCamber,
  toe: drawToe,
  caster: casterAlong,
  kingpinInclination: kingpinAlong,
  scrubRadius: axisAndContact,
  casterTrail: axisAndContact,
  spindleOffset: axisAndSpindle,
  spindleTrail: axisAndSpindle,
  steerAngle: drawSteerAngle,
  halfTrack: drawTrack,
  bumpSteer: toeAlong,
  bumpCamber: camberAlong,
  bumpCaster: casterAlong,
  trackRate: drawTrack,
  steerPerRack: drawRack,
  rollCentreHeight: drawRollCentre,
  frontViewCentreY: drawFrontCentre,
  frontViewCentreZ: drawFrontCentre,
  sideViewCentreX: drawSideCentre,
  sideViewCentreZ: drawSideCentre,
  antiDive: drawSideCentre,
  antiLift: drawSideCentre,
  damperLength: drawDamper,
  motionRatio: drawDamper,
  motionRatioRate: drawDamper,
  springForce: drawDamper,
  wheelRate: drawDamper,
  rideFrequency: drawDamper,
  barMotionRatio: drawBar,
  strapLength: drawStrap,
  outerAngle: drawShaftOuter,
  innerAngle: drawShaftInner,
  plunge: drawPlunge,
  lowerBallJoint: drawLowerJoint,
  upperBallJoint: drawUpperJoint,
  tieRodOuter: drawRodOuter,
  tieRodInner: drawRodInner,
  rodGap: drawGap,
};

/** The drawing of a lit key, or nothing for a key that has none. */
export function litDrawing(key: string | null): Drawing | null {
  if (key === null) return null;
  const known = (LIT_DRAWINGS as Readonly<Record<string, Drawing | undefined>>)[key];
  return known ?? pointDrawing(key);
}
