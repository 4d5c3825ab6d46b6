/**
 * Both front wheels as the rack turns them: inner and outer steer, Ackermann and turning circle. The right wheel is the
 * mirror image of the left one solved with the rack at −r along [−d_x, d_y, −d_z]; both wheels stand at the same travel.
 */
import { assemble, type Corner, solve } from '../corner.ts';
import { placeFrames } from '../linkage/bodies.ts';
import { Slot } from '../linkage/slots.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import { rideTravel, steeringDirection } from '../model/defaults.ts';
import { degrees, radians } from '../units.ts';
import { createMeasures, Measure } from './keys.ts';
import { measureInto } from './measure.ts';

export const AXLE_KEYS = ['innerSteer', 'outerSteer', 'ackermann', 'turningCircle'] as const;

export type AxleKey = (typeof AXLE_KEYS)[number];

/** Place of each axle measure in an axle buffer. */
export const AxleMeasure: Readonly<Record<AxleKey, number>> = {
  innerSteer: 0,
  outerSteer: 1,
  ackermann: 2,
  turningCircle: 3,
};

/** Under this steer angle of the inner wheel, degrees, a turn has no centre worth the name. */
export const LEAST_TURN = 0.1;

export interface Axle {
  readonly corner: Corner;
  /** The right wheel seen in the mirror. */
  readonly mirrored: Corner;
  /** Distance between the steering axes on the ground in the set pose, mm; NaN when the set pose is out of reach. */
  readonly kingpinTrack: number;
  /** Scrub radius in the set pose, mm. */
  readonly setScrub: number;
  readonly pose: Pose;
}

/** Outer angle of a turn whose wheels roll about one centre: cot δo = cot δi + T/L, degrees. */
export function idealOuter(inner: number, kingpinTrack: number, wheelbase: number): number {
  const tangent = Math.tan(radians(inner));
  return degrees(Math.atan(tangent / (1 + (tangent * kingpinTrack) / wheelbase)));
}

/** Ackermann, %: 0 where both wheels turn alike, 100 where they roll about one centre. Angles in degrees, unsigned. */
export function ackermann(
  inner: number,
  outer: number,
  kingpinTrack: number,
  wheelbase: number,
): number {
  return (100 * (inner - outer)) / (inner - idealOuter(inner, kingpinTrack, wheelbase));
}

/** Diameter of the circle of the outer contact's centre, mm. */
export function turningCircle(outer: number, wheelbase: number, scrubRadius: number): number {
  return 2 * (wheelbase / Math.sin(radians(outer)) + scrubRadius);
}

/** y of the steering axis at the height of the contact, mm. */
function axisGroundY(data: Float64Array): number {
  const slope = data[Slot.frame + 1]! / data[Slot.frame + 2]!;
  return data[Slot.lower + 1]! + slope * (data[Slot.contact + 2]! - data[Slot.lower + 2]!);
}

/** Makes the axle of a corner. Costs another corner where the rack moves along anything but y. */
export function createAxle(corner: Corner): Axle {
  const { model } = corner;
  const [x, y, z] = steeringDirection(model.steering);
  const mirrored =
    x === 0 && z === 0
      ? corner
      : assemble({ ...model, steering: { ...model.steering, direction: [-x, y, -z] } });
  const pose = createPose();
  const reached = solve(corner, pose, rideTravel(model.travel), 0) === 'reached';
  const measures = createMeasures();
  if (reached) measureInto(corner, pose, measures);
  return {
    corner,
    mirrored,
    kingpinTrack: reached ? 2 * axisGroundY(pose.data) : Number.NaN,
    setScrub: measures[Measure.scrubRadius]!,
    pose,
  };
}

/** Steer angle of a left wheel, degrees, positive to the left; NaN out of reach. */
function steerAt(corner: Corner, pose: Pose, travel: number, rack: number): number {
  if (corner.setToe === null || solve(corner, pose, travel, rack) !== 'reached') return Number.NaN;
  placeFrames(corner.linkage.fixed, pose.data);
  const toe = degrees(Math.atan2(pose.data[Slot.hubAxis]!, pose.data[Slot.hubAxis + 1]!));
  return corner.setToe - toe;
}

/**
 * Fills `out` (four numbers, see `AxleMeasure`) for both wheels at (travel, rack), mm; nothing is allocated. Angles in
 * degrees, unsigned; NaN straight ahead, out of reach of either wheel, or without a wheelbase.
 */
export function axleInto(axle: Axle, travel: number, rack: number, out: Float64Array): void {
  const left = steerAt(axle.corner, axle.pose, travel, rack);
  const right = -steerAt(axle.mirrored, axle.pose, travel, -rack);
  const turn = left + right < 0 ? -1 : 1;
  const inner = turn * (turn > 0 ? left : right);
  const outer = turn * (turn > 0 ? right : left);
  out.fill(Number.NaN);
  if (!(Math.abs(inner) >= LEAST_TURN) || Number.isNaN(outer)) return;
  out[AxleMeasure.innerSteer] = Math.abs(inner);
  out[AxleMeasure.outerSteer] = Math.abs(outer);
  const wheelbase = axle.corner.model.vehicle?.wheelbase;
  if (wheelbase === undefined) return;
  const { kingpinTrack, setScrub } = axle;
  out[AxleMeasure.ackermann] = ackermann(Math.abs(inner), Math.abs(outer), kingpinTrack, wheelbase);
  out[AxleMeasure.turningCircle] = turningCircle(Math.abs(outer), wheelbase, setScrub);
}
