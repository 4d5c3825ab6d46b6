/** Caster as gauges read it: held to derived figures, to a spindle turned about a still axis, and to the linkage's own caster. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  assemble,
  casterReasons,
  casterSweep,
  fixedAxisCaster,
  type Model,
  poseReport,
  ruleFactor,
  smallAngleCaster,
  type Vector3,
} from '../../solver/index.ts';
import { shipped } from '../support/models.ts';

const FACTORY = shipped('half-ton-factory');
const RAD = Math.PI / 180;

/**
 * Camber of a spindle turned about a still axis, all rows at ±20 degrees with no static toe. Derived for check, not published:
 * caster, kingpin inclination, static camber; camber at +20 and at −20; what the rule, 1/(2 sin 20°) and the exact formula read.
 */
const TURNED = [
  [3, 0, 0, 1.0269, -1.0269, 3.081, 3.0024],
  [4, 12, 0, 2.1121, -0.6351, 4.121, 4.0161],
  [5, 12, -0.5, 1.9545, -1.4762, 5.146, 5.0154],
  [5, 12, 0.5, 2.9628, -0.48, 5.164, 5.033],
  [10, 15, 0, 4.4182, -2.5131, 10.397, 10.1329],
] as const;

describe('what a gauge makes of a camber change', () => {
  test.each(TURNED)(
    'caster %f, inclination %f, camber %f',
    (caster, inclination, _camber, out, back, rule, small) => {
      expect(ruleFactor(20) * (out - back)).toBeCloseTo(rule, 2);
      expect(smallAngleCaster(out - back, 20)).toBeCloseTo(small, 3);
      expect(fixedAxisCaster([out, back], [20, -20], inclination)).toBeCloseTo(caster, 3);
    },
  );

  test('the rule: times 1.5 at 20 degrees (a common gauge scale), 2.61 % more than 1/(2 sin 20°), at any angle', () => {
    expect(ruleFactor(20)).toBeCloseTo(1.5, 12);
    for (const steer of [10, 15, 20, 30]) {
      expect(ruleFactor(steer) / smallAngleCaster(1, steer)).toBeCloseTo(1.0261, 4);
    }
  });

  /** A vector turned about a unit axis: Rodrigues' formula. */
  function turned(v: Vector3, k: Vector3, angle: number): Vector3 {
    const dot = v[0] * k[0] + v[1] * k[1] + v[2] * k[2];
    const cross: Vector3 = [
      k[1] * v[2] - k[2] * v[1],
      k[2] * v[0] - k[0] * v[2],
      k[0] * v[1] - k[1] * v[0],
    ];
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return [0, 1, 2].map((i) => v[i]! * c + cross[i]! * s + k[i]! * dot * (1 - c)) as never;
  }

  test('is exact about any still axis, with the headings as they are', () => {
    const lean = fc.double({ min: -15, max: 15, noNaN: true });
    fc.assert(
      fc.property(lean, lean, lean, lean, (caster, inclination, camber, toe) => {
        const axis: Vector3 = [-Math.tan(caster * RAD), -Math.tan(inclination * RAD), 1];
        const size = Math.hypot(...axis);
        const k = axis.map((each) => each / size) as never as Vector3;
        const [c, t] = [camber * RAD, toe * RAD];
        const hub: Vector3 = [Math.cos(c) * Math.sin(t), Math.cos(c) * Math.cos(t), -Math.sin(c)];
        const [left, right] = [0.4, -0.3].map((angle) => turned(hub, k, angle)) as [
          Vector3,
          Vector3,
        ];
        const camberOf = (a: Vector3) => -Math.asin(a[2]) / RAD;
        const headingOf = (a: Vector3) => -Math.atan2(a[0], a[1]) / RAD;
        const read = fixedAxisCaster(
          [camberOf(left), camberOf(right)],
          [headingOf(left), headingOf(right)],
          inclination,
        );
        expect(read).toBeCloseTo(caster, 9);
      }),
      { seed: 44, numRuns: 100 },
    );
  });
});

describe('a sweep of the real linkage', () => {
  test('reads camber where the poses have it, and its differences add up', () => {
    const sweep = casterSweep(FACTORY)!;
    const { left, right, steer, difference } = sweep;
    expect(steer).toBeCloseTo(20, 9);
    expect(sweep.ends).toEqual({ left: null, right: null });
    for (const [at, sign] of [
      [left, 1],
      [right, -1],
    ] as const) {
      const pose = poseReport(assemble(FACTORY), 0, at.rack);
      expect(pose).toMatchObject({ camber: at.camber, caster: at.caster });
      expect(at.steer).toBeCloseTo(sign * 20, 9);
    }
    const { rule, smallAngles, staticToe, movingAxis } = difference;
    expect(sweep.byRule - sweep.trueCaster).toBeCloseTo(
      rule + smallAngles + staticToe + movingAxis,
      12,
    );
    expect(Math.abs(movingAxis)).toBeGreaterThan(0.05);
    expect(casterReasons(sweep)[0]).toContain('the axis itself moves');
  });

  test('an axis through the wheel centre stays still: the exact formula reads the true caster', () => {
    const { lowerArm, upperArm } = FACTORY;
    const part = 0.4;
    const face = lowerArm.ballJoint.map((each, i) => each + part * (upperArm.ballJoint[i]! - each));
    const still: Model = {
      ...FACTORY,
      hub: { face: face as never as Vector3, camber: -1, toe: 0 },
      wheel: { ...FACTORY.wheel, offset: 0 },
    };
    for (const angle of [10, 20]) {
      const sweep = casterSweep(still, angle)!;
      expect(sweep.difference.movingAxis).toBeCloseTo(0, 8);
      expect(sweep.byFixedAxis).toBeCloseTo(sweep.trueCaster, 8);
      expect(sweep.left.caster).toBeCloseTo(sweep.right.caster, 8);
    }
  });

  test('an angle past the steering limit: as far as both ways go, and what ends it', () => {
    const sweep = casterSweep(FACTORY, 50)!;
    expect(sweep.ends).toEqual({ left: 'limit', right: 'limit' });
    const [least, most] = FACTORY.steering!.limit!;
    const racks = [sweep.left.rack, sweep.right.rack];
    expect(Math.min(Math.abs(racks[0]! - most), Math.abs(racks[1]! - least))).toBeLessThan(1e-6);
    expect(sweep.left.steer).toBeCloseTo(-sweep.right.steer, 9);
    expect(sweep.steer).toBeLessThan(50);
  });

  test('without a limit the linkage ends it; a corner that cannot stand tells nothing', () => {
    const { steering: _s, ...free } = FACTORY;
    const sweep = casterSweep(free, 89)!;
    expect([sweep.ends.left, sweep.ends.right]).toContain('reach');
    expect(casterSweep({ ...FACTORY, travel: { ...FACTORY.travel, ride: 900 } })).toBeNull();
  });
});
