/** The one equation that has no closed form: the lower arm angle θ at which the wheel centre has its height. */
import { angleRates, placeBodies } from './place.ts';
import { Fixed, Slot } from './slots.ts';

/** Placed, or the constraint that cannot be kept where the step tried to go. */
export type Step = 'placed' | 'lowerArm' | 'upperArm' | 'tieRod';

/** Residual of the wheel centre's height that counts as solved, mm: some thirty roundings of a coordinate of 1000 mm. */
export const HEIGHT_TOLERANCE = 1e-11;
/** Residual that is still accepted where rounding stops Newton's progress, mm. */
const ROUNDING_TOLERANCE = 1e-10;
const LONGEST_STEP = 0.1;
const MOST_PLACINGS = 28;

function placeWithRates(fixed: Float64Array, pose: Float64Array, theta: number): Step {
  pose[Slot.lowerAngle] = theta;
  const placed = placeBodies(fixed, pose);
  if (placed !== 'placed') return placed;
  angleRates(fixed, pose);
  return pose[Slot.wheelRoom]! > 0 ? 'placed' : 'lowerArm';
}

/**
 * Safeguarded Newton from the angle `start`, rack already placed: every iterate keeps all lengths and stays on the
 * branch (all rooms positive); a step that would leave it is halved. Leaves the pose placed, rates per θ included.
 */
export function stepTo(
  fixed: Float64Array,
  pose: Float64Array,
  start: number,
  travel: number,
): Step {
  const target = fixed[Fixed.designHeight]! + travel;
  let outcome = placeWithRates(fixed, pose, start);
  if (outcome !== 'placed') return outcome;
  let angle = start;
  let residual = pose[Slot.centre + 2]! - target;
  let step = 0;
  let failed: Step = 'lowerArm';
  for (let count = 0; count < MOST_PLACINGS; count += 1) {
    if (Math.abs(residual) <= HEIGHT_TOLERANCE) return 'placed';
    if (step === 0) {
      step = -residual / pose[Slot.angleCentre + 2]!;
      step = Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, step));
    }
    outcome = placeWithRates(fixed, pose, angle + step);
    if (outcome !== 'placed') {
      failed = outcome;
      step /= 2;
      continue;
    }
    const next = pose[Slot.centre + 2]! - target;
    if (Math.abs(next) <= ROUNDING_TOLERANCE && Math.abs(next) >= Math.abs(residual))
      return 'placed';
    angle += step;
    step = 0;
    residual = next;
  }
  return Math.abs(residual) <= ROUNDING_TOLERANCE && outcome === 'placed' ? 'placed' : failed;
}
