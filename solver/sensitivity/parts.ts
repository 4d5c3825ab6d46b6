/** Coilover, strap, bar, half-shaft and joints: the formulas of measures/springing.ts and joints.ts over jets. */
import type { Corner } from '../corner.ts';
import { unit } from '../math/vec3.ts';
import { carrier, shaftInnerAxis, steeringDirection, tieRodStudAxis } from '../model/defaults.ts';
import type { Carrier, Vector3 } from '../model/model.ts';
import { DEGREES_PER_RADIAN } from '../units.ts';
import { type Body, rodDirection } from './carried.ts';
import type { DesignInputs } from './design.ts';
import type { Jets } from './jets.ts';
import { leverOf } from './lever.ts';
import type { Motion } from './motion.ts';
import {
  constantVector,
  crossProduct,
  difference,
  dotProduct,
  type JetVector,
  size,
  unitVector,
} from './vectors.ts';
import type { Write } from './write.ts';

/** Writes the measures of one part in a motion. */
export interface Writer {
  /** The order in s that its measures need: 0 for lengths and angles, 1 for rates, 2 for rates of rates. */
  readonly order: 0 | 1 | 2;
  /** `data` is the solved pose's buffer. */
  readonly write: (motion: Motion, data: Float64Array, write: Write) => void;
}

/** A part whose measures are lengths and angles. */
function still(write: (motion: Motion, write: Write) => void): Writer {
  return { order: 0, write: (motion, _data, to) => write(motion, to) };
}

/** Sine under which two lines count as one, and their angle as being at its least. */
const ONE_LINE = 1e-9;

/** Whether an input moves a vector of length 0, counted in parts of `unit`. */
function isMoved(jets: Jets, a: JetVector, unit: number): boolean {
  const slopes = new Float64Array(jets.inputCount);
  return a.some((jet) => {
    jets.gradientInto(jet, slopes, 0, 1 / unit);
    return slopes.some((slope) => Math.abs(slope) > ONE_LINE);
  });
}

/**
 * Writes the angle between two lines, 0 to 90°. Where they are one line the angle has a corner and no derivatives, unless nothing moves
 * them apart.
 */
function writeAngle(
  write: Write,
  key: Parameters<Write>[0],
  jets: Jets,
  a: JetVector,
  b: JetVector,
): void {
  const across = crossProduct(jets, a, b);
  const cosine = dotProduct(jets, a, b);
  const straight = jets.value(cosine) < 0 ? jets.scale(cosine, -1) : cosine;
  const squared = dotProduct(jets, across, across);
  const [sine, unit] = [Math.sqrt(jets.value(squared)), jets.value(straight)];
  if (sine < ONE_LINE * unit) {
    const still = jets.constant(Math.atan2(sine, unit));
    write(key, still, DEGREES_PER_RADIAN, isMoved(jets, across, unit));
  } else write(key, jets.angle(jets.squareRoot(squared), straight), DEGREES_PER_RADIAN);
}

/** Damper length, motion ratio and its rate; spring force, wheel rate and ride frequency where they are stated. */
function coiloverWriter(design: DesignInputs, bodies: Readonly<Record<Carrier, Body>>): Writer {
  const { jets, model, point, number } = design;
  const coilover = model.coilover!;
  const top = point('coilover.top');
  const designed = size(jets, difference(jets, point('coilover.bottom'), top));
  const bottom = bodies[carrier(coilover)].point(point('coilover.bottom'));
  const measure = (motion: Motion, write: Write): void => {
    const length = size(jets, difference(jets, bottom(motion), top));
    const [rate, bend] = [jets.rate(length), jets.bend(length)];
    write('damperLength', length);
    write('motionRatio', rate, -1);
    write('motionRatioRate', bend, -1);
    if (coilover.springRate === undefined || coilover.designForce === undefined) return;
    const stiffness = number('coilover.springRate');
    const shorter = jets.subtract(designed, jets.now(length));
    const pressed = jets.add(number('coilover.designForce'), jets.multiply(stiffness, shorter));
    const isLoose = jets.value(pressed) < 0;
    const force = isLoose ? jets.constant(0) : pressed;
    const stiff = jets.multiply(stiffness, jets.multiply(rate, rate));
    const wheelRate = isLoose ? jets.constant(0) : jets.subtract(stiff, jets.multiply(force, bend));
    write('springForce', force);
    write('wheelRate', wheelRate);
    if (model.vehicle === undefined) return;
    const perMass = jets.divide(jets.scale(wheelRate, 1000), number('vehicle.cornerMass'));
    if (isLoose) write('rideFrequency', jets.constant(0));
    else if (jets.value(perMass) > 0) {
      write('rideFrequency', jets.squareRoot(perMass), 1 / (2 * Math.PI));
    }
  };
  return { order: 2, write: (motion, _data, write) => measure(motion, write) };
}

function strapWriter(design: DesignInputs, bodies: Readonly<Record<Carrier, Body>>): Writer {
  const { jets, model, point } = design;
  const bottom = bodies[carrier(model.strap!)].point(point('strap.bottom'));
  const top = point('strap.top');
  return still((motion, write) =>
    write('strapLength', size(jets, difference(jets, bottom(motion), top))),
  );
}

function shaftWriter(design: DesignInputs, bodies: Readonly<Record<Carrier, Body>>): Writer {
  const { jets, model, point } = design;
  const inner = point('halfShaft.inner');
  const designed = size(jets, difference(jets, point('halfShaft.outer'), inner));
  const outer = bodies.knuckle.point(point('halfShaft.outer'));
  const axis = constantVector(jets, unit(shaftInnerAxis(model.halfShaft!)));
  return still((motion, write) => {
    const shaft = difference(jets, outer(motion), inner);
    writeAngle(write, 'outerAngle', jets, shaft, motion.hub);
    writeAngle(write, 'innerAngle', jets, shaft, axis);
    write('plunge', jets.subtract(designed, size(jets, shaft)));
  });
}

/** A joint's angle between its stud on the knuckle and its housing on the arm; both stated, or following the steering axis. */
function ballJointWriter(
  design: DesignInputs,
  bodies: Readonly<Record<Carrier, Body>>,
  arm: 'lowerArm' | 'upperArm',
): Writer {
  const { jets, model, point } = design;
  const { studAxis, housingAxis } = model[arm];
  const stated = (axis: Vector3): JetVector => constantVector(jets, unit(axis));
  const kingpin = difference(jets, point('upperArm.ballJoint'), point('lowerArm.ballJoint'));
  const stud = studAxis === undefined ? unitVector(jets, kingpin) : stated(studAxis);
  const studIn = bodies.knuckle.direction(stud);
  const housingIn = bodies[arm].direction(housingAxis === undefined ? stud : stated(housingAxis));
  const key = arm === 'lowerArm' ? 'lowerBallJoint' : 'upperBallJoint';
  return still((motion, write) => writeAngle(write, key, jets, studIn(motion), housingIn(motion)));
}

function rodWriter(design: DesignInputs, bodies: Readonly<Record<Carrier, Body>>): Writer {
  const { jets, model } = design;
  const stud = constantVector(jets, unit(tieRodStudAxis(model.tieRod)));
  const { housingAxis } = model.tieRod;
  const housing = housingAxis === undefined ? stud : constantVector(jets, unit(housingAxis));
  const studIn = bodies.knuckle.direction(stud);
  const housingIn = rodDirection(design, stud, studIn, housing);
  const rack = constantVector(jets, unit(steeringDirection(model.steering)));
  return still((motion, write) => {
    writeAngle(write, 'tieRodOuter', jets, studIn(motion), housingIn(motion));
    writeAngle(write, 'tieRodInner', jets, difference(jets, motion.outer, motion.inner), rack);
  });
}

/** Writers of every part the model has; what they keep is made once. */
export function partWriters(
  design: DesignInputs,
  bodies: Readonly<Record<Carrier, Body>>,
  corner: Corner,
): readonly Writer[] {
  const { coilover, strap, antiRollBar, halfShaft } = design.model;
  return [
    ballJointWriter(design, bodies, 'lowerArm'),
    ballJointWriter(design, bodies, 'upperArm'),
    rodWriter(design, bodies),
    ...(coilover === undefined ? [] : [coiloverWriter(design, bodies)]),
    ...(strap === undefined ? [] : [strapWriter(design, bodies)]),
    ...(antiRollBar === undefined ? [] : [leverOf(design, bodies, corner)]),
    ...(halfShaft === undefined ? [] : [shaftWriter(design, bodies)]),
  ];
}
