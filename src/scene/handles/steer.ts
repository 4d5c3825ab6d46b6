/**
 * The rack that keeps a grabbed point of the wheel under the pointer. The point is fixed to the knuckle (the wheel does
 * not spin under the hand); with the travel held it moves on a curve r ↦ P(r), and the pointer's sideways place is a
 * plane through its ray. Newton on P(r)·m = const with the exact derivative P′ = LB′ + ω × (P − LB) per mm of rack.
 */
import {
  type Corner,
  createPose,
  type Pose,
  poseRates,
  Slot,
  solve,
} from '../../../solver/index.ts';
import type { FlatRay, Triple } from './rays.ts';

/** What a steering drag keeps from pointer-down. */
export interface SteerGrip {
  /** The grabbed point's components in the knuckle frame [k, m, n], from LB, mm. */
  readonly seat: Float64Array;
  /** Unit screen direction the hand is followed along, vehicle axes. */
  readonly aside: Float64Array;
  /** True when the point moves enough across the view to be followed exactly; else the rack is geared to the hand. */
  follows: boolean;
  /** mm of rack per mm of hand along `aside`, where the point is not followed. */
  gearing: number;
  rack: number;
}

export function createSteerGrip(): SteerGrip {
  return {
    seat: new Float64Array(3),
    aside: new Float64Array(3),
    follows: true,
    gearing: 0,
    rack: 0,
  };
}

/** Part of the tyre's radius a point must move across the view, per radian of steer, to be followed exactly. */
const LEAST_LEVER = 0.3;
/** Part of the tyre's radius taken as the lever where it is not. */
const STAND_IN_LEVER = 0.6;

const _speed = new Float64Array(3);
const _place = new Float64Array(3);

/** Writes the place of a knuckle-fixed point and its velocity per mm of rack; needs `poseRates`. */
function pointAndSpeed(pose: Pose, seat: Triple): void {
  const d = pose.data;
  const f = Slot.frame;
  for (let i = 0; i < 3; i += 1) {
    _place[i] = seat[0]! * d[f + i]! + seat[1]! * d[f + 3 + i]! + seat[2]! * d[f + 6 + i]!;
  }
  const x = _place[0]!;
  const y = _place[1]!;
  const z = _place[2]!;
  const w = Slot.rackOmega;
  _speed[0] = d[Slot.rackLower]! + d[w + 1]! * z - d[w + 2]! * y;
  _speed[1] = d[Slot.rackLower + 1]! + d[w + 2]! * x - d[w]! * z;
  _speed[2] = d[Slot.rackLower + 2]! + d[w]! * y - d[w + 1]! * x;
  for (let i = 0; i < 3; i += 1) _place[i]! += d[Slot.lower + i]!;
}

/**
 * Takes hold of the wheel at `point` (vehicle axes) in a solved pose, seen along `ray`. `right` is the screen's right.
 */
export function gripWheel(
  grip: SteerGrip,
  corner: Corner,
  pose: Pose,
  point: Triple,
  ray: FlatRay,
  right: Triple,
  tyreRadius: number,
): void {
  const d = pose.data;
  for (let axis = 0; axis < 3; axis += 1) {
    let sum = 0;
    for (let i = 0; i < 3; i += 1) {
      sum += (point[i]! - d[Slot.lower + i]!) * d[Slot.frame + 3 * axis + i]!;
    }
    grip.seat[axis] = sum;
  }
  grip.rack = d[Slot.rack]!;
  poseRates(corner.linkage.fixed, d);
  pointAndSpeed(pose, grip.seat);
  const depth = _speed[0]! * ray[3]! + _speed[1]! * ray[4]! + _speed[2]! * ray[5]!;
  for (let i = 0; i < 3; i += 1) _speed[i]! -= depth * ray[3 + i]!;
  const speed = Math.hypot(_speed[0]!, _speed[1]!, _speed[2]!);
  const w = Slot.rackOmega;
  const turn = Math.hypot(d[w]!, d[w + 1]!, d[w + 2]!);
  grip.follows = turn > 0 && speed >= LEAST_LEVER * tyreRadius * turn;
  const sideways = _speed[0]! * right[0]! + _speed[1]! * right[1]! + _speed[2]! * right[2]!;
  for (let i = 0; i < 3; i += 1) grip.aside[i] = grip.follows ? _speed[i]! / speed : right[i]!;
  const sign = sideways < 0 ? -1 : 1;
  grip.gearing = turn > 0 ? sign / (STAND_IN_LEVER * tyreRadius * turn) : 0;
}

const _pose: Pose = createPose();
const MOST_STEPS = 12;
/** mm of hand: far below a pixel. */
const CLOSE = 1e-3;

function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

/**
 * The rack at which the grabbed point lies under the ray sideways, at this travel, within [least, most]. `shift` is the
 * hand's way along `grip.aside` since pointer-down, mm, for a grip that is geared.
 */
export function steerTo(
  grip: SteerGrip,
  corner: Corner,
  travel: number,
  ray: FlatRay,
  shift: number,
  least: number,
  most: number,
): number {
  if (!grip.follows) return clamp(grip.rack + grip.gearing * shift, least, most);
  // Normal of the plane through the ray that `aside` crosses: aside made normal to the ray.
  const along = grip.aside[0]! * ray[3]! + grip.aside[1]! * ray[4]! + grip.aside[2]! * ray[5]!;
  let rack = grip.rack;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    if (solve(corner, _pose, travel, rack) !== 'reached') return clamp(_pose.lastRack, least, most);
    poseRates(corner.linkage.fixed, _pose.data);
    pointAndSpeed(_pose, grip.seat);
    let miss = 0;
    let slope = 0;
    for (let i = 0; i < 3; i += 1) {
      const m = grip.aside[i]! - along * ray[3 + i]!;
      miss += (_place[i]! - ray[i]!) * m;
      slope += _speed[i]! * m;
    }
    if (Math.abs(miss) < CLOSE) return rack;
    // Past the point where it turns away from the hand it can be followed no further.
    if (slope < 1e-3) return clamp(rack, least, most);
    const next = clamp(rack - miss / slope, least, most);
    if (next === rack) return rack;
    rack = next;
  }
  return rack;
}
