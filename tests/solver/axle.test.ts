import { describe, expect, it } from 'vitest';
import {
  AxleMeasure,
  assemble,
  axleInto,
  createAxle,
  type Model,
  poseReport,
} from '../../solver/index.ts';
import { ackermann, idealOuter, turningCircle } from '../../solver/measures/axle.ts';
import { FULL_MODEL } from '../support/full-model.ts';

function axleAt(model: Model, travel: number, rack: number) {
  const out = new Float64Array(4);
  axleInto(createAxle(assemble(model)), travel, rack, out);
  return {
    inner: out[AxleMeasure.innerSteer]!,
    outer: out[AxleMeasure.outerSteer]!,
    ackermann: out[AxleMeasure.ackermann]!,
    circle: out[AxleMeasure.turningCircle]!,
  };
}

/** FULL_MODEL with a rack that moves straight across. */
const LEVEL: Model = {
  ...FULL_MODEL,
  steering: { limit: [-60, 60] },
  travel: { bump: 80, droop: 80 },
};

describe('the turn', () => {
  // cot δo − cot δi = j/L, the standard result; the two rows are worked by own arithmetic (derived, not published).
  it.each([
    [2800, 1500, 40, 30.0658],
    [2790, 1400, 36, 28.0323],
  ])(
    'of wheelbase %d and kingpin track %d has at %d° inside %d° outside',
    (base, track, inner, outer) => {
      expect(idealOuter(inner, track, base)).toBeCloseTo(outer, 4);
      expect(ackermann(inner, idealOuter(inner, track, base), track, base)).toBeCloseTo(100, 9);
      expect(ackermann(inner, inner, track, base)).toBe(0);
      expect(ackermann(inner, inner + 1, track, base)).toBeLessThan(0);
    },
  );

  // Track circle Ds = 2(L/sin δo + rσ), Reimpell sec. 3.7 (from memory); the number is worked by own arithmetic.
  it('has the track circle of the worked example', () => {
    const outer = idealOuter(40, 1500, 2800);
    expect(turningCircle(outer, 2800, 20)).toBeCloseTo(11217.8, 1);
    expect(turningCircle(outer, 2800, 0) / 2).toBeCloseTo(5588.89, 2);
  });
});

describe('the axle', () => {
  it('turns its right wheel as the mirror image of the left one at the opposite rack', () => {
    const { inner, outer, ackermann: share, circle } = axleAt(LEVEL, 20, 30);
    const left = poseReport(assemble(LEVEL), 20, 30) as { steerAngle?: number };
    const right = poseReport(assemble(LEVEL), 20, -30) as { steerAngle?: number };
    const [l, r] = [left.steerAngle!, -right.steerAngle!];
    expect(l).toBeGreaterThan(5);
    expect(inner).toBeCloseTo(l, 9);
    expect(outer).toBeCloseTo(r, 9);
    const set = poseReport(assemble(LEVEL), 0, 0) as unknown as {
      scrubRadius: number;
      points: { contact: number[]; lowerBallJoint: number[]; upperBallJoint: number[] };
    };
    const [, cy = 0] = set.points.contact;
    // G by the contract: the axis at the contact's height, here from the two ball joints themselves.
    const [, ly = 0, lz = 0] = set.points.lowerBallJoint;
    const [, uy = 0, uz = 0] = set.points.upperBallJoint;
    const g = ly + ((uy - ly) / (uz - lz)) * ((set.points.contact[2] ?? 0) - lz);
    expect(g).toBeLessThan(cy + 200);
    const base = LEVEL.vehicle!.wheelbase;
    const ideal =
      (Math.atan(1 / (1 / Math.tan((l * Math.PI) / 180) + (2 * g) / base)) * 180) / Math.PI;
    expect(share).toBeCloseTo((100 * (l - r)) / (l - ideal), 6);
    expect(circle).toBeCloseTo(2 * (base / Math.sin((r * Math.PI) / 180) + set.scrubRadius), 4);
  });

  it('turns alike to the left and to the right', () => {
    const left = axleAt(FULL_MODEL, 10, 25);
    const right = axleAt(
      { ...FULL_MODEL, steering: { ...FULL_MODEL.steering, direction: [0, 1, -0.02] } },
      10,
      -25,
    );
    // The rack along [0, 1, 0.02]: its mirror image at −r along [0, 1, −0.02] swaps the wheels.
    for (const key of ['inner', 'outer', 'ackermann', 'circle'] as const) {
      expect(right[key], key).toBeCloseTo(left[key], 6);
    }
  });

  it('says nothing straight ahead, out of reach, or of a wheelbase it does not know', () => {
    expect(axleAt(LEVEL, 0, 0)).toEqual({
      inner: Number.NaN,
      outer: Number.NaN,
      ackermann: Number.NaN,
      circle: Number.NaN,
    });
    expect(axleAt(LEVEL, 500, 30).inner).toBeNaN();
    const { vehicle: _, ...bare } = LEVEL;
    const known = axleAt(bare, 0, 30);
    expect(known.inner).toBeGreaterThan(0);
    expect([known.ackermann, known.circle]).toEqual([Number.NaN, Number.NaN]);
  });
});
