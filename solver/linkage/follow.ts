/** Following the design pose's branch along the straight path to a pose, up to the pose or to where it ends. */
import type { Failure, Linkage } from './linkage.ts';
import { placeRack } from './place.ts';
import { correct } from './regular.ts';
import { Slot } from './slots.ts';

/** Longest step along the path, mm, and how it shortens with the determinant's share d of the home pose's: reach·√d. */
const LONGEST_STEP = 4;
const STEP_PER_ROOT_SHARE = 60;
/** The path ends where no step of this size, mm, succeeds: far below the hundredth that the contract asks. */
const SHORTEST_STEP = 2e-5;
/** A step that leaves less than this part of the determinant is shortened, so that no singular pose is jumped over. */
const KEPT_SHARE = 0.25;
/**
 * A pose with less than this part of the home pose's determinant counts as singular. The determinant may touch 0 without
 * changing sign, like (δ/Δ)² at a distance δ with Δ of the order of 100 mm: below this part δ is some 0.004 mm, a
 * hundred of the shortest steps, so that none hops over it.
 */
const SINGULAR_SHARE = 1e-9;
const CLOSE_TO_STRETCHED = 0.02;

/**
 * Names the constraint behind a singular pose, at which all lengths fail together: a pair that is nearly stretched, else
 * the lower arm, which can lift the wheel centre no further.
 */
export function nameOfSingular(pose: Float64Array): Failure {
  const upper = pose[Slot.upperRoom]!;
  const rod = pose[Slot.rodRoom]!;
  if (upper < CLOSE_TO_STRETCHED && upper <= rod) return 'upperArm';
  return rod < CLOSE_TO_STRETCHED ? 'tieRod' : 'lowerArm';
}

/**
 * Walks q from 0 towards 1 over a path `span` mm long in steps that shorten near singular poses. `attempt(q)` tries to
 * place the pose at q and returns its share of the home pose's determinant (0 or less: not on the branch; next to nothing: singular); `accept`
 * takes the pose tried last over. Returns the last q that holds, 1 when the path was walked to its end.
 */
export function walk(span: number, attempt: (q: number) => number, accept: () => void): number {
  let q = 0;
  let share = 1;
  let step = LONGEST_STEP;
  while (q < 1) {
    step = Math.min(2 * step, LONGEST_STEP, STEP_PER_ROOT_SHARE * Math.sqrt(share));
    let next = Math.min(1, q + step / span);
    let left = attempt(next);
    while (!(left > Math.max(SINGULAR_SHARE, step > 2 * SHORTEST_STEP ? KEPT_SHARE * share : 0))) {
      step /= 2;
      if (step < SHORTEST_STEP) return q;
      next = Math.min(1, q + step / span);
      left = attempt(next);
    }
    accept();
    q = next;
    share = left;
  }
  return 1;
}

const _trial = new Float64Array(Slot.size);

/**
 * Follows the branch from the set-up pose along (q·travel, q·rack), q from 0 to 1. Leaves the last reachable pose in
 * `data` and returns its q: 1 when the pose is reached.
 */
export function follow(linkage: Linkage, data: Float64Array, travel: number, rack: number): number {
  const { fixed, home, homeDeterminant } = linkage;
  data.set(home);
  const attempt = (q: number): number => {
    _trial.set(data);
    _trial[Slot.rack] = q * rack;
    _trial[Slot.travel] = q * travel;
    placeRack(fixed, _trial);
    return correct(fixed, _trial, q * travel) / homeDeterminant;
  };
  const accept = (): void => data.set(_trial);
  const span = Math.hypot(travel, rack);
  return span === 0 ? 1 : walk(span, attempt, accept);
}
