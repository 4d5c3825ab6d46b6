/** Which of the model's own limits a measured pose lies outside of. Limits are named by their key in the model file. */
import type { Corner } from '../corner.ts';
import { Slot } from '../linkage/slots.ts';
import type { Pose } from '../linkage/solve.ts';
import type { Model } from '../model/model.ts';
import { Measure, type MeasureKey } from './keys.ts';

/** One limit that the model states: the measure it holds, and its bounds, mm or degrees. */
export interface Limit {
  readonly name: string;
  readonly of: MeasureKey | 'travel' | 'rack';
  readonly least?: number | undefined;
  readonly most?: number | undefined;
}

function minus(value: number | undefined): number | undefined {
  return value === undefined ? undefined : -value;
}

function inputLimits({ steering, stops }: Model): Limit[] {
  return [
    {
      name: 'steering.limit',
      of: 'rack',
      least: steering?.limit?.[0],
      most: steering?.limit?.[1],
    },
    { name: 'stops.bump', of: 'travel', most: stops?.bump },
    { name: 'stops.droop', of: 'travel', least: minus(stops?.droop) },
  ];
}

function jointLimits({ lowerArm, upperArm, tieRod }: Model): Limit[] {
  return [
    { name: 'lowerArm.ballJointLimit', of: 'lowerBallJoint', most: lowerArm.ballJointLimit },
    { name: 'upperArm.ballJointLimit', of: 'upperBallJoint', most: upperArm.ballJointLimit },
    { name: 'tieRod.endLimit', of: 'tieRodOuter', most: tieRod.endLimit },
    { name: 'tieRod.innerLimit', of: 'tieRodInner', most: tieRod.innerLimit },
  ];
}

function partLimits({ coilover, halfShaft, strap }: Model): Limit[] {
  return [
    { name: 'coilover.minLength', of: 'damperLength', least: coilover?.minLength },
    { name: 'coilover.maxLength', of: 'damperLength', most: coilover?.maxLength },
    { name: 'strap.length', of: 'strapLength', most: strap?.length },
    { name: 'halfShaft.outerLimit', of: 'outerAngle', most: halfShaft?.outerLimit },
    { name: 'halfShaft.innerLimit', of: 'innerAngle', most: halfShaft?.innerLimit },
    { name: 'halfShaft.plungeIn', of: 'plunge', most: halfShaft?.plungeIn },
    { name: 'halfShaft.plungeOut', of: 'plunge', least: minus(halfShaft?.plungeOut) },
  ];
}

/** The limits a model states. */
export function limitsOf(model: Model): readonly Limit[] {
  return [...inputLimits(model), ...jointLimits(model), ...partLimits(model)].filter(
    ({ least, most }) => least !== undefined || most !== undefined,
  );
}

/** What the limit holds, in the measured pose: mm or degrees. */
export function limitedValue(limit: Limit, pose: Pose, measures: Float64Array): number {
  if (limit.of === 'travel') return pose.data[Slot.travel]!;
  if (limit.of === 'rack') return pose.data[Slot.rack]!;
  return measures[Measure[limit.of]]!;
}

/** True when the value lies outside of the limit. */
export function isOutside({ least, most }: Limit, value: number): boolean {
  return (least !== undefined && value < least) || (most !== undefined && value > most);
}

/**
 * Names of the limits this measured pose lies outside of, such as "coilover.maxLength". The travel range of the model
 * is what the bench sweeps and no limit; a drop link that cannot reach its lever is named "antiRollBar.link".
 */
export function outsideLimits(corner: Corner, pose: Pose, measures: Float64Array): string[] {
  const names = limitsOf(corner.model)
    .filter((limit) => isOutside(limit, limitedValue(limit, pose, measures)))
    .map((limit) => limit.name);
  if (corner.lever !== null && !(pose.data[Slot.leverRoom]! > 0)) names.push('antiRollBar.link');
  return names;
}
