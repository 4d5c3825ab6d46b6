/** Camber against steer between both ends of a caster sweep, from the linkage itself. */
import {
  assemble,
  type CasterSweep,
  createMeasures,
  createPose,
  Measure,
  type Model,
  measureInto,
  solve,
} from '../../../solver/index.ts';
import { rideTravel } from '../../../solver/model/defaults.ts';

export interface CurvePoint {
  /** Degrees, positive to the left. */
  readonly steer: number;
  readonly camber: number;
}

const STRETCHES = 48;

/** Points from steered right to steered left; the rack goes evenly. */
export function casterCurve(model: Model, { left, right }: CasterSweep): readonly CurvePoint[] {
  const corner = assemble(model);
  const [pose, measures] = [createPose(), createMeasures()];
  const points: CurvePoint[] = [];
  for (let i = 0; i <= STRETCHES; i += 1) {
    const rack = right.rack + ((left.rack - right.rack) * i) / STRETCHES;
    if (solve(corner, pose, rideTravel(model.travel), rack) !== 'reached') continue;
    measureInto(corner, pose, measures);
    points.push({ steer: measures[Measure.steerAngle]!, camber: measures[Measure.camber]! });
  }
  return points;
}
