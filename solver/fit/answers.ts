/** What people want to know of the fitted corner, with its ± before and after the readings. */
import { type Corner, solve } from '../corner.ts';
import { createPose } from '../linkage/solve.ts';
import { createMeasures, Measure, type MeasureKey } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import { rideTravel } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import type { Steps } from '../stops/steps.ts';
import { cornerFor, expectedOf, planReadings, type ReadingPlan } from './expected.ts';
import { type Posterior, plusMinusAfter, plusMinusBefore } from './posterior.ts';
import { scaled } from './progress.ts';
import type { Reading, ReadQuantity } from './reading.ts';
import { modelAt, type Reader, slopesInSteps, type Unknowns } from './unknowns.ts';

/** Measures of the set pose that are answered. */
const ANSWERS: readonly MeasureKey[] = [
  'camber',
  'toe',
  'caster',
  'kingpinInclination',
  'scrubRadius',
  'casterTrail',
  'bumpSteer',
  'bumpCamber',
  'rollCentreHeight',
  'motionRatio',
];

/** Quantities that make a curve over travel. */
const CURVES = ['toe', 'toeChange', 'camber', 'caster', 'damperLength'] as const;
export type CurveQuantity = (typeof CURVES)[number];

/** A number before and after the fit, with one standard uncertainty of each. */
export interface Improved {
  readonly before: number;
  readonly after: number;
  readonly plusMinusBefore: number;
  readonly plusMinusAfter: number;
}

export interface Answer extends Improved {
  readonly key: MeasureKey;
}

/** A quantity over travel; null where the pose is out of reach. */
export interface FitCurve {
  readonly quantity: CurveQuantity;
  readonly points: readonly { readonly travel: number; readonly at: Improved | null }[];
}

export interface Answers {
  readonly answers: readonly Answer[];
  readonly curves: readonly FitCurve[];
}

/** Stretches that the travel is cut into for a curve. */
const STRETCHES = 24;

function isCurve(quantity: ReadQuantity): quantity is CurveQuantity {
  return (CURVES as readonly string[]).includes(quantity);
}

/** Those read at two heights or more; toe where nothing is. */
function curvesOf(readings: readonly Reading[]): readonly CurveQuantity[] {
  const heights = (quantity: CurveQuantity): number =>
    new Set(readings.filter((one) => one.quantity === quantity).map(({ travel }) => travel)).size;
  const found = CURVES.filter((quantity) => heights(quantity) > 1);
  return found.length > 0 ? found : ['toe'];
}

function travelsOf({ travel: { bump, droop } }: Model, readings: readonly Reading[]): number[] {
  const heights = readings.filter(({ quantity }) => isCurve(quantity)).map(({ travel }) => travel);
  const least = Math.min(-droop, ...heights);
  const run = Math.max(bump, ...heights) - least;
  return Array.from({ length: STRETCHES + 1 }, (_, i) => least + (run * i) / STRETCHES);
}

function setPoseInto(corner: Corner, out: Float64Array): void {
  const pose = createPose();
  const measures = createMeasures();
  if (solve(corner, pose, rideTravel(corner.model.travel), 0) === 'reached') {
    measureInto(corner, pose, measures);
  }
  ANSWERS.forEach((key, i) => {
    out[i] = measures[Measure[key]]!;
  });
}

/** Reads the answers, then the curves; what does not exist is NaN and stops nobody. */
function answersReader(plan: ReadingPlan): Reader {
  return {
    size: ANSWERS.length + plan.readings.length,
    into(model, out) {
      const corner = cornerFor(plan, model);
      setPoseInto(corner, out);
      expectedOf(plan, corner, out.subarray(ANSWERS.length));
      return true;
    },
  };
}

interface Told {
  readonly values: Float64Array;
  readonly slopes: Float64Array;
}

function* toldInSteps(unknowns: Unknowns, x: Float64Array, reader: Reader): Steps<Told> {
  const values = new Float64Array(reader.size);
  reader.into(modelAt(unknowns, x), values);
  const slopes = new Float64Array(reader.size * x.length);
  yield* slopesInSteps(unknowns, x, reader, slopes);
  return { values, slopes };
}

/** All answers and curves at the points as measured, ± from the points alone, and at the fit, ± from both. */
export function* answersInSteps(
  unknowns: Unknowns,
  x: Float64Array,
  posterior: Posterior,
  readings: readonly Reading[],
): Steps<Answers> {
  const columns = x.length;
  const travels = travelsOf(unknowns.measured, readings);
  const quantities = curvesOf(readings);
  const plan = planReadings(
    quantities.flatMap((quantity) =>
      travels.map((travel) => ({ quantity, travel, rack: 0, value: 0, plusMinus: 1 })),
    ),
  );
  const reader = answersReader(plan);
  const first = yield* scaled(toldInSteps(unknowns, new Float64Array(columns), reader), 0, 0.5);
  const last = yield* scaled(toldInSteps(unknowns, x, reader), 0.5, 1);
  const improvedAt = (row: number): Improved | null => {
    const of = ({ slopes }: Told) => slopes.subarray(row * columns, (row + 1) * columns);
    const improved = {
      before: first.values[row]!,
      after: last.values[row]!,
      plusMinusBefore: plusMinusBefore(of(first)),
      plusMinusAfter: plusMinusAfter(posterior, of(last)),
    };
    return Object.values(improved).every(Number.isFinite) ? improved : null;
  };
  const answers = ANSWERS.flatMap((key, row): Answer[] => {
    const improved = improvedAt(row);
    return improved === null ? [] : [{ key, ...improved }];
  });
  const curves = quantities.map((quantity, index) => ({
    quantity,
    points: travels.map((travel, i) => ({
      travel,
      at: improvedAt(ANSWERS.length + index * travels.length + i),
    })),
  }));
  return { answers, curves };
}
