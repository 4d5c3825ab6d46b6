/** Which way the rack goes to steer to the left: map, slider and keys all have left lock on the left, whatever the rack does. */
import {
  type Corner,
  createMeasures,
  createPose,
  Measure,
  measureInto,
  solve,
} from '../../solver/index.ts';
import { rideTravel } from '../../solver/model/defaults.ts';
import { posed } from './bench.ts';

/** +1 where the rack goes to the left to steer to the left, −1 where it goes to the right: a rod behind the axle. */
export function steerSenseOf(corner: Corner): 1 | -1 {
  const pose = createPose();
  const measures = createMeasures();
  if (solve(corner, pose, rideTravel(corner.model.travel), 0) !== 'reached') return 1;
  measureInto(corner, pose, measures);
  return measures[Measure.steerPerRack]! < 0 ? -1 : 1;
}

let sensed: Corner | null = null;
let sense: 1 | -1 = 1;

/** That of the present design. */
export function steerSense(): 1 | -1 {
  const { corner } = posed.current();
  if (corner !== sensed) {
    sensed = corner;
    sense = steerSenseOf(corner);
  }
  return sense;
}
