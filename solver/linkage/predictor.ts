/**
 * First guesses of the lower arm angle over a box of travel × rack that is proven to be on the branch (box.ts): a
 * polynomial through the angles walked there.
 */
import { interpolate, TERMS } from '../math/chebyshev.ts';
import type { Model } from '../model/model.ts';
import { boxOf, ROOM_TO_SPARE, walkBox, walkedAngles } from './box.ts';
import { placeRack } from './place.ts';
import { Slot } from './slots.ts';
import { stepTo } from './step.ts';

/** Shares of the model's ranges that are tried until one is safe. */
const SHRINK = [1, 0.85, 0.7, 0.5, 0.3];

/** Centre and inverse half-size of the box in travel and in rack, then the polynomial's coefficients; empty: no box. */
export type Predictor = Float64Array;

const TRAVEL_CENTRE = 0;
const TRAVEL_SCALE = 1;
const RACK_CENTRE = 2;
const RACK_SCALE = 3;
const COEFFICIENTS = 4;

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
    interpolate(walkedAngles, out, COEFFICIENTS);
    return out;
  }
  return new Float64Array(0);
}

/** A box's corner, drawn in by what rounding could put it outside. */
const INSIDE = 1 - 1e-9;

const _corner = new Float64Array(Slot.size);

/**
 * Whether a predictor's guesses serve another linkage too: at the four corners of its box they lead to poses of that linkage with room
 * to spare in every closed-form step. For linkages that differ by millimetres, whose rooms differ by little all over the box.
 */
export function servesAlso(predictor: Predictor, fixed: Float64Array): boolean {
  for (const up of [-INSIDE, INSIDE]) {
    for (const along of [-INSIDE, INSIDE]) {
      const travel = predictor[TRAVEL_CENTRE]! + up / predictor[TRAVEL_SCALE]!;
      _corner[Slot.travel] = travel;
      _corner[Slot.rack] = predictor[RACK_CENTRE]! + along / predictor[RACK_SCALE]!;
      placeRack(fixed, _corner);
      if (!predict(predictor, _corner)) return false;
      if (!stepTo(fixed, _corner, _corner[Slot.guess]!, travel)) return false;
      for (let i = 0; i < 3; i += 1) {
        if (!(_corner[Slot.upperRoom + i]! > ROOM_TO_SPARE)) return false;
      }
    }
  }
  return true;
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
