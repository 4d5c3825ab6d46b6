/** Wheel and steering axis of a solved pose: ISO 8855 and SAE J670 terms, signs of the geometry contract. */
import type { Corner } from '../corner.ts';
import { Slot } from '../linkage/slots.ts';
import { degrees } from '../units.ts';
import { Measure } from './keys.ts';

/** camber −asin(a_z), toe atan2(a_x, a_y), caster atan2(−k_x, k_z), kingpin inclination atan2(−k_y, k_z), degrees. */
function measureAngles(corner: Corner, pose: Float64Array, out: Float64Array): void {
  const toe = degrees(Math.atan2(pose[Slot.hubAxis]!, pose[Slot.hubAxis + 1]!));
  const kz = pose[Slot.frame + 2]!;
  out[Measure.camber] = -degrees(Math.asin(pose[Slot.hubAxis + 2]!));
  out[Measure.toe] = toe;
  out[Measure.caster] = degrees(Math.atan2(-pose[Slot.frame]!, kz));
  out[Measure.kingpinInclination] = degrees(Math.atan2(-pose[Slot.frame + 1]!, kz));
  out[Measure.steerAngle] = corner.setToe === null ? Number.NaN : corner.setToe - toe;
}

/**
 * Offsets of the steering axis in the steered wheel's own frame, h = unit([a_y, −a_x, 0]), l = unit([a_x, a_y, 0]):
 * at the ground from the contact point C (scrub radius, trail), and at the height of the wheel centre W.
 */
export function measureAlignment(corner: Corner, pose: Float64Array, out: Float64Array): void {
  measureAngles(corner, pose, out);
  const ax = pose[Slot.hubAxis]!;
  const ay = pose[Slot.hubAxis + 1]!;
  const flat = Math.sqrt(ax * ax + ay * ay);
  const lx = ax / flat;
  const ly = ay / flat;
  const slopeX = pose[Slot.frame]! / pose[Slot.frame + 2]!;
  const slopeY = pose[Slot.frame + 1]! / pose[Slot.frame + 2]!;
  const down = pose[Slot.contact + 2]! - pose[Slot.lower + 2]!;
  const cx = pose[Slot.contact]! - (pose[Slot.lower]! + slopeX * down);
  const cy = pose[Slot.contact + 1]! - (pose[Slot.lower + 1]! + slopeY * down);
  out[Measure.scrubRadius] = cx * lx + cy * ly;
  out[Measure.casterTrail] = -(cx * ly - cy * lx);
  const up = pose[Slot.centre + 2]! - pose[Slot.lower + 2]!;
  const wx = pose[Slot.centre]! - (pose[Slot.lower]! + slopeX * up);
  const wy = pose[Slot.centre + 1]! - (pose[Slot.lower + 1]! + slopeY * up);
  out[Measure.spindleOffset] = wx * lx + wy * ly;
  out[Measure.spindleTrail] = -(wx * ly - wy * lx);
  out[Measure.halfTrack] = pose[Slot.contact + 1]!;
}

/** Exact rates along travel (rack held), deg/mm and mm/mm, and the steer per rack displacement (travel held), deg/mm. */
export function measureRates(corner: Corner, pose: Float64Array, out: Float64Array): void {
  const ax = pose[Slot.hubAxis]!;
  const ay = pose[Slot.hubAxis + 1]!;
  const az = pose[Slot.hubAxis + 2]!;
  const ox = pose[Slot.travelOmega]!;
  const oy = pose[Slot.travelOmega + 1]!;
  const oz = pose[Slot.travelOmega + 2]!;
  const ratex = oy * az - oz * ay;
  const ratey = oz * ax - ox * az;
  const ratez = ox * ay - oy * ax;
  const flatSquared = ax * ax + ay * ay;
  const flat = Math.sqrt(flatSquared);
  out[Measure.bumpSteer] = degrees((ratex * ay - ax * ratey) / flatSquared);
  out[Measure.bumpCamber] = degrees(-ratez / flat);
  const kx = pose[Slot.frame]!;
  const ky = pose[Slot.frame + 1]!;
  const kz = pose[Slot.frame + 2]!;
  const kxRate = oy * kz - oz * ky;
  const kzRate = ox * ky - oy * kx;
  out[Measure.bumpCaster] = degrees((kx * kzRate - kxRate * kz) / (kx * kx + kz * kz));
  const flatRate = (-az * ratez) / flat;
  const upRate = -(ratey * az + ay * ratez) / flat + (ay * az * flatRate) / flatSquared;
  out[Measure.trackRate] = pose[Slot.travelCentre + 1]! - corner.loadedRadius * upRate;
  const rx = pose[Slot.rackOmega]!;
  const ry = pose[Slot.rackOmega + 1]!;
  const rz = pose[Slot.rackOmega + 2]!;
  const rackRateX = ry * az - rz * ay;
  const rackRateY = rz * ax - rx * az;
  out[Measure.steerPerRack] = -degrees((rackRateX * ay - ax * rackRateY) / flatSquared);
}
