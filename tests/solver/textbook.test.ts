import { describe, expect, it } from 'vitest';
import {
  assemble,
  type Corner,
  createMeasures,
  createPose,
  Measure,
  measureInto,
  solve,
  type Vector3,
} from '../../solver/index.ts';
import { toeLength } from '../../solver/measures/toe.ts';
import { expectClose } from '../support/close.ts';
import { golden } from '../support/golden.ts';
import { sound } from '../support/models.ts';

const DEGREE = Math.PI / 180;

function measuresAt(corner: Corner, travel: number, rack: number): Float64Array {
  const pose = createPose();
  const measures = createMeasures();
  expect(solve(corner, pose, travel, rack)).toBe('reached');
  measureInto(corner, pose, measures);
  return measures;
}

/** Both arms' axes along x, given by their ball joints and inner pivots in the front view [y, z]. */
function frontView(
  lower: [number, number],
  lowerPivot: [number, number],
  upper: [number, number],
  upperPivot: [number, number],
  wheelCentre: [number, number],
  radius: number,
) {
  const at = (x: number, [y, z]: [number, number]): Vector3 => [x, y, z];
  return sound({
    format: 'armscribe/1',
    name: 'Front view',
    lowerArm: {
      frontPivot: at(100, lowerPivot),
      rearPivot: at(-100, lowerPivot),
      ballJoint: at(0, lower),
    },
    upperArm: {
      frontPivot: at(100, upperPivot),
      rearPivot: at(-100, upperPivot),
      ballJoint: at(0, upper),
    },
    tieRod: { inner: at(120, lowerPivot), outer: at(120, lower) },
    hub: { face: at(0, wheelCentre) },
    wheel: { diameter: 15, width: 6, offset: 0 },
    tyre: { diameter: 2 * radius + 20, width: 200, loadedRadius: radius },
    travel: { bump: 50, droop: 50 },
    vehicle: {
      wheelbase: 2550,
      cgHeight: 600,
      frontBrakeShare: 0.6,
      frontDriveShare: 0,
      cornerMass: 450,
    },
  });
}

describe('roll centre of a double wishbone', () => {
  // Reimpell, Stoll, Betzler, The Automotive Chassis, 2nd ed., sec. 3.4: formula from memory, re-derived by two routes.
  const c = 260;
  const [alpha, beta, sigma] = [6 * DEGREE, 4 * DEGREE, 12 * DEGREE];
  const d = 210;
  const scrub = 20;
  const track = 1600;
  const lower: [number, number] = [track / 2 - scrub - d * Math.tan(sigma), d];
  const upper: [number, number] = [lower[0] - c * Math.sin(sigma), lower[1] + c * Math.cos(sigma)];
  const reach = 330;
  const model = frontView(
    lower,
    [lower[0] - reach, lower[1] + reach * Math.tan(beta)],
    upper,
    [upper[0] - reach, upper[1] - reach * Math.tan(alpha)],
    [track / 2, 300],
    300,
  );
  const measures = measuresAt(assemble(model), 0, 0);

  it('stands at 161.990 mm', () => {
    const k = (c * Math.sin(90 * DEGREE + sigma - alpha)) / Math.sin(alpha + beta);
    const p = k * Math.sin(beta) + d;
    const h = (p / (k * Math.cos(beta) + d * Math.tan(sigma) + scrub)) * (track / 2);
    expectClose(h, 161.99, 5e-4, 'mm', 'the formula');
    expectClose(measures[Measure.rollCentreHeight]!, h, 1e-9, 'mm', 'roll centre');
  });

  it('belongs to the instant centre at y −750.088, z 313.873', () => {
    expectClose(measures[Measure.frontViewCentreY]!, -750.088, 5e-4, 'mm', 'y');
    expectClose(measures[Measure.frontViewCentreZ]!, 313.873, 5e-4, 'mm', 'z');
  });

  it('goes with a camber rate of 1 / swing arm: 0.036963 deg/mm, top leaning in with bump', () => {
    expectClose(measures[Measure.bumpCamber]!, -0.036963, 5e-7, 'deg/mm', 'bump camber');
  });

  it('with parallel arms lies at (b/2)·tan β, the swing arm at infinity', () => {
    const parallel = frontView(
      [700, 200],
      [400, 200 + 300 * Math.tan(beta)],
      [690, 440],
      [390, 440 + 300 * Math.tan(beta)],
      [800, 300],
      300,
    );
    const level = measuresAt(assemble(parallel), 0, 0);
    expectClose(level[Measure.rollCentreHeight]!, 800 * Math.tan(beta), 1e-9, 'mm', 'roll centre');
    expect(Number.isFinite(level[Measure.frontViewCentreY]!)).toBe(false);
  });
});

/** Anti-dive, %, with both arms equal and parallel and their axes tipped: the wheel translates square to them. */
function antiDiveOf(slope: number): number {
  const axis = (y: number, z: number, x: number): Vector3 => [x, y, z - x * slope];
  const model = sound({
    ...frontView([700, 200], [400, 200], [700, 440], [400, 440], [800, 300], 300),
    lowerArm: {
      frontPivot: axis(400, 200, 100),
      rearPivot: axis(400, 200, -100),
      ballJoint: [0, 700, 200],
    },
    upperArm: {
      frontPivot: axis(400, 440, 100),
      rearPivot: axis(400, 440, -100),
      ballJoint: [0, 700, 440],
    },
    tieRod: { inner: axis(400, 200, 120), outer: axis(700, 200, 120) },
  });
  return measuresAt(assemble(model), 0, 0)[Measure.antiDive]!;
}

describe('anti-dive with outboard brakes', () => {
  it('is 25 % with 60 % front brakes, L 2550, h 600 and a contact path of 5.5993° (published worked number)', () => {
    // https://www.super7thheaven.co.uk/anti-dive-geometry/ : 60 %, 2550, 600, 25 % wanted gives about 5.6°.
    expectClose(antiDiveOf(Math.tan(5.5993 * DEGREE)), 25, 1e-3, '%', 'anti-dive');
  });

  it('is 100 % when tan φ = h/(ξ·L) (Gillespie, Fundamentals of Vehicle Dynamics, ch. 7, from memory)', () => {
    expectClose(antiDiveOf(600 / (0.6 * 2550)), 100, 1e-9, '%', 'anti-dive');
  });
});

/** A corner whose wheel centre lies on the steering axis, so that steering at travel 0 turns about a fixed axis. */
function spindleCorner(caster: number, inclination: number, camber: number): Corner {
  const k: Vector3 = [-Math.tan(caster * DEGREE), -Math.tan(inclination * DEGREE), 1];
  const centre: Vector3 = [0, 800, 300];
  const on = (up: number): Vector3 => [
    centre[0] + up * k[0],
    centre[1] + up * k[1],
    centre[2] + up,
  ];
  const lower = on(-130);
  const upper = on(150);
  const inwards = (p: Vector3, x: number): Vector3 => [p[0] + x, p[1] - 340, p[2]];
  return assemble(
    sound({
      format: 'armscribe/1',
      name: 'Spindle on its axis',
      lowerArm: {
        frontPivot: inwards(lower, 150),
        rearPivot: inwards(lower, -150),
        ballJoint: lower,
      },
      upperArm: {
        frontPivot: inwards(upper, 120),
        rearPivot: inwards(upper, -120),
        ballJoint: upper,
      },
      tieRod: { inner: [140, 430, 220], outer: [140, 790, 230] },
      steering: { limit: [-90, 90] },
      hub: { face: centre, camber, toe: 0 },
      wheel: { diameter: 15, width: 6, offset: 0 },
      tyre: { diameter: 620, width: 190, loadedRadius: 300 },
      travel: { bump: 50, droop: 50 },
    }),
  );
}

/** Measures with the wheel steered to `steer` degrees, the rack found by Newton on the exact steer rate. */
function steeredTo(corner: Corner, steer: number): Float64Array {
  let rack = 0;
  let measures = measuresAt(corner, 0, rack);
  for (let count = 0; count < 30; count += 1) {
    rack += (steer - measures[Measure.steerAngle]!) / measures[Measure.steerPerRack]!;
    measures = measuresAt(corner, 0, rack);
  }
  expectClose(measures[Measure.steerAngle]!, steer, 1e-9, 'deg', 'steer');
  return measures;
}

describe('camber while steering about a fixed axis', () => {
  // Derived by own arithmetic (rotation of the spindle about a fixed axis, zero static toe).
  it.each(golden('spindle-sweep.csv'))(
    'caster $caster, inclination $inclination, camber $camber',
    ({ caster, inclination, camber, camberLeft, camberRight }) => {
      const corner = spindleCorner(Number(caster), Number(inclination), Number(camber));
      const straight = measuresAt(corner, 0, 0);
      expectClose(straight[Measure.caster]!, Number(caster), 1e-9, 'deg', 'caster');
      expectClose(
        straight[Measure.kingpinInclination]!,
        Number(inclination),
        1e-9,
        'deg',
        'inclination',
      );
      const left = steeredTo(corner, 20)[Measure.camber]!;
      const right = steeredTo(corner, -20)[Measure.camber]!;
      expectClose(left, Number(camberLeft), 6e-5, 'deg', 'camber at 20° left');
      expectClose(right, Number(camberRight), 6e-5, 'deg', 'camber at 20° right');
      // Workshop rule, 1/(2 sin 20°) = 1.461902 for small angles: within 1.5 % of the caster.
      const gauge = (left - right) * 1.461902;
      expect(Math.abs(gauge / Number(caster) - 1)).toBeLessThan(0.015);
      // Exact for a fixed axis: sin γ + (tan σ cos δ − tan τ sin δ) cos γ is constant while steering.
      const constant = (gamma: number, steer: number) =>
        Math.sin(gamma * DEGREE) +
        (Math.tan(Number(inclination) * DEGREE) * Math.cos(steer * DEGREE) -
          Math.tan(Number(caster) * DEGREE) * Math.sin(steer * DEGREE)) *
          Math.cos(gamma * DEGREE);
      expectClose(constant(left, 20), constant(right, -20), 1e-9, '', 'the invariant');
    },
  );
});

describe('toe as a length', () => {
  it('is D·sin(toe) at the wheel: 24 in and 0.15° are 0.0628 in (published worked number)', () => {
    // https://santafegarage.com/precision-alignments/how-to-check-toe
    expectClose(toeLength(0.15, 24), 0.062832, 5e-7, 'in', 'toe');
  });

  it('takes 1/32 in over 18 in for about 0.1° (published rule)', () => {
    // http://www.fresnoscca.com/forums/archive/index.php/t-696.html ; recomputed 0.09947°.
    expectClose(toeLength(0.09947, 18), 1 / 32, 5e-6, 'in', 'toe');
  });
});

describe('wheel rate and ride frequency', () => {
  const build = (springRate: number, designForce: number) =>
    sound({
      ...frontView([700, 200], [400, 200], [700, 440], [400, 440], [800, 300], 300),
      coilover: { top: [0, 520, 560], bottom: [0, 610, 190], springRate, designForce },
    });

  it('are k·MR² + F·dMR/dz and (1/2π)·√(K/m): worked numbers derived by own arithmetic', () => {
    // Milliken and Milliken, ch. 16, in installation-ratio form, from memory.
    const measures = measuresAt(assemble(build(60, 6200)), 0, 0);
    const ratio = measures[Measure.motionRatio]!;
    const bend = measures[Measure.motionRatioRate]!;
    expectClose(
      measures[Measure.wheelRate]!,
      60 * ratio * ratio + 6200 * bend,
      1e-12,
      'N/mm',
      'wheel rate',
    );
    expectClose(60 * 0.62 ** 2 + 6200 * -0.0004, 20.584, 1e-9, 'N/mm', 'the worked number');
    expectClose(
      Math.sqrt((1000 * 23.064) / 450) / (2 * Math.PI),
      1.1394,
      5e-5,
      'Hz',
      'the worked number',
    );
    const frequency = Math.sqrt((1000 * measures[Measure.wheelRate]!) / 450) / (2 * Math.PI);
    expectClose(measures[Measure.rideFrequency]!, frequency, 1e-12, 'Hz', 'ride frequency');
  });

  it('vanish where the spring has come loose', () => {
    const measures = measuresAt(assemble(build(60, 500)), -45, 0);
    expect(measures[Measure.springForce]).toBe(0);
    expect(measures[Measure.wheelRate]! === 0).toBe(true);
  });
});
