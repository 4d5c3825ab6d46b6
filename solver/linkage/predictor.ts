/**
 * First guesses of the lower arm angle over a box of travel × rack. The box is walked once from the design pose, node
 * by node, and kept only where every closed-form step has room to spare, so that each of its poses is on the design
 * pose's branch by the straight path from it; a polynomial of total degree DEGREE through the walked angles is the guess.
 */

import { rackRange } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { placeRack } from './place.ts';
import { poseRates } from './rates.ts';
import { Slot } from './slots.ts';
import { stepTo } from './step.ts';

const DEGREE = 7;
const NODES = DEGREE + 1;
const TERMS = ((DEGREE + 1) * (DEGREE + 2)) / 2;
/** Room that must be left between the nodes of the walk for the box to count as free of singular poses. */
const ROOM_TO_SPARE = 0.02;
const SHRINK = [1, 0.85, 0.7, 0.5, 0.3];
/** The box reaches beyond the model's own range by this share, for rides and sliders that do. */
const MARGIN = 1.02;
const LEAST_HALF_RANGE = 2;

/** Centre and inverse half-size of the box in travel and in rack, then the polynomial's coefficients; empty: no box. */
export type Predictor = Float64Array;

const TRAVEL_CENTRE = 0;
const TRAVEL_SCALE = 1;
const RACK_CENTRE = 2;
const RACK_SCALE = 3;
const COEFFICIENTS = 4;

const _nodes = Float64Array.from({ length: NODES }, (_, i) =>
  Math.cos((Math.PI * (NODES - 1 - i + 0.5)) / NODES),
);
const _transform = nodesToChebyshev();
const _power = chebyshevToPower();
const _half = new Float64Array(NODES);
const _chebyshev = new Float64Array(NODES * NODES);
const _powers = new Float64Array(NODES * NODES);

/** Discrete Chebyshev transform: row j holds (2 − δ_j0)/N·T_j(node i). */
function nodesToChebyshev(): Float64Array {
  const matrix = new Float64Array(NODES * NODES);
  for (let j = 0; j < NODES; j += 1) {
    for (let i = 0; i < NODES; i += 1) {
      matrix[j * NODES + i] = ((j > 0 ? 2 : 1) / NODES) * Math.cos(j * Math.acos(_nodes[i]!));
    }
  }
  return matrix;
}

/** Column j holds the power coefficients of the Chebyshev polynomial T_j, from T_j+1 = 2x·T_j − T_j−1. */
function chebyshevToPower(): Float64Array {
  const matrix = new Float64Array(NODES * NODES);
  matrix[0] = 1;
  matrix[NODES + 1] = 1;
  for (let j = 2; j < NODES; j += 1) {
    for (let i = 0; i < NODES; i += 1) {
      const shifted = i > 0 ? matrix[(i - 1) * NODES + j - 1]! : 0;
      matrix[i * NODES + j] = 2 * shifted - matrix[i * NODES + j - 2]!;
    }
  }
  return matrix;
}

interface Box {
  readonly travelCentre: number;
  readonly travelHalf: number;
  readonly rackCentre: number;
  readonly rackHalf: number;
}

function boxOf(model: Model, share: number): Box {
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
  if (stepTo(fixed, pose, guess, travel) !== 'placed') return false;
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
  if (stepTo(fixed, pose, angle, travel) !== 'placed') return false;
  pose[Slot.travel] = travel;
  poseRates(fixed, pose);
  _walk.rooms.set(pose.subarray(Slot.upperRoom, Slot.upperRoom + 3));
  return true;
}

/** Node numbers away from the value `from`, upwards or downwards. */
function* outwards(centre: number, half: number, up: boolean): Generator<[number, number]> {
  for (let n = 0; n < NODES; n += 1) {
    const i = up ? n : NODES - 1 - n;
    const value = centre + half * _nodes[i]!;
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

function walkBox(fixed: Float64Array, box: Box, home: number): boolean {
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

/** out = left·middle·rightᵀ, all NODES × NODES. */
function sandwich(
  left: Float64Array,
  middle: Float64Array,
  right: Float64Array,
  out: Float64Array,
): void {
  for (let i = 0; i < NODES; i += 1) {
    for (let l = 0; l < NODES; l += 1) {
      let sum = 0;
      for (let j = 0; j < NODES; j += 1) sum += left[i * NODES + j]! * middle[j * NODES + l]!;
      _half[l] = sum;
    }
    for (let k = 0; k < NODES; k += 1) {
      let sum = 0;
      for (let l = 0; l < NODES; l += 1) sum += _half[l]! * right[k * NODES + l]!;
      out[i * NODES + k] = sum;
    }
  }
}

/** Chebyshev interpolation of the walked angles, cut at total degree DEGREE, as power coefficients row by row. */
function fitAngles(out: Float64Array): void {
  sandwich(_transform, _walk.angles, _transform, _chebyshev);
  for (let j = 0; j < NODES; j += 1) {
    for (let k = NODES - j; k < NODES; k += 1) _chebyshev[j * NODES + k] = 0;
  }
  sandwich(_power, _chebyshev, _power, _powers);
  let at = COEFFICIENTS;
  for (let p = 0; p <= DEGREE; p += 1) {
    for (let q = 0; p + q <= DEGREE; q += 1) {
      out[at] = _powers[p * NODES + q]!;
      at += 1;
    }
  }
}

/** Makes the predictor of a linkage whose settings hold; an empty array where no box is safe. */
export function createPredictor(
  model: Model,
  fixed: Float64Array,
  home: number,
  holds: boolean,
): Predictor {
  if (!holds) return new Float64Array(0);
  for (const share of SHRINK) {
    const box = boxOf(model, share);
    if (!walkBox(fixed, box, home)) continue;
    const out = new Float64Array(COEFFICIENTS + TERMS);
    out[TRAVEL_CENTRE] = box.travelCentre;
    out[TRAVEL_SCALE] = 1 / box.travelHalf;
    out[RACK_CENTRE] = box.rackCentre;
    out[RACK_SCALE] = 1 / box.rackHalf;
    fitAngles(out);
    return out;
  }
  return new Float64Array(0);
}

/**
 * Writes a guess of the lower arm angle (rad) for the travel and rack in the buffer at `Slot.guess` and of its second derivative along travel (rad/mm²) at
 * `Slot.guessBend`. Returns false outside the box (or without one), where the branch must be followed step by step.
 * Row p is the polynomial in the rack that multiplies travel^p; written out in pairs (Estrin's scheme), since every
 * pose pays for it.
 */
export function predict(c: Predictor, pose: Float64Array): boolean {
  if (c.length === 0) return false;
  const x = (pose[Slot.travel]! - c[TRAVEL_CENTRE]!) * c[TRAVEL_SCALE]!;
  const y = (pose[Slot.rack]! - c[RACK_CENTRE]!) * c[RACK_SCALE]!;
  if (!(x >= -1 && x <= 1 && y >= -1 && y <= 1)) return false;
  const y2 = y * y;
  const y4 = y2 * y2;
  const r0 =
    c[4]! +
    c[5]! * y +
    (c[6]! + c[7]! * y) * y2 +
    (c[8]! + c[9]! * y + (c[10]! + c[11]! * y) * y2) * y4;
  const r1 =
    c[12]! + c[13]! * y + (c[14]! + c[15]! * y) * y2 + (c[16]! + c[17]! * y + c[18]! * y2) * y4;
  const r2 = c[19]! + c[20]! * y + (c[21]! + c[22]! * y) * y2 + (c[23]! + c[24]! * y) * y4;
  const r3 = c[25]! + c[26]! * y + (c[27]! + c[28]! * y) * y2 + c[29]! * y4;
  const r4 = c[30]! + c[31]! * y + (c[32]! + c[33]! * y) * y2;
  const r5 = c[34]! + c[35]! * y + c[36]! * y2;
  const r6 = c[37]! + c[38]! * y;
  const r7 = c[39]!;
  const x2 = x * x;
  const x4 = x2 * x2;
  pose[Slot.guess] = r0 + r1 * x + (r2 + r3 * x) * x2 + (r4 + r5 * x + (r6 + r7 * x) * x2) * x4;
  const bend = 2 * r2 + 6 * r3 * x + (12 * r4 + 20 * r5 * x) * x2 + (30 * r6 + 42 * r7 * x) * x4;
  pose[Slot.guessBend] = bend * c[TRAVEL_SCALE]! * c[TRAVEL_SCALE]!;
  return true;
}
