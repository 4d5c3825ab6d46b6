/**
 * A box of travel × rack that is free of singular poses. It is walked from the home pose, node by node, and kept only
 * where every closed-form step has room to spare, so that each of its poses is on the branch by the straight path.
 */
import { chebyshevNodes, NODES } from '../math/chebyshev.ts';
import { rackRange } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { placeRack } from './place.ts';
import { poseRates } from './rates.ts';
import { Slot } from './slots.ts';
import { stepTo } from './step.ts';

/** Room that must be left between the nodes of the walk for the box to count as free of singular poses. */
export const ROOM_TO_SPARE = 0.02;
/** The box reaches beyond the model's own range by this share, for rides and sliders that do. */
const MARGIN = 1.02;
const LEAST_HALF_RANGE = 2;

/** Centre and half-size in travel and in rack, mm. */
export interface Box {
  readonly travelCentre: number;
  readonly travelHalf: number;
  readonly rackCentre: number;
  readonly rackHalf: number;
}

/** The box of a share of the model's own ranges. */
export function boxOf(model: Model, share: number): Box {
  const [left, right] = rackRange(model.steering);
  const low = -model.travel.droop * share * MARGIN;
  const high = model.travel.bump * share * MARGIN;
  const rackLow = Math.min(left * share * MARGIN, -LEAST_HALF_RANGE);
  const rackHigh = Math.max(right * share * MARGIN, LEAST_HALF_RANGE);
  return {
    travelCentre: (low + high) / 2,
    travelHalf: (high - low) / 2,
    rackCentre: (rackLow + rackHigh) / 2,
    rackHalf: (rackHigh - rackLow) / 2,
  };
}

const _walk = {
  pose: new Float64Array(Slot.size),
  rooms: new Float64Array(3),
  angles: new Float64Array(NODES * NODES),
};

function roomIsLeft(pose: Float64Array): boolean {
  for (let i = 0; i < 3; i += 1) {
    const now = pose[Slot.upperRoom + i]!;
    const before = _walk.rooms[i]!;
    if (!(Math.min(now, before) - Math.abs(now - before) / 2 > ROOM_TO_SPARE)) return false;
    _walk.rooms[i] = now;
  }
  return true;
}

/** Walks from the pose in the buffer to (travel, rack), guessing by the rates; false where room runs out. */
function walkTo(fixed: Float64Array, pose: Float64Array, travel: number, rack: number): boolean {
  const guess =
    pose[Slot.lowerAngle]! +
    pose[Slot.travelTheta]! * (travel - pose[Slot.travel]!) +
    pose[Slot.rackTheta]! * (rack - pose[Slot.rack]!);
  pose[Slot.rack] = rack;
  placeRack(fixed, pose);
  if (!stepTo(fixed, pose, guess, travel)) return false;
  pose[Slot.travel] = travel;
  poseRates(fixed, pose);
  return roomIsLeft(pose);
}

function startAt(
  fixed: Float64Array,
  pose: Float64Array,
  angle: number,
  travel: number,
  rack: number,
): boolean {
  pose[Slot.rack] = rack;
  placeRack(fixed, pose);
  if (!stepTo(fixed, pose, angle, travel)) return false;
  pose[Slot.travel] = travel;
  poseRates(fixed, pose);
  _walk.rooms.set(pose.subarray(Slot.upperRoom, Slot.upperRoom + 3));
  return true;
}

/** Node numbers away from the value `from`, upwards or downwards. */
function* outwards(centre: number, half: number, up: boolean): Generator<[number, number]> {
  for (let n = 0; n < NODES; n += 1) {
    const i = up ? n : NODES - 1 - n;
    const value = centre + half * chebyshevNodes[i]!;
    if (up ? value >= 0 : value < 0) yield [i, value];
  }
}

function walkColumn(
  fixed: Float64Array,
  box: Box,
  j: number,
  rack: number,
  angle: number,
): boolean {
  for (const up of [true, false]) {
    if (!startAt(fixed, _walk.pose, angle, 0, rack)) return false;
    for (const [i, travel] of outwards(box.travelCentre, box.travelHalf, up)) {
      if (!walkTo(fixed, _walk.pose, travel, rack)) return false;
      _walk.angles[i * NODES + j] = _walk.pose[Slot.lowerAngle]!;
    }
  }
  return true;
}

/** Lower arm angle, rad, at each node of the box last walked. */
export const walkedAngles: Float64Array = _walk.angles;

/** Walks the box; true when all of it is safe, and `walkedAngles` then holds its angles. */
export function walkBox(fixed: Float64Array, box: Box, home: number): boolean {
  for (const up of [true, false]) {
    let angle = home;
    let lastRack = 0;
    for (const [j, rack] of outwards(box.rackCentre, box.rackHalf, up)) {
      if (!startAt(fixed, _walk.pose, angle, 0, lastRack)) return false;
      if (!walkTo(fixed, _walk.pose, 0, rack)) return false;
      angle = _walk.pose[Slot.lowerAngle]!;
      lastRack = rack;
      if (!walkColumn(fixed, box, j, rack, angle)) return false;
    }
  }
  return true;
}
