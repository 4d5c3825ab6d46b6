/** A corner: the linkage of a model with everything that rides on it, made ready once so that poses cost nothing more. */

import { assembleLinkage } from './linkage/assemble.ts';
import { BODIES, type Body, placeFrames } from './linkage/bodies.ts';
import { CIRCLE_WITH_SPHERE, SIDE, SPHERE, writeCircle } from './linkage/circle.ts';
import { type Frame, frameFrom, inFrame, pointInFrame } from './linkage/frames.ts';
import type { Linkage } from './linkage/linkage.ts';
import { Slot } from './linkage/slots.ts';
import { createPose, type Outcome, type Pose, solvePose } from './linkage/solve.ts';
import { cross, distance, dot, subtract, unit, type Vector3 } from './math/vec3.ts';
import { carrier, rideTravel, shaftInnerAxis, tieRodStudAxis } from './model/defaults.ts';
import type { Arm, Carrier, Model } from './model/model.ts';
import { loadedRadius } from './model/tyre.ts';
import { degrees } from './units.ts';

/** A point carried by a body: its components in the body's frame. */
export interface Seat {
  readonly body: Body;
  readonly at: Float64Array;
}

/** The coilover (or the strap): a fixed top, a carried bottom. */
export interface Damper {
  readonly top: Vector3;
  readonly seat: Seat;
  readonly designLength: number;
}

/** The anti-roll bar's lever: its end turns on a circle about the bar and keeps its distance to the carried link. */
export interface Lever {
  /** The lever's circle with the drop link's sphere, see linkage/circle.ts. */
  readonly circle: Float64Array;
  readonly seat: Seat;
  /** +1 when a growing bar angle raises the lever's end in the design pose, −1 when it lowers it, 0 when it does neither. */
  readonly raising: number;
}

/** Stud and housing of a joint, components in their own bodies' frames. */
export interface Joint {
  readonly stud: Float64Array;
  readonly housing: Float64Array;
}

export interface Shaft {
  readonly inner: Vector3;
  readonly innerAxis: Vector3;
  readonly seat: Seat;
  readonly designLength: number;
}

export interface Corner {
  readonly model: Model;
  readonly linkage: Linkage;
  /** Constant distance from the wheel centre to the contact point, mm. */
  readonly loadedRadius: number;
  readonly coilover: Damper | null;
  readonly strap: Damper | null;
  readonly lever: Lever | null;
  readonly shaft: Shaft | null;
  readonly joints: { readonly lower: Joint; readonly upper: Joint; readonly rod: Joint };
  /** Bend points of the tie rod from inner to outer, three components each in the rod frame, from TO. */
  readonly rodBends: Float64Array;
  /** Toe of the set pose, degrees; null when the set pose is out of reach. */
  readonly setToe: number | null;
}

function frameOf(linkage: Linkage, on: Carrier): Frame {
  if (on === 'lowerArm') return linkage.lowerArm;
  return on === 'upperArm' ? linkage.upperArm : linkage.knuckle;
}

function seatOf(linkage: Linkage, on: Carrier, point: Vector3): Seat {
  return { body: BODIES[on], at: Float64Array.from(pointInFrame(frameOf(linkage, on), point)) };
}

function damperOf(
  linkage: Linkage,
  part: { readonly top: Vector3; readonly bottom: Vector3; readonly on?: Carrier } | undefined,
): Damper | null {
  if (part === undefined) return null;
  return {
    top: part.top,
    seat: seatOf(linkage, carrier(part), part.bottom),
    designLength: distance(part.top, part.bottom),
  };
}

/** Vertical part of a unit tangent below which the lever's end moves level, neither up nor down. */
const LEVEL_TANGENT = 1e-9;

function leverOf(model: Model, linkage: Linkage): Lever | null {
  const bar = model.antiRollBar;
  if (bar === undefined) return null;
  const circle = new Float64Array(CIRCLE_WITH_SPHERE);
  const [a, b] = bar.axis;
  writeCircle(circle, 0, a, b, distance(bar.leverEnd, a), distance(bar.leverEnd, b), bar.leverEnd);
  const centre: Vector3 = [circle[0]!, circle[1]!, circle[2]!];
  const axis: Vector3 = [circle[9]!, circle[10]!, circle[11]!];
  const towardsLink = subtract(bar.link, centre);
  circle[SPHERE] = distance(bar.link, bar.leverEnd) ** 2;
  circle[SIDE] = dot(axis, cross(towardsLink, subtract(bar.leverEnd, centre))) < 0 ? -1 : 1;
  return {
    circle,
    seat: seatOf(linkage, carrier(bar), bar.link),
    raising: Math.abs(circle[8]!) < LEVEL_TANGENT ? 0 : Math.sign(circle[8]!),
  };
}

function ballJoint(linkage: Linkage, arm: Arm, frame: Frame): Joint {
  const stud = unit(arm.studAxis ?? linkage.knuckle.axes[0]);
  const housing = unit(arm.housingAxis ?? stud);
  return {
    stud: Float64Array.from(inFrame(linkage.knuckle, stud)),
    housing: Float64Array.from(inFrame(frame, housing)),
  };
}

function shaftOf(model: Model, linkage: Linkage): Shaft | null {
  const shaft = model.halfShaft;
  if (shaft === undefined) return null;
  return {
    inner: shaft.inner,
    innerAxis: unit(shaftInnerAxis(shaft)),
    seat: seatOf(linkage, 'knuckle', shaft.outer),
    designLength: distance(shaft.inner, shaft.outer),
  };
}

function setToeOf(linkage: Linkage): number | null {
  const pose = createPose();
  if (solvePose(linkage, pose, rideTravel(linkage.model.travel), 0) !== 'reached') return null;
  placeFrames(linkage.fixed, pose.data);
  return degrees(Math.atan2(pose.data[Slot.hubAxis]!, pose.data[Slot.hubAxis + 1]!));
}

/** Makes a corner of a sound model. Costs a fraction of a millisecond. */
export function assemble(model: Model): Corner {
  return cornerOf(model, assembleLinkage(model));
}

/**
 * Makes a corner of a sound model whose points are some millimetres from those of `base`, in a fifth of the time: its poses are guessed from
 * those of `base` where these serve all over its range, and solved to the same exactness.
 */
export function assembleNear(base: Corner, model: Model): Corner {
  return cornerOf(model, assembleLinkage(model, base.linkage));
}

function cornerOf(model: Model, linkage: Linkage): Corner {
  const { tieRod } = model;
  const stud = unit(tieRodStudAxis(tieRod));
  const rod = frameFrom(tieRod.outer, subtract(tieRod.outer, tieRod.inner), stud);
  return {
    model,
    linkage,
    loadedRadius: loadedRadius(model.tyre, model.wheel),
    coilover: damperOf(linkage, model.coilover),
    strap: damperOf(linkage, model.strap),
    lever: leverOf(model, linkage),
    shaft: shaftOf(model, linkage),
    joints: {
      lower: ballJoint(linkage, model.lowerArm, linkage.lowerArm),
      upper: ballJoint(linkage, model.upperArm, linkage.upperArm),
      rod: {
        stud: Float64Array.from(inFrame(linkage.knuckle, stud)),
        housing: Float64Array.from(inFrame(rod, unit(tieRod.housingAxis ?? stud))),
      },
    },
    rodBends: Float64Array.from((tieRod.bends ?? []).flatMap((bend) => pointInFrame(rod, bend))),
    setToe: setToeOf(linkage),
  };
}

/** Solves one pose of a corner: `solvePose` on its linkage. */
export function solve(corner: Corner, pose: Pose, travel: number, rack: number): Outcome {
  return solvePose(corner.linkage, pose, travel, rack);
}
