/**
 * One angle of the wheel along travel at rack 0, for many slightly different models one after the other: each is
 * assembled without first guesses over travel × rack, and its poses are walked outwards from the set-up pose.
 */
import { assembleLinkage } from '../linkage/assemble.ts';
import type { Linkage } from '../linkage/linkage.ts';
import { poseRates } from '../linkage/rates.ts';
import { Fixed, Slot } from '../linkage/slots.ts';
import { createPose, type Pose, solvePose } from '../linkage/solve.ts';
import { stepTo } from '../linkage/step.ts';
import { carryDirection } from '../linkage/triad.ts';
import { rideTravel } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { degrees } from '../units.ts';
import { angleOf, type Question, type Subject } from './question.ts';

/** The angle and its exact rate at heights that ascend; refilled by `curveInto`. */
export interface Curve {
  /** Travel, mm. */
  readonly heights: Float64Array;
  /** Which of them is ride. */
  readonly ride: number;
  /** Degrees, and degrees per mm. */
  readonly angle: Float64Array;
  readonly rate: Float64Array;
  readonly isCamber: boolean;
  readonly pose: Pose;
}

/** Heights besides ride: between two the angle is taken as a cubic with the exact rates at both. */
const HEIGHTS = 17;
/** Two heights nearer than this, mm, are one. */
const SAME = 1e-6;
/** Room that must be left between two poses of the walk, so that no singular one lies between them. */
const ROOM_TO_SPARE = 0.02;

/** Makes the curve that answers a question about a model. */
export function createCurve(model: Model, { subject, stretch }: Question): Curve {
  const ride = rideTravel(model.travel);
  const low = Math.min(stretch[0], ride);
  const high = Math.max(stretch[1], ride);
  const even = Array.from({ length: HEIGHTS }, (_, i) => low + ((high - low) * i) / (HEIGHTS - 1));
  const others = even.filter((height) => Math.abs(height - ride) > SAME);
  const heights = Float64Array.from([...others, ride].sort((a, b) => a - b));
  return {
    heights,
    ride: heights.indexOf(ride),
    angle: new Float64Array(heights.length),
    rate: new Float64Array(heights.length),
    isCamber: angleOf(subject) === 'camber',
    pose: createPose(),
  };
}

/** Degrees of toe or camber of a placed pose; writes its hub axis. */
function angleIn(fixed: Float64Array, data: Float64Array, isCamber: boolean): number {
  carryDirection(fixed, Fixed.hubInFrame, data, Slot.frame, Slot.hubAxis);
  if (isCamber) return -degrees(Math.asin(data[Slot.hubAxis + 2]!));
  return degrees(Math.atan2(data[Slot.hubAxis]!, data[Slot.hubAxis + 1]!));
}

/** Degrees per mm of toe or camber of a pose with its hub axis and rates. */
function rateIn(data: Float64Array, isCamber: boolean): number {
  const ax = data[Slot.hubAxis]!;
  const ay = data[Slot.hubAxis + 1]!;
  const az = data[Slot.hubAxis + 2]!;
  const ox = data[Slot.travelOmega]!;
  const oy = data[Slot.travelOmega + 1]!;
  const oz = data[Slot.travelOmega + 2]!;
  const squared = ax * ax + ay * ay;
  if (isCamber) return -degrees((ox * ay - oy * ax) / Math.sqrt(squared));
  return degrees(((oy * az - oz * ay) * ay - ax * (oz * ax - ox * az)) / squared);
}

const _rooms = new Float64Array(3);

function roomIsLeft(data: Float64Array): boolean {
  for (let i = 0; i < 3; i += 1) {
    const now = data[Slot.upperRoom + i]!;
    const before = _rooms[i]!;
    if (!(Math.min(now, before) - Math.abs(now - before) / 2 > ROOM_TO_SPARE)) return false;
    _rooms[i] = now;
  }
  return true;
}

/** Puts the pose back to the set-up one; false where it leaves no room to step from. */
function startHome({ fixed, home }: Linkage, data: Float64Array): boolean {
  data.set(home);
  if (!stepTo(fixed, data, home[Slot.lowerAngle]!, 0)) return false;
  data[Slot.travel] = 0;
  poseRates(fixed, data);
  for (let i = 0; i < 3; i += 1) _rooms[i] = data[Slot.upperRoom + i]!;
  return true;
}

/** Steps on from the last height to the next; false where that leaves no room to spare. */
function stepOn(fixed: Float64Array, data: Float64Array, height: number): boolean {
  const guess = data[Slot.lowerAngle]! + data[Slot.travelTheta]! * (height - data[Slot.travel]!);
  if (!stepTo(fixed, data, guess, height)) return false;
  data[Slot.travel] = height;
  poseRates(fixed, data);
  return roomIsLeft(data);
}

/** Fills one half of the curve, away from travel 0. From where there is no room to step, the branch is followed. */
function walkHalf(linkage: Linkage, curve: Curve, up: boolean): boolean {
  const { fixed } = linkage;
  const { heights, pose } = curve;
  const count = heights.length;
  let isStepping = startHome(linkage, pose.data);
  for (let n = 0; n < count; n += 1) {
    const i = up ? n : count - 1 - n;
    const height = heights[i]!;
    if (height >= 0 !== up) continue;
    isStepping &&= stepOn(fixed, pose.data, height);
    if (!isStepping) {
      if (solvePose(linkage, pose, height, 0) !== 'reached') return false;
      poseRates(fixed, pose.data);
    }
    curve.angle[i] = angleIn(fixed, pose.data, curve.isCamber);
    curve.rate[i] = rateIn(pose.data, curve.isCamber);
  }
  return true;
}

/** Fills the curve for a model that differs from the curve's own in points only; false where any height is out of reach. */
export function curveInto(model: Model, curve: Curve): boolean {
  const linkage = assembleLinkage(model, false);
  if (linkage.broken !== null) return false;
  return walkHalf(linkage, curve, true) && walkHalf(linkage, curve, false);
}

/** Usual rates are rounded to so much, degrees per mm. */
const RATE_STEP = 0.001;

/** The rate at ride that a design has of the subject's angle, degrees per mm, to 0.1° over 100 mm; 0 out of reach. */
export function usualRate(model: Model, subject: Subject): number {
  const linkage = assembleLinkage(model, false);
  const pose = createPose();
  if (solvePose(linkage, pose, rideTravel(model.travel), 0) !== 'reached') return 0;
  poseRates(linkage.fixed, pose.data);
  const isCamber = angleOf(subject) === 'camber';
  angleIn(linkage.fixed, pose.data, isCamber);
  const rate = rateIn(pose.data, isCamber);
  return Number((Math.round(rate / RATE_STEP) * RATE_STEP).toFixed(3));
}
