/** What would be read off a model: the values that its points give for a list of readings. */
import { assemble, assembleNear, type Corner, solve } from '../corner.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import { distance } from '../math/vec3.ts';
import { createMeasures, Measure } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import type { Model } from '../model/model.ts';
import { POINT_TABLE } from './points.ts';
import type { Reading } from './reading.ts';

/** The poses that a list of readings is taken in, each once, and which reading is taken in which. */
export interface ReadingPlan {
  readonly readings: readonly Reading[];
  /** travel, rack, mm. */
  readonly poses: readonly (readonly [number, number])[];
  readonly poseOf: readonly number[];
  /** Refilled for every pose of every model. */
  readonly pose: Pose;
  readonly measures: Float64Array;
  /** Corner of the first model that was read. */
  near: Corner | null;
}

/** Makes the plan of a list of readings. */
export function planReadings(readings: readonly Reading[]): ReadingPlan {
  const poses: [number, number][] = [];
  const poseOf = readings.map(({ travel, rack }) => {
    const known = poses.findIndex(([t, r]) => t === travel && r === rack);
    return known >= 0 ? known : poses.push([travel, rack]) - 1;
  });
  return { readings, poses, poseOf, pose: createPose(), measures: createMeasures(), near: null };
}

function valueRead(reading: Reading, corner: Corner, setToe: number, plan: ReadingPlan): number {
  const { quantity, between } = reading;
  const { data } = plan.pose;
  if (quantity === 'distance' || quantity === 'width') {
    if (between === undefined) return Number.NaN;
    const [one, other] = between.map((point) => POINT_TABLE[point].at(corner, data));
    // The other side is the mirror image in y = 0.
    return quantity === 'width' ? 2 * Math.abs(one![1]) : distance(one!, other!);
  }
  if (quantity === 'toeChange') return plan.measures[Measure.toe]! - setToe;
  return plan.measures[Measure[quantity]]!;
}

/** The model's corner, guessed from the first one that the plan was read for: the models of a fit are millimetres apart. */
export function cornerFor(plan: ReadingPlan, model: Model): Corner {
  plan.near ??= assemble(model);
  return assembleNear(plan.near, model);
}

/**
 * Writes into `out` what would be read off the corner, in the readings' order and units; NaN where its pose cannot be
 * reached or a part is not there. Answers whether every one is a number.
 */
export function expectedOf(plan: ReadingPlan, corner: Corner, out: Float64Array): boolean {
  const { readings, poses, poseOf, pose, measures } = plan;
  const setToe = corner.setToe ?? Number.NaN;
  let isWhole = true;
  out.fill(Number.NaN);
  poses.forEach(([travel, rack], index) => {
    if (solve(corner, pose, travel, rack) !== 'reached') return;
    measures.fill(Number.NaN);
    measureInto(corner, pose, measures);
    readings.forEach((reading, at) => {
      if (poseOf[at] === index) out[at] = valueRead(reading, corner, setToe, plan);
    });
  });
  for (const value of out) isWhole &&= Number.isFinite(value);
  return isWhole;
}

/** `expectedOf` a model. */
export function expectedInto(plan: ReadingPlan, model: Model, out: Float64Array): boolean {
  return expectedOf(plan, cornerFor(plan, model), out);
}
