import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  assemble,
  type Corner,
  createMeasures,
  createPose,
  MEASURE_KEYS,
  Measure,
  type MeasureKey,
  type Model,
  measureInto,
  Slot,
  solve,
  type Vector3,
} from '../../solver/index.ts';
import { withoutSettings } from '../../src/state/posed.ts';
import { buildable, inRange, place } from '../support/arbitraries.ts';
import { expectClose } from '../support/close.ts';

const RUNS = { numRuns: 200, seed: 20261125 };

function measured(corner: Corner, travel: number, rack: number) {
  const pose = createPose();
  const measures = createMeasures();
  const outcome = solve(corner, pose, travel, rack);
  if (outcome === 'reached') measureInto(corner, pose, measures);
  return { outcome, pose, measures, data: pose.data };
}

const far = (data: Float64Array, a: number, b: number) =>
  Math.hypot(data[a]! - data[b]!, data[a + 1]! - data[b + 1]!, data[a + 2]! - data[b + 2]!);
const farFrom = (data: Float64Array, a: number, p: Vector3) =>
  Math.hypot(data[a]! - p[0], data[a + 1]! - p[1], data[a + 2]! - p[2]);
const apart = (p: Vector3, q: Vector3) => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);

/** Every point and vector of a model through one map; steering direction and stud axes as directions. */
function mapped(
  value: unknown,
  point: (p: Vector3) => Vector3,
  direction: (d: Vector3) => Vector3,
): unknown {
  const DIRECTIONS = new Set(['direction', 'slot', 'studAxis', 'housingAxis', 'innerAxis']);
  const isTriple = (v: unknown): v is Vector3 =>
    Array.isArray(v) && v.length === 3 && v.every((n) => typeof n === 'number');
  const walk = (v: unknown, key: string): unknown => {
    if (isTriple(v)) return DIRECTIONS.has(key) ? direction(v) : point(v);
    if (Array.isArray(v)) return v.map((item) => walk(item, key));
    if (v !== null && typeof v === 'object') {
      return Object.fromEntries(Object.entries(v).map(([k, item]) => [k, walk(item, k)]));
    }
    return v;
  };
  return walk(value, '');
}

describe('at every reachable pose', () => {
  it('all fixed lengths hold to 1e-9 mm, settings included, and the wheel centre has its height', () => {
    fc.assert(
      fc.property(buildable, place, (model, where) => {
        const corner = assemble(model);
        const [travel, rack] = inRange(model, where);
        const { outcome, data } = measured(corner, travel, rack);
        if (outcome !== 'reached') return;
        const { lowerArm, upperArm, tieRod } = model;
        const { pivots } = corner.linkage;
        const rod = apart(tieRod.inner, tieRod.outer) + (tieRod.turns ?? 0) * (tieRod.pitch ?? 0);
        const pairs: [number, number][] = [
          [
            farFrom(data, Slot.lower, pivots.lowerFront),
            apart(lowerArm.ballJoint, lowerArm.frontPivot),
          ],
          [
            farFrom(data, Slot.lower, pivots.lowerRear),
            apart(lowerArm.ballJoint, lowerArm.rearPivot),
          ],
          [
            farFrom(data, Slot.upper, pivots.upperFront),
            apart(upperArm.ballJoint, upperArm.frontPivot),
          ],
          [
            farFrom(data, Slot.upper, pivots.upperRear),
            apart(upperArm.ballJoint, upperArm.rearPivot),
          ],
          [far(data, Slot.outer, Slot.inner), rod],
          [far(data, Slot.upper, Slot.lower), apart(upperArm.ballJoint, lowerArm.ballJoint)],
          [far(data, Slot.outer, Slot.lower), apart(tieRod.outer, lowerArm.ballJoint)],
          [far(data, Slot.outer, Slot.upper), apart(tieRod.outer, upperArm.ballJoint)],
        ];
        for (const [now, wanted] of pairs) expect(Math.abs(now - wanted)).toBeLessThan(1e-9);
        const home = measured(assemble(withoutSettings(model)), 0, 0);
        expect(
          Math.abs(data[Slot.centre + 2]! - home.data[Slot.centre + 2]! - travel),
        ).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it('nothing is NaN that the model has the parts for', () => {
    fc.assert(
      fc.property(buildable, place, (model, where) => {
        const [travel, rack] = inRange(model, where);
        const { outcome, measures, data } = measured(assemble(model), travel, rack);
        if (outcome !== 'reached' || !(data[Slot.leverRoom]! > 0)) return;
        for (const key of MEASURE_KEYS) {
          if (key === 'strapLength' || key === 'rideFrequency') continue;
          expect(Number.isFinite(measures[Measure[key]]), key).toBe(true);
        }
      }),
      RUNS,
    );
  });

  it('there and back is the identity, by any path', () => {
    const pose = createPose();
    fc.assert(
      fc.property(buildable, fc.array(place, { minLength: 2, maxLength: 6 }), (model, places) => {
        const corner = assemble(model);
        const first = inRange(model, places[0]!);
        if (solve(corner, pose, ...first) !== 'reached') return;
        const before = pose.data.slice(0, Slot.hubAxis);
        for (const where of places) solve(corner, pose, ...inRange(model, where));
        solve(corner, pose, ...first);
        for (let i = 0; i < before.length; i += 1) {
          expect(Math.abs(pose.data[i]! - before[i]!)).toBeLessThan(1e-9);
        }
      }),
      RUNS,
    );
  });
});

describe('the design pose', () => {
  it('gives the file back: points, camber and toe', () => {
    fc.assert(
      fc.property(buildable, (drawn) => {
        const model = withoutSettings(drawn);
        const { data, measures } = measured(assemble(model), 0, 0);
        const { lowerArm, upperArm, tieRod, coilover, antiRollBar, halfShaft } = model;
        const pairs: [number, Vector3][] = [
          [Slot.lower, lowerArm.ballJoint],
          [Slot.upper, upperArm.ballJoint],
          [Slot.outer, tieRod.outer],
          [Slot.inner, tieRod.inner],
          [Slot.damperBottom, coilover!.bottom],
          [Slot.leverEnd, antiRollBar!.leverEnd],
          [Slot.link, antiRollBar!.link],
          [Slot.shaftOuter, halfShaft!.outer],
        ];
        for (const [at, point] of pairs) expect(farFrom(data, at, point)).toBeLessThan(1e-8);
        expectClose(measures[Measure.camber]!, model.hub.camber!, 1e-9, 'deg', 'camber');
        expectClose(measures[Measure.toe]!, model.hub.toe!, 1e-9, 'deg', 'toe');
        expectClose(measures[Measure.plunge]!, 0, 1e-9, 'mm', 'plunge');
      }),
      RUNS,
    );
  });
});

const ANGLES: MeasureKey[] = [
  'camber',
  'toe',
  'caster',
  'kingpinInclination',
  'steerAngle',
  'antiDive',
  'motionRatio',
  'barMotionRatio',
  'outerAngle',
  'innerAngle',
  'lowerBallJoint',
  'upperBallJoint',
  'tieRodOuter',
  'tieRodInner',
];
const LENGTHS: MeasureKey[] = [
  'scrubRadius',
  'casterTrail',
  'spindleOffset',
  'spindleTrail',
  'damperLength',
  'plunge',
];

describe('laws', () => {
  it('moving the vehicle along or up changes no measure', () => {
    fc.assert(
      fc.property(buildable, place, vectorXZ, (model, where, [dx, dz]) => {
        const [travel, rack] = inRange(model, where);
        const here = measured(assemble(model), travel, rack);
        const there = measured(
          assemble(
            mapped(
              model,
              ([x, y, z]) => [x + dx, y, z + dz],
              (d) => d,
            ) as Model,
          ),
          travel,
          rack,
        );
        expect(there.outcome).toBe(here.outcome);
        if (here.outcome !== 'reached') return;
        for (const key of [...ANGLES, ...LENGTHS, 'rollCentreHeight' as const]) {
          const value = here.measures[Measure[key]]!;
          expectClose(there.measures[Measure[key]]!, value, 1e-7 * (1 + Math.abs(value)), '', key);
        }
      }),
      RUNS,
    );
  });

  it('scaling all lengths scales lengths and leaves angles alone', () => {
    fc.assert(
      fc.property(
        buildable,
        place,
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        (model, where, k) => {
          const [travel, rack] = inRange(model, where);
          const here = measured(assemble(model), travel, rack);
          const { wheel, tyre, tieRod, lowerArm, upperArm } = model;
          const cams = (arm: Model['lowerArm']) => ({
            ...arm,
            frontCam: { ...arm.frontCam!, throw: arm.frontCam!.throw * k },
            rearCam: { ...arm.rearCam!, throw: arm.rearCam!.throw * k },
          });
          const scaled = mapped(
            {
              ...model,
              lowerArm: cams(lowerArm),
              upperArm: cams(upperArm),
              tieRod: { ...tieRod, pitch: tieRod.pitch! * k },
              wheel: { ...wheel, offset: wheel.offset * k, spacer: (wheel.spacer ?? 0) * k },
              tyre: { ...tyre, loadedRadius: assemble(model).loadedRadius * k },
              travel: {
                bump: model.travel.bump * k,
                droop: model.travel.droop * k,
                ride: (model.travel.ride ?? 0) * k,
              },
              vehicle: {
                ...model.vehicle!,
                wheelbase: model.vehicle!.wheelbase * k,
                cgHeight: model.vehicle!.cgHeight * k,
              },
            },
            ([x, y, z]) => [x * k, y * k, z * k],
            (d) => d,
          ) as Model;
          const there = measured(assemble(scaled), travel * k, rack * k);
          expect(there.outcome).toBe(here.outcome);
          if (here.outcome !== 'reached') return;
          for (const key of ANGLES) {
            const value = here.measures[Measure[key]]!;
            expectClose(
              there.measures[Measure[key]]!,
              value,
              1e-7 * (1 + Math.abs(value)),
              '',
              key,
            );
          }
          for (const key of LENGTHS) {
            const value = here.measures[Measure[key]]! * k;
            expectClose(
              there.measures[Measure[key]]!,
              value,
              1e-7 * (1 + Math.abs(value)),
              'mm',
              key,
            );
          }
        },
      ),
      RUNS,
    );
  });

  it('a corner mirrored front to rear answers mirrored', () => {
    fc.assert(
      fc.property(buildable, place, (model, where) => {
        const [travel, rack] = inRange(model, where);
        const here = measured(assemble(model), travel, rack);
        const flip = ([x, y, z]: Vector3): Vector3 => [-x, y, z];
        const mirror = {
          ...(mapped(model, flip, flip) as Model),
          hub: { ...model.hub, face: flip(model.hub.face), toe: -(model.hub.toe ?? 0) },
        };
        const there = measured(assemble(mirror), travel, rack);
        expect(there.outcome).toBe(here.outcome);
        if (here.outcome !== 'reached') return;
        const SIGNS: [MeasureKey, number][] = [
          ['camber', 1],
          ['toe', -1],
          ['caster', -1],
          ['kingpinInclination', 1],
          ['scrubRadius', 1],
          ['casterTrail', -1],
          ['steerAngle', -1],
          ['halfTrack', 1],
          ['bumpSteer', -1],
          ['bumpCamber', 1],
          ['steerPerRack', -1],
          ['rollCentreHeight', 1],
          ['antiDive', -1],
          ['motionRatio', 1],
          ['wheelRate', 1],
          ['barMotionRatio', 1],
          ['outerAngle', 1],
          ['lowerBallJoint', 1],
          ['tieRodOuter', 1],
        ];
        for (const [key, sign] of SIGNS) {
          const value = here.measures[Measure[key]]! * sign;
          expectClose(there.measures[Measure[key]]!, value, 1e-7 * (1 + Math.abs(value)), '', key);
        }
      }),
      RUNS,
    );
  });
});

const vectorXZ = fc.tuple(
  fc.double({ min: -3000, max: 3000, noNaN: true }),
  fc.double({ min: -800, max: 800, noNaN: true }),
);
