/** One pose as the object that `pose --json` prints: keys, order, units and signs of the geometry contract. */
import type { Corner } from '../corner.ts';
import type { Failure } from '../linkage/linkage.ts';
import { Slot } from '../linkage/slots.ts';
import { createPose, type Pose, solvePose } from '../linkage/solve.ts';
import type { Vector3 } from '../model/model.ts';
import { createMeasures, MEASURE_KEYS, Measure, type MeasureKey } from './keys.ts';
import { outsideLimits } from './limits.ts';
import { measureInto } from './measure.ts';
import { placeRod, rodPointCount } from './parts.ts';

/** A pose that cannot be reached: what fails, and the last reachable place on the straight path to it, mm. */
export interface Unreached {
  readonly reached: false;
  readonly fails: Failure;
  readonly lastTravel: number;
  readonly lastRack: number;
}

/** A reached pose; a key whose parts the model lacks is absent, null is a centre at infinity or a part out of reach. */
export interface Reached {
  readonly reached?: undefined;
  readonly travel: number;
  readonly rack: number;
  readonly points: Readonly<Record<string, Vector3 | null | readonly Vector3[]>>;
  readonly [key: string]: unknown;
}

export type PoseReport = Reached | Unreached;

/** Measures that every model has, each a number of its own: the first keys, in the contract's order. */
const PLAIN: readonly MeasureKey[] = MEASURE_KEYS.slice(
  0,
  MEASURE_KEYS.indexOf('rollCentreHeight') + 1,
);

/** A number for JSON: no NaN, no infinity, no negative zero. */
function plain(value: number): number | null {
  return Number.isFinite(value) ? value + 0 : null;
}

function pointAt(data: Float64Array, at: number): Vector3 {
  return [data[at]! + 0, data[at + 1]! + 0, data[at + 2]! + 0];
}

function centre(a: number, b: number): readonly [number, number] | null {
  return Number.isFinite(a) && Number.isFinite(b) ? [a, b] : null;
}

function optionalMeasures(
  corner: Corner,
  of: (key: MeasureKey) => number,
): Record<string, unknown> {
  const { model } = corner;
  const out: Record<string, unknown> = {};
  if (model.vehicle !== undefined) {
    out['antiDive'] = plain(of('antiDive'));
    out['antiLift'] = plain(of('antiLift'));
  }
  if (model.coilover !== undefined) {
    out['damperLength'] = plain(of('damperLength'));
    out['motionRatio'] = plain(of('motionRatio'));
    out['motionRatioRate'] = plain(of('motionRatioRate'));
    const { springRate, designForce } = model.coilover;
    if (springRate !== undefined && designForce !== undefined)
      out['wheelRate'] = plain(of('wheelRate'));
  }
  if (model.antiRollBar !== undefined) out['barMotionRatio'] = plain(of('barMotionRatio'));
  if (model.halfShaft !== undefined) {
    out['halfShaft'] = {
      outerAngle: of('outerAngle'),
      innerAngle: of('innerAngle'),
      plunge: of('plunge'),
    };
  }
  return out;
}

function rodBendPoints(corner: Corner, data: Float64Array): Vector3[] {
  const count = rodPointCount(corner);
  const line = new Float64Array(3 * count);
  placeRod(corner, data, line);
  return Array.from({ length: count - 2 }, (_, i) => pointAt(line, 3 * (i + 1)));
}

function points(corner: Corner, data: Float64Array): Reached['points'] {
  const { model, linkage } = corner;
  const out: Record<string, Vector3 | null | readonly Vector3[]> = {
    wheelCentre: pointAt(data, Slot.centre),
    contact: pointAt(data, Slot.contact),
    lowerBallJoint: pointAt(data, Slot.lower),
    upperBallJoint: pointAt(data, Slot.upper),
    tieRodInner: pointAt(data, Slot.inner),
    tieRodOuter: pointAt(data, Slot.outer),
  };
  if (model.tieRod.bends !== undefined) out['tieRodBends'] = rodBendPoints(corner, data);
  out['lowerFrontPivot'] = linkage.pivots.lowerFront;
  out['lowerRearPivot'] = linkage.pivots.lowerRear;
  out['upperFrontPivot'] = linkage.pivots.upperFront;
  out['upperRearPivot'] = linkage.pivots.upperRear;
  if (model.coilover !== undefined) {
    out['damperTop'] = model.coilover.top;
    out['damperBottom'] = pointAt(data, Slot.damperBottom);
  }
  if (model.antiRollBar !== undefined) {
    out['leverEnd'] = data[Slot.leverRoom]! > 0 ? pointAt(data, Slot.leverEnd) : null;
    out['link'] = pointAt(data, Slot.link);
  }
  if (model.halfShaft !== undefined) {
    out['shaftInner'] = model.halfShaft.inner;
    out['shaftOuter'] = pointAt(data, Slot.shaftOuter);
  }
  return out;
}

/** The report of a pose that is solved and measured already. */
export function reportOf(corner: Corner, pose: Pose, measures: Float64Array): PoseReport {
  if (pose.outcome !== 'reached') {
    return {
      reached: false,
      fails: pose.outcome,
      lastTravel: pose.lastTravel + 0,
      lastRack: pose.lastRack + 0,
    };
  }
  const { data } = pose;
  const of = (key: MeasureKey): number => measures[Measure[key]]!;
  const plainMeasures = Object.fromEntries(PLAIN.map((key) => [key, plain(of(key))]));
  return {
    travel: data[Slot.travel]! + 0,
    rack: data[Slot.rack]! + 0,
    ...plainMeasures,
    frontViewCentre: centre(of('frontViewCentreY'), of('frontViewCentreZ')),
    sideViewCentre: centre(of('sideViewCentreX'), of('sideViewCentreZ')),
    ...optionalMeasures(corner, of),
    joints: {
      lowerBallJoint: of('lowerBallJoint'),
      upperBallJoint: of('upperBallJoint'),
      tieRodOuter: of('tieRodOuter'),
      tieRodInner: of('tieRodInner'),
    },
    hubAxis: pointAt(data, Slot.hubAxis),
    outside: outsideLimits(corner, pose, measures),
    points: points(corner, data),
  };
}

/** Solves and reports one pose at (travel, rack), mm. */
export function poseReport(corner: Corner, travel: number, rack: number): PoseReport {
  const pose = createPose();
  const measures = createMeasures();
  if (solvePose(corner.linkage, pose, travel, rack) === 'reached')
    measureInto(corner, pose, measures);
  return reportOf(corner, pose, measures);
}
