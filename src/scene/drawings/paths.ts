/** The ways of the wheel centre and of the ball joints over the whole travel at the present rack. Solved anew only when rack or model change. */
import { type Corner, createPose, Fixed, Slot, solve } from '../../../solver/index.ts';
import { rideTravel } from '../../../solver/model/defaults.ts';
import { travelRange } from '../../state/inputs.ts';
import { mark, type Pen } from './pen.ts';
import type { Drawing } from './subject.ts';

const STEPS = 48;

/** Polylines, three numbers a point; `count` points of each are filled. */
export interface Paths {
  readonly centre: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  count: number;
  /** Wheel centre at ride height, where it can be reached. */
  readonly ride: Float64Array;
  hasRide: boolean;
  of: Corner | null;
  rack: number;
}

export function createPaths(): Paths {
  const line = (): Float64Array => new Float64Array(3 * (STEPS + 1));
  return {
    centre: line(),
    lower: line(),
    upper: line(),
    count: 0,
    ride: new Float64Array(3),
    hasRide: false,
    of: null,
    rack: 0,
  };
}

const _pose = createPose();

function keep(line: Float64Array, at: number, slot: number): void {
  for (let i = 0; i < 3; i += 1) line[3 * at + i] = _pose.data[slot + i]!;
}

/** Brings the paths up to date. Poses out of reach are left out. */
export function followPaths(paths: Paths, corner: Corner, rack: number): void {
  if (paths.of === corner && paths.rack === rack) return;
  paths.of = corner;
  paths.rack = rack;
  paths.count = 0;
  const [least, most] = travelRange(corner.model);
  for (let step = 0; step <= STEPS; step += 1) {
    const travel = least + ((most - least) * step) / STEPS;
    if (solve(corner, _pose, travel, rack) !== 'reached') continue;
    keep(paths.centre, paths.count, Slot.centre);
    keep(paths.lower, paths.count, Slot.lower);
    keep(paths.upper, paths.count, Slot.upper);
    paths.count += 1;
  }
  paths.hasRide = solve(corner, _pose, rideTravel(corner.model.travel), rack) === 'reached';
  keep(paths.ride, 0, Slot.centre);
}

function polyline(pen: Pen, line: Float64Array, count: number): void {
  for (let i = 1; i < count; i += 1) {
    const at = 3 * i;
    pen.line(
      line[at - 3]!,
      line[at - 2]!,
      line[at - 1]!,
      line[at]!,
      line[at + 1]!,
      line[at + 2]!,
      'accent',
    );
  }
}

const BUMP_WORDS = (): string => 'full bump';
const DROOP_WORDS = (): string => 'full droop';
const RIDE_WORDS = (): string => 'ride height';

/** The wheel centre's way, its ends and ride height marked. */
export const drawWheelPath: Drawing = (pen, { now, paths }) => {
  const { centre, count } = paths;
  if (count === 0) return;
  polyline(pen, centre, count);
  const last = 3 * (count - 1);
  const { data } = now.pose;
  mark(pen, data[Slot.centre]!, data[Slot.centre + 1]!, data[Slot.centre + 2]!, 14, 'ink');
  mark(pen, centre[0]!, centre[1]!, centre[2]!, 6, 'accent');
  mark(pen, centre[last]!, centre[last + 1]!, centre[last + 2]!, 6, 'accent');
  pen.label(centre[last]!, centre[last + 1]!, centre[last + 2]!, 'accent', BUMP_WORDS, 0);
  pen.label(centre[0]!, centre[1]!, centre[2]!, 'accent', DROOP_WORDS, 0);
  if (!paths.hasRide) return;
  const { ride } = paths;
  mark(pen, ride[0]!, ride[1]!, ride[2]!, 6, 'accent');
  pen.label(ride[0]!, ride[1]!, ride[2]!, 'soft', RIDE_WORDS, 0);
};

function drawArc(
  pen: Pen,
  line: Float64Array,
  count: number,
  data: Float64Array,
  slot: number,
  fixed: Float64Array,
  circle: number,
): void {
  polyline(pen, line, count);
  pen.line(
    fixed[circle]!,
    fixed[circle + 1]!,
    fixed[circle + 2]!,
    data[slot]!,
    data[slot + 1]!,
    data[slot + 2]!,
    'soft',
  );
  mark(pen, fixed[circle]!, fixed[circle + 1]!, fixed[circle + 2]!, 6, 'soft');
  mark(pen, data[slot]!, data[slot + 1]!, data[slot + 2]!, 10, 'ink');
}

/** The arcs of both ball joints with the radius each turns on. */
export const drawBallJointArcs: Drawing = (pen, { now, paths }) => {
  const { data } = now.pose;
  const { fixed } = now.corner.linkage;
  drawArc(pen, paths.lower, paths.count, data, Slot.lower, fixed, Fixed.lowerCircle);
  drawArc(pen, paths.upper, paths.count, data, Slot.upper, fixed, Fixed.upperCircle);
};
