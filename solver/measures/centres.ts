/**
 * Instant centres, geometric roll centre, anti-dive and anti-lift from the velocity of the knuckle-fixed point at the
 * contact (wheel locked to the knuckle) per unit travel, its angular velocity ω and the wheel centre's velocity.
 */
import type { Corner } from '../corner.ts';
import { Slot } from '../linkage/slots.ts';
import { Measure } from './keys.ts';

/** Angular velocity that is rounding and no turning, rad/mm: its centre would lie a million kilometres away. */
const NO_TURNING = 1e-12;

/** Roll centre height above the pose's ground, mm: C_y·v_C,y/v_C,z; centres [y, z] and [x, z], mm, NaN when at infinity. */
export function measureCentres(corner: Corner, pose: Float64Array, out: Float64Array): void {
  const ox = pose[Slot.travelOmega]!;
  const oy = pose[Slot.travelOmega + 1]!;
  const oz = pose[Slot.travelOmega + 2]!;
  const dx = pose[Slot.contact]! - pose[Slot.centre]!;
  const dy = pose[Slot.contact + 1]! - pose[Slot.centre + 1]!;
  const dz = pose[Slot.contact + 2]! - pose[Slot.centre + 2]!;
  const vx = pose[Slot.travelCentre]! + oy * dz - oz * dy;
  const vy = pose[Slot.travelCentre + 1]! + oz * dx - ox * dz;
  const vz = pose[Slot.travelCentre + 2]! + ox * dy - oy * dx;
  const cx = pose[Slot.contact]!;
  const cy = pose[Slot.contact + 1]!;
  const cz = pose[Slot.contact + 2]!;
  out[Measure.rollCentreHeight] = (cy * vy) / vz;
  out[Measure.frontViewCentreY] = cy - vz / ox;
  out[Measure.frontViewCentreZ] = cz + vy / ox;
  out[Measure.sideViewCentreX] = cx + vz / oy;
  out[Measure.sideViewCentreZ] = cz - vx / oy;
  if (Math.abs(ox) < NO_TURNING) {
    out[Measure.frontViewCentreY] = Number.NaN;
    out[Measure.frontViewCentreZ] = Number.NaN;
  }
  if (Math.abs(oy) < NO_TURNING) {
    out[Measure.sideViewCentreX] = Number.NaN;
    out[Measure.sideViewCentreZ] = Number.NaN;
  }
  const { vehicle } = corner.model;
  if (vehicle === undefined) return;
  const share = (100 * vehicle.wheelbase) / vehicle.cgHeight;
  out[Measure.antiDive] = (share * vehicle.frontBrakeShare * vx) / vz;
  out[Measure.antiLift] =
    (share * vehicle.frontDriveShare * pose[Slot.travelCentre]!) / pose[Slot.travelCentre + 2]!;
}
