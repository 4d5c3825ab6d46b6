/** Solves poses into a buffer: quickly inside the predictor's box, by following the branch outside it. */

import { follow, nameOfSingular } from './follow.ts';
import type { Failure, Linkage } from './linkage.ts';
import { angleRates, placeBodies, placeRack } from './place.ts';
import { predict } from './predictor.ts';
import { Fixed, Slot } from './slots.ts';
import { HEIGHT_TOLERANCE } from './step.ts';

/** 'reached', or the constraint that can no longer be kept. */
export type Outcome = 'reached' | Failure;

/** A pose buffer, made once and filled by every `solvePose`. */
export interface Pose {
  /** Positions and, after `poseRates`, derivatives: see `Slot`. mm, rad. */
  readonly data: Float64Array;
  outcome: Outcome;
  /** The last reachable place on the straight path to a pose that is out of reach; else the pose's own. mm. */
  lastTravel: number;
  lastRack: number;
}

export function createPose(): Pose {
  return { data: new Float64Array(Slot.size), outcome: 'reached', lastTravel: 0, lastRack: 0 };
}

const QUICK_PLACINGS = 6;

/**
 * From the predictor's guess θ₀, whose exact travel is off by ε: θ = θ₀ − ε·θ_t + ½ε²·θ_tt (θ_t exact, θ_tt predicted),
 * then the same derivative once or twice more if rounding asks for it. False hands over to `follow`.
 */
function solveQuickly(fixed: Float64Array, data: Float64Array): boolean {
  const target = fixed[Fixed.designHeight]! + data[Slot.travel]!;
  data[Slot.lowerAngle] = data[Slot.guess]!;
  if (placeBodies(fixed, data) !== 'placed') return false;
  angleRates(fixed, data);
  if (!(data[Slot.wheelRoom]! > 0)) return false;
  const perTravel = 1 / data[Slot.angleCentre + 2]!;
  let excess = data[Slot.centre + 2]! - target;
  data[Slot.lowerAngle] =
    data[Slot.guess]! + excess * (excess * 0.5 * data[Slot.guessBend]! - perTravel);
  for (let count = 0; count < QUICK_PLACINGS; count += 1) {
    if (placeBodies(fixed, data) !== 'placed') return false;
    excess = data[Slot.centre + 2]! - target;
    if (excess <= HEIGHT_TOLERANCE && excess >= -HEIGHT_TOLERANCE) return true;
    data[Slot.lowerAngle] = data[Slot.lowerAngle]! - excess * perTravel;
  }
  return false;
}

/**
 * Solves the pose at (travel, rack), mm, into `pose`, on the design pose's branch; nothing is allocated.
 * Lengths hold to 1e-9 mm. Out of reach, the buffer keeps the last reachable pose on the straight path from the set-up
 * pose, `pose.lastTravel` and `lastRack` say where that is (to 0.01 mm), and the outcome names what fails.
 */
export function solvePose(linkage: Linkage, pose: Pose, travel: number, rack: number): Outcome {
  const { fixed } = linkage;
  const { data } = pose;
  if (linkage.broken !== null) {
    data.set(linkage.home);
    return finish(pose, linkage.broken, 0, 0);
  }
  data[Slot.travel] = travel;
  data[Slot.rack] = rack;
  placeRack(fixed, data);
  if (predict(linkage.predictor, data) && solveQuickly(fixed, data)) {
    return finish(pose, 'reached', travel, rack);
  }
  const q = follow(linkage, data, travel, rack);
  return finish(pose, q === 1 ? 'reached' : nameOfSingular(data), q * travel, q * rack);
}

function finish(pose: Pose, outcome: Outcome, lastTravel: number, lastRack: number): Outcome {
  pose.outcome = outcome;
  pose.lastTravel = lastTravel;
  pose.lastRack = lastRack;
  return outcome;
}
