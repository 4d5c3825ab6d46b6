/** One search of a question: least squares from one start, gaps and margins looked at where they turn out low. */
import { assemble, type Corner } from '../corner.ts';
import type { Steps } from '../stops/steps.ts';
import { boundedLeastSquares, type LeastSquares } from './leastSquares.ts';
import { leewaysOf, missesAt, type Stage } from './misses.ts';
import { movedModel } from './moving.ts';
import type { Question } from './question.ts';
import { lowsOf, type Spot, valuesAt } from './spots.ts';
import { startCount, startOf } from './starts.ts';

/** A place that a search came to. */
export interface Candidate {
  /** Which start it came from, the present place being 0. */
  readonly start: number;
  /** The one mover that may move, by its place on the list; null where all may. */
  readonly only: number | null;
  readonly x: readonly number[];
  /** Half the sum of squares of all that was to be small there. */
  readonly cost: number;
  readonly spots: readonly Spot[];
}

/** Half-width of differences, mm or degrees. */
const REACH = 0.01;
/**
 * What a move over the whole of its bounds costs, as a root, while the search is under way: of equal answers each start comes to
 * the one next to it.
 */
const PULL = 0.05;
const STRENGTH = 30;
const STRONGER = 4;
/** Softness of the last rounds. */
const POLISH = 0.2;
const ROUNDS = 5;
/** Gains that a search under way, and one that is to end, still go on for. */
const ROUGH_GAIN = 1e-5;
const FINE_GAIN = 1e-9;
/** Spots of one key this near to each other are one, mm. */
const SAME_SPOT = 2;
/** A gap or margin that is low by less than this is not looked at anew. */
const LOW_BY = 0.005;

function problemOf(question: Question, { x: from, only }: Candidate, stage: Stage): LeastSquares {
  const { low, high } = question.moving;
  const within = (bounds: readonly number[]): readonly number[] =>
    only === null ? bounds : bounds.map((each, i) => (i === only ? each : from[i]!));
  return {
    low: within(low),
    high: within(high),
    reach: REACH,
    residuals: (x) => missesAt(question, x, stage),
  };
}

/** Spots that are not among those known, of gaps and margins that are lower there than they may be or are wished to be. */
export function newSpots(
  { floors, plan }: Question,
  known: readonly Spot[],
  lows: readonly (Spot & { readonly value: number })[],
): readonly Spot[] {
  const wanted = new Map(floors.map(({ key, wanted: floor }) => [key, floor]));
  for (const wish of plan.wishes) {
    if (wish.of === 'least') {
      wanted.set(wish.key, Math.max(wish.value, wanted.get(wish.key) ?? wish.value));
    }
  }
  return lows
    .filter(({ key, value }) => value < (wanted.get(key) ?? Number.NEGATIVE_INFINITY) - LOW_BY)
    .filter(({ key, travel, rack }) =>
      known.every(
        (spot) =>
          spot.key !== key ||
          Math.max(Math.abs(spot.travel - travel), Math.abs(spot.rack - rack)) > SAME_SPOT,
      ),
    );
}

/** Whether a gap or margin is less at one of its spots than it must be, or a measure has not stayed. */
function isShort(question: Question, corner: Corner, spots: readonly Spot[]): boolean {
  const { floors, meshes } = question;
  if (leewaysOf(question, corner).some((left) => left < 0)) return true;
  const wanted = new Map(floors.map(({ key, wanted: floor }) => [key, floor]));
  const values = valuesAt(corner, spots, meshes);
  return spots.some(({ key }, i) => values[i]! < (wanted.get(key) ?? Number.NEGATIVE_INFINITY));
}

/** Goes on from a place until no gap or margin is low where nobody looked; null where there is no corner at the place. */
export function* refineInSteps(
  question: Question,
  from: Candidate,
  firstPull: number = 0,
): Steps<Candidate | null> {
  const { floors, plan, meshes, model, moving } = question;
  const wished = plan.wishes.flatMap((wish) => (wish.of === 'least' ? [wish.key] : []));
  const keys = [...new Set([...wished, ...floors.map(({ key }) => key)])];
  let now = from;
  for (let round = 0; round < ROUNDS; round += 1) {
    const pull = round === 0 ? firstPull : 0;
    const strength = STRENGTH * STRONGER ** round;
    const softness = pull > 0 ? 1 : POLISH;
    const stage = { spots: now.spots, home: from.x, strength, pull, softness };
    const smallestGain = pull > 0 ? ROUGH_GAIN : FINE_GAIN;
    const solved = yield* boundedLeastSquares(problemOf(question, now, stage), now.x, {
      smallestGain,
    });
    if (solved === null) return null;
    const corner = assemble(movedModel(model, moving, solved.x));
    const lows = keys.length === 0 ? [] : lowsOf(corner, keys, meshes);
    yield round / ROUNDS;
    const added = newSpots(question, now.spots, lows);
    now = { ...now, x: solved.x, cost: solved.cost, spots: [...now.spots, ...added] };
    if (added.length === 0 && pull === 0 && !isShort(question, corner, now.spots)) return now;
  }
  return now;
}

/** How many starts a question is searched from. */
export function startsOf({ moving }: Question): number {
  const { length } = moving.present;
  return startCount(length) + (length > 1 ? length : 0);
}

/**
 * Searches from one start: from a place inside the bounds, or, after all of those, from the present one with one mover alone:
 * to move one thing is worth something to whoever has to. Null where no corner can be built there.
 */
export function searchInSteps(question: Question, start: number): Steps<Candidate | null> {
  const { present, low, high } = question.moving;
  const count = startCount(present.length);
  const only = start < count ? null : start - count;
  const x = startOf(only === null ? start : 0, present, low, high);
  return refineInSteps(question, { start, only, x, cost: Number.NaN, spots: question.spots }, PULL);
}
