/** Wheel, steering axis, their rates, instant centres: the formulas of measures/alignment.ts and centres.ts over jets. */
import { DEGREES_PER_RADIAN } from '../units.ts';
import type { DesignInputs } from './design.ts';
import type { Jet, Jets } from './jets.ts';
import type { Motion } from './motion.ts';
import {
  crossProduct,
  difference,
  each,
  type JetAxes,
  type JetVector,
  sum,
  times,
} from './vectors.ts';
import type { Write } from './write.ts';

/** Toe, rad: atan2(a_x, a_y). */
export function toeOf(jets: Jets, { hub }: Motion): Jet {
  return jets.angle(hub[0], hub[1]);
}

/** Angular velocity where the course is travel or rack: ½·Σ reciprocal axis × axis′ over the knuckle's oblique axes. */
function spinOf(jets: Jets, knuckle: JetAxes): JetVector {
  const [u, v, w] = knuckle.map((axis) => each(axis, (jet) => jets.now(jet))) as [
    JetVector,
    JetVector,
    JetVector,
  ];
  const rates = knuckle.map((axis) => each(axis, (jet) => jets.rate(jet))) as [
    JetVector,
    JetVector,
    JetVector,
  ];
  const first = crossProduct(jets, crossProduct(jets, v, w), rates[0]);
  const second = crossProduct(jets, crossProduct(jets, w, u), rates[1]);
  const third = crossProduct(jets, w, rates[2]);
  const squared = jets.add(
    jets.multiply(w[0], w[0]),
    jets.add(jets.multiply(w[1], w[1]), jets.multiply(w[2], w[2])),
  );
  const total = sum(jets, first, sum(jets, second, third));
  return times(jets, jets.scale(jets.reciprocal(squared), 0.5), total);
}

/** Where the wheel stands: its contact, and the directions scrub and trail are measured in. */
export interface WheelStand {
  readonly contact: JetVector;
  /** √(a_x² + a_y²) */
  readonly flat: Jet;
}

/** u = unit(z − a·a_z), C = W − u·loadedRadius. */
export function standOf(jets: Jets, { centre, hub }: Motion, loadedRadius: Jet): WheelStand {
  const [x, y, z] = hub;
  const flat = jets.squareRoot(jets.add(jets.multiply(x, x), jets.multiply(y, y)));
  const lean = jets.scale(jets.divide(z, flat), -1);
  const up: JetVector = [jets.multiply(lean, x), jets.multiply(lean, y), flat];
  return { contact: difference(jets, centre, times(jets, loadedRadius, up)), flat };
}

/** The steering axis at the height of a point, from that point; h and l components as offset and trail. */
function offsets(
  jets: Jets,
  motion: Motion,
  flat: Jet,
  point: JetVector,
): { readonly aside: Jet; readonly ahead: Jet; readonly axisY: Jet } {
  const { lower, knuckle, hub } = motion;
  const inverse = jets.reciprocal(flat);
  const [lx, ly] = [jets.multiply(hub[0], inverse), jets.multiply(hub[1], inverse)];
  const [k] = knuckle;
  const share = jets.divide(jets.subtract(point[2], lower[2]), k[2]);
  const axisX = jets.add(lower[0], jets.multiply(share, k[0]));
  const axisY = jets.add(lower[1], jets.multiply(share, k[1]));
  const [dx, dy] = [jets.subtract(point[0], axisX), jets.subtract(point[1], axisY)];
  return {
    aside: jets.add(jets.multiply(dx, lx), jets.multiply(dy, ly)),
    ahead: jets.subtract(jets.multiply(dy, lx), jets.multiply(dx, ly)),
    axisY,
  };
}

/** Scrub radius, and y of the steering axis on the ground, mm. */
export function groundOf(
  jets: Jets,
  motion: Motion,
  stand: WheelStand,
): { readonly scrub: Jet; readonly axisY: Jet } {
  const { aside, axisY } = offsets(jets, motion, stand.flat, stand.contact);
  return { scrub: aside, axisY };
}

/** Angles, offsets and their rates along travel. */
export function writeAlignment(
  jets: Jets,
  motion: Motion,
  stand: WheelStand,
  setToe: Jet | null,
  write: Write,
): void {
  const [k] = motion.knuckle;
  const camber = jets.scale(jets.angle(motion.hub[2], stand.flat), -1);
  const toe = toeOf(jets, motion);
  const caster = jets.angle(jets.scale(k[0], -1), k[2]);
  write('camber', camber, DEGREES_PER_RADIAN);
  write('toe', toe, DEGREES_PER_RADIAN);
  write('caster', caster, DEGREES_PER_RADIAN);
  write('kingpinInclination', jets.angle(jets.scale(k[1], -1), k[2]), DEGREES_PER_RADIAN);
  if (setToe !== null) write('steerAngle', jets.subtract(setToe, toe), DEGREES_PER_RADIAN);
  const ground = offsets(jets, motion, stand.flat, stand.contact);
  write('scrubRadius', ground.aside);
  write('casterTrail', ground.ahead);
  const spindle = offsets(jets, motion, stand.flat, motion.centre);
  write('spindleOffset', spindle.aside);
  write('spindleTrail', spindle.ahead);
  write('halfTrack', stand.contact[1]);
  write('bumpSteer', jets.rate(toe), DEGREES_PER_RADIAN);
  write('bumpCamber', jets.rate(camber), DEGREES_PER_RADIAN);
  write('bumpCaster', jets.rate(caster), DEGREES_PER_RADIAN);
  write('trackRate', jets.rate(stand.contact[1]));
}

/** Angular velocity that is rounding and no turning, rad/mm, as in measures/centres.ts. */
const NO_TURNING = 1e-12;

/** Roll centre, instant centres, anti-dive and anti-lift from the velocity of the knuckle-fixed point at the contact. */
export function writeCentres(
  { model, jets, number }: DesignInputs,
  motion: Motion,
  stand: WheelStand,
  write: Write,
): void {
  const contact = each(stand.contact, (jet) => jets.now(jet));
  const centre = each(motion.centre, (jet) => jets.now(jet));
  const centreRate = each(motion.centre, (jet) => jets.rate(jet));
  const spin = spinOf(jets, motion.knuckle);
  const [vx, vy, vz] = sum(
    jets,
    centreRate,
    crossProduct(jets, spin, difference(jets, contact, centre)),
  );
  write('rollCentreHeight', jets.divide(jets.multiply(contact[1], vy), vz));
  if (!(Math.abs(jets.value(spin[0])) < NO_TURNING)) {
    const per = jets.reciprocal(spin[0]);
    write('frontViewCentreY', jets.subtract(contact[1], jets.multiply(vz, per)));
    write('frontViewCentreZ', jets.add(contact[2], jets.multiply(vy, per)));
  }
  if (!(Math.abs(jets.value(spin[1])) < NO_TURNING)) {
    const per = jets.reciprocal(spin[1]);
    write('sideViewCentreX', jets.add(contact[0], jets.multiply(vz, per)));
    write('sideViewCentreZ', jets.subtract(contact[2], jets.multiply(vx, per)));
  }
  if (model.vehicle === undefined) return;
  const share = jets.divide(number('vehicle.wheelbase'), number('vehicle.cgHeight'));
  const dive = jets.multiply(jets.multiply(share, number('vehicle.frontBrakeShare')), vx);
  const lift = jets.multiply(
    jets.multiply(share, number('vehicle.frontDriveShare')),
    centreRate[0],
  );
  write('antiDive', jets.divide(dive, vz), 100);
  write('antiLift', jets.divide(lift, centreRate[2]), 100);
}
