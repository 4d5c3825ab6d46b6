/** Camber, caster and toe as an alignment rack reads them: at the set pose of the present model, wherever the bench stands. */
import {
  type Corner,
  createMeasures,
  createPose,
  Measure,
  measureInto,
  solve,
} from '../../../solver/index.ts';
import { rideTravel } from '../../../solver/model/defaults.ts';
import { posed } from '../../state/bench.ts';

export const ANGLES = ['camber', 'caster', 'toe'] as const;
export type AngleKey = (typeof ANGLES)[number];

const pose = createPose();
const measures = createMeasures();
let solved: Corner | null = null;
let isReached = false;

/** The angle at the set pose, degrees; NaN where the settings leave the corner out of reach. One solve for each model. */
export function setAngle(key: AngleKey): number {
  const { corner } = posed.current();
  if (corner !== solved) {
    solved = corner;
    isReached = solve(corner, pose, rideTravel(corner.model.travel), 0) === 'reached';
    if (isReached) measureInto(corner, pose, measures);
  }
  return isReached ? measures[Measure[key]]! : Number.NaN;
}
