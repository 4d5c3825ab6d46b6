/** Which of the model's own limits a measured pose lies outside of. Limits are named by their key in the model file. */
import type { Corner } from '../corner.ts';
import { Slot } from '../linkage/slots.ts';
import type { Pose } from '../linkage/solve.ts';
import { Measure } from './keys.ts';

interface Limit {
  readonly name: string;
  readonly value: number;
  readonly least?: number | undefined;
  readonly most?: number | undefined;
}

function jointLimits(corner: Corner, measures: Float64Array): Limit[] {
  const { lowerArm, upperArm, tieRod } = corner.model;
  return [
    {
      name: 'lowerArm.ballJointLimit',
      value: measures[Measure.lowerBallJoint]!,
      most: lowerArm.ballJointLimit,
    },
    {
      name: 'upperArm.ballJointLimit',
      value: measures[Measure.upperBallJoint]!,
      most: upperArm.ballJointLimit,
    },
    { name: 'tieRod.endLimit', value: measures[Measure.tieRodOuter]!, most: tieRod.endLimit },
    { name: 'tieRod.innerLimit', value: measures[Measure.tieRodInner]!, most: tieRod.innerLimit },
  ];
}

function partLimits(corner: Corner, measures: Float64Array): Limit[] {
  const { coilover, halfShaft, strap } = corner.model;
  const damper = measures[Measure.damperLength]!;
  const plunge = measures[Measure.plunge]!;
  return [
    { name: 'coilover.minLength', value: damper, least: coilover?.minLength },
    { name: 'coilover.maxLength', value: damper, most: coilover?.maxLength },
    { name: 'strap.length', value: measures[Measure.strapLength]!, most: strap?.length },
    {
      name: 'halfShaft.outerLimit',
      value: measures[Measure.outerAngle]!,
      most: halfShaft?.outerLimit,
    },
    {
      name: 'halfShaft.innerLimit',
      value: measures[Measure.innerAngle]!,
      most: halfShaft?.innerLimit,
    },
    { name: 'halfShaft.plungeIn', value: plunge, most: halfShaft?.plungeIn },
    { name: 'halfShaft.plungeOut', value: -plunge, most: halfShaft?.plungeOut },
  ];
}

function inputLimits(corner: Corner, pose: Pose): Limit[] {
  const { steering, stops } = corner.model;
  const travel = pose.data[Slot.travel]!;
  const rack = pose.data[Slot.rack]!;
  const low = stops?.droop === undefined ? undefined : -stops.droop;
  return [
    {
      name: 'steering.limit',
      value: rack,
      least: steering?.limit?.[0],
      most: steering?.limit?.[1],
    },
    { name: 'stops.bump', value: travel, most: stops?.bump },
    { name: 'stops.droop', value: travel, least: low },
  ];
}

function isOutside({ value, least, most }: Limit): boolean {
  return (least !== undefined && value < least) || (most !== undefined && value > most);
}

/**
 * Names of the limits this measured pose lies outside of, such as "coilover.maxLength". The travel range of the model
 * is what the bench sweeps and no limit; a drop link that cannot reach its lever is named "antiRollBar.link".
 */
export function outsideLimits(corner: Corner, pose: Pose, measures: Float64Array): string[] {
  const names = [
    ...inputLimits(corner, pose),
    ...jointLimits(corner, measures),
    ...partLimits(corner, measures),
  ]
    .filter(isOutside)
    .map((limit) => limit.name);
  if (corner.lever !== null && !(pose.data[Slot.leverRoom]! > 0)) names.push('antiRollBar.link');
  return names;
}
