/** What a measure goes through over a model's whole travel, to size the parts that must reach so far. */
import {
  assemble,
  createMeasures,
  createPose,
  Measure,
  type MeasureKey,
  type Model,
  measureInto,
  solve,
} from '../../../solver/index.ts';
import { rideTravel } from '../../../solver/model/defaults.ts';

const STEPS = 40;

export interface Span {
  readonly least: number;
  readonly most: number;
}

/** Least and most of a measure over the reachable travel at rack 0; null when it is not measured anywhere. */
export function spanOf(model: Model, key: MeasureKey): Span | null {
  const corner = assemble(model);
  const [pose, measures] = [createPose(), createMeasures()];
  const { bump, droop } = model.travel;
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i <= STEPS; i += 1) {
    if (solve(corner, pose, -droop + ((bump + droop) * i) / STEPS, 0) !== 'reached') continue;
    measureInto(corner, pose, measures);
    const value = measures[Measure[key]] ?? Number.NaN;
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return Number.isFinite(least) && Number.isFinite(most) ? { least, most } : null;
}

/** The measures at the pose the vehicle stands in; null when it is out of reach. */
export function setPoseMeasures(model: Model): Float64Array | null {
  const corner = assemble(model);
  const [pose, measures] = [createPose(), createMeasures()];
  if (solve(corner, pose, rideTravel(model.travel), 0) !== 'reached') return null;
  measureInto(corner, pose, measures);
  return measures;
}

/** Greatest rack travel, mm, to which both sides can be steered at the design height, at most `wanted`. */
export function reachableRack(model: Model, wanted: number): number {
  const corner = assemble(model);
  const pose = createPose();
  for (let rack = wanted; rack > 5; rack -= 5) {
    const isLeft = solve(corner, pose, 0, rack) === 'reached';
    if (isLeft && solve(corner, pose, 0, -rack) === 'reached') return rack;
  }
  return 5;
}
