/** The rack displacement that brings the wheel to a steer angle at ride, found by halving; the linkage decides how far it goes. */
import { type Corner, solve } from '../corner.ts';
import { createPose } from '../linkage/solve.ts';
import { createMeasures, Measure } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import { rideTravel } from '../model/defaults.ts';
import { lastThatHolds } from './golden.ts';

/** The corner at ride with the rack somewhere, degrees and mm. */
export interface Steered {
  readonly rack: number;
  /** Positive to the left. */
  readonly steer: number;
  readonly camber: number;
  readonly toe: number;
  readonly caster: number;
  readonly kingpinInclination: number;
}

/** What ends a way of steering short of the angle wanted: the file's steering limit, or the linkage. */
export type SteerEnd = 'limit' | 'reach';

/** Steps of the rack on the way, mm, and the farthest it is moved where the file states no limit. */
const STRIDE = 2;
const FARTHEST = 400;

/** The corner at ride with this rack; null out of reach. */
export function steeredBy(corner: Corner, rack: number): Steered | null {
  const pose = createPose();
  if (solve(corner, pose, rideTravel(corner.model.travel), rack) !== 'reached') return null;
  const measures = createMeasures();
  measureInto(corner, pose, measures);
  const at = (key: number): number => measures[key]! + 0;
  return {
    rack,
    steer: at(Measure.steerAngle),
    camber: at(Measure.camber),
    toe: at(Measure.toe),
    caster: at(Measure.caster),
    kingpinInclination: at(Measure.kingpinInclination),
  };
}

/**
 * Steers to an angle (its sign says which way, positive to the left) from straight ahead. Where that is out of the steering
 * limit or of reach, or steer turns back on the way, the farthest there is, and what ends it.
 */
export function steerTo(
  corner: Corner,
  steer: number,
): { readonly at: Steered; readonly end: SteerEnd | null } | null {
  const home = steeredBy(corner, 0);
  const [left, right] = [steeredBy(corner, STRIDE / 4), steeredBy(corner, -STRIDE / 4)];
  if (home === null || left === null || right === null) return null;
  const way = (left.steer > right.steer ? 1 : -1) * Math.sign(steer);
  const limit = corner.model.steering?.limit;
  const most = limit === undefined ? FARTHEST : Math.abs(way > 0 ? limit[1] : limit[0]);
  const steered = (rack: number): number | null => {
    const at = steeredBy(corner, way * rack);
    return at === null ? null : at.steer * Math.sign(steer);
  };
  const wanted = Math.abs(steer);
  let rack = 0;
  let last = 0;
  while (rack < most) {
    const next = Math.min(most, rack + STRIDE);
    const now = steered(next);
    if (now === null || now < last) {
      const goesOn = (each: number): boolean => (steered(each) ?? Number.NEGATIVE_INFINITY) >= last;
      const stop = lastThatHolds(goesOn, rack, next);
      return { at: steeredBy(corner, way * stop)!, end: 'reach' };
    }
    if (now >= wanted) {
      const isShort = (each: number): boolean => (steered(each) ?? wanted) < wanted;
      const stop = lastThatHolds(isShort, rack, next);
      return { at: steeredBy(corner, way * stop)!, end: null };
    }
    [rack, last] = [next, now];
  }
  return { at: steeredBy(corner, way * rack)!, end: limit === undefined ? 'reach' : 'limit' };
}
