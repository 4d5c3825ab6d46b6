/** The smallest amount of a change that brings about what is aimed at: scanned outwards for a change of sign, then closed in. */
import type { Steps } from '../stops/steps.ts';
import { type Aim, type Standing, standingOf } from './aim.ts';
import type { Change } from './change.ts';

/** Places looked at from none to the greatest, closer together near none. */
const LOOKS = 8;
/** How near the amount is closed in on, mm, and turns at most until then. */
const NEAR = 0.004;
const TURNS = 24;
/** A difference of gap that says that a change does nothing, mm or degrees. */
const NOTHING = 1e-6;

export interface Tried {
  readonly change: Change;
  readonly amount: number;
  readonly standing: Standing;
}

export interface Smallest {
  /** What reaches; null where none does. */
  readonly reached: Tried | null;
  /** The best that was seen where none reaches; null where the change does nothing good. */
  readonly best: Tried | null;
}

/** How a change by so much does; null where the model cannot be so, or reaches less of its range than before. */
export function tried(change: Change, amount: number, aim: Aim, start: Standing): Tried | null {
  const standing = standingOf(change.at(amount), aim);
  if (standing === null) return null;
  if (!change.cutsRange && standing.unreached > start.unreached) return null;
  return { change, amount, standing };
}

/** Closes in between an amount that does not reach, its deficit `below`, and one that does; the answer does. */
function* closeIn(
  from: { readonly amount: number; readonly below: number },
  to: Tried,
  aim: Aim,
  start: Standing,
): Steps<Tried> {
  let low = from.amount;
  let below = from.below;
  let high = to;
  let above = to.standing.least - aim.wanted;
  let side = 0;
  for (let turn = 0; turn < TURNS && high.amount - low > NEAR; turn += 1) {
    const width = high.amount - low;
    // Halved every third turn, so that a bend of the curve cannot hold it up; kept off both ends.
    const share = turn % 3 === 2 || !Number.isFinite(below) ? 0.5 : below / (below - above);
    const amount = low + width * Math.min(0.98, Math.max(0.02, share));
    const now = tried(high.change, amount, aim, start);
    yield 0;
    const value = now === null ? Number.NEGATIVE_INFINITY : now.standing.least - aim.wanted;
    if (now !== null && value >= 0) {
      high = now;
      above = value;
      if (side > 0) below /= 2;
      side = 1;
    } else {
      low = amount;
      below = value;
      if (side < 0) above /= 2;
      side = -1;
    }
  }
  return high;
}

/** The smallest amount of one change, up to `most`. */
export function* smallestOf(
  change: Change,
  most: number,
  aim: Aim,
  start: Standing,
): Steps<Smallest> {
  let last = { amount: 0, below: start.least - aim.wanted };
  let best: Tried | null = null;
  for (let look = 1; look <= LOOKS && most > 0; look += 1) {
    const amount = most * (look / LOOKS) ** 2;
    const now = tried(change, amount, aim, start);
    yield 0;
    const value = now === null ? Number.NEGATIVE_INFINITY : now.standing.least - aim.wanted;
    if (now !== null && value >= 0) {
      return { reached: yield* closeIn(last, now, aim, start), best: null };
    }
    last = { amount, below: value };
    if (now === null || now.standing.least <= start.least + NOTHING) continue;
    if (best === null || now.standing.least > best.standing.least) best = now;
  }
  return { reached: null, best };
}
