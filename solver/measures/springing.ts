/** Coilover, strap and anti-roll bar: lengths, motion ratios, wheel rate. mm, N, N/mm, Hz. */
import type { Corner, Damper, Lever } from '../corner.ts';
import { circleMeetsSphereRate, RADIUS } from '../linkage/circle.ts';
import { Slot } from '../linkage/slots.ts';
import { carryVelocity } from '../linkage/triad.ts';
import { crossAt, differenceAt, dotAt, sumAt } from '../math/buffer.ts';
import { Measure } from './keys.ts';

const ARM = Slot.scratch;
const VELOCITY = Slot.scratch + 3;
const BEND = Slot.scratch + 6;
const WORK = Slot.scratch + 9;

/** Velocity of the damper's lower end per mm of travel, and its second derivative, into scratch. */
function moveBottom(damper: Damper, pose: Float64Array): void {
  const { body } = damper.seat;
  carryVelocity(pose, body.origin, body.originRate, body.omega, Slot.damperBottom, VELOCITY);
  differenceAt(pose, Slot.damperBottom, body.origin, ARM);
  crossAt(pose, body.omega, ARM, WORK);
  crossAt(pose, body.omega, WORK, WORK);
  crossAt(pose, body.alpha, ARM, BEND);
  sumAt(pose, BEND, WORK, BEND);
  sumAt(pose, BEND, body.originBend, BEND);
}

/**
 * motionRatio = −dL/dt (damper movement per wheel movement) and its derivative along travel; spring force
 * F = designForce + k·(design length − length), slack below 0; wheelRate = k·MR² + F·dMR/dt; ride frequency
 * (1/2π)·√(1000·wheelRate/m). Needs `poseBends`.
 */
export function measureCoilover(
  corner: Corner,
  damper: Damper,
  pose: Float64Array,
  out: Float64Array,
): void {
  moveBottom(damper, pose);
  for (let i = 0; i < 3; i += 1) pose[ARM + i] = pose[Slot.damperBottom + i]! - damper.top[i]!;
  dotAt(pose, ARM, ARM, Slot.scalars);
  dotAt(pose, ARM, VELOCITY, Slot.scalars + 1);
  dotAt(pose, VELOCITY, VELOCITY, Slot.scalars + 2);
  dotAt(pose, ARM, BEND, Slot.scalars + 3);
  const length = Math.sqrt(pose[Slot.scalars]!);
  const rate = pose[Slot.scalars + 1]! / length;
  const bend = (pose[Slot.scalars + 2]! + pose[Slot.scalars + 3]! - rate * rate) / length;
  out[Measure.damperLength] = length;
  out[Measure.motionRatio] = -rate;
  out[Measure.motionRatioRate] = -bend;
  const { springRate, designForce } = corner.model.coilover!;
  if (springRate === undefined || designForce === undefined) return;
  const pressed = designForce + springRate * (damper.designLength - length);
  const force = Math.max(0, pressed);
  const wheelRate = pressed < 0 ? 0 : springRate * rate * rate - force * bend;
  out[Measure.springForce] = force;
  out[Measure.wheelRate] = wheelRate;
  const mass = corner.model.vehicle?.cornerMass;
  if (mass === undefined) return;
  out[Measure.rideFrequency] = Math.sqrt((1000 * wheelRate) / mass) / (2 * Math.PI);
}

/** barMotionRatio = ±|d leverEnd/dt|, positive when the bar turns in the sense that raises the lever's end by design; without a sign where that end moves level. */
export function measureBar(lever: Lever, pose: Float64Array, out: Float64Array): void {
  if (!(pose[Slot.leverRoom]! > 0)) {
    out[Measure.barMotionRatio] = Number.NaN;
    return;
  }
  const { body } = lever.seat;
  carryVelocity(pose, body.origin, body.originRate, body.omega, Slot.link, VELOCITY);
  circleMeetsSphereRate(
    lever.circle,
    0,
    pose,
    Slot.link,
    VELOCITY,
    Slot.leverEnd,
    Slot.leverCos,
    WORK,
    Slot.leverRate,
  );
  const speed = pose[Slot.leverRate]! * lever.circle[RADIUS]!;
  out[Measure.barMotionRatio] = lever.raising === 0 ? Math.abs(speed) : lever.raising * speed;
}
