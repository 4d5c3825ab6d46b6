/** Names of the drawn parts: for lighting them up, and for telling them apart under the pointer. */
import type { MeasureKey } from '../../solver/index.ts';

export type PartName =
  | 'lowerArm'
  | 'upperArm'
  | 'lowerBallJoint'
  | 'upperBallJoint'
  | 'tieRodOuter'
  | 'knuckle'
  | 'hub'
  | 'wheel'
  | 'tyre'
  | 'tieRod'
  | 'rack'
  | 'coilover'
  | 'antiRollBar'
  | 'halfShaft'
  | 'strap'
  | 'mounts'
  | 'obstacle';

const WHEEL: readonly PartName[] = ['wheel'];
const STEERED: readonly PartName[] = ['knuckle', 'upperBallJoint', 'lowerBallJoint'];

/** Parts that light up with a measure's name; measures of points and lines light their own drawings instead. */
const LIT_PARTS: Readonly<Partial<Record<MeasureKey | 'rodGap', readonly PartName[]>>> = {
  camber: WHEEL,
  toe: WHEEL,
  caster: STEERED,
  kingpinInclination: STEERED,
  steerAngle: WHEEL,
  steerPerRack: ['rack', 'tieRod'],
  bumpSteer: ['tieRod'],
  bumpCamber: ['upperArm', 'lowerArm'],
  bumpCaster: ['upperArm', 'lowerArm'],
  halfTrack: WHEEL,
  trackRate: WHEEL,
  damperLength: ['coilover'],
  motionRatio: ['coilover'],
  motionRatioRate: ['coilover'],
  springForce: ['coilover'],
  wheelRate: ['coilover'],
  rideFrequency: ['coilover'],
  barMotionRatio: ['antiRollBar'],
  rollCentreHeight: ['upperArm', 'lowerArm'],
  antiDive: ['upperArm', 'lowerArm'],
  antiLift: ['upperArm', 'lowerArm'],
  strapLength: ['strap'],
  outerAngle: ['halfShaft'],
  innerAngle: ['halfShaft'],
  plunge: ['halfShaft'],
  lowerBallJoint: ['lowerBallJoint'],
  upperBallJoint: ['upperBallJoint'],
  tieRodOuter: ['tieRodOuter'],
  tieRodInner: ['rack', 'tieRod'],
  rodGap: ['tieRod', 'wheel'],
};

/** Whether a part belongs to the measure that is asked about, by its key; an unknown key lights nothing. */
export function isLit(part: PartName, key: string | null): boolean {
  if (key === null) return false;
  const parts = (LIT_PARTS as Readonly<Record<string, readonly PartName[] | undefined>>)[key];
  return parts?.includes(part) ?? false;
}
