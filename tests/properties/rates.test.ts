import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  assemble,
  createMeasures,
  createPose,
  Measure,
  type MeasureKey,
  measureInto,
  Slot,
  solve,
} from '../../solver/index.ts';
import { buildable, inRange, place } from '../support/arbitraries.ts';

/** Rate, the measure it differentiates, and the factor between them; along travel. */
const RATES: [MeasureKey, MeasureKey, number][] = [
  ['bumpSteer', 'toe', 1],
  ['bumpCamber', 'camber', 1],
  ['bumpCaster', 'caster', 1],
  ['trackRate', 'halfTrack', 1],
  ['motionRatio', 'damperLength', -1],
  ['motionRatioRate', 'motionRatio', 1],
];
const STEP = 0.4;

describe('exact rates', () => {
  it('agree with a five-point difference of poses', () => {
    const pose = createPose();
    const measures = createMeasures();
    let compared = 0;
    fc.assert(
      fc.property(buildable, place, (model, where) => {
        const corner = assemble(model);
        const [travel, rack] = inRange(model, where);
        const rows: Float64Array[] = [];
        for (const [dt, dr] of [
          [0, 0],
          [-2, 0],
          [-1, 0],
          [1, 0],
          [2, 0],
          [0, -2],
          [0, -1],
          [0, 1],
          [0, 2],
        ]) {
          if (solve(corner, pose, travel + dt! * STEP, rack + dr! * STEP) !== 'reached') return;
          // Close to a singular pose the difference itself is worth nothing.
          if (Math.min(...pose.data.slice(Slot.upperRoom, Slot.upperRoom + 3)) < 0.05) return;
          measureInto(corner, pose, measures);
          rows.push(measures.slice());
        }
        const difference = (key: MeasureKey, from: number) => {
          const at = (i: number) => rows[from + i]![Measure[key]]!;
          return (at(0) - 8 * at(1) + 8 * at(2) - at(3)) / (12 * STEP);
        };
        compared += 1;
        for (const [rate, of, factor] of RATES) {
          const exact = rows[0]![Measure[rate]]!;
          const numeric = factor * difference(of, 1);
          expect(Math.abs(exact - numeric), rate).toBeLessThan(1e-7 + 1e-6 * Math.abs(exact));
        }
        const steer = rows[0]![Measure.steerPerRack]!;
        expect(Math.abs(steer - difference('steerAngle', 5))).toBeLessThan(
          1e-7 + 1e-6 * Math.abs(steer),
        );
      }),
      { numRuns: 300, seed: 20261125 },
    );
    expect(compared).toBeGreaterThan(200);
  });

  it('give the bar’s motion ratio as the speed of its lever’s end, positive when it rises', () => {
    const pose = createPose();
    const measures = createMeasures();
    fc.assert(
      fc.property(buildable, place, (model, where) => {
        const corner = assemble(model);
        const [travel, rack] = inRange(model, where);
        const ends: number[][] = [];
        for (const dt of [-STEP, STEP, 0]) {
          if (solve(corner, pose, travel + dt, rack) !== 'reached') return;
          measureInto(corner, pose, measures);
          if (!(pose.data[Slot.leverRoom]! > 0.05)) return;
          ends.push([...pose.data.slice(Slot.leverEnd, Slot.leverEnd + 3)]);
        }
        const [low, high] = ends as [number[], number[]];
        const speed = Math.hypot(...[0, 1, 2].map((i) => high[i]! - low[i]!)) / (2 * STEP);
        const ratio = measures[Measure.barMotionRatio]!;
        expect(Math.abs(Math.abs(ratio) - speed)).toBeLessThan(1e-4);
        if (Math.abs(high[2]! - low[2]!) > 0.3)
          expect(Math.sign(ratio)).toBe(Math.sign(high[2]! - low[2]!));
      }),
      { numRuns: 200, seed: 7 },
    );
  });
});
