/** The one equation that has no closed form: the lower arm angle θ at which the wheel centre has its height. */
import { angleRates, placeBodies } from './place.ts';
import { Fixed, Slot } from './slots.ts';

/** Residual of the wheel centre's height that counts as solved, mm: some thirty roundings of a coordinate of 1000 mm. */
export const HEIGHT_TOLERANCE = 1e-11;
/** Residual that is still accepted where rounding stops Newton's progress, mm. */
const ROUNDING_TOLERANCE = 1e-10;
const LONGEST_STEP = 0.1;
const MOST_PLACINGS = 28;

/** Places the bodies with their rates per θ; false off the branch. */
function placeWithRates(fixed: Float64Array, pose: Float64Array, theta: number): boolean {
  pose[Slot.lowerAngle] = theta;
  if (placeBodies(fixed, pose) !== 'placed') return false;
  angleRates(fixed, pose);
  return pose[Slot.wheelRoom]! > 0;
}

/**
 * Safeguarded Newton from the angle `start`, rack already placed: every iterate keeps all lengths and stays on the
 * branch (all rooms positive); a step that would leave it is halved. Returns whether it arrived. Leaves the pose placed, rates per θ included.
 */
export function stepTo(
  fixed: Float64Array,
  pose: Float64Array,
  start: number,
  travel: number,
): boolean {
  const target = fixed[Fixed.designHeight]! + travel;
  let isPlaced = placeWithRates(fixed, pose, start);
  if (!isPlaced) return false;
  let angle = start;
  let residual = pose[Slot.centre + 2]! - target;
  let step = 0;
  for (let count = 0; count < MOST_PLACINGS; count += 1) {
    if (Math.abs(residual) <= HEIGHT_TOLERANCE) return true;
    if (step === 0) {
      step = -residual / pose[Slot.angleCentre + 2]!;
      step = Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, step));
    }
    isPlaced = placeWithRates(fixed, pose, angle + step);
    if (!isPlaced) {
      step /= 2;
      continue;
    }
    const next = pose[Slot.centre + 2]! - target;
    if (Math.abs(next) <= ROUNDING_TOLERANCE && Math.abs(next) >= Math.abs(residual)) return true;
    angle += step;
    step = 0;
    residual = next;
  }
  return isPlaced && Math.abs(residual) <= ROUNDING_TOLERANCE;
}
