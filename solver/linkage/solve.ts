/** Solves poses into a buffer: quickly inside the predictor's box, by following the branch outside it. */
import type { Failure, Linkage } from './assemble.ts';
import { angleRates, placeBodies, placeRack } from './place.ts';
import { predict } from './predictor.ts';
import { poseRates } from './rates.ts';
import { Fixed, Slot } from './slots.ts';
import { HEIGHT_TOLERANCE, stepTo } from './step.ts';

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
/** Longest step along the path to a pose, mm, and how it shortens with the room r left: reach·√r. */
const LONGEST_STEP = 4;
const STEP_PER_ROOT_ROOM = 60;
/** The path ends where no step of this size, mm, succeeds: a hundredth of what the contract asks. */
const SHORTEST_STEP = 1e-4;

/**
 * From the predictor's guess θ₀, whose exact travel is off by ε: θ = θ₀ − ε·θ_t + ½ε²·θ_tt (θ_t exact, θ_tt predicted),
 * then the same derivative once or twice more if rounding asks for it. False hands over to `follow`.
 */
function solveQuickly(fixed: Float64Array, data: Float64Array, travel: number): boolean {
  const target = fixed[Fixed.designHeight]! + travel;
  let angle = data[Slot.guess]!;
  if (placeBodies(fixed, data, angle) !== 'placed') return false;
  angleRates(fixed, data);
  if (!(data[Slot.wheelRoom]! > 0)) return false;
  const perTravel = 1 / data[Slot.angleCentre + 2]!;
  let excess = data[Slot.centre + 2]! - target;
  angle += excess * (excess * 0.5 * data[Slot.guessBend]! - perTravel);
  for (let count = 0; count < QUICK_PLACINGS; count += 1) {
    if (placeBodies(fixed, data, angle) !== 'placed') return false;
    excess = data[Slot.centre + 2]! - target;
    if (excess <= HEIGHT_TOLERANCE && excess >= -HEIGHT_TOLERANCE) return true;
    angle -= excess * perTravel;
  }
  return false;
}

function leastRoom(data: Float64Array): number {
  return Math.min(data[Slot.upperRoom]!, data[Slot.rodRoom]!, data[Slot.wheelRoom]!);
}

const _trial = new Float64Array(Slot.size);

/** Follows the branch from the set-up pose along (q·travel, q·rack); leaves the last reachable pose in the buffer. */
function follow(linkage: Linkage, pose: Pose, travel: number, rack: number): Outcome {
  const { fixed } = linkage;
  const { data } = pose;
  const span = Math.hypot(travel, rack);
  placeRack(fixed, data, 0);
  const home = stepTo(fixed, data, linkage.homeAngle, 0);
  data[Slot.travel] = 0;
  let q = 0;
  let outcome: Outcome = home === 'placed' ? 'reached' : home;
  let step = LONGEST_STEP;
  while (home === 'placed' && q * span < span) {
    poseRates(fixed, data);
    const room = leastRoom(data);
    step = Math.min(step * 2, LONGEST_STEP, STEP_PER_ROOT_ROOM * Math.sqrt(room));
    outcome = advance(fixed, data, travel, rack, q, step, span, room);
    if (outcome !== 'reached') break;
    step = _trialStep;
    q = _trialShare;
    data.set(_trial);
  }
  pose.lastTravel = q * travel;
  pose.lastRack = q * rack;
  return outcome;
}

let _trialStep = 0;
let _trialShare = 0;

/** One accepted step of the path into `_trial`, halved until it keeps to the branch, or what stops it. */
function advance(
  fixed: Float64Array,
  data: Float64Array,
  travel: number,
  rack: number,
  q: number,
  longest: number,
  span: number,
  room: number,
): Outcome {
  let failed: Outcome = 'lowerArm';
  for (let step = longest; step >= SHORTEST_STEP; step /= 2) {
    const share = Math.min(1, q + step / span);
    const toTravel = share * travel;
    const toRack = share * rack;
    const guess =
      data[Slot.lowerAngle]! +
      data[Slot.travelTheta]! * (toTravel - q * travel) +
      data[Slot.rackTheta]! * (toRack - q * rack);
    placeRack(fixed, _trial, toRack);
    const stepped = stepTo(fixed, _trial, guess, toTravel);
    if (stepped === 'placed' && (leastRoom(_trial) > room / 4 || step < 2 * SHORTEST_STEP)) {
      _trial[Slot.travel] = toTravel;
      _trialStep = step;
      _trialShare = share;
      return 'reached';
    }
    if (stepped !== 'placed') failed = stepped;
  }
  return failed;
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
    pose.lastTravel = 0;
    pose.lastRack = 0;
    pose.outcome = linkage.broken;
    return linkage.broken;
  }
  placeRack(fixed, data, rack);
  if (predict(linkage.predictor, travel, rack, data) && solveQuickly(fixed, data, travel)) {
    data[Slot.travel] = travel;
    pose.lastTravel = travel;
    pose.lastRack = rack;
    pose.outcome = 'reached';
    return 'reached';
  }
  pose.outcome = follow(linkage, pose, travel, rack);
  return pose.outcome;
}
